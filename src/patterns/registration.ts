import type { DrawItem } from '../drawing/drawing.ts';
import { circle, line, lines, shape, text } from '../drawing/items.ts';
import { DASH, INK, TEXT, WEIGHT } from '../drawing/style.ts';
import { textWidth } from '../drawing/text.ts';
import type { Box, Point } from '../geometry/shape.ts';
import type { Mm } from '../measure/units.ts';
import { type Joint, nameOf } from './cells.ts';
import type { PatternWords } from './words.ts';

const ARM: Mm = 5;
const RADIUS: Mm = 2.5;
const NAME: Mm = TEXT.small;

/** Joints shorter than this carry no mark: its neighbors do. */
const LEAST: Mm = 15;
/** Room for a neighbor's name beside the marks. */
const NAMED: Mm = 40;

/** Shares of a joint at which registration marks stand; one where the joint is short. */
function shares(length: Mm): readonly number[] {
  if (length < LEAST) return [];
  return length >= 60 ? [0.25, 0.75] : [0.5];
}

const upright = (joint: Joint) => joint.side === 'left' || joint.side === 'right';

/** Registration marks of a joint, in the pattern's coordinates: the same for both pages. */
export function marksOf(joint: Joint): Point[] {
  return shares(joint.to - joint.from).map((share) => {
    const along = joint.from + share * (joint.to - joint.from);
    return upright(joint) ? { x: joint.at, y: along } : { x: along, y: joint.at };
  });
}

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

/** Where the neighbor's name stands: inside the page's own cell, clear of the trim line and of the marks. */
function nameplate(joint: Joint, terms: PatternWords): { at: Point; angle: number; box: Box } {
  const words = terms.joins(nameOf(joint.other));
  const long = textWidth(words, { size: NAME }) + 4;
  const middle =
    (joint.from + joint.to) / 2 + (shares(joint.to - joint.from).length === 1 ? ARM + long / 2 + 1 : 0);
  const inward = 2.2;
  const deep = NAME * 1.2;
  if (upright(joint)) {
    const right = joint.side === 'right';
    const x = right ? joint.at - inward : joint.at + inward + NAME * 0.72;
    const low = right ? joint.at - inward - deep : joint.at + inward - 0.5;
    return { at: { x, y: middle }, angle: 90, box: { x: low, y: middle - long / 2, w: deep + 0.5, h: long } };
  }
  const top = joint.side === 'top';
  const y = top ? joint.at - inward - NAME * 0.72 : joint.at + inward;
  return { at: { x: middle, y }, angle: 0, box: { x: middle - long / 2, y: y - 0.7, w: long, h: deep } };
}

/** A small filled arrow head beside the name, pointing to the neighbor. */
function pointer(joint: Joint, at: Point, half: Mm): DrawItem {
  const s = 1.4;
  const tip = { left: [-1, 0], right: [1, 0], bottom: [0, -1], top: [0, 1] }[joint.side] as [number, number];
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
export function drawJoint(joint: Joint, terms: PatternWords): DrawItem[] {
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
  const marks = marksOf(joint).flatMap(mark);
  if (joint.to - joint.from < NAMED) return [trim, ...marks];
  const words = terms.joins(nameOf(joint.other));
  const { at, angle } = nameplate(joint, terms);
  const half = textWidth(words, { size: NAME }) / 2;
  const name = text(at, words, { size: NAME, anchor: 'middle', angle, color: INK.line });
  return [trim, ...marks, name, pointer(joint, at, half)];
}

/** Boxes that the marks and names of a joint take up on the page. */
export function takenBy(joint: Joint, terms: PatternWords): Box[] {
  const marks = marksOf(joint).map((p) => ({ x: p.x - ARM, y: p.y - ARM, w: 2 * ARM, h: 2 * ARM }));
  if (joint.to - joint.from < NAMED) return marks;
  const { box } = nameplate(joint, terms);
  return [...marks, { x: box.x - 1, y: box.y - 3, w: box.w + 4, h: box.h + 6 }];
}
