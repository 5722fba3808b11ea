import { isLettered, isPaint } from '../design/made.ts';
import type { Finish } from '../design/schema.ts';
import type { Solid } from '../joinery/piece.ts';

/**
 * Where a part is painted. `bench`: lying flat, before it is fixed, its last coat in place over the filled nail
 * holes. `bench-all`: lying flat, with all its coats. `ground`: on the bed itself, before anything covers
 * it. `place`: once everything is fixed.
 */
export type Way = 'bench' | 'bench-all' | 'ground' | 'place';

/**
 * How each part with a finish is painted. Signs are lettered lying flat; a part of another color than what it
 * lies on would need masking there. What has its support's color is painted in place. All coats at once get
 * signs, what carries painted shapes (its last coat would have to be masked around them), and what has one
 * coat only. Painted shapes follow the part they are on; under letters without a board they are painted in place. Common practice, no source.
 */
export function waysOf(solids: readonly Solid[], finishes: readonly Finish[]): ReadonlyMap<string, Way> {
  const byPart = new Map(solids.map((solid) => [solid.part, solid]));
  const coats = new Map(finishes.map((finish) => [finish.id, finish.coats]));
  const shapes = solids.filter((solid) => isPaint(solid) && solid.finish !== null);
  const carriers = new Set(shapes.map((shape) => bodyUnder(shape, byPart)?.part));
  const wayOf = (solid: Solid): Way => {
    const { finish, part, on } = solid;
    if (isPaint(solid)) {
      // Letters run over what is joined by then.
      if (isLettered(solid)) return 'place';
      const body = bodyUnder(solid, byPart);
      if (!body) return 'ground';
      return body.finish !== null && wayOf(body) !== 'place' ? 'bench-all' : 'place';
    }
    if (!isLettered(solid) && finish === (byPart.get(on)?.finish ?? null)) return 'place';
    const all = isLettered(solid) || carriers.has(part) || coats.get(finish ?? '') === 1;
    return all ? 'bench-all' : 'bench';
  };
  return new Map(solids.flatMap((s) => (s.finish === null ? [] : [[s.part, wayOf(s)] as const])));
}

/** The part that a painted shape is on, through other paint; undefined where that is the bed. */
function bodyUnder(shape: Solid, byPart: ReadonlyMap<string, Solid>): Solid | undefined {
  const seen = new Set<string>();
  let on = byPart.get(shape.on);
  while (on && isPaint(on) && !seen.has(on.part)) {
    seen.add(on.part);
    on = byPart.get(on.on);
  }
  return on && isPaint(on) ? undefined : on;
}
