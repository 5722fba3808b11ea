import type { Point, Region } from '../../geometry/shape.ts';

/** To the micrometer; -0 is 0, so that bytes do not depend on the sign of nothing. */
export const mm = (value: number): number => Math.round(value * 1000) / 1000 + 0;
export const orNull = (value: number | null): number | null => (value === null ? null : mm(value));
export const deg = (value: number): number => Math.round(value * 10_000) / 10_000 + 0;
export const micro = (value: number): number => Math.round(value * 1e6) / 1e6 + 0;
export const cents = (value: number): number => Math.round(value * 100) / 100 + 0;
export const pair = (p: Point): [number, number] => [mm(p.x), mm(p.y)];

export function boxFields(b: { x: number; y: number; w: number; h: number }) {
  return { x_mm: mm(b.x), y_mm: mm(b.y), width_mm: mm(b.w), height_mm: mm(b.h) };
}

export function regionFields(region: Region) {
  return region.map((p) => ({ outer: p.outer.map(pair), holes: p.holes.map((h) => h.map(pair)) }));
}
