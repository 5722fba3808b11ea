import type { Check } from '../../check/check.ts';
import { cornersIn } from '../../design/drawnCorners.ts';
import type { PanelShape, Part, Run } from '../../design/schema.ts';
import { cutsEased } from '../../geometry/drawn.ts';
import { hasHead } from '../../geometry/heads.ts';
import type { Loop } from '../../geometry/loop.ts';
import { distance } from '../../geometry/point.ts';
import type { Box } from '../../geometry/shape.ts';
import { pointAt } from '../../geometry/stretch.ts';
import { DUST, SAME_LENGTH, SAME_PLACE } from '../../geometry/tolerance.ts';
import { cyclic, pick, under } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import { frameOfDrawn } from './drawn.ts';
import { isNamed, loopsOfNamed, type NamedShape, outlineOf } from './outlines.ts';
import { openingBox } from './shape.ts';

/** A measure that is not met: more than fits, less than a side needs, or several of them that have no room together. */
interface Unmet {
  readonly why: 'most' | 'least' | 'together';
  readonly asked: Mm;
  readonly fits: Mm;
}
const TOGETHER: Unmet = { why: 'together', asked: 0, fits: 0 };

/** Halvings in which the most that fits is found. */
const HALVINGS = 40;

const unmetOf = (shape: PanelShape, box: Box): Unmet | null =>
  shape.form === 'polygon'
    ? unmetOfDrawn(shape.points, box)
    : isNamed(shape)
      ? unmetOfNamed(shape, box)
      : null;

/**
 * A measure is not met where less of it draws the same figure: that much of it is cut down to what fits. And a head is not
 * met where no arcs of its measures make it, and a circular one stands in its place.
 */
function unmetOfNamed(shape: NamedShape, box: Box): Unmet | null {
  const drawn = loopsOfNamed(shape, box);
  for (const [name, { kind }] of Object.entries(outlineOf(shape.form).measures)) {
    const asked = under(new Map(Object.entries(shape)), name);
    // Rounder than the box has room for is as round as it can be: told so on purpose.
    if (kind !== 'length' || typeof asked !== 'number' || asked <= SAME_PLACE || isRound(shape)) continue;
    const isSame = (less: Mm) =>
      sameLoops(drawn, loopsOfNamed({ ...shape, [name]: less } as NamedShape, box));
    if (!isSame(asked - SAME_PLACE)) continue;
    let [low, high] = [0, asked];
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (low + high) / 2;
      if (isSame(middle)) high = middle;
      else low = middle;
    }
    return high > SAME_PLACE ? { why: 'most', asked, fits: high } : TOGETHER;
  }
  return isMade(shape, box) ? null : TOGETHER;
}

function isMade(shape: NamedShape, box: Box): boolean {
  switch (shape.form) {
    case 'pointed':
    case 'basket':
    case 'elliptical':
      return hasHead(shape.form, box, shape.rise);
    case 'four-centered':
    case 'ogee':
      return hasHead(shape.form, box, shape.rise, shape.radius);
    default:
      return true;
  }
}

const isRound = (shape: NamedShape): boolean => shape.form === 'corners' && shape.cut === 'rounded';

const sameLoops = (a: readonly Loop[], b: readonly Loop[]): boolean =>
  a.length === b.length && a.every((loop, i) => sameLoop(loop, pick(b, i)));

const sameLoop = (a: Loop, b: Loop): boolean =>
  a.length === b.length &&
  a.every((one, i) => {
    const other = cyclic(b, i);
    const off = Math.max(
      distance(one.from, other.from),
      distance(pointAt(one, 1 / 2), pointAt(other, 1 / 2)),
    );
    return off <= DUST * 10;
  });

type Corners = Extract<PanelShape, { readonly form: 'polygon' }>['points'];

/** Bows and corners that have no room in the box; and a radius under half of its side, which becomes a half circle. */
function unmetOfDrawn(points: Corners, box: Box, closed = true): Unmet | null {
  const { frame, points: fitting, eased } = frameOfDrawn(points, box, closed);
  if (eased) return TOGETHER;
  const corners = cornersIn(fitting, frame);
  for (const [i, { at, side }] of corners.entries()) {
    if (side?.as !== 'radius' || (!closed && i === corners.length - 1)) continue;
    const [asked, fits] = [Math.abs(side.radius), distance(at, cyclic(corners, i + 1).at) / 2];
    if (asked < fits - SAME_LENGTH) return { why: 'least', asked, fits };
  }
  return cutsEased(corners, closed) ? TOGETHER : null;
}

function unmetOfPath(path: Run['path'], box: Box): Unmet | null {
  switch (path.form) {
    case 'frame':
      return null;
    case 'arched':
      return unmetOf(path, box);
    case 'points':
      return unmetOfDrawn(path.points, box, path.closed);
    case 'shape':
      return unmetOf(path.shape, box);
  }
}

/** An outline, an opening or a path whose rises, radii and corners have no room in its box is drawn with lesser ones: said. */
export function easedMeasures(part: Part, box: Box): Check[] {
  const own =
    'path' in part ? unmetOfPath(part.path, box) : 'shape' in part ? unmetOf(part.shape, box) : null;
  const holes = ('openings' in part ? part.openings : undefined) ?? [];
  const all = [
    own,
    ...holes.map((opening) => {
      const hole = openingBox(opening, box);
      return hole && unmetOf(opening.shape, hole);
    }),
  ].filter((unmet) => unmet !== null);
  const [first] = all;
  if (!first) return [];
  const { why, asked, fits } = first;
  const figures = { why, asked_mm: asked, fits_mm: fits };
  return [{ code: 'part.measures-eased', severity: 'note', parts: [part.id], figures }];
}
