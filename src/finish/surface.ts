import { isBought, isLettered, isPaint } from '../design/made.ts';
import { intersect, union } from '../geometry/clip.ts';
import { boxesMeet, boxOf, containsBox, EMPTY, translateRegion } from '../geometry/region.ts';
import type { Region } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Solid } from '../joinery/piece.ts';
import { isFill, isOnLetters } from '../lettering/result.ts';
import type { FinishInput, Surface } from './input.ts';

/** Whether two heights are the same plane. */
export const sameHeight = (a: number, b: number): boolean => Math.abs(a - b) <= SAME_LENGTH;

/**
 * Everything that has a front, from the one nearest the room to the deepest. At the same height paint lies
 * over wood, lettering over its sign, and later painted shapes over earlier ones. Letters without a board lie on all
 * that the room sees there, at whatever height. Where letters are sawn out, they carry their own color and the line
 * inside of it; outline and shade stay on the sign.
 */
export function surfacesOf(input: Pick<FinishInput, 'face' | 'solids' | 'lettering' | 'sawn'>): Surface[] {
  const wood = [...levels(input), ...solids(input)];
  const onWood = [...painted(input, wood), ...letters(input, wood)];
  // Later paint comes first: it lies on top.
  return [...onWood.reverse(), ...wood].sort((a, b) => (sameHeight(a.z, b.z) ? 0 : b.z - a.z));
}

function levels({ face }: Pick<FinishInput, 'face'>): Surface[] {
  return face.levels.map((level) => ({
    part: level.id,
    kind: 'level',
    finish: null,
    stock: null,
    on: null,
    role: null,
    region: level.region,
    painted: level.region,
    bottom: Number.NEGATIVE_INFINITY,
    z: level.z,
  }));
}

function solids({ solids: all }: Pick<FinishInput, 'solids'>): Surface[] {
  return all.filter((solid) => !isPaint(solid)).map((solid) => surfaceOf('solid', solid));
}

const surfaceOf = (
  kind: Surface['kind'],
  { part, finish, stock, on, region, z0, z1, relief }: Solid,
): Surface => ({
  part,
  kind,
  finish,
  stock,
  on,
  role: kind === 'sawn' ? 'fill' : null,
  region,
  painted: region,
  ...(relief ? { beyond: relief.beyond } : {}),
  bottom: z0,
  z: z1,
});

/** Painted shapes, as far as there is wood at their height to take the paint; under letters, at whatever height. */
function painted({ solids: all }: Pick<FinishInput, 'solids'>, wood: readonly Surface[]): Surface[] {
  return all
    .filter((solid) => isPaint(solid))
    .flatMap((solid) => {
      const beneath = isLettered(solid) ? woodUnder(solid, all, wood) : wood;
      const heights = isLettered(solid) ? heightsUnder(solid.region, beneath) : [solid.z0];
      return heights.map((z) => {
        const region = onto(solid.region, z, beneath);
        return { ...surfaceOf('painted', solid), region, painted: region, bottom: z, z };
      });
    });
}

function onto(region: Region, z: number, wood: readonly Surface[]): Region {
  const box = boxOf(region);
  if (!box) return EMPTY;
  const beneath = wood.filter((surface) => {
    const other = sameHeight(surface.z, z) ? boxOf(surface.region) : null;
    return other !== null && boxesMeet(box, other);
  });
  return intersect(region, union(beneath.map((surface) => surface.region)));
}

/** The heights of all wood that a region may lie on. */
function heightsUnder(region: Region, wood: readonly Surface[]): number[] {
  const box = boxOf(region);
  const near = wood.filter((surface) => {
    const own = boxOf(surface.region);
    return box && own && boxesMeet(box, own);
  });
  return near.map(({ z }) => z).filter((z, i, all) => all.findIndex((other) => sameHeight(z, other)) === i);
}

/** What of a region lies on a board; most lettering lies on it wholly. */
function cutTo(region: Region, board: Region): Region {
  const box = boxOf(region);
  return box && containsBox(board, box) ? region : intersect(region, board);
}

/** The wood that letters without a board are painted on. */
function woodUnder(sign: Solid, all: readonly Solid[], wood: readonly Surface[]): Surface[] {
  const over = coversOf(sign.part, all);
  return wood.filter(({ part }) => !over.has(part));
}

/**
 * What covers lettering without a board: what is bought, and what lies on the lettering or on such parts; supports stand
 * before what lies on them.
 */
export function coversOf(id: string, solids: readonly Solid[]): ReadonlySet<string> {
  const on = new Set([id]);
  const over = new Set<string>();
  for (const solid of solids) {
    if (on.has(solid.on)) on.add(solid.part);
    if (!isPaint(solid) && (on.has(solid.part) || isBought(solid))) over.add(solid.part);
  }
  return over;
}

function letters(
  { solids: all, lettering, sawn }: Pick<FinishInput, 'solids' | 'lettering' | 'sawn'>,
  wood: readonly Surface[],
): Surface[] {
  const tops = new Map(all.map((solid) => [solid.part, solid]));
  return lettering.flatMap(({ sign, at, layers }) => {
    const solid = tops.get(sign);
    if (!solid) return [];
    const own = sawn.filter((letter) => letter.part === sign);
    const top = own[0]?.z1;
    const beneath = isPaint(solid) ? woodUnder(solid, all, wood) : null;
    return layers.flatMap((layer): Surface[] => {
      const { role, finish } = layer;
      if (isFill(layer) && own.length > 0)
        return layer === layers.find(isFill) ? own.map((letter) => surfaceOf('sawn', letter)) : [];
      const { part, stock } = solid;
      const surface = { part, kind: 'letter', finish, stock, on: sign, role } as const;
      if (beneath && !(isOnLetters(role) && top !== undefined)) {
        const placed = translateRegion(layer.region, at.x, at.y);
        const whole = layer.painted === layer.region ? placed : translateRegion(layer.painted, at.x, at.y);
        return heightsUnder(whole, beneath).map((z) => {
          const region = onto(placed, z, beneath);
          return {
            ...surface,
            region,
            painted: whole === placed ? region : onto(whole, z, beneath),
            bottom: z,
            z,
          };
        });
      }
      const z = (isOnLetters(role) ? top : undefined) ?? solid.z1;
      // Lettering that runs off its sign paints nothing there; what is sawn out is there all the same.
      const place = (region: Region) => {
        const placed = translateRegion(region, at.x, at.y);
        return z === solid.z1 ? cutTo(placed, solid.region) : placed;
      };
      const region = place(layer.region);
      const painted = layer.painted === layer.region ? region : place(layer.painted);
      return [{ ...surface, region, painted, bottom: z, z }];
    });
  });
}
