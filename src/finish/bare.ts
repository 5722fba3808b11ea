import { intersect, offset, subtract } from '../geometry/clip.ts';
import { boxesMeet, boxOf, perimeterOf } from '../geometry/region.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Polygon } from '../geometry/shape.ts';
import type { KeptResults } from '../layout/kept.ts';
import { UNDER_EDGE } from '../lettering/painted.ts';
import { addTo, type Groups, groupOf } from '../list/grouped.ts';
import { addUp } from '../list/totals.ts';
import type { Mm } from '../measure/units.ts';
import type { Boxed, Surface } from './input.ts';
import type { BareArea } from './result.ts';
import { sameHeight } from './surface.ts';

/**
 * Where a surface that is painted before parts are fixed has to stay bare: under each part or sawn letter
 * that is glued right onto it, up to a little way inside its outline. Common practice, no source.
 *
 * @param neighbors surfaces whose outlines overlap or touch this one's
 * @param results what was found of them before
 */
export function bareOn(
  surface: Surface,
  neighbors: readonly Boxed[],
  glued: ReadonlySet<string>,
  results: KeptResults,
): BareArea[] {
  return neighbors.flatMap(({ surface: other }): BareArea[] => {
    const { part, kind, bottom } = other;
    const holds = kind === 'sawn' || (kind === 'solid' && glued.has(part));
    if (!holds || !sameHeight(bottom, surface.z)) return [];
    const inside = results.of(other, 'inside', [], () => offset(other.region, -UNDER_EDGE, 'miter'));
    const bare = results.of(other, `bare on ${surface.part}`, [surface], () =>
      intersect(inside, surface.painted),
    );
    return bare.length > 0
      ? [{ part, on: surface.part, finish: surface.finish ?? '', z: surface.z, region: bare }]
      : [];
  });
}

/** Masking tape around bare areas, by the finish that goes on first, each stretch once where two colors lie over each other. */
export function tapeAround(areas: readonly BareArea[]): Map<string, Mm> {
  const taped: Groups<string, Polygon> = new Map();
  const tape = new Map<string, Mm>();
  for (const { part, finish, z, region } of areas) {
    const key = `${part}|${z}`;
    const box = boxOf(region);
    const before = groupOf(taped, key).filter(({ outer }) => box && boxesMeet(boxOfPoints(outer), box));
    const fresh = before.length > 0 ? subtract(region, before) : region;
    for (const polygon of region) addTo(taped, key, polygon);
    addUp(tape, finish, perimeterOf(fresh));
  }
  return tape;
}
