import { meetingPairs } from '../geometry/meeting.ts';
import { add, dot, scale, subtract } from '../geometry/point.ts';
import { intersectLines } from '../geometry/segment.ts';
import type { Box, Point } from '../geometry/shape.ts';
import { type Bar, boxAround, edgeLine, type Side, sameHeight, TOUCH, toBar, toFace } from './bar.ts';
import type { BarEnd } from './corner.ts';
import { naturalCuts } from './natural.ts';
import { cutAlong, outlineOf } from './trim.ts';

/**
 * How two bars at one height meet. `corner`: both end there. `tee`: one ends at the side of the other.
 * `cross`: both run on. `alike`: they lie along or within each other, and there is nothing to join.
 */
export type Meeting =
  | { readonly shape: 'corner'; readonly a: BarEnd; readonly b: BarEnd; readonly laps: boolean }
  | { readonly shape: 'tee'; readonly ending: BarEnd; readonly passing: Bar; readonly laps: boolean }
  | { readonly shape: 'cross'; readonly a: Bar; readonly b: Bar; readonly laps: boolean }
  | { readonly shape: 'alike'; readonly a: Bar; readonly b: Bar; readonly laps: boolean };

/** The two bars of a meeting. */
export function barsThatMeet(meeting: Meeting): readonly [Bar, Bar] {
  switch (meeting.shape) {
    case 'corner':
      return [meeting.a.bar, meeting.b.bar];
    case 'tee':
      return [meeting.ending.bar, meeting.passing];
    default:
      return [meeting.a, meeting.b];
  }
}

/** A convex outline of a bar on the face, with a box a little larger. */
export interface Outlined {
  readonly bar: Bar;
  readonly outline: readonly Point[];
  readonly around: Box;
}

export const outlined = (bar: Bar, outline: readonly Point[]): Outlined => ({
  bar,
  outline,
  around: boxAround(outline),
});

/** Every pair of bars that touch or lap at one height as they are laid, corners within a run left out. */
export function findMeetings(uncut: readonly Outlined[]): Meeting[] {
  return pairsThatMeet(uncut, -TOUCH).map(([a, b, depth]) => meetingOf(a, b, depth > TOUCH));
}

/**
 * Pairs that lap only since their joints were cut, such as a brace whose angled end reaches past the square
 * one it was laid with.
 */
export function findLateMeetings(cut: readonly Outlined[], found: readonly Meeting[]): Meeting[] {
  const known = new Set(found.filter((meeting) => meeting.laps).map((m) => pairKey(...barsThatMeet(m))));
  const late: Meeting[] = [];
  for (const [a, b] of pairsThatMeet(cut, TOUCH)) {
    const key = pairKey(a, b);
    if (known.has(key)) continue;
    known.add(key);
    late.push(meetingOf(a, b, true));
  }
  return late;
}

const pairKey = (a: Bar, b: Bar): string => `${Math.min(a.index, b.index)} ${Math.max(a.index, b.index)}`;

/** Pairs at one height whose convex outlines lie at least `least` deep in each other, with that depth. */
function pairsThatMeet(outlines: readonly Outlined[], least: number): [Bar, Bar, number][] {
  const found: [Bar, Bar, number][] = [];
  for (const [i, j] of meetingPairs(outlines.map(({ around }) => around))) {
    const [a, b] = [outlines[i], outlines[j]];
    if (!a || !b || a.bar === b.bar || !sameHeight(a.bar, b.bar) || neighborsInRun(a.bar, b.bar)) continue;
    if (stopsAt(a.bar, b.bar) || stopsAt(b.bar, a.bar)) continue;
    const depth = lapDepth(a.outline, b.outline);
    if (depth >= least) found.push([a.bar, b.bar, depth]);
  }
  return found;
}

/** The outline on the face before any joint. */
export const uncutOutline = (bar: Bar): Point[] =>
  outlineOf(bar.width, naturalCuts(bar, 'start'), naturalCuts(bar, 'end')).map((p) => toFace(bar, p));

/** Whether an end of a bar is cut to the other one already. */
const stopsAt = ({ laid: { stops } }: Bar, { laid }: Bar): boolean =>
  [stops?.start, stops?.end].some((stop) => stop?.at === laid.id || stop?.at === laid.part);

function neighborsInRun(a: Bar, b: Bar): boolean {
  if (a.laid.id !== b.laid.id || a.laid.kind !== 'run') return false;
  const [first, last] = a.leg < b.leg ? [a, b] : [b, a];
  const apart = last.leg - first.leg;
  if (apart === 1) return !first.free.end;
  return a.laid.closed && apart === a.laid.legs.length - 1;
}

/**
 * How deep two convex outlines lie in each other, negative when apart: the least depth over the directions
 * of all their sides (separating axes).
 */
export function lapDepth(p: readonly Point[], q: readonly Point[]): number {
  return Math.min(depthBeyondSides(p, q), depthBeyondSides(q, p));
}

function depthBeyondSides(p: readonly Point[], q: readonly Point[]): number {
  let least = Number.POSITIVE_INFINITY;
  p.forEach((a, i) => {
    const b = p[(i + 1) % p.length];
    if (!b) return;
    const side = subtract(b, a);
    const size = Math.hypot(side.x, side.y);
    if (size === 0) return;
    const inward = { x: -side.y / size, y: side.x / size };
    let deepest = Number.NEGATIVE_INFINITY;
    for (const corner of q) deepest = Math.max(deepest, dot(inward, subtract(corner, a)));
    least = Math.min(least, deepest);
  });
  return least;
}

function meetingOf(a: Bar, b: Bar, laps: boolean): Meeting {
  const ra = standing(a, b);
  const rb = standing(b, a);
  if (ra === 'within' || rb === 'within') return { shape: 'alike', a, b, laps };
  if (ra === 'passes' && rb === 'passes') return { shape: 'cross', a, b, laps };
  if (ra === 'passes')
    return { shape: 'tee', ending: { bar: b, end: rb as 'start' | 'end' }, passing: a, laps };
  if (rb === 'passes') return { shape: 'tee', ending: { bar: a, end: ra }, passing: b, laps };
  return { shape: 'corner', a: { bar: a, end: ra }, b: { bar: b, end: rb }, laps };
}

/**
 * Where `a` stands in the stretch that the band of `b` takes of it: it starts there, ends there, passes
 * through, or lies wholly within (and any two parallel bars do, unless they meet end to end).
 */
function standing(a: Bar, b: Bar): 'start' | 'end' | 'passes' | 'within' {
  const near = cutAlong(a, edgeLine(b, 'left'), ANY);
  const far = cutAlong(a, edgeLine(b, 'right'), ANY);
  if (!near || !far) return endToEnd(a, b);
  const slack = (Math.abs(near.slope) * a.width) / 2 + TOUCH;
  const before = !a.free.start || 0 < Math.min(near.at, far.at) - slack;
  const beyond = !a.free.end || a.length > Math.max(near.at, far.at) + slack;
  if (before && beyond) return 'passes';
  return before ? 'end' : beyond ? 'start' : 'within';
}

const ANY = { kind: 'butt', with: null, corner: null } as const;

function endToEnd(a: Bar, b: Bar): 'start' | 'end' | 'within' {
  const ends = [toBar(a, b.start).x, toBar(a, toFace(b, { x: b.length, y: 0 })).x];
  if (Math.min(...ends) >= a.length - TOUCH && a.free.end) return 'end';
  if (Math.max(...ends) <= TOUCH && a.free.start) return 'start';
  return 'within';
}

/** The edge of `passing` that the body of an ending bar comes to. */
export function nearSide(ending: BarEnd, passing: Bar): Side {
  const { bar, end } = ending;
  const body = toFace(bar, { x: end === 'end' ? 0 : bar.length, y: 0 });
  return toBar(passing, body).y >= 0 ? 'left' : 'right';
}

/** Where the center line of a bar meets an edge or center line of another; its own middle when parallel. */
export function crossingPlace(bar: Bar, line: { readonly at: Point; readonly along: Point }): Point {
  const hit = intersectLines(bar.start, add(bar.start, bar.along), line.at, add(line.at, line.along));
  return hit ?? add(bar.start, scale(bar.along, bar.length / 2));
}
