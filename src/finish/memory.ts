import type { Region, Ring } from '../geometry/shape.ts';
import { KeptResults } from '../layout/kept.ts';
import { grouped } from '../list/grouped.ts';
import type { Surface } from './input.ts';

/**
 * The surfaces of the last plan and what was found of them. The caller owns it and hands it back in; a plan with it
 * equals the plan without it, only sooner.
 */
export interface FinishMemory {
  surfaces: readonly Surface[];
  readonly results: KeptResults;
}

export const createFinishMemory = (): FinishMemory => ({ surfaces: [], results: new KeptResults() });

/** The surfaces with those that are as they were replaced by the earlier ones. */
export function knownSurfaces(memory: FinishMemory, surfaces: readonly Surface[]): readonly Surface[] {
  const nameOf = ({ part, kind, role, finish }: Surface) => `${kind} ${role} ${finish} ${part}`;
  const before = grouped(memory.surfaces, nameOf);
  const counts = new Map<string, number>();
  memory.surfaces = surfaces.map((surface) => {
    const name = nameOf(surface);
    const count = counts.get(name) ?? 0;
    counts.set(name, count + 1);
    const was = before.get(name)?.[count];
    return was && isSame(was, surface) ? was : surface;
  });
  return memory.surfaces;
}

const isSame = (a: Surface, b: Surface): boolean =>
  a.stock === b.stock &&
  a.on === b.on &&
  a.bottom === b.bottom &&
  a.z === b.z &&
  sameRegion(a.region, b.region) &&
  sameRegion(a.painted, b.painted);

const sameRegion = (a: Region, b: Region): boolean =>
  a === b ||
  (a.length === b.length &&
    a.every(({ outer, holes }, i) => {
      const other = b[i];
      return (
        other !== undefined &&
        sameRing(outer, other.outer) &&
        holes.length === other.holes.length &&
        holes.every((hole, k) => sameRing(hole, other.holes[k]))
      );
    }));

const sameRing = (a: Ring, b: Ring | undefined): boolean =>
  b !== undefined &&
  a.length === b.length &&
  a.every((p, i) => Object.is(p.x, b[i]?.x) && Object.is(p.y, b[i]?.y));
