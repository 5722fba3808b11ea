import { connectedParts, intersect, subtract } from '../../src/geometry/clip.ts';
import { areaOf, boxOf, regionOfRing } from '../../src/geometry/region.ts';
import type { Box, Region, Ring } from '../../src/geometry/shape.ts';
import type { Bridge, Stencil } from '../../src/lettering/result.ts';

/** A bridge as the bar its figures describe, a hair narrower, so that its edges lie in the sheet. */
export function barOf({ at, angle, width, length }: Bridge): Ring {
  const [c, s] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
  const [l, w] = [length / 2, width / 2 - 0.001];
  return [
    [-l, -w],
    [l, -w],
    [l, w],
    [-l, w],
  ].map(([x = 0, y = 0]) => ({ x: at.x + x * c - y * s, y: at.y + x * s + y * c }));
}

/** What is wrong with a stencil, in words; nothing when it holds together as it says. */
export function faultsOf(stencil: Stencil, box: Box, letters: Region, width: number): string[] {
  const faults: string[] = [];
  const pieces = connectedParts(stencil.sheet);
  if (pieces.length !== 1 + stencil.loose)
    faults.push(`${pieces.length} pieces, ${stencil.loose} said loose`);
  if (stencil.loose > 0) faults.push(`${stencil.loose} loose`);
  const left = areaOf(stencil.sheet) + areaOf(stencil.cut) - box.w * box.h;
  if (Math.abs(left) > 0.01) faults.push(`sheet and cut miss the box by ${left} mm2`);
  if (areaOf(intersect(stencil.sheet, stencil.cut)) > 0.01) faults.push('sheet and cut overlap');
  // Specks in the letters, too small to be held, are cut away with them.
  const added = Math.max(0, ...connectedParts(subtract(stencil.cut, letters)).map(areaOf));
  if (added > 0.25) faults.push(`${added} mm2 cut outside of the letters`);
  for (const bridge of stencil.bridges) {
    if (bridge.width < width) faults.push(`a bridge of ${bridge.width} mm`);
    const open = areaOf(intersect(regionOfRing(barOf(bridge)), stencil.cut));
    if (open > 0.01) faults.push(`a bridge with ${open} mm2 of its bar cut away`);
  }
  const all = boxOf(stencil.sheet);
  if (!all || Math.abs(all.w - box.w) + Math.abs(all.h - box.h) > 1e-3) faults.push('the frame is cut open');
  return faults;
}

/**
 * Pieces of the sheet counted on a grid of small squares, by flooding from square to square: knows nothing of
 * polygons but whether a point is in the cut. Pieces of a few squares are left out, where an edge runs
 * between grid points.
 */
export function piecesOnGrid(cut: Region, box: Box, step: number): number {
  const columns = Math.round(box.w / step);
  const rows = Math.round(box.h / step);
  const open = new Uint8Array(columns * rows);
  for (let row = 0; row < rows; row += 1) {
    const crossings = crossingsAt(cut, box.y + (row + 0.5) * step);
    for (let column = 0; column < columns; column += 1) {
      const x = box.x + (column + 0.5) * step;
      let winding = 0;
      for (const crossing of crossings) if (crossing < x) winding += 1;
      open[row * columns + column] = winding % 2;
    }
  }
  let pieces = 0;
  for (let seed = 0; seed < open.length; seed += 1) {
    if (open[seed] !== 0) continue;
    let size = 0;
    const stack = [seed];
    open[seed] = 1;
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      size += 1;
      const column = at % columns;
      const beside = [
        column > 0 ? at - 1 : -1,
        column + 1 < columns ? at + 1 : -1,
        at - columns,
        at + columns,
      ];
      for (const next of beside) {
        if (next < 0 || next >= open.length || open[next] !== 0) continue;
        open[next] = 1;
        stack.push(next);
      }
    }
    if (size > 4) pieces += 1;
  }
  return pieces;
}

function crossingsAt(region: Region, y: number): number[] {
  const crossings: number[] = [];
  for (const polygon of region) {
    for (const ring of [polygon.outer, ...polygon.holes]) {
      ring.forEach((a, i) => {
        const b = ring[(i + 1) % ring.length] ?? a;
        if (a.y < y !== b.y < y) crossings.push(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x));
      });
    }
  }
  return crossings;
}
