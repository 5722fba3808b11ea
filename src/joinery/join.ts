import type { Point } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Deg, Mm } from '../measure/units.ts';
import { type Bar, edgeLine, type Line, otherSide, runsThrough } from './bar.ts';
import { type BarEnd, type CornerLines, cornerLines, cornerPlace } from './corner.ts';
import type { Decision } from './decide.ts';
import { sprungStock } from './end/kind.ts';
import { crossingPlace, type Meeting, nearSide } from './meet.ts';
import type { EndCut, JointFound } from './piece.ts';
import { type Cut, cutAlong } from './trim.ts';
import type { BarWork, Halving } from './work.ts';

type Kind = JointFound['kind'];

/** The works of all bars by their place, to which joints add their cuts. */
export type Works = readonly BarWork[];

/**
 * Joins one meeting: the person's decision, or the proposal. Wood that only touches is left as it was laid
 * unless the person decided otherwise. Returns the joint, or null when there is none.
 */
export function joinMeeting(works: Works, meeting: Meeting, decision: Decision | null): JointFound | null {
  switch (meeting.shape) {
    case 'corner':
      return joinCorner(works, meeting, decision);
    case 'tee':
      return joinTee(works, meeting, decision);
    case 'cross':
      return joinCross(works, meeting, decision);
    case 'alike':
      return null;
  }
}

type Of<S extends Meeting['shape']> = Extract<Meeting, { readonly shape: S }>;

function joinCorner(
  works: Works,
  { a, b, laps }: Of<'corner'>,
  decision: Decision | null,
): JointFound | null {
  if (!laps && !decision) return null;
  const kind = decision?.kind ?? 'butt';
  const through = decision?.through ?? runsThrough(a.bar, b.bar);
  return cutCorner(works, a, b, { kind, through, decided: decision !== null, toOutside: decision !== null });
}

export interface CornerJoint {
  readonly kind: Kind;
  readonly through: Bar;
  readonly decided: boolean;
  /** Cut what runs through flush with the outer edge of the other, instead of leaving it as it was laid. */
  readonly toOutside: boolean;
}

/** Cuts both ends of a corner and tells the joint. */
export function cutCorner(works: Works, a: BarEnd, b: BarEnd, joint: CornerJoint): JointFound {
  const lines = cornerLines(a, b);
  if (joint.kind === 'miter' || lines.inner === null || lines.outer === null) {
    // Where the way goes straight on there is nothing to miter: the ends are butted square.
    const kind = lines.inner === null ? 'butt' : 'miter';
    const corner = kind === 'miter' ? sprungCorner(a, b, lines) : null;
    addCut(works, a, lines.miter, kind, b.bar.laid.id, corner);
    addCut(works, b, lines.miter, kind, a.bar.laid.id, corner);
    return found(a.bar, b.bar, kind, null, cornerPlace(lines), joint.decided);
  }
  const aThrough = joint.through.index === a.bar.index;
  const [through, stopped] = aThrough ? [a, b] : [b, a];
  const innerOfThrough = aThrough ? lines.inner.a : lines.inner.b;
  const outerOfStopped = aThrough ? lines.outer.b : lines.outer.a;
  const kind = madeAgainst(joint.kind, through.bar);
  if (joint.toOutside) addFlush(works, through, outerOfStopped);
  if (kind === 'half-lap') {
    if (joint.toOutside) addFlush(works, stopped, aThrough ? lines.outer.a : lines.outer.b);
    addLap(works, stopped, innerOfThrough);
    addHalvings(works, through.bar, stopped.bar);
  } else {
    addCut(works, stopped, innerOfThrough, kind, through.bar.laid.id, null);
  }
  return found(a.bar, b.bar, kind, through.bar, cornerPlace(lines), joint.decided);
}

/** Only a molding has a section to cope to: against flat stock a cope is a butt. */
function madeAgainst<K extends Kind>(kind: K, through: Bar): K | 'butt' {
  return kind === 'cope' && through.stock?.form !== 'shaped' ? 'butt' : kind;
}

function joinTee(works: Works, meeting: Of<'tee'>, decision: Decision | null): JointFound | null {
  const { ending, passing, laps } = meeting;
  if (!laps && !decision) return null;
  const side = nearSide(ending, passing);
  const near = edgeLine(passing, side);
  const far = edgeLine(passing, otherSide(side));
  // A miter has nothing to halve where one piece runs on: it stops against its side.
  const through = decision?.through ?? passing;
  const kind: Kind = !decision || decision.kind === 'miter' ? 'butt' : madeAgainst(decision.kind, through);
  if (kind === 'half-lap') {
    addFlush(works, ending, far);
    if (through.index === passing.index) addLap(works, ending, near);
    else addLapGap(works, passing, ending.bar);
    addHalvings(works, through, through.index === passing.index ? ending.bar : passing);
  } else if (through.index === ending.bar.index) {
    addFlush(works, ending, far);
    addGap(works, passing, ending.bar, kind);
  } else {
    addCut(works, ending, near, kind, passing.laid.id, null);
  }
  const place = crossingPlace(ending.bar, near);
  return found(ending.bar, passing, kind, through, place, decision !== null);
}

function joinCross(works: Works, { a, b, laps }: Of<'cross'>, decision: Decision | null): JointFound | null {
  if (!laps) return null;
  const through = decision?.through ?? runsThroughCross(a, b);
  const kind = madeAgainst(crossKind(a, b, decision), through);
  const cutInTwo = through.index === a.index ? b : a;
  if (kind === 'half-lap') {
    addLapGap(works, cutInTwo, through);
    addHalvings(works, through, cutInTwo);
  } else addGap(works, cutInTwo, through, kind);
  const place = crossingPlace(a, { at: b.start, along: b.along });
  return found(a, b, kind, through, place, decision !== null);
}

/** Flat stock of one thickness is halved where it crosses; thinner stock and molding are cut in two. */
function crossKind(a: Bar, b: Bar, decision: Decision | null): Kind {
  if (decision && decision.kind !== 'miter') return decision.kind;
  const molded = a.stock?.form === 'shaped' || b.stock?.form === 'shaped';
  return molded || rises(a, b) !== 0 ? 'butt' : 'half-lap';
}

/** The thicker one runs through, so that no end grain stands over the thinner one. */
function runsThroughCross(a: Bar, b: Bar): Bar {
  const higher = rises(a, b);
  return higher === 0 ? runsThrough(a, b) : higher > 0 ? a : b;
}

/** How much higher `a` stands than `b`; 0 when they are flush. */
function rises(a: Bar, b: Bar): Mm {
  const over = a.laid.z1 - b.laid.z1;
  return Math.abs(over) <= SAME_LENGTH ? 0 : over;
}

function found(a: Bar, b: Bar, kind: Kind, through: Bar | null, at: Point, decided: boolean): JointFound {
  return { parts: [a.laid.id, b.laid.id], kind, through: through?.laid.id ?? null, at, decided };
}

/** Interior angle of the corner that sprung molding of one stock turns; null for any other pair. */
function sprungCorner(a: BarEnd, b: BarEnd, lines: CornerLines): Deg | null {
  const alike = sprungStock(a.bar.stock) !== null && a.bar.laid.stock === b.bar.laid.stock;
  return alike ? 180 - Math.abs(lines.turn) : null;
}

function addCut(
  works: Works,
  { bar, end }: BarEnd,
  line: Line,
  kind: EndCut,
  other: string,
  corner: Deg | null,
): void {
  const cut = cutAlong(bar, line, { kind, with: other, corner });
  if (cut) works[bar.index]?.joints[end].push(cut);
}

/** A free end, cut flush with a line. */
function addFlush(works: Works, { bar, end }: BarEnd, line: Line): void {
  const cut = cutAlong(bar, line, { kind: 'square', with: null, corner: null });
  if (cut) works[bar.index]?.joints[end].push({ ...cut, kind: cut.slope === 0 ? 'square' : 'miter' });
}

function addLap(works: Works, { bar, end }: BarEnd, line: Line): void {
  const cut = cutAlong(bar, line, { kind: 'butt', with: null, corner: null });
  if (cut) works[bar.index]?.laps[end].push(cut);
}

function addGap(works: Works, cutBar: Bar, through: Bar, kind: 'butt' | 'cope' | 'miter'): void {
  const gap = gapOf(cutBar, through, kind);
  if (gap) works[cutBar.index]?.gaps.push(gap);
}

function addLapGap(works: Works, cutBar: Bar, through: Bar): void {
  const gap = gapOf(cutBar, through, 'butt');
  if (gap) works[cutBar.index]?.lapGaps.push(gap);
}

/**
 * Halves the height that two bars share: what runs through keeps its face and loses the lower half, the
 * other one loses all above the middle, so that each fills what the other lost.
 */
function addHalvings(works: Works, through: Bar, other: Bar): void {
  const middle = (Math.max(through.laid.z0, other.laid.z0) + Math.min(through.laid.z1, other.laid.z1)) / 2;
  addHalving(works, through, other, 'back', middle - through.laid.z0);
  addHalving(works, other, through, 'face', other.laid.z1 - middle);
}

function addHalving(works: Works, bar: Bar, other: Bar, side: Halving['side'], depth: Mm): void {
  const gap = gapOf(bar, other, 'butt');
  if (gap) works[bar.index]?.halvings.push({ ...gap, side, depth, with: other.laid.id });
}

function gapOf(cutBar: Bar, through: Bar, kind: EndCut): { near: Cut; far: Cut } | null {
  const rest = { kind, with: through.laid.id, corner: null };
  const p = cutAlong(cutBar, edgeLine(through, 'left'), rest);
  const q = cutAlong(cutBar, edgeLine(through, 'right'), rest);
  if (!p || !q) return null;
  return p.at <= q.at ? { near: p, far: q } : { near: q, far: p };
}
