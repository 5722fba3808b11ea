import type { DrawItem, TextItem } from '../drawing/drawing.ts';
import { line, text } from '../drawing/items.ts';
import { add, scale } from '../geometry/point.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Box, Point } from '../geometry/shape.ts';
import { cyclic } from '../list/at.ts';
import type { Piece } from './piece.ts';
import type { DimensionLook } from './pieceDimensions.ts';
import { boxesOf, isFree } from './pieceRoom.ts';
import { onSheet, type View } from './pieceView.ts';
import { type Curve, facing, profileOf } from './profile.ts';

/** How far off the middle of its arc a figure may stand, in its own size: off the wood, else on it. */
const BESIDE = [0.4, -1.3] as const;

/**
 * Centers that lie on the wood as crosses, and each radius once beside an arc, with R as ISO 129-1 writes it (from
 * memory); where there is no room among what is `drawn`, the list of curves alone tells it.
 */
export function curveItems(
  piece: Piece,
  view: View,
  look: DimensionLook,
  drawn: readonly DrawItem[],
): DrawItem[] {
  if (piece.form !== 'sheet') return [];
  const { curves } = profileOf(piece);
  const { x, y, w, h } = boxOfPoints(piece.outline);
  const place = onSheet(view);
  const at = (p: Point) => place({ x: p.x + x, y: p.y + y });
  const taken = [...drawn.flatMap(boxesOf), ...edgesOf(piece, place)];
  const added: DrawItem[] = [];
  const told = new Set<string>();
  for (const curve of curves) {
    const { center } = curve;
    const words = `R ${look.length(curve.radius)}`;
    const inside = center.x >= 0 && center.x <= w && center.y >= 0 && center.y <= h;
    const mark = inside && !told.has(placeKey(center)) ? cross(at(center), look) : [];
    told.add(placeKey(center));
    if (mark.every((item) => boxesOf(item).every((box) => isFree(box, taken)))) added.push(...mark);
    if (told.has(words)) continue;
    const found = BESIDE.map((off) => radius(curve, at(curve.middle), words, off, look)).find((item) =>
      boxesOf(item).every((box) => isFree(box, [...taken, ...added.flatMap(boxesOf)])),
    );
    if (!found) continue;
    told.add(words);
    added.push(found);
  }
  return added;
}

const placeKey = ({ x, y }: Point): string => `${x.toFixed(1)} ${y.toFixed(1)}`;

/** Room of each side of the outline, chord by chord. */
const edgesOf = ({ outline, holes }: Piece, place: (p: Point) => Point): Box[] =>
  [outline, ...holes].flatMap((ring) => ring.map((p, i) => boxOfPoints([p, cyclic(ring, i + 1)].map(place))));

function cross(at: Point, { size, ink }: DimensionLook): DrawItem[] {
  const arm = size * 0.45;
  const stroke = { stroke: ink.line, width: 0.2 };
  return [
    line({ x: at.x - arm, y: at.y }, { x: at.x + arm, y: at.y }, stroke),
    line({ x: at.x, y: at.y - arm }, { x: at.x, y: at.y + arm }, stroke),
  ];
}

/** A figure off the middle of an arc, away from its center or, below 0, toward it. */
function radius(
  curve: Curve,
  middle: Point,
  words: string,
  off: number,
  { size, ink }: DimensionLook,
): TextItem {
  const way = scale(facing(curve), curve.hollow ? -1 : 1);
  const out = scale(way, Math.sign(off));
  const anchor = out.x > 0.4 ? 'start' : out.x < -0.4 ? 'end' : 'middle';
  const drop = out.y > 0.4 ? 0 : out.y < -0.4 ? 0.75 : 0.35;
  const at = add(middle, scale(way, off * size));
  return text({ x: at.x, y: at.y - drop * size }, words, { size, anchor, color: ink.text });
}
