import type { Level } from '../bed/face.ts';
import { isBought, isLettered, isPaint } from '../design/made.ts';
import type { Finish } from '../design/schema.ts';
import { colorOfLight, lightOf } from '../drawing/color.ts';
import type { Color } from '../drawing/drawing.ts';
import { areaOf } from '../geometry/region.ts';
import type { LaidPart } from '../layout/laid.ts';
import { addUp } from '../list/totals.ts';
import type { Material, Stock } from '../materials/types.ts';
import type { ShownArea } from './result.ts';

/** Where no material is known: a pale wood. */
const SOME_WOOD: Color = '#e4cfa4';

/** What everything looks like once it is finished. */
export interface Looks {
  /** By laid part. */
  readonly parts: ReadonlyMap<string, Color>;
  /** What lettering lies on, by sign: the sign as it looks, or the wood that cut-out letters are sawn from. */
  readonly grounds: ReadonlyMap<string, Color>;
}

export interface LookInput {
  readonly parts: readonly LaidPart[];
  readonly levels: readonly Pick<Level, 'id' | 'material'>[];
  readonly finishes: readonly Finish[];
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly materials: ReadonlyMap<string, Material>;
}

/**
 * How a finish looks over a ground. Paint hides it. A clear coat shows it as it is. A stain lets light through
 * to the wood and back: what comes back is, for red, green and blue each, the wood's share times the stain's,
 * in linear light. That is the law of Beer and Lambert for a layer that does not scatter; the stain's own color
 * is what all its coats look like over white, where nothing is taken by the ground.
 */
export function finishOver({ kind, color }: Pick<Finish, 'kind' | 'color'>, ground: Color): Color {
  if (kind === 'paint') return color;
  if (kind === 'clear') return ground;
  const [film, wood] = [lightOf(color), lightOf(ground)];
  return colorOfLight({ r: film.r * wood.r, g: film.g * wood.g, b: film.b * wood.b });
}

const PAPER: Color = '#ffffff';

/**
 * The look of every part: its finish over the wood of its stock; a painted shape over what it lies on; a
 * fitting in its own color; a printed sign in that of its paper. Bare wood looks like its material.
 */
export function looksOf({ parts, levels, finishes, stocks, materials }: LookInput): Looks {
  const byFinish = new Map(finishes.map((finish) => [finish.id, finish]));
  const wood = (stock: string | null): Color =>
    materials.get(stocks.get(stock ?? '')?.material ?? '')?.color ?? SOME_WOOD;
  // Supports stand in the list before what lies on them.
  const looks = new Map<string, Color>(
    levels.map((level) => [level.id, materials.get(level.material)?.color ?? SOME_WOOD]),
  );
  const own = new Map<string, Color>();
  const grounds = new Map<string, Color>();
  const prints = new Set<string>();
  for (const part of parts) {
    const ground = isPaint(part) ? (looks.get(part.on) ?? SOME_WOOD) : wood(part.stock);
    const finish = byFinish.get(part.finish ?? '');
    const look = isBought(part) ? part.spec.color : finish ? finishOver(finish, ground) : ground;
    looks.set(part.id, look);
    own.set(part.id, look);
    if (isLettered(part)) {
      const { make, stock } = part.lettering;
      // Ink of a print lies on white paper.
      const printed = make === 'printed';
      grounds.set(part.id, printed ? PAPER : make === 'cut-out' ? wood(stock ?? part.stock) : look);
      // A block on a printed notice shows its paper.
      const under = prints.has(part.on) && isPaint(part) ? own.get(part.on) : undefined;
      if (printed) own.set(part.id, finish?.color ?? under ?? PAPER);
      if (printed) prints.add(part.id);
    }
  }
  return { parts: own, grounds };
}

/** Whether everything looks the same, in whatever order it was looked at. */
export const sameLooks = (a: Looks, b: Looks): boolean =>
  sameColors(a.parts, b.parts) && sameColors(a.grounds, b.grounds);

const sameColors = (a: ReadonlyMap<string, Color>, b: ReadonlyMap<string, Color>): boolean =>
  a.size === b.size && [...a].every(([id, color]) => b.get(id) === color);

/** How the lettering of a sign looks in a finish; null where the finish or the sign is not known. */
export function letterLook(
  { grounds }: Looks,
  finishes: readonly Finish[],
  sign: string,
  finish: string,
): Color | null {
  const known = finishes.find((f) => f.id === finish);
  const ground = grounds.get(sign);
  return known && ground !== undefined ? finishOver(known, ground) : null;
}

/** The colors that a finish shows on the face, that of the largest area first: a stain has one for each wood. */
export function looksOfFinish(
  shown: readonly Pick<ShownArea, 'finish' | 'look' | 'region'>[],
  finish: string,
): Color[] {
  const areas = new Map<Color, number>();
  for (const { look, region } of shown.filter((area) => area.finish === finish)) {
    if (look !== null) addUp(areas, look, areaOf(region));
  }
  return [...areas].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)).map(([look]) => look);
}
