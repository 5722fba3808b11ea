import type { Path, PathCommand } from '../../geometry/shape.ts';

/**
 * The path of a compact outline: closed contours of whole numbers with absolute commands `M x y`, `L x y`,
 * `C x1 y1 x2 y2 x y` and `Z`, as path data of SVG has them, y up. What else stands in it is passed over.
 */
export const pathOfOutline = (outline: string): Path =>
  [...outline.matchAll(/([MLCZ])([-\d ]*)/g)].flatMap(([, op, listed = '']): PathCommand[] => {
    const [a = 0, b = 0, c = 0, d = 0, x = 0, y = 0] = listed.split(' ').map(Number);
    if (op === 'Z') return [{ op }];
    return op === 'C'
      ? [{ op, x1: a, y1: b, x2: c, y2: d, x, y }]
      : [{ op: op === 'M' ? op : 'L', x: a, y: b }];
  });
