import type { DrawItem, TextItem } from '../drawing/drawing.ts';
import { text } from '../drawing/items.ts';
import { intersect } from '../geometry/clip.ts';
import { pathOfRegion } from '../geometry/path.ts';
import { containsPointInRegion, regionOfRing, ringOfBox } from '../geometry/region.ts';
import { boxOfPoints, reverseRing, signedArea } from '../geometry/ring.ts';
import type { Point, Ring } from '../geometry/shape.ts';
import { lastOf, pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { notchSize } from './notchDrawing.ts';
import type { Piece, Scribed } from './piece.ts';
import type { DimensionLook } from './pieceDimensions.ts';
import { boxesOf, isFree } from './pieceRoom.ts';
import { onPaper, textWidth, type View } from './pieceView.ts';

/** Dash and gap of the line to scribe to, short enough for the end of a board. */
const SCRIBE_DASH = [1.2, 0.6] as const;

/** Shares of the length at which a figure may stand, once there is no room where most comes off. */
const ELSEWHERE = [0.06, 0.12, 0.25, 0.37, 0.5, 0.63, 0.75, 0.88, 0.94] as const;

/** A stretch of the piece as it is drawn, and the place on the drawing of where the piece starts. */
export interface Drawn {
  readonly ring: Ring;
  readonly start: Mm;
}

/** How far below the edge what comes off is drawn for each millimeter of it. */
function deepening({ most }: Scribed, view: View, size: Mm): number {
  // An eighth of an inch would be no wider than the outline: it is drawn wide enough to be seen, and its figure tells.
  const least = Math.min(size * 0.35, view.height / 4);
  return Math.max(view.scale, least / most);
}

/** Height on the drawing of the edge to be scribed. */
const edgeAt = ({ edge }: Scribed, view: View): Mm => (edge === 'left' ? view.at.y + view.height : view.at.y);

/**
 * What comes off the edges that are scribed to the bed: tinted, with a broken line where the wood is to end. Depths
 * that would not be seen are drawn deeper than they are.
 */
export function scribeItems(
  piece: Piece,
  view: View,
  wood: readonly Drawn[],
  { size, ink }: DimensionLook,
): DrawItem[] {
  const { h } = boxOfPoints(piece.outline);
  return (piece.scribed ?? []).flatMap((one) =>
    wood.flatMap(({ ring, start }): DrawItem[] => {
      const out = one.edge === 'left' ? 1 : -1;
      const deep = deepening(one, view, size);
      const edge = edgeAt(one, view);
      const along = [...one.line]
        .sort((a, b) => a.x - b.x)
        .map((p) => {
          const off = one.edge === 'left' ? h - p.y : p.y;
          return { x: start + p.x * view.scale, y: edge - out * off * deep };
        });
      const off = intersect(regionOfRing(ring), regionOfRing(beyond(along, edge + out * view.height, view)));
      const look = { fill: ink.faint, fillOpacity: 0.35, stroke: ink.line, width: 0.2, dash: SCRIBE_DASH };
      return off.length === 0 ? [] : [{ kind: 'path', path: pathOfRegion(off), ...look }];
    }),
  );
}

/** What lies between the line and a height beyond the wood. */
function beyond(along: readonly Point[], level: Mm, { width }: View): Ring {
  const [first, last] = [pick(along, 0), lastOf(along)];
  const [from, to] = [first.x - width, last.x + width];
  const ring = [
    { x: from, y: first.y },
    ...along,
    { x: to, y: last.y },
    { x: to, y: level },
    { x: from, y: level },
  ];
  return signedArea(ring) < 0 ? reverseRing(ring) : ring;
}

/**
 * The most that comes off each scribed edge, on the wood beside it: where most of it comes off, else as near as there
 * is room among what is `drawn`; where there is none, the words of the piece alone tell it.
 */
export function scribeFigures(
  piece: Piece,
  view: View,
  wood: readonly Drawn[],
  { size: big, ink, length }: DimensionLook,
  drawn: readonly DrawItem[],
): TextItem[] {
  const size = notchSize(big);
  const place = onPaper(piece, view);
  const region = wood.flatMap(({ ring }) => regionOfRing(ring));
  const taken = drawn.flatMap(boxesOf);
  return (piece.scribed ?? []).flatMap((one): TextItem[] => {
    const words = length(one.most);
    const half = textWidth(words, size) / 2 + size * 0.2;
    const deep = one.most * deepening(one, view, big) + size * 0.25;
    const edge = edgeAt(one, view);
    const y = one.edge === 'left' ? edge - deep - size * 0.75 : edge + deep;
    const deepest = place({ x: one.at, y: 0 }).x;
    const near = Math.max(view.at.x + half, Math.min(view.at.x + view.width - half, deepest));
    const found = [near, ...ELSEWHERE.map((share) => view.at.x + share * view.width)]
      .sort((a, b) => Math.abs(a - near) - Math.abs(b - near))
      .map((x) => text({ x, y }, words, { size, anchor: 'middle', color: ink.text }))
      .find((item) =>
        boxesOf(item).every(
          (box) =>
            isFree(box, taken) && ringOfBox(box).every((corner) => containsPointInRegion(region, corner)),
        ),
      );
    if (!found) return [];
    taken.push(...boxesOf(found));
    return [found];
  });
}
