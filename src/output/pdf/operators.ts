import type { Color } from '../../drawing/drawing.ts';
import type { Matrix } from '../../drawing/transform.ts';
import type { Path } from '../../geometry/shape.ts';
import { decimal } from '../number.ts';

/** Four decimals of a millimeter: a tenth of a micrometer. */
export const n = (value: number): string => decimal(value, 4);
/** Directions need more digits than places: 1e-7 over a 10 m drawing is a micrometer. */
export const factor = (value: number): string => decimal(value, 8);

/** A color as the three operands of `rg` and `RG`. */
export function color(hex: Color): string {
  const channel = (at: number) => decimal(Number.parseInt(hex.slice(at, at + 2), 16) / 255, 3);
  return `${channel(1)} ${channel(3)} ${channel(5)}`;
}

export function matrix(m: Matrix): string {
  return `${factor(m.a)} ${factor(m.b)} ${factor(m.c)} ${factor(m.d)} ${n(m.e)} ${n(m.f)}`;
}

/** Path construction operators, coordinates rounded by `digits`. */
export function pathOperators(path: Path, digits: (value: number) => string = n): string {
  const parts: string[] = [];
  for (const c of path) {
    if (c.op === 'Z') parts.push('h');
    else if (c.op === 'M') parts.push(`${digits(c.x)} ${digits(c.y)} m`);
    else if (c.op === 'L') parts.push(`${digits(c.x)} ${digits(c.y)} l`);
    else parts.push(`${[c.x1, c.y1, c.x2, c.y2, c.x, c.y].map(digits).join(' ')} c`);
  }
  return parts.join('\n');
}
