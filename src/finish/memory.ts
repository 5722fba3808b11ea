import type { Region, Ring } from '../geometry/shape.ts';
import { grouped } from '../list/grouped.ts';
import { addUp } from '../list/totals.ts';
import type { Surface } from './input.ts';

/** The surfaces with those that are as they were in the last plan replaced by the earlier ones. */
export function knownSurfaces(last: readonly Surface[], surfaces: readonly Surface[]): readonly Surface[] {
  const nameOf = ({ part, kind, role, finish }: Surface) => `${kind} ${role} ${finish} ${part}`;
  const before = grouped(last, nameOf);
  const counts = new Map<string, number>();
  return surfaces.map((surface) => {
    const name = nameOf(surface);
    const was = before.get(name)?.[addUp(counts, name)];
    return was && isSame(was, surface) ? was : surface;
  });
}

const isSame = (a: Surface, b: Surface): boolean =>
  a.stock === b.stock &&
  a.on === b.on &&
  a.beyond === b.beyond &&
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
