import type { Box } from '../../geometry/shape.ts';
import type { LaidPart } from '../../layout/laid.ts';

/** The inside of a frame whose stock lies within its box; undefined for everything else. */
export function innerOf(parts: readonly LaidPart[], id: string): Box | undefined {
  const part = parts.find((p) => p.id === id);
  if (part?.kind !== 'run' || !part.closed || part.spec.side !== 'inside') return undefined;
  const width = part.legs[0]?.width ?? 0;
  const { x, y, w, h } = part.box;
  if (w <= 2 * width || h <= 2 * width) return undefined;
  return { x: x + width, y: y + width, w: w - 2 * width, h: h - 2 * width };
}
