import type { DrawItem } from '../drawing/drawing.ts';
import { circle, line, lines, shape, text } from '../drawing/items.ts';
import { DASH, INK, PATTERN_TEXT, WEIGHT } from '../drawing/style.ts';
import { textWidth } from '../drawing/text.ts';
import { boxesMeet } from '../geometry/region.ts';
import type { Box, Point } from '../geometry/shape.ts';
import { pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import type { Joint } from './cells.ts';
import { findOnce } from './once.ts';

const ARM: Mm = 5;
const RADIUS: Mm = 2.5;
const NAME: Mm = PATTERN_TEXT.small;

/** Joints shorter than this carry no mark: its neighbors do. */
const LEAST: Mm = 15;
/** Room for a neighbor's name beside the marks. */
const NAMED: Mm = 40;

/** How much stands in the way in a box of the pattern; at `UNREADABLE` a text does. */
export type Weigh = (box: Box) => number;

/** More than all lines of a page weigh. */
export const UNREADABLE = 1e12;

const FREE: Weigh = () => 0;
/** Places along a joint are tried this far apart. */
const STEP: Mm = 2;

/** Shares of a joint near which registration marks stand, and how far each may go; one where the joint is short. */
function wanted(length: Mm): readonly { readonly share: number; readonly by: number }[] {
  if (length < LEAST) return [];
  const pair = [
    { share: 0.25, by: 0.2 },
    { share: 0.75, by: 0.2 },
  ];
  return length >= 60 ? pair : [{ share: 0.5, by: 0.3 }];
}

const upright = (joint: Joint) => joint.side === 'left' || joint.side === 'right';

/** The place between two ends where least stands in the way, of equal ones the nearest to the one wanted. */
function bestAlong(want: Mm, by: Mm, weighAt: (along: Mm) => number): { along: Mm; weight: number } {
  let best = { along: want, weight: weighAt(want) };
  for (let off = STEP; off <= by && best.weight > 0; off += STEP) {
    for (const along of [want - off, want + off]) {
      const weight = weighAt(along);
      if (weight < best.weight) best = { along, weight };
    }
  }
  return best;
}

const boxAround = (p: Point): Box => ({ x: p.x - ARM, y: p.y - ARM, w: 2 * ARM, h: 2 * ARM });

/**
 * Registration marks of a joint, in the pattern's coordinates: the same for both pages. They stand where
 * they cover least; one that would make a text unreadable is left out where another is not.
 */
export function marksOf(joint: Joint, weigh: Weigh = FREE): Point[] {
  const length = joint.to - joint.from;
  const placeAt = (along: Mm): Point =>
    upright(joint) ? { x: joint.at, y: along } : { x: along, y: joint.at };
  const marks = wanted(length).map(({ share, by }) => {
    const found = bestAlong(joint.from + share * length, by * length, (along) =>
      weigh(boxAround(placeAt(along))),
    );
    return { at: placeAt(found.along), weight: found.weight };
  });
  const readable = marks.filter((m) => m.weight < UNREADABLE);
  return (readable.length > 0 ? readable : marks).map((m) => m.at);
}

/** The marks of every joint, found once for the two pages that it joins. */
export const marksOnce = (weigh: Weigh): ((joint: Joint) => Point[]) =>
  findOnce(
    (joint) => [upright(joint), joint.at, joint.from, joint.to],
    (joint) => marksOf(joint, weigh),
  );

function mark(p: Point): DrawItem[] {
  const look = { stroke: INK.line, width: WEIGHT.thin };
  const cross = lines(
    [
      [
        { x: p.x - ARM, y: p.y },
        { x: p.x + ARM, y: p.y },
      ],
      [
        { x: p.x, y: p.y - ARM },
        { x: p.x, y: p.y + ARM },
      ],
    ],
    look,
  );
  return [cross, circle(p, RADIUS, look)];
}

/** The neighbor's name with its pointer: inside the page's own cell, clear of the trim line. */
interface Nameplate {
  readonly words: string;
  readonly at: Point;
  readonly box: Box;
}

function nameplateAt(joint: Joint, words: string, middle: Mm): Nameplate {
  const long = textWidth(words, { size: NAME }) + 4;
  const inward = 2.2;
  const deep = NAME * 1.2;
  // The pointer stands behind the words.
  const low = middle - long / 2 - 0.5;
  const run = long + 4;
  if (upright(joint)) {
    const right = joint.side === 'right';
    const x = right ? joint.at - inward : joint.at + inward + NAME * 0.72;
    const left = right ? joint.at - inward - deep : joint.at + inward - 0.5;
    return { words, at: { x, y: middle }, box: { x: left, y: low, w: deep + 0.5, h: run } };
  }
  const top = joint.side === 'top';
  const y = top ? joint.at - inward - NAME * 0.72 : joint.at + inward;
  return { words, at: { x: middle, y }, box: { x: low, y: y - 0.7, w: run, h: deep } };
}

/** A joint with its marks and, where it is long enough, its neighbor's name in their places. */
export interface Seam {
  readonly joint: Joint;
  readonly marks: readonly Point[];
  readonly name: Nameplate | null;
}

/** All joints of a page: names stand where they cover least, and no mark and no other name. */
export function seamsOf(
  joints: readonly Joint[],
  nameOf: (other: Joint['other']) => string,
  weigh: Weigh,
  marksAt: (joint: Joint) => Point[],
): Seam[] {
  const marks = joints.map(marksAt);
  const blocked = marks.flat().map(boxAround);
  return joints.map((joint, i) => {
    const length = joint.to - joint.from;
    const own = pick(marks, i);
    if (length < NAMED) return { joint, marks: own, name: null };
    const words = nameOf(joint.other);
    const plateAt = (middle: Mm) => nameplateAt(joint, words, middle);
    const { along } = bestAlong(
      joint.from + length / 2,
      (length - textWidth(words, { size: NAME })) / 2 - 8,
      (middle) => {
        const { box } = plateAt(middle);
        return weigh(box) + (blocked.some((b) => boxesMeet(b, box)) ? UNREADABLE : 0);
      },
    );
    const name = plateAt(along);
    blocked.push(name.box);
    return { joint, marks: own, name };
  });
}

/** The way out of the page over a side. */
const TOWARD: Readonly<Record<Joint['side'], readonly [number, number]>> = {
  left: [-1, 0],
  right: [1, 0],
  bottom: [0, -1],
  top: [0, 1],
};

/** A small filled arrow head beside the name, pointing to the neighbor. */
function pointer(joint: Joint, at: Point, half: Mm): DrawItem {
  const s = 1.4;
  const tip = TOWARD[joint.side];
  const base = upright(joint)
    ? { x: at.x - NAME * 0.36, y: at.y + half + 1.6 }
    : { x: at.x + half + 1.6, y: at.y + NAME * 0.36 };
  const p = (along: number, beside: number) => ({
    x: base.x + tip[0] * along - tip[1] * beside,
    y: base.y + tip[1] * along + tip[0] * beside,
  });
  const [a, b, c] = [p(s * 0.7, 0), p(-s * 0.5, s * 0.6), p(-s * 0.5, -s * 0.6)];
  return shape([{ op: 'M', ...a }, { op: 'L', ...b }, { op: 'L', ...c }, { op: 'Z' }], { fill: INK.line });
}

/** Trim line, marks and neighbor's name of one joint, in the pattern's coordinates. */
export function drawSeam({ joint, marks, name }: Seam): DrawItem[] {
  const ends: [Point, Point] = upright(joint)
    ? [
        { x: joint.at, y: joint.from },
        { x: joint.at, y: joint.to },
      ]
    : [
        { x: joint.from, y: joint.at },
        { x: joint.to, y: joint.at },
      ];
  const trim = line(ends[0], ends[1], { stroke: INK.soft, width: WEIGHT.thin, dash: DASH.trim });
  const crosses = marks.flatMap(mark);
  if (!name) return [trim, ...crosses];
  const { words, at } = name;
  const half = textWidth(words, { size: NAME }) / 2;
  const angle = upright(joint) ? 90 : 0;
  const told = text(at, words, { size: NAME, anchor: 'middle', angle, color: INK.line });
  return [trim, ...crosses, told, pointer(joint, at, half)];
}

/** Boxes that the marks and names of a joint take up on the page. */
export function takenBy({ marks, name }: Seam): Box[] {
  const crosses = marks.map(boxAround);
  if (!name) return crosses;
  const { box } = name;
  return [...crosses, { x: box.x - 1, y: box.y - 3, w: box.w + 4, h: box.h + 6 }];
}
