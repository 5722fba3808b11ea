import { add, angleOf, distance, dot, lerp, rotate, scale, subtract } from '../geometry/point.ts';
import type { Point } from '../geometry/shape.ts';
import { SAME_ANGLE } from '../geometry/tolerance.ts';
import type { Laid, SawnArc } from '../layout/laid.ts';
import { edgesOf, leanOf } from '../layout/place/sawnArcs.ts';
import { pick } from '../list/at.ts';
import type { Stock } from '../materials/types.ts';
import { type Deg, degrees, type Mm, radians } from '../measure/units.ts';
import type { End } from './bar.ts';
import { atOrigin, type Placed } from './draft.ts';
import { END_KINDS } from './end/table.ts';
import { lengthsOf } from './lengths.ts';
import type { Bent, PieceEnd, SawnArch } from './piece.ts';
import { sheetPiece } from './sheet.ts';

/**
 * The pieces that the arcs of a run are bent of, or sawn in: these lie each on the bench with its crown up, its grain along
 * its chord: along the arc no grain runs, and so the least of it is short.
 *
 * @param first how many pieces of the run come before them
 */
export function arcPieces(laid: Laid<'run'>, stock: Stock | null, first: number): Placed[] {
  const { sawn } = laid;
  if (!sawn || !stock) return [];
  if (sawn.bent) {
    const bent = sawn.arcs.flatMap((arc) => arc.pieces.map((_, i) => bentPiece(laid, stock, arc, i)));
    return bent.map((placed, i) => ({
      ...placed,
      draft: { ...placed.draft, id: `${laid.id}#${first + i + 1}` },
    }));
  }
  const grain = stock.form === 'sheet' && stock.grain ? 'along' : 'any';
  const all = sawn.arcs.flatMap((arc) =>
    arc.pieces.map((outer, i) => {
      const lean = leanOf(arc, arc.pieces.length, i);
      return { outer, lay: (p: Point): Point => rotate(subtract(p, arc.center), -lean) };
    }),
  );
  return all.map(({ outer, lay }, i) => {
    const polygon = { outer, holes: [] };
    const id = `${laid.id}#${first + i + 1}`;
    // Turned on the face, they lie in no row of panels whose lengths add up.
    return { draft: sheetPiece({ laid, stock, polygon, id }, lay, grain), kind: 'stick', stretch: null };
  });
}

/** Chords of the middle line of what is bent turn by no more. */
const CHORD: Deg = 1.5;

/**
 * A piece of an arc as it is cut, straight: of what is bent the middle line keeps its length, while the outer edge is
 * drawn out and the inner one pressed together (plane sections stay plane). So each corner lies as far along the piece as
 * the middle line is long up to the radius that it comes to lie on.
 */
function bentPiece(laid: Laid<'run'>, stock: Stock, arc: SawnArc, i: number): Placed {
  const { center, turn, lean, near, far, pieces } = arc;
  const { inner, outer } = edgesOf(arc);
  const [middle, width] = [(inner + outer) / 2, outer - inner];
  const count = pieces.length;
  /** Of joint `k`, where it is cut on a radius. */
  const direction = (k: number): Deg => lean + 90 + turn * (k - count / 2);
  const way = Math.sign(turn);
  /** How far along the middle line joint `k` lies at an edge: on a radius between two pieces, at the ends as it is cut. */
  const along = (k: number, edge: SawnArc['near']): Mm => {
    const cut = k === 0 ? edge[0] : k === count ? edge[1] : null;
    const off = cut ? way * (angleOf(subtract(cut, center)) - direction(k)) : 0;
    return middle * radians(k * Math.abs(turn) + off - 360 * Math.round(off / 360));
  };
  // The inner edge is the left one where the path turns to the left.
  const nearIsInner = distance(center, near[0]) < distance(center, far[0]);
  const [left, right] = nearIsInner === turn > 0 ? [near, far] : [far, near];
  const [from, to] = [i, i + 1].map((k) => ({ left: along(k, left), right: along(k, right) })) as [Cut, Cut];
  const { outline } = atOrigin([
    { x: from.right, y: 0 },
    { x: to.right, y: 0 },
    { x: to.left, y: width },
    { x: from.left, y: width },
  ]);
  const ends = [bentEnd(from, 'start', width, stock), bentEnd(to, 'end', width, stock)] as const;
  const chords = Math.ceil(Math.abs(turn) / CHORD);
  const line = Array.from({ length: chords + 1 }, (_, k): Point => {
    const a = radians(direction(i + k / chords));
    return add(center, scale({ x: Math.cos(a), y: Math.sin(a) }, middle));
  });
  const bent: Bent = { radius: inner, along: line };
  const draft: Placed['draft'] = {
    id: laid.id,
    part: laid.id,
    name: laid.name,
    stock: stock.id,
    form: stock.form,
    ...lengthsOf(outline, ends),
    margin: 0,
    width,
    thickness: laid.z1 - laid.z0,
    ends,
    fit: { inPlace: false, allowance: 0 },
    outline,
    holes: [],
    bent,
    notches: [],
    placed: [{ outer: pick(pieces, i), holes: [] }],
    z0: laid.z0,
    z1: laid.z1,
    grain: 'along',
  };
  return { draft, kind: 'stick', stretch: null };
}

/** Where a cut crosses both edges, along the piece. */
type Cut = Readonly<Record<'left' | 'right', Mm>>;

function bentEnd({ left, right }: Cut, end: End, width: Mm, stock: Stock): PieceEnd {
  const miter = degrees(Math.atan2(end === 'start' ? right - left : left - right, width));
  const square = Math.abs(miter) <= SAME_ANGLE;
  const at = { secondMiter: null, with: null, stock, corner: null };
  return square ? END_KINDS.square.settle({ ...at, miter: 0 }) : END_KINDS.miter.settle({ ...at, miter });
}

/** What an arc is laid out by: radii, the turn of one piece, and the lengths of its edges from cut to cut. */
export function sawnArch({ center, turn, near, far, pieces }: SawnArc, bent: boolean): SawnArch {
  const arcOf = ([from, to]: SawnArc['near']): { readonly radius: Mm; readonly length: Mm } => {
    const radius = distance(center, from);
    const swept = angleOf(subtract(to, center)) - angleOf(subtract(from, center));
    return { radius, length: radius * radians((Math.sign(turn) * swept + 360) % 360) };
  };
  const [one, other] = [arcOf(near), arcOf(far)];
  const [inner, outer] = one.radius < other.radius ? [one, other] : [other, one];
  const middle = arcOf([halfway(center, near[0], far[0]), halfway(center, near[1], far[1])]);
  return {
    bent,
    inner: inner.radius,
    outer: outer.radius,
    pieces: pieces.length,
    angle: Math.abs(turn),
    lengths: { inner: inner.length, middle: middle.length, outer: outer.length },
  };
}

/** Where the circle of the middle radius crosses the straight cut at an end of an arc. */
function halfway(center: Point, near: Point, far: Point): Point {
  const middle = (distance(center, near) + distance(center, far)) / 2;
  const [from, way] = [subtract(near, center), subtract(far, near)];
  // |from + t way| = middle.
  const [a, b, c] = [dot(way, way), dot(from, way), dot(from, from) - middle * middle];
  const root = Math.sqrt(Math.max(0, b * b - a * c));
  // The radius rises or falls along the cut: of both roots the one that lies on it, which is the nearer to its middle.
  const roots = [(-b - root) / a, (-b + root) / a] as const;
  return lerp(near, far, Math.abs(roots[0] - 0.5) < Math.abs(roots[1] - 0.5) ? roots[0] : roots[1]);
}
