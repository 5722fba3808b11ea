import type { DrawItem } from '../../drawing/drawing.ts';
import type { Box } from '../../geometry/shape.ts';
import type { MeasureStyle } from '../../measure/style.ts';
import type { Mm } from '../../measure/units.ts';
import type { Pictured } from '../../plan/types.ts';
import type { PlanWords, Say } from '../../plan/words/words.ts';
import type { Section } from './flow.ts';
import type { Sheet } from './sheet.ts';
import type { PacketWords } from './words/shape.ts';

/** Everything a page kind may use. */
export interface Packet<P = Pictured> {
  readonly plan: P;
  readonly say: Say;
  readonly words: PlanWords;
  /** What the packet says in its own voice. */
  readonly terms: PacketWords;
  readonly measure: MeasureStyle;
  /** A length as it is read in tables and beside drawings, and a sum of money. */
  readonly told: (mm: Mm) => string;
  readonly money: (value: number) => string;
  readonly unit: 'in' | 'mm';
  /** Upright, and the room on it. */
  readonly sheet: Sheet;
  readonly body: Box;
  /** Short name of the design's state. */
  readonly revision: string;
}

/** Where each kind of page begins, for the cover; null where it is left out. */
export interface Contents {
  readonly title: string;
  readonly page: number | null;
}

/** One page of the packet before it has its number. */
export interface Leaf {
  readonly title: string;
  readonly landscape: boolean;
  readonly scale: number | null;
  readonly draw: (body: Box, contents: readonly Contents[]) => DrawItem[];
}

/** What a kind of page consists of. */
export type Content = Leaf | Section;
