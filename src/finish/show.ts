import { sharedSides } from '../geometry/box.ts';
import { subtractApart, subtractedArea, union } from '../geometry/clip.ts';
import { neighborsOf } from '../geometry/meeting.ts';
import { areaOf, boxOf, perimeterOf } from '../geometry/region.ts';
import type { Box, Region } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { trueAreaOf } from '../geometry/trueArea.ts';
import type { KeptResults } from '../layout/kept.ts';
import { pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import type { Surface } from './input.ts';

/** A surface with what is seen of it from the room. */
export interface Shown {
  readonly surface: Surface;
  readonly region: Region;
  /** Square millimeters. */
  readonly area: number;
}

/** What rounding may shift a border by, in the test that nothing is seen twice or lost. */
const SHIFT: Mm = 1e-4;

/**
 * What is seen of each surface: its outline less everything that lies above it. All together they show what
 * one union of the outlines covers. Where they do not add up to it, because the polygon library's difference
 * went astray on turned, staggered pieces, the areas are taken through unions one by one.
 *
 * @param surfaces from the highest to the deepest, as `surfacesOf` gives them
 * @param results what was found of them before
 */
export function shownOf(surfaces: readonly Surface[], results: KeptResults): Shown[] {
  const covers = coversOf(surfaces);
  const regions: Region[] = [];
  const seen: (Box | null)[] = [];
  surfaces.forEach((surface, i) => {
    const cover = covers(i, seen);
    const region =
      cover.length === 0
        ? surface.region
        : results.of(surface, 'shown', cover, () => subtractApart(surface.region, outlinesOf(cover)));
    regions.push(region);
    seen.push(boxOf(region));
  });
  const trusted = addUp(surfaces, regions);
  return surfaces.map((surface, i) => {
    const region = pick(regions, i);
    return {
      surface,
      region,
      area: trusted ? trueAreaOf(region) : subtractedArea(surface.region, outlinesOf(covers(i, seen))),
    };
  });
}

const outlinesOf = (surfaces: readonly Surface[]): Region => surfaces.flatMap(({ region }) => region);

/**
 * What lies over the i-th surface. One that is itself hidden hides nothing that what lies over it does not,
 * so only those count of which something is seen near the surface.
 */
function coversOf(
  surfaces: readonly Surface[],
): (i: number, seen: readonly (Box | null)[]) => readonly Surface[] {
  const boxes = surfaces.map((surface) => boxOf(surface.region));
  const around = neighborsOf(boxes);
  return (i, seen) => {
    const over = pick(around, i)
      .filter((j) => j < i && overlap(pick(boxes, i), pick(seen, j)))
      .flatMap((j) => pick(surfaces, j));
    return withoutLettering(over);
  };
}

/** Less the lettering whose signs are among them: it lies on them wholly. */
function withoutLettering(surfaces: readonly Surface[]): readonly Surface[] {
  const tops = new Map(surfaces.filter(({ kind }) => kind === 'solid').map(({ part, z }) => [part, z]));
  return surfaces.filter(({ kind, on, z }) => kind !== 'letter' || tops.get(on ?? '') !== z);
}

function addUp(surfaces: readonly Surface[], regions: readonly Region[]): boolean {
  const outlines = withoutLettering(surfaces).map((surface) => surface.region);
  const seen = regions.reduce((sum, region) => sum + areaOf(region), 0);
  const borders = surfaces.reduce((sum, { region }) => sum + perimeterOf(region), 0);
  return Math.abs(seen - areaOf(union(outlines))) <= SHIFT * borders;
}

/** Whether the boxes share more than a border: neighbors in a row cover nothing of each other. */
function overlap(a: Box | null, b: Box | null): boolean {
  if (!a || !b) return false;
  const { across, up } = sharedSides(a, b);
  return across > SAME_LENGTH && up > SAME_LENGTH;
}
