import type { Path, Region } from '../../geometry/shape.ts';

const n = (value: number): string => String(Math.round(value * 1000) / 1000);

/** A path as the `d` of an SVG path, in the path's own coordinates. */
export const pathData = (path: Path): string =>
  path
    .map((c) => {
      if (c.op === 'Z') return 'Z';
      const to = `${n(c.x)} ${n(c.y)}`;
      return c.op === 'C' ? `C${n(c.x1)} ${n(c.y1)} ${n(c.x2)} ${n(c.y2)} ${to}` : `${c.op}${to}`;
    })
    .join('');

/** A region as the `d` of an SVG path to be filled by the even-odd rule. */
export const regionData = (region: Region): string =>
  region
    .flatMap((polygon) => [polygon.outer, ...polygon.holes])
    .map((ring) => `M${ring.map((p) => `${n(p.x)} ${n(p.y)}`).join('L')}Z`)
    .join('');
