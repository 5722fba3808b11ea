import type { Solid } from '../joinery/piece.ts';

/**
 * What is painted on the bench before it is fixed, and what in place. Signs are lettered lying flat; a part
 * of another color than what it lies on would need masking there. What has its support's color is painted
 * in place, over the filled nail holes. Painted shapes follow the part they are on. Common practice, no source.
 */
export function paintingOrder(solids: readonly Solid[]): { before: string[]; after: string[] } {
  const byPart = new Map(solids.map((solid) => [solid.part, solid]));
  const onBench = (solid: Solid): boolean => {
    const under = byPart.get(solid.on);
    if (solid.kind === 'painted') return under !== undefined && under.kind !== 'painted' && onBench(under);
    return solid.finish !== null && (solid.kind === 'sign' || solid.finish !== (under?.finish ?? null));
  };
  const before: string[] = [];
  const after: string[] = [];
  for (const solid of solids) {
    if (solid.finish === null) continue;
    (onBench(solid) ? before : after).push(solid.part);
  }
  return { before, after };
}
