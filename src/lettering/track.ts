import type { Deg, Mm } from '../measure/units.ts';
import type { SetLine } from './setting.ts';

/** A place on a baseline, and how far what stands there is turned. */
export interface Stand {
  readonly x: Mm;
  readonly y: Mm;
  /** Counterclockwise. */
  readonly turn: Deg;
}

/** What a line of text stands on. */
export interface Track {
  /** Where something stands whose middle is `along` from that of the setting and that reaches `half` to each side. */
  readonly at: (along: Mm, half: Mm) => Stand;
  /** Height of the baseline at its middle. */
  readonly baseline: Mm;
  /** Whether letters on it are turned. */
  readonly bent: boolean;
  /** Of a track that closes: how long it is, as letters count it. */
  readonly length?: Mm;
}

/** Straight lines, as they are set. */
export const straightTracks = (lines: readonly SetLine[]): Track[] =>
  lines.map(({ baseline }) => ({
    at: (x) => ({ x, y: baseline, turn: 0 }),
    baseline,
    bent: false,
  }));
