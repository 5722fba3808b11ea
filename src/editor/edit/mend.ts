import type { Edit } from '../../design/edit/edit.ts';
import type { Axis } from '../../design/schema.ts';
import type { Mm } from '../../measure/units.ts';

/** One way to mend what a check found, as one step. */
export interface Mend {
  readonly how: 'move' | 'lay' | 'stop' | 'glue' | 'screws' | 'legs';
  /** The parts that change, and what they then touch or lie on: an id, or `face`. */
  readonly parts: readonly string[];
  readonly to: string;
  /** Of the move of one part. */
  readonly axis?: Axis;
  /** How far a part is moved, or how long the legs become. */
  readonly by?: Mm;
  readonly edits: readonly Edit[];
}
