import { isPaint } from '../design/made.ts';
import { intersect, union } from '../geometry/clip.ts';
import { boxesMeet, boxOf, containsBox, EMPTY, translateRegion } from '../geometry/region.ts';
import type { Region } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Solid } from '../joinery/piece.ts';
import { isOnLetters } from '../lettering/result.ts';
import type { FinishInput, Surface } from './input.ts';

/** Whether two heights are the same plane. */
export const sameHeight = (a: number, b: number): boolean => Math.abs(a - b) <= SAME_LENGTH;

/**
 * Everything that has a front, from the one nearest the room to the deepest. At the same height paint lies
 * over wood, lettering over its sign, and later painted shapes over earlier ones. Where letters are sawn out,
 * they carry their own color and the line inside of it; outline and shade stay on the sign.
 */
export function surfacesOf(input: Pick<FinishInput, 'face' | 'solids' | 'lettering' | 'sawn'>): Surface[] {
  const wood = [...levels(input), ...solids(input)];
  const onWood = [...painted(input, wood), ...letters(input)];
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

/** Painted shapes, as far as there is wood at their height to take the paint. */
function painted({ solids: all }: Pick<FinishInput, 'solids'>, wood: readonly Surface[]): Surface[] {
  return all
    .filter((solid) => isPaint(solid))
    .map((solid) => {
      const region = onto(solid.region, solid.z0, wood);
      return { ...surfaceOf('painted', solid), region, painted: region, z: solid.z0 };
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

/** What of a region lies on a board; most lettering lies on it wholly. */
function cutTo(region: Region, board: Region): Region {
  const box = boxOf(region);
  return box && containsBox(board, box) ? region : intersect(region, board);
}

function letters({
  solids: all,
  lettering,
  sawn,
}: Pick<FinishInput, 'solids' | 'lettering' | 'sawn'>): Surface[] {
  const tops = new Map(all.map((solid) => [solid.part, solid]));
  return lettering.flatMap(({ sign, at, layers }) => {
    const solid = tops.get(sign);
    if (!solid) return [];
    const own = sawn.filter((letter) => letter.part === sign);
    const top = own[0]?.z1;
    return layers.flatMap((layer): Surface[] => {
      const { role, finish } = layer;
      if (role === 'fill' && own.length > 0) return own.map((letter) => surfaceOf('sawn', letter));
      const z = (isOnLetters(role) ? top : undefined) ?? solid.z1;
      // Lettering that runs off its sign paints nothing there; what is sawn out is there all the same.
      const place = (region: Region) => {
        const placed = translateRegion(region, at.x, at.y);
        return z === solid.z1 ? cutTo(placed, solid.region) : placed;
      };
      const region = place(layer.region);
      const painted = layer.painted === layer.region ? region : place(layer.painted);
      const { part, stock } = solid;
      return [{ part, kind: 'letter', finish, stock, on: sign, role, region, painted, bottom: z, z }];
    });
  });
}
