import type { Lettering } from '../../../design/schema.ts';
import type { Point } from '../../../geometry/shape.ts';
import type { Stencil } from '../../../lettering/result.ts';
import { type Deg, degrees } from '../../../measure/units.ts';

type Options = Lettering['stencil'];

/** A bridge that can be moved by hand: its island, and which of the island's bridges it is. */
export interface Movable {
  readonly island: number;
  readonly index: number;
  readonly at: Point;
  /** Direction in which it leaves the island, as it was asked for or as it came out. */
  readonly angle: Deg;
}

export const angleFrom = (center: Point, p: Point): Deg =>
  Math.round(degrees(Math.atan2(p.y - center.y, p.x - center.x)));

/** Bridges of islands; those of thin tongues go where the tongue is. */
export function movableBridges(made: Stencil, options: Options): Movable[] {
  return made.islands.flatMap(({ at }, island) => {
    const own = made.bridges.filter((b) => b.island === island && b.kind === 'island');
    const asked = options.placed.find((p) => p.island === island)?.angles;
    return own.map((b, index) => ({
      island,
      index,
      at: b.at,
      angle: (asked?.length === own.length ? asked[index] : undefined) ?? angleFrom(at, b.at),
    }));
  });
}

/** The stencil's settings with one bridge of an island moved and the others of that island kept. */
export function withBridgeAt(
  options: Options,
  movable: readonly Movable[],
  moved: Movable,
  angle: Deg,
): Options {
  const angles = movable
    .filter((m) => m.island === moved.island)
    .map((m) => (m.index === moved.index ? angle : m.angle));
  const others = options.placed.filter((p) => p.island !== moved.island);
  const placed = [...others, { island: moved.island, angles: angles.slice(0, 8) }];
  return { ...options, placed: placed.sort((a, b) => a.island - b.island) };
}
