import type { Check } from '../check/check.ts';
import { add, angleOf, cross, distance, dot, lerp, midpoint, rotate, subtract } from '../geometry/point.ts';
import { ringOfBox } from '../geometry/region.ts';
import { quadThrough } from '../geometry/ring.ts';
import { intersectLines, lineToLeft } from '../geometry/segment.ts';
import type { Box, Point, Quad } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { cyclic, pick } from '../list/at.ts';
import { degrees, type Mm } from '../measure/units.ts';
import type { Bed, BedMeasured } from './bed.ts';
import { type Bows, EDGES, type Edges, edgesWith, isBowed, PLACES, readingsOf } from './bows.ts';
import type { RealEdges } from './face.ts';
import { type Corners, cornersOf, type Measured, misreadOf, TRUSTED, UNSEEN } from './measured.ts';

/** Every edge moved in by a board that is as wide all along. */
export function movedIn(quad: Quad, by: Mm): Quad {
  const sides = quad.map((p, i) => lineToLeft(p, cyclic(quad, i + 1), by));
  return quadThrough(quad, (p, i) => intersectLines(...cyclic(sides, i - 1), ...cyclic(sides, i)) ?? p);
}

/**
 * Where measured corners lie around the true rectangle: the edge that is kept lies along its side, and the largest
 * square rectangle within the corners begins where the true one does: at its lower left, or at the kept edge.
 */
function placedOn(
  corners: Quad,
  bows: Bows,
  box: Box,
  { keep, rise }: Pick<BedMeasured, 'keep' | 'rise'>,
): Quad {
  const [a, b, c, d] = corners;
  const edges = { bottom: [a, b], top: [d, c], left: [a, d], right: [b, c], level: [a, b] } as const;
  const [from, to] = edges[keep];
  const upright = keep === 'left' || keep === 'right';
  const lies = upright ? 90 : keep === 'level' ? degrees(Math.asin(rise / distance(a, b))) : 0;
  const turned = quadThrough(corners, (p) => rotate(p, lies - angleOf(subtract(to, from)), a));
  const within = insideOf(edgesWith(turned, bows));
  const x = keep === 'right' ? box.x + box.w - within.right : box.x - within.left;
  const y = keep === 'top' ? box.y + box.h - within.top : box.y - within.bottom;
  return quadThrough(turned, (at) => add(at, { x, y }));
}

/** What lies farthest in of each edge. */
const insideOf = ([bottom, right, top, left]: Edges) => ({
  bottom: Math.max(...bottom.map(({ y }) => y)),
  right: Math.min(...right.map(({ x }) => x)),
  top: Math.min(...top.map(({ y }) => y)),
  left: Math.max(...left.map(({ x }) => x)),
});

/** Corners moved and turned as a whole to where they come nearest to others, by least squares over all four. */
function nearestTo(corners: Quad, others: Quad): Quad {
  const middle = (quad: Quad): Point => midpoint(midpoint(quad[0], quad[2]), midpoint(quad[1], quad[3]));
  const [from, to] = [middle(corners), middle(others)];
  let [along, across] = [0, 0];
  corners.forEach((p, i) => {
    const [u, v] = [subtract(p, from), subtract(cyclic(others, i), to)];
    along += dot(u, v);
    across += cross(u, v);
  });
  const turn = degrees(Math.atan2(across, along));
  return quadThrough(corners, (p) => add(to, rotate(subtract(p, from), turn)));
}

const edgesAs = (
  of: RealEdges['of'],
  box: Box,
  corners: Quad,
  found: Pick<Corners, 'longer' | 'bow'> | null,
  bows: Bows,
): RealEdges => ({
  ...{ of, box, corners, longer: found?.longer ?? 0, bow: found?.bow ?? 0 },
  ...{ bows, edges: edgesWith(corners, bows) },
});

const isTrue = (quad: Quad, box: Box): boolean =>
  quad.every((p, i) => distance(p, cyclic(ringOfBox(box), i)) < SAME_LENGTH);

/** Whether what the middle is wider by was read apart, at both upright edges. */
const isRead = ({ left, right }: Bows): boolean => left?.middle !== undefined && right?.middle !== undefined;

/** What readings of one rectangle come to, with what is to be said of it. */
function found(of: RealEdges['of'], read: Measured, box: Box, checks: Check[]): Corners | null {
  const corners = cornersOf(read, box.w, box.h);
  const misread = misreadOf(read, box.w, box.h);
  const note = (code: Check['code'], figures: Check['figures']) =>
    checks.push({ code, severity: misread ? 'warning' : 'note', parts: [], figures: { of, ...figures } });
  if (misread) {
    const { reading, read: read_mm, would: would_mm } = misread;
    note('bed.not-closing', { reading, read_mm, would_mm });
  } else if (corners) {
    if (Math.abs(corners.longer) > SAME_LENGTH) note('bed.out-of-square', { longer_mm: corners.longer });
    if (Math.abs(corners.bow) > SAME_LENGTH && !isRead(corners.bows))
      note('bed.bowed', { bow_mm: corners.bow });
  }
  return corners;
}

/**
 * Where the edges of the face and of its recessed field really are; none where they are true. Frame boards are as
 * wide all along: a field that was not measured lies as far within the rim as it should.
 *
 * Checks: `bed.not-closing` (warning) names the reading that is likeliest wrong where they do not close,
 * `bed.out-of-square` and `bed.bowed` (notes) what a carpenter would say of the rest, `bed.corner` (note) what each
 * corner of a square layout leaves to be seen or hangs over, `bed.edge` (note) what each edge bows by, `bed.datum` (note) where to strike the lines that marks
 * count from.
 */
export function realEdges(
  bed: Bed,
  rim: Box,
  field: Box | null,
): { readonly real: readonly RealEdges[]; readonly checks: readonly Check[] } {
  const { measured } = bed;
  if (!measured) return { real: [], checks: [] };
  const checks: Check[] = [];
  const whole = found('rim', measured.rim, rim, checks);
  const bows = whole?.bows ?? {};
  const outside = whole ? placedOn(whole.corners, bows, rim, measured) : ringOfBox(rim);
  const real = [edgesAs('rim', rim, outside, whole, bows)];
  if (field) {
    const within = movedIn(outside, bed.frame.thickness + bed.cleats.width);
    const read = Object.values(measured.field).some((mm) => mm !== undefined);
    const own = read ? found('field', measured.field, field, checks) : null;
    const corners = own ? nearestTo(own.corners, within) : within;
    // The cleats along a board that bows bow with it.
    real.push(edgesAs('field', field, corners, own, own?.bows ?? bows));
  }
  const straight = (of: Bows) => EDGES.every((edge) => !isBowed(of[edge]));
  if (real.every((one) => one.bow === 0 && straight(one.bows) && isTrue(one.corners, one.box)))
    return { real: [], checks };
  for (const one of real)
    if (one.of === 'rim' || one.bows !== bows) checks.push(...edgeChecks(one, measured.border));
  checks.push(...datumChecks(outside, rim));
  if (measured.border === 'square') checks.push(...cornerChecks(outside, rim));
  return { real, checks };
}

const CORNERS = ['lower-left', 'lower-right', 'upper-right', 'upper-left'] as const;

/** What a square layout leaves to be seen at each corner of the rim, across and up; less than 0: it hangs over. */
function cornerChecks(corners: Quad, box: Box): Check[] {
  const middle = { x: box.x + box.w / 2, y: box.y + box.h / 2 };
  return ringOfBox(box).flatMap((meant, i): Check[] => {
    const at = cyclic(corners, i);
    const across_mm = (at.x - meant.x) * Math.sign(meant.x - middle.x);
    const up_mm = (at.y - meant.y) * Math.sign(meant.y - middle.y);
    if (Math.max(Math.abs(across_mm), Math.abs(up_mm)) < UNSEEN) return [];
    const over = Math.min(across_mm, up_mm) < -TRUSTED;
    const figures = { corner: cyclic(CORNERS, i), across_mm, up_mm };
    return [{ code: 'bed.corner', severity: over ? 'warning' : 'note', parts: [], at: meant, figures }];
  });
}

/**
 * What a string along each edge that bows told, and what is seen of it half way beside a layout that stays square; less
 * than 0: that hangs over.
 */
function edgeChecks({ of, box, bows, edges }: RealEdges, border: BedMeasured['border']): Check[] {
  return EDGES.flatMap((edge, i): Check[] => {
    const bow = bows[edge];
    if (!isBowed(bow)) return [];
    const read = Object.fromEntries(readingsOf(bow).map(({ place, out }) => [`${place}_mm`, out]));
    const figures: Check['figures'] = { of, edge, ...read };
    if (of === 'field' || border === 'along')
      return [{ code: 'bed.edge', severity: 'note', parts: [], figures }];
    const shows_mm = shownAt(cyclic(edges, i), edge, box);
    const severity = shows_mm < -TRUSTED ? 'warning' : 'note';
    return [{ code: 'bed.edge', severity, parts: [], figures: { ...figures, shows_mm } }];
  });
}

/** How far an edge lies out of the true one half way along it. */
function shownAt(edge: Edges[number], name: (typeof EDGES)[number], box: Box): Mm {
  const upright = name === 'left' || name === 'right';
  const axis = upright ? 'x' : 'y';
  const [first, last] = [pick(edge, 0), pick(edge, edge.length - 1)];
  const half = lerp(first, last, PLACES.middle);
  const along = upright ? 'y' : 'x';
  const after = edge.findIndex(
    (p, i) => i > 0 && (p[along] - half[along]) * (pick(edge, i - 1)[along] - half[along]) <= 0,
  );
  const [p, q] = [pick(edge, Math.max(0, after - 1)), pick(edge, Math.max(1, after))];
  const at = lerp(p, q, (half[along] - p[along]) / (q[along] - p[along]))[axis];
  const true_ = { left: box.x, bottom: box.y, right: box.x + box.w, top: box.y + box.h }[name];
  return name === 'left' || name === 'bottom' ? true_ - at : at - true_;
}

/** Where the lines from which marks count lie in from the edges that they would be measured from; less than 0: beyond. */
function datumChecks([a, b, , d]: Quad, box: Box): Check[] {
  const lines = { x: [box.x - a.x, box.x - d.x], y: [box.y - a.y, box.y - b.y] } as const;
  return (['x', 'y'] as const).flatMap((axis): Check[] => {
    const [low_mm, high_mm] = lines[axis];
    if (Math.max(Math.abs(low_mm), Math.abs(high_mm)) < SAME_LENGTH) return [];
    return [{ code: 'bed.datum', severity: 'note', parts: [], figures: { axis, low_mm, high_mm } }];
  });
}

/** The largest upright rectangle that lies within the edges. */
export function squareWithin({ edges }: Pick<RealEdges, 'edges'>): { readonly w: Mm; readonly h: Mm } {
  const { bottom, right, top, left } = insideOf(edges);
  return { w: right - left, h: top - bottom };
}
