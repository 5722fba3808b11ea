import type { Check } from '../../check/check.ts';
import type { Edit } from '../../design/edit/edit.ts';
import type { Axis, Design, Part } from '../../design/schema.ts';
import { designPart } from '../../layout/reference.ts';
import type { Mm } from '../../measure/units.ts';

/** One way to mend what a check found, as one step. */
export interface Mend {
  readonly how:
    | 'move'
    | 'lay'
    | 'stop'
    | 'cut'
    | 'open'
    | 'square'
    | 'shorten'
    | 'stock'
    | 'glue'
    | 'screws'
    | 'legs'
    | 'rule'
    | 'primer';
  /** The parts that change, and what they then touch or lie on, or are made of: an id, or `face`. */
  readonly parts: readonly string[];
  readonly to: string;
  /** Of the move of one part. */
  readonly axis?: Axis;
  /** The end that is cut off. */
  readonly end?: 'low' | 'high';
  /** How far a part is moved, how much is cut off, or how long the legs become. */
  readonly by?: Mm;
  readonly edits: readonly Edit[];
}

/** The part of the design that checks name first. */
export function concerned(design: Design, checks: readonly Check[]): Part | undefined {
  const named = checks[0]?.parts[0];
  return named === undefined ? undefined : design.parts.find((part) => part.id === designPart(named));
}
