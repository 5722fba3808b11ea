import { EDGES, readingsOf } from '../../bed/bows.ts';
import type { Face, RealEdges } from '../../bed/face.ts';
import { add, distance, dot, leftNormal, lerp, midpoint, scale, subtract } from '../../geometry/point.ts';
import { boxesMeet, ringOfBox } from '../../geometry/region.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { cyclic, pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import { toScreen, type View } from '../state/store.ts';
import { drawPlates, plateBox } from './figure.ts';
import { strokeHaloed } from './haloed.ts';
import type { Palette } from './palette.ts';
import type { Pen } from './pen.ts';

/** How far the corner that is farthest off is drawn off, in pixels. */
const SEEN = 22;
/** Corners nearer than this to where they should be are there. */
const TRUE: Mm = 0.05;
const MOST_TIMES = 100;
/** How far a plate keeps from a corner, in pixels. */
const PLATE = 18;

/** How many times as much as it is a face out of true is drawn out of it, so that it is seen. */
export function timesOf(real: readonly RealEdges[], view: View): number {
  const most = Math.max(
    ...real.flatMap(({ corners, box, bow, bows }) => [
      Math.abs(bow) / 2,
      ...EDGES.flatMap((edge) => readingsOf(bows[edge]).map(({ out }) => Math.abs(out))),
      ...corners.map((p, i) => distance(p, cyclic(ringOfBox(box), i))),
    ]),
  );
  return most < TRUE ? 1 : Math.min(MOST_TIMES, Math.max(1, Math.round(SEEN / (most * view.scale))));
}

/** What a plate tells: by how much a diagonal is longer, or an edge lies out of a string; less than 0: in. */
export interface Told {
  readonly is: 'longer' | 'bow';
  readonly by: Mm;
  /** No plate of a diagonal tells how many times as much all is drawn. */
  readonly alone: boolean;
}

/**
 * The real edges of a face that is out of true, dashed, so many times as far off as they are; a plate by the end of the
 * longer diagonal says by how much it is longer, one on each edge that bows by how much, within what is seen.
 */
export function drawReal(
  ctx: Pen,
  { real }: Face,
  view: View,
  palette: Palette,
  textOf: (told: Told, times: number) => string,
  within: Box,
): void {
  if (!real) return;
  const times = timesOf(real, view);
  const alone = real.every(({ longer }) => Math.abs(longer) < TRUE);
  const plates: { readonly text: string; readonly at: Point }[] = [];
  for (const { of, corners, box, bow, bows, edges, longer } of real) {
    const meant = ringOfBox(box);
    const seenAt = (p: Point, should: Point): Point =>
      toScreen(view, add(should, scale(subtract(p, should), times)));
    const seen = corners.map((p, i) => seenAt(p, cyclic(meant, i)));
    ctx.beginPath();
    seen.forEach((p, i) => {
      const q = cyclic(seen, i + 1);
      if (i === 0) ctx.moveTo(p.x, p.y);
      const edge = cyclic(edges, i);
      if (edge.length > 2) {
        const [from, to] = [cyclic(corners, i), cyclic(corners, i + 1)];
        const way = subtract(to, from);
        const at = (one: Point) =>
          seenAt(
            one,
            lerp(cyclic(meant, i), cyclic(meant, i + 1), dot(subtract(one, from), way) / dot(way, way)),
          );
        for (const one of edge.slice(1)) ctx.lineTo(at(one).x, at(one).y);
        const [most] = readingsOf(bows[cyclic(EDGES, i)]).sort((a, b) => Math.abs(b.out) - Math.abs(a.out));
        // Of a field that was not measured, what its rim bows by is told there.
        if (most && (of === 'rim' || bows !== real[0]?.bows)) {
          const text = textOf({ is: 'bow', by: most.out, alone }, times);
          plates.push({ text, at: at(pick(edge, Math.floor(edge.length / 2))) });
        }
        return;
      }
      // Only what both upright edges bow by together was read: half of it each.
      const out = i % 2 === 1 ? (bow / 2) * times * view.scale : 0;
      const by = add(midpoint(p, q), scale(leftNormal(subtract(q, p)), out * (4 / 3)));
      const [a, b] = [lerp(p, by, 2 / 3), lerp(q, by, 2 / 3)];
      if (out === 0) ctx.lineTo(q.x, q.y);
      else ctx.bezierCurveTo(a.x, a.y, b.x, b.y, q.x, q.y);
    });
    ctx.closePath();
    strokeHaloed(ctx, palette, { color: palette.over, width: 1.5, dash: [6, 4] });
    if (Math.abs(longer) < TRUE) continue;
    // Over the face for its outside, within the field for that.
    const end = cyclic(seen, longer > 0 ? 2 : 3);
    const at = { x: end.x, y: end.y + (of === 'rim' ? -PLATE : PLATE) };
    plates.push({ text: textOf({ is: 'longer', by: Math.abs(longer), alone }, times), at });
  }
  const look = { size: 14, fill: palette.halo, ink: palette.over, edge: palette.over, halo: palette.halo };
  const taken: Box[] = [];
  for (const { text, at } of plates) {
    const plateAt = (p: Point) => ({ text, ...look, at: p, anchor: 'middle', within }) as const;
    const boxAt = (p: Point) => plateBox(ctx, plateAt(p));
    // On a small face they would cover each other: whoever comes later gives way up or down.
    const free = [0, 1, -1, 2, -2]
      .map((step) => ({ x: at.x, y: at.y + step * look.size * 2 }))
      .find((p) => !taken.some((box) => boxesMeet(box, boxAt(p))));
    taken.push(boxAt(free ?? at));
    drawPlates(ctx, [plateAt(free ?? at)]);
  }
}
