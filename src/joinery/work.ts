import type { Stock } from '../materials/types.ts';
import type { Mm } from '../measure/units.ts';
import type { Bar, End } from './bar.ts';
import { isBrace, naturalCuts, stopOf } from './natural.ts';
import type { Cut } from './trim.ts';

/** A stretch of a bar that another one takes. */
export interface Gap {
  readonly near: Cut;
  readonly far: Cut;
}

/** A stretch of a bar that is sawn out to `depth` from one side, for another one to lie in. */
export interface Halving extends Gap {
  readonly depth: Mm;
  readonly side: 'face' | 'back';
  /** Laid part that lies in it. */
  readonly with: string;
}

/** A bar with the cuts that its joints have asked for so far. */
export interface BarWork {
  readonly bar: Bar;
  readonly joints: { readonly start: Cut[]; readonly end: Cut[] };
  /** Where the wood runs on below or above another piece but is not counted there (half-laps). */
  readonly laps: { readonly start: Cut[]; readonly end: Cut[] };
  /** The bar is sawn in two here. */
  readonly gaps: Gap[];
  /** The bar runs on here, halved into another one that is counted in full. */
  readonly lapGaps: Gap[];
  /** What half-laps saw out of it. */
  readonly halvings: Halving[];
}

export const newWork = (bar: Bar): BarWork => ({
  bar,
  joints: { start: [], end: [] },
  laps: { start: [], end: [] },
  gaps: [],
  lapGaps: [],
  halvings: [],
});

/**
 * All that joints ask of a bar, in one list: with the same list a bar is sawn alike.
 *
 * @param stockOf what a part that a cut goes against is made of
 */
export function factsOf(work: BarWork, stockOf: (part: string) => Stock | null): unknown[] {
  const { joints, laps, gaps, lapGaps, halvings } = work;
  const ofCut = ({ at, slope, kind, with: other, corner }: Cut): unknown[] => [
    at,
    slope,
    kind,
    other,
    corner,
    other === null ? null : stockOf(other),
  ];
  const ofGap = ({ near, far }: Gap): unknown[] => [...ofCut(near), ...ofCut(far)];
  return [
    ...[joints.start, joints.end, laps.start, laps.end].flatMap((cuts) => [
      cuts.length,
      ...cuts.flatMap(ofCut),
    ]),
    ...[gaps, lapGaps, halvings].flatMap((own) => [own.length, ...own.flatMap(ofGap)]),
    ...halvings.flatMap(({ depth, side, with: other }) => [depth, side, other]),
  ];
}

/** The cuts that shape an end: its joints in place of its own cut; a brace keeps to its box besides, and an end to its stop. */
export function endCuts(work: BarWork, end: End): Cut[] {
  const joints = work.joints[end];
  if (joints.length === 0) return naturalCuts(work.bar, end);
  const stop = stopOf(work.bar, end);
  return isBrace(work.bar) || (stop && !stop.laid) ? [...naturalCuts(work.bar, end), ...joints] : joints;
}
