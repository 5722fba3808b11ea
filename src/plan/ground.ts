import type { Level } from '../bed/face.ts';
import type { Check } from '../check/check.ts';
import { isLettered, isPaint } from '../design/made.ts';
import { coversOf } from '../finish/surface.ts';
import { boxAroundBoth, grownBox } from '../geometry/box.ts';
import { intersect, seenOfEach, subtract, union } from '../geometry/clip.ts';
import { areaOf, boxesMeet, boxOf, regionOfBox, ringsOf, translateRegion } from '../geometry/region.ts';
import type { Box, Point, Region } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Solid } from '../joinery/piece.ts';
import { groovesOf, type Laid, type LaidPart } from '../layout/laid.ts';
import type { Lettered, PlacedGlyph } from '../lettering/result.ts';
import { overRun } from '../lettering/sight.ts';
import { cyclic, pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';

/** Square millimeters in common that are rounding along a shared edge. */
const TOUCHING_MM2 = 1;

/** An edge or a joint of what letters lie on, on the face. */
export type Seam = readonly [Point, Point];

/** What letters without a board lie on. */
export interface Grounds {
  /** By laid part: the borders of all that is beneath, where they are in sight. */
  readonly seams: ReadonlyMap<string, readonly Seam[]>;
  readonly checks: readonly Check[];
}

/** The letters of a sign, and where the lower left of its box lies on the face. */
interface Letters {
  readonly id: string;
  readonly at: Point;
  readonly lettered: Lettered;
}

interface GroundInput {
  readonly levels: readonly Pick<Level, 'z' | 'region'>[];
  readonly parts: readonly LaidPart[];
  /** What the joints leave of them. */
  readonly solids: readonly Solid[];
  readonly signs: readonly Letters[];
}

/** A front at one height. */
interface Front {
  readonly region: Region;
  readonly z: Mm;
}

const NOTHING: Grounds = { seams: new Map(), checks: [] };

/**
 * What letters without a board lie on: all that the room sees there, at whatever height, but what is bought or lies on
 * the lettering itself, which covers it.
 *
 * Checks: `lettering.off-sign`, an error where ink would miss the face and a warning where something covers it;
 * `lettering.crosses`, a note where letters run over joints, and a warning where they run over edges.
 */
export function planGrounds({ levels, parts, solids, signs }: GroundInput): Grounds {
  const free = signs.flatMap((sign) => {
    const laid = parts.find(({ id }) => id === sign.id);
    return laid && isLettered(laid) && isPaint(laid) ? [{ sign, laid }] : [];
  });
  if (free.length === 0) return NOTHING;
  const seams = new Map<string, readonly Seam[]>();
  const checks = free.flatMap(({ sign: { lettered, at }, laid }): Check[] => {
    const ink = lettered.layers.flatMap(({ whole }) => translateRegion(whole, at.x, at.y));
    const box = boxOf(ink);
    if (!box) return [];
    const over = coversOf(laid.id, solids);
    const fronts = [
      ...levels,
      ...solids.flatMap((solid) => (isPaint(solid) || over.has(solid.part) ? [] : frontsOf(solid))),
    ];
    const around = boxAroundBoth(box, laid.box);
    const seen = seenOf(fronts, around);
    seams.set(laid.id, bordersOf(seen, around));
    const covers = solids.filter(({ part }) => over.has(part)).map(({ region }) => region);
    return [...sightChecks(laid.id, ink, box, levels, covers), ...crossings(lettered, at, laid, seen)];
  });
  return { seams, checks };
}

/** The front of a solid, its grooves apart. */
function frontsOf({ region, z1, relief }: Solid): Front[] {
  const grooves = groovesOf(relief);
  if (grooves.length === 0 || !relief) return [{ region, z: z1 }];
  return [
    { region: subtract(region, grooves), z: z1 },
    { region: grooves, z: z1 - relief.depth },
  ];
}

/** What of the fronts is seen in a box, from the highest. */
function seenOf(fronts: readonly Front[], box: Box): Front[] {
  const room = regionOfBox(box);
  const here = fronts
    .filter(({ region }) => {
      const own = boxOf(region);
      return own !== null && boxesMeet(own, box);
    })
    .sort((a, b) => b.z - a.z)
    .map(({ region, z }) => ({ region: intersect(region, room), z }));
  const seen = seenOfEach(here.map(({ region }) => region).reverse()).reverse();
  return here
    .map(({ z }, i) => ({ region: pick(seen, i), z }))
    .filter(({ region }) => areaOf(region) > TOUCHING_MM2);
}

/** The borders between fronts, each once; those along the box are where it was cut out. */
function bordersOf(seen: readonly Front[], box: Box): Seam[] {
  const told = new Set<string>();
  const key = ({ x, y }: Point): string => `${Math.round(x / SAME_LENGTH)} ${Math.round(y / SAME_LENGTH)}`;
  const along = (a: number, b: number, low: number, size: number): boolean =>
    Math.abs(a - b) <= SAME_LENGTH && Math.min(Math.abs(a - low), Math.abs(a - low - size)) <= SAME_LENGTH;
  return seen
    .flatMap(({ region }) => ringsOf(region))
    .flatMap((ring) => ring.map((a, i): Seam => [a, cyclic(ring, i + 1)]))
    .filter(([a, b]) => {
      const name = [key(a), key(b)].sort().join(' ');
      if (along(a.x, b.x, box.x, box.w) || along(a.y, b.y, box.y, box.h) || told.has(name)) return false;
      told.add(name);
      return true;
    });
}

function sightChecks(
  id: string,
  ink: Region,
  box: Box,
  levels: GroundInput['levels'],
  covers: readonly Region[],
): Check[] {
  const off = (over_mm: Mm, severity: Check['severity'], by: string): Check[] =>
    over_mm > 0 ? [{ code: 'lettering.off-sign', severity, parts: [id], figures: { over_mm, by } }] : [];
  const beyond = off(overRun(ink, union(levels.map(({ region }) => region))), 'error', 'face');
  if (beyond.length > 0 || covers.length === 0) return beyond;
  return off(overRun(ink, subtract(regionOfBox(grownBox(box, 1)), union(covers))), 'warning', 'cover');
}

/** Letters that lie on more than one front, those on fronts of unlike height apart. */
function crossings(
  { glyphs }: Lettered,
  at: Point,
  { id, lettering: { make } }: Laid<'lettering'>,
  seen: readonly Front[],
): Check[] {
  const found = { joint: [] as string[], edge: [] as string[] };
  let most: Mm = 0;
  for (const glyph of glyphs) {
    const under = frontsUnder(glyph, at, seen);
    const step = under.length === 0 ? 0 : Math.max(...under) - Math.min(...under);
    if (step > SAME_LENGTH) found.edge.push(glyph.character);
    else if (under.length > 1) found.joint.push(glyph.character);
    most = Math.max(most, step);
  }
  return (['edge', 'joint'] as const).flatMap((by): Check[] => {
    if (found[by].length === 0) return [];
    const characters = [...new Set(found[by])].join(' ');
    const figures = { characters, by, step_mm: by === 'edge' ? most : 0, make };
    return [
      { code: 'lettering.crosses', severity: by === 'edge' ? 'warning' : 'note', parts: [id], figures },
    ];
  });
}

/** The heights of the fronts that a letter lies on, one each. */
function frontsUnder({ region }: PlacedGlyph, at: Point, seen: readonly Front[]): Mm[] {
  const own = translateRegion(region, at.x, at.y);
  return seen.flatMap((front) => (areaOf(intersect(own, front.region)) > TOUCHING_MM2 ? [front.z] : []));
}
