import type { Face } from '../bed/face.ts';
import type { Design, KeepClear } from '../design/schema.ts';
import type { Stock } from '../materials/types.ts';
import type { Sizes } from './structure.ts';

/** What is laid out. */
export interface LayoutInput {
  readonly design: Pick<Design, 'parts' | 'rules' | 'finishes'>;
  readonly face: Face;
  readonly keepClears: readonly KeepClear[];
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly sizes?: Sizes;
  /**
   * Parts that the hand holds just now (dragged or typed): others give way to them. Only while the hand
   * holds them; once the solved boxes are written into the design (`settled`) nothing depends on it.
   */
  readonly held?: ReadonlySet<string>;
}
