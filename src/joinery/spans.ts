import { dot, leftNormal, midpoint, subtract, unit } from '../geometry/point.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Box, Point } from '../geometry/shape.ts';
import { DUST } from '../geometry/tolerance.ts';
import { pick } from '../list/at.ts';
import { addTo, type Groups } from '../list/grouped.ts';
import { type Mm, radians } from '../measure/units.ts';
import { TOUCH } from './bar.ts';
import type { Draft, Placed } from './draft.ts';
import { isSquareEnded } from './lengths.ts';

/** A measure of a piece that may share a span: both edges of a square-ended stick are told by one. */
export interface Told {
  readonly piece: number;
  readonly of: 'length' | 'width' | 'left' | 'right';
}

export const toldKey = ({ piece, of }: Told): string => `${piece} ${of}`;

/** A straight way along a piece on the face, between the two ends of a measure. */
interface Lane {
  readonly told: Told;
  readonly start: Point;
  readonly end: Point;
}

/** One end of a lane. */
interface LaneEnd {
  readonly lane: number;
  readonly at: Point;
  /** Unit vector out of the piece. */
  readonly out: Point;
  /** How far apart two pieces may lie that stop against the same one here. */
  readonly room: Mm;
}

/** Where sticks lie on the face: what may stand between two panels. */
export interface Bars {
  /** Widest bar of every strip and run, by laid id. */
  readonly widths: ReadonlyMap<string, Mm>;
  readonly boxes: readonly Box[];
}

/**
 * The rows of measures that fill one span together, each from its lower left end: sticks in one line, edge by
 * edge, that stop against the same stick or against each other, and panels side by side or above each other
 * that touch or have a stick between them. What is measured in place fills no span.
 */
export function spansOf(pieces: readonly Placed[], bars: Bars): Told[][] {
  const lanes = pieces.flatMap((placed, i) => lanesOf(placed, i));
  const sticks = chainsOf(lanes, linksOf(lanes, pieces, bars.widths)).map((chain) =>
    chain.flatMap((i) => pick(lanes, i).told),
  );
  return withoutParts([...sticks, ...panelRows(pieces, bars, 'x'), ...panelRows(pieces, bars, 'y')]);
}

/** Each row once, and none that is part of another one. */
function withoutParts(rows: readonly Told[][]): Told[][] {
  const kept: { row: Told[]; keys: ReadonlySet<string> }[] = [];
  for (const row of [...rows].sort((a, b) => b.length - a.length)) {
    const keys = row.map(toldKey);
    if (!kept.some((other) => keys.every((key) => other.keys.has(key))))
      kept.push({ row, keys: new Set(keys) });
  }
  return kept.map(({ row }) => row);
}

/** Along both edges and, of a square-ended stick, along its center line too. */
function lanesOf({ draft, stretch }: Placed, piece: number): Lane[] {
  if (!stretch || draft.ends.some((end) => end.second !== null)) return [];
  const square = isSquareEnded(draft);
  const edges = (['left', 'right'] as const).flatMap((of): Lane[] => {
    const edge = stretch[of];
    return edge ? [{ told: { piece, of: square ? 'length' : of }, ...edge }] : [];
  });
  const { left, right } = stretch;
  if (!square || !left || !right) return edges;
  const center = { start: midpoint(left.start, right.start), end: midpoint(left.end, right.end) };
  return [...edges, { told: { piece, of: 'length' }, ...center }];
}

/** Neighbors of every lane in its line. */
type Links = ReadonlyMap<number, readonly number[]>;

function linksOf(lanes: readonly Lane[], pieces: readonly Placed[], widths: ReadonlyMap<string, Mm>): Links {
  const links: Groups<number, number> = new Map();
  for (const ends of endsByMeeting(lanes, pieces, widths).values()) {
    ends.forEach((a, i) => {
      for (const b of ends.slice(i + 1)) {
        if (lanes[a.lane]?.told.piece === lanes[b.lane]?.told.piece || !inLine(a, b)) continue;
        addTo(links, a.lane, b.lane);
        addTo(links, b.lane, a.lane);
      }
    });
  }
  return links;
}

/** Lane ends by what they stop against, and, for pieces end to end, by the two of them. */
function endsByMeeting(
  lanes: readonly Lane[],
  pieces: readonly Placed[],
  widths: ReadonlyMap<string, Mm>,
): Map<string, LaneEnd[]> {
  const groups: Groups<string, LaneEnd> = new Map();
  lanes.forEach(({ told, start, end }, lane) => {
    const draft = pieces[told.piece]?.draft;
    const out = unit(subtract(end, start));
    const ends: [Point, Point][] = [
      [start, { x: -out.x, y: -out.y }],
      [end, out],
    ];
    ends.forEach(([at, away], i) => {
      const own = draft?.ends[i];
      if (!draft || !own || own.with === null) return;
      // A slanted end crosses what it stops against on a longer way.
      const room = (widths.get(own.with) ?? 0) / Math.cos(radians(own.miter)) + TOUCH;
      addTo(groups, own.with, { lane, at, out: away, room });
      addTo(groups, [draft.part, own.with].sort().join('\n'), { lane, at, out: away, room: TOUCH });
    });
  });
  return groups;
}

function inLine(a: LaneEnd, b: LaneEnd): boolean {
  if (dot(a.out, b.out) > -1 + DUST) return false;
  const gap = subtract(b.at, a.at);
  const along = dot(gap, a.out);
  const aside = Math.abs(dot(gap, leftNormal(a.out)));
  return along >= -TOUCH && along <= Math.min(a.room, b.room) && aside <= TOUCH;
}

/** Rows of linked lanes, each walked from the end that lies lower left. */
function chainsOf(lanes: readonly Lane[], links: Links): number[][] {
  const place = (i: number): number => {
    const lane = lanes[i];
    return lane ? Math.min(lane.start.x, lane.end.x) + Math.min(lane.start.y, lane.end.y) : 0;
  };
  const seen = new Set<number>();
  const tips = [...links.keys()].filter((i) => links.get(i)?.length === 1);
  tips.sort((i, j) => place(i) - place(j) || i - j);
  return tips.map((tip) => walk(tip, links, seen)).filter((chain) => chain.length > 1);
}

function walk(tip: number, links: Links, seen: Set<number>): number[] {
  const chain: number[] = [];
  let at: number | undefined = tip;
  while (at !== undefined && !seen.has(at)) {
    seen.add(at);
    chain.push(at);
    at = links.get(at)?.find((next) => !seen.has(next));
  }
  return chain;
}

/** A panel along one axis of the face: from `low` to `high`, and over which stretch across. */
interface Slab {
  readonly told: Told;
  readonly low: Mm;
  readonly high: Mm;
  readonly from: Mm;
  readonly to: Mm;
}

const slabOf = (box: Box, axis: 'x' | 'y', told: Told): Slab =>
  axis === 'x'
    ? { told, low: box.x, high: box.x + box.w, from: box.y, to: box.y + box.h }
    : { told, low: box.y, high: box.y + box.h, from: box.x, to: box.x + box.w };

const shared = (a: Slab, b: Slab): Mm => Math.min(a.to, b.to) - Math.max(a.from, b.from);

/** Rows of panels along an axis, each followed by the one that it meets over the longest way. */
function panelRows(pieces: readonly Placed[], { boxes }: Bars, axis: 'x' | 'y'): Told[][] {
  const slabs = pieces.flatMap(({ draft, kind }, piece) => {
    if (kind !== 'panel') return [];
    const box = boxOfPoints(pick(draft.placed, 0).outer);
    return [slabOf(box, axis, { piece, of: liesAlong(draft, box, axis) ? 'length' : 'width' })];
  });
  const between = boxes.map((box) => slabOf(box, axis, { piece: -1, of: 'width' }));
  const widest = between.reduce((most, { low, high }) => Math.max(most, high - low), 0);
  const next = slabs.map((a) => bestOf(slabs, a, (b) => follows(a, b, between, widest)));
  const before = slabs.map((b) => bestOf(slabs, b, (a) => follows(a, b, between, widest)));
  const links: Groups<number, number> = new Map();
  next.forEach((j, i) => {
    if (j < 0 || before[j] !== i) return;
    addTo(links, i, j);
    addTo(links, j, i);
  });
  const seen = new Set<number>();
  return slabs
    .map((_, i) => i)
    .filter((i) => links.has(i) && !links.get(i)?.includes(pick(before, i)))
    .map((tip) => walk(tip, links, seen).flatMap((i) => pick(slabs, i).told));
}

/** Whether the length of a sheet piece lies along the axis: it is its longer side. */
const liesAlong = ({ length }: Draft, box: Box, axis: 'x' | 'y'): boolean =>
  Math.abs((axis === 'x' ? box.w : box.h) - length) <= Math.abs((axis === 'x' ? box.h : box.w) - length);

function bestOf(slabs: readonly Slab[], own: Slab, fits: (other: Slab) => boolean): number {
  let best = -1;
  let most = TOUCH;
  slabs.forEach((other, i) => {
    const way = shared(own, other);
    if (other === own || way <= most + TOUCH || !fits(other)) return;
    best = i;
    most = way;
  });
  return best;
}

/** Whether panel `b` begins where `a` ends, or behind a stick that begins there. */
function follows(a: Slab, b: Slab, between: readonly Slab[], widest: Mm): boolean {
  const meets = (p: Mm, q: Mm): boolean => Math.abs(p - q) <= TOUCH;
  if (meets(a.high, b.low)) return true;
  return (
    b.low > a.high &&
    b.low - a.high <= widest + 2 * TOUCH &&
    between.some(
      (bar) =>
        meets(a.high, bar.low) && meets(bar.high, b.low) && shared(bar, a) > TOUCH && shared(bar, b) > TOUCH,
    )
  );
}
