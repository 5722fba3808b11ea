import { regionOfBox } from '../../src/geometry/region.ts';
import type { Box } from '../../src/geometry/shape.ts';
import type { Solid } from '../../src/joinery/piece.ts';
import { inches } from '../../src/measure/units.ts';

/** A block on the face, in inches: where it lies and from where to where it stands out. */
export function blockInInches(
  part: string,
  [x, y, w, h]: readonly [number, number, number, number],
  [z0, z1]: readonly [number, number],
  more: Partial<Solid> = {},
): Solid {
  const box: Box = { x: inches(x), y: inches(y), w: inches(w), h: inches(h) };
  return {
    part,
    kind: 'panel',
    region: regionOfBox(box),
    z0: inches(z0),
    z1: inches(z1),
    stock: null,
    finish: null,
    on: 'rim',
    ...more,
  };
}
