import type { Lettering } from '../../../design/schema.ts';
import type { Point } from '../../../geometry/shape.ts';
import { type LayerStencil, placedOn } from '../../../lettering/stencil/layers.ts';
import { type Deg, degrees } from '../../../measure/units.ts';

type Options = Lettering['stencil'];
type Role = LayerStencil['role'];

/** A bridge that can be moved by hand: its island, and which of the island's bridges it is. */
export interface Movable {
  readonly role: Role;
  readonly island: number;
  readonly index: number;
  readonly at: Point;
  /** Direction in which it leaves the island, as it was asked for or as it came out. */
  readonly angle: Deg;
}

export const angleFrom = (center: Point, p: Point): Deg =>
  Math.round(degrees(Math.atan2(p.y - center.y, p.x - center.x)));

/** Bridges of islands; those of thin tongues go where the tongue is. */
export function movableBridges({ role, stencil: made }: LayerStencil, options: Options): Movable[] {
  const placed = placedOn(role, options);
  return made.islands.flatMap(({ at }, island) => {
    const own = made.bridges.filter((b) => b.island === island && b.kind === 'island');
    const asked = placed.find((p) => p.island === island)?.angles;
    return own.map((b, index) => ({
      role,
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
    .map((m) => (m.index === moved.index ? angle : m.angle))
    .slice(0, 8);
  const own = placedOn(moved.role, options);
  const rest = options.placed.filter((p) => !own.includes(p));
  const others = own.filter((p) => p.island !== moved.island);
  const layer = moved.role === 'fill' ? {} : { layer: moved.role };
  const mine = [...others, { ...layer, island: moved.island, angles }].sort((a, b) => a.island - b.island);
  return { ...options, placed: [...rest, ...mine] };
}
