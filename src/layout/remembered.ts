import type { Face } from '../bed/face.ts';
import type { Check } from '../check/check.ts';
import type { Design, KeepClear } from '../design/schema.ts';
import type { Box } from '../geometry/shape.ts';
import type { Stock } from '../materials/types.ts';
import type { Checking } from './check/checks.ts';
import type { Layout } from './laid.ts';
import type { Placement } from './place/place.ts';
import type { SolvedNetwork } from './solve/solveAll.ts';
import type { JudgedRule, RulePlaces } from './states.ts';
import type { Sizes } from './structure.ts';

/** A layout with what it was made from and what it came to on the way. Immutable: the next one is made from it. */
export interface Remembered extends SolvedNetwork {
  readonly face: Face;
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly sizes: Sizes | undefined;
  readonly held: ReadonlySet<string> | undefined;
  readonly keepClears: readonly KeepClear[];
  readonly parts: Design['parts'];
  readonly rules: Design['rules'];
  readonly finishes: Design['finishes'];
  readonly finishIds: ReadonlySet<string>;
  /** Where parts and rules stand in their lists. */
  readonly places: ReadonlyMap<string, number>;
  readonly rulePlaces: RulePlaces;
  /** Solved boxes, before ends were brought to what they stop at. */
  readonly boxes: ReadonlyMap<string, Box>;
  readonly placement: Placement;
  readonly checking: Checking;
  readonly judged: readonly JudgedRule[];
  /** Checks as they were found, before they were put in order. */
  readonly found: readonly Check[];
  readonly layout: Layout;
}
