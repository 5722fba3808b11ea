import type { Lettering } from '../../../design/schema.ts';
import type { Point, Ring } from '../../../geometry/shape.ts';
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
  /** Added to bridges set by hand that alone would not hold the island: it stays while they do. */
  readonly needed: boolean;
}

/** An island whose bridges can be set by hand. */
export interface Settable {
  /** As bridges set by hand count islands. */
  readonly island: number;
  readonly border: Ring;
  readonly at: Point;
}

/** As many as the design's form takes for one island. */
export const MOST_BRIDGES = 8;

export const angleFrom = (center: Point, p: Point): Deg =>
  Math.round(degrees(Math.atan2(p.y - center.y, p.x - center.x)));

/** Islands that letters enclose, from the left; pieces on a thin neck find their bridge themselves. */
export const settableIslands = ({ stencil: made }: LayerStencil): Settable[] =>
  made.islands.flatMap(({ kind, border, at }, island) => (kind === 'island' ? [{ island, border, at }] : []));

/** Bridges of islands; those of thin tongues go where the tongue is. */
export function movableBridges({ role, stencil: made }: LayerStencil, options: Options): Movable[] {
  const placed = placedOn(role, options);
  return made.islands.flatMap(({ at }, island) => {
    const own = made.bridges.filter((b) => b.island === island && b.kind === 'island');
    const asked = anglesOf(placed, island);
    return own.map((b, index) => ({
      role,
      island,
      index,
      at: b.at,
      angle: (asked?.length === own.length ? asked[index] : undefined) ?? angleFrom(at, b.at),
      needed: asked !== undefined && index >= asked.length,
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
    .slice(0, MOST_BRIDGES);
  return withAngles(options, moved.role, moved.island, angles);
}

/** The settings with one more bridge on an island, by default in the widest gap; null where it has the most it can. */
export function withBridge(
  options: Options,
  movable: readonly Movable[],
  role: Role,
  island: number,
  wanted?: Deg,
): Options | null {
  const angles = anglesNow(options, movable, role, island);
  if (angles.length >= MOST_BRIDGES) return null;
  return withAngles(options, role, island, [...angles, wanted ?? middleOfWidestGap(angles)]);
}

/** The settings with a bridge taken away, the last one too; null where it would come back at once. */
export function withoutBridge(options: Options, movable: readonly Movable[], gone: Movable): Options | null {
  if (gone.needed) return null;
  const angles = anglesNow(options, movable, gone.role, gone.island);
  return withAngles(
    options,
    gone.role,
    gone.island,
    angles.filter((_, i) => i !== gone.index),
  );
}

/** Half way around the widest stretch of border without a bridge. */
export function middleOfWidestGap(angles: readonly Deg[]): Deg {
  const sorted = [...angles].sort((a, b) => a - b);
  const [first] = sorted;
  if (first === undefined) return 90;
  let [at, widest] = [90, 0];
  sorted.forEach((from, i) => {
    const gap = (sorted[i + 1] ?? first + 360) - from;
    if (gap > widest) [at, widest] = [from + gap / 2, gap];
  });
  return wrapped(Math.round(at));
}

/** Above -180, up to 180 degrees. */
export const wrapped = (angle: Deg): Deg => 180 - ((((180 - angle) % 360) + 360) % 360);

const anglesOf = (placed: Options['placed'], island: number): readonly Deg[] | undefined =>
  placed.find((p) => p.island === island)?.angles;

/** What is set by hand, which may be ahead of the bridges that are drawn; else the bridges as they came out. */
const anglesNow = (options: Options, movable: readonly Movable[], role: Role, island: number) =>
  anglesOf(placedOn(role, options), island) ?? movable.filter((m) => m.island === island).map((m) => m.angle);

function withAngles(options: Options, role: Role, island: number, angles: readonly Deg[]): Options {
  const own = placedOn(role, options);
  const rest = options.placed.filter((p) => !own.includes(p));
  const others = own.filter((p) => p.island !== island);
  const layer = role === 'fill' ? {} : { layer: role };
  const mine = [...others, { ...layer, island, angles: [...angles] }].sort((a, b) => a.island - b.island);
  return { ...options, placed: [...rest, ...mine] };
}
