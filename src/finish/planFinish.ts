import type { Check } from '../check/check.ts';
import type { Finish } from '../design/schema.ts';
import type { Color } from '../drawing/drawing.ts';
import { areaOf, boxOf } from '../geometry/region.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Solid } from '../joinery/piece.ts';
import type { ShapedStock } from '../materials/types.ts';
import type { Liters, Mm } from '../measure/units.ts';
import { type Areas, amountOf } from './amount.ts';
import { paintingOrder } from './before.ts';
import { ABUT } from './border.ts';
import { type ContainerOffer, chooseContainers } from './containers.ts';
import { contrastChecks } from './contrast.ts';
import { freeEdges } from './edge.ts';
import type { Boxed, FinishInput, Surface } from './input.ts';
import { letterLook } from './look.ts';
import { near } from './near.ts';
import type { FinishPlan, FinishUse } from './result.ts';
import { type Shown, shownOf } from './show.ts';
import { surfacesOf } from './surface.ts';
import { tapeOf } from './tape.ts';

const M2_PER_MM2 = 1e-6;
/** Paint that a part carries: what is lost in tray, roller and brush never gets there. */
const NO_WASTE = 0;

/** Running sums of one finish, square millimeters. */
interface Sums {
  readonly face: number;
  readonly edge: number;
  readonly back: number;
  readonly primed: number;
}

/**
 * What every finish covers, how much of it that takes, and what to buy.
 *
 * - Faces: what is seen from the room once all that lies above is taken away.
 * - Edges: what stands free of neighbors and of the bed's own wood, insides of openings too. Moldings are
 *   painted by their girth over what is seen of them; their sawn ends, a few square centimeters, are not counted.
 * - Sawn letters: their faces, and their edges all around and in their counters.
 * - Backs, with back-priming: the underside of every part with a finish, and the face that others cover.
 * - Primer goes under all of it but painted shapes and lettering that lie on a finish already.
 *
 * Checks: `finish.no-containers` where paint is needed and no known container holds it; `finish.primer-hides`
 * where a primer is set under a stain or clear coat; `lettering.low-contrast`.
 */
export function planFinish(input: FinishInput): FinishPlan {
  const surfaces = surfacesOf(input);
  const shown = shownOf(surfaces);
  const boxed = surfaces.map((surface) => ({ surface, box: boxOf(surface.region) }));
  const neighborsOf = near(
    boxed.map(({ box }) => box),
    ABUT,
  );
  const solids = new Map(input.solids.map((solid) => [solid.part, solid]));
  const sums = new Map<string, Sums>();
  const finishes = new Map(input.finishes.map((finish) => [finish.id, finish]));
  const liters = new Map<string, Liters>();
  shown.forEach((seen, i) => {
    const { finish, part } = seen.surface;
    if (finish === null) return;
    const own = sumsOf(seen, () => neighborsOf(i).flatMap((j) => boxed[j] ?? []), solids, input);
    sums.set(finish, plus(sums.get(finish), own));
    const known = finishes.get(finish);
    if (!known) return;
    const { volume, primer } = amountOf(known, areasOf(own), NO_WASTE);
    liters.set(part, (liters.get(part) ?? 0) + volume + primer);
  });
  const tape = tapeOf(shown, neighborsOf);
  const checks: Check[] = contrastChecks(input.lettering, input.looks, input.finishes);
  const uses = input.finishes.flatMap((finish) => {
    const sum = sums.get(finish.id);
    return sum ? [finishUse(finish, sum, tape.get(finish.id) ?? 0, input, checks)] : [];
  });
  return {
    uses,
    shown: shown
      .filter(({ region }) => region.length > 0)
      .map(({ surface, region }) => ({
        part: surface.part,
        finish: surface.finish,
        look: lookOf(surface, input),
        z: surface.z,
        region,
      })),
    onParts: [...liters].map(([part, onIt]) => ({ part, liters: onIt })),
    ...paintingOrder(input.solids),
    checks,
  };
}

/** What a painted or lettered surface looks like; null for the bed's own wood. */
function lookOf({ part, kind, finish }: Surface, { looks, finishes }: FinishInput): Color | null {
  if (kind !== 'letter' && kind !== 'sawn') return looks.parts.get(part) ?? null;
  return letterLook(looks, finishes, part, finish ?? '');
}

const liesOnFinish = (surface: Surface, solids: ReadonlyMap<string, Solid>): boolean =>
  (solids.get(surface.on ?? '')?.finish ?? null) !== null;

const plus = (a: Sums | undefined, b: Sums): Sums =>
  a
    ? { face: a.face + b.face, edge: a.edge + b.edge, back: a.back + b.back, primed: a.primed + b.primed }
    : b;

const areasOf = (sum: Sums): Areas => ({
  face: sum.face * M2_PER_MM2,
  edge: sum.edge * M2_PER_MM2,
  back: sum.back * M2_PER_MM2,
  primed: sum.primed * M2_PER_MM2,
});

/** What one surface adds to the sums of its finish. */
function sumsOf(
  seen: Shown,
  neighbors: () => readonly Boxed[],
  solids: ReadonlyMap<string, Solid>,
  input: FinishInput,
): Sums {
  const { surface, area } = seen;
  if (surface.kind === 'solid' || surface.kind === 'sawn') return solidSums(seen, neighbors(), input);
  const primed = surface.kind === 'painted' && !liesOnFinish(surface, solids) ? area : 0;
  return { face: area, edge: 0, back: 0, primed };
}

function solidSums({ surface, area }: Shown, neighbors: readonly Boxed[], input: FinishInput): Sums {
  const stock = input.stocks.get(surface.stock ?? '');
  const back = input.paint.backPriming ? 2 * areaOf(surface.region) - area : 0;
  if (stock?.form === 'shaped') {
    const beyond = area * Math.max(0, stock.girth / flatView(stock, surface) - 1);
    return { face: area, edge: beyond, back, primed: area + beyond };
  }
  const thirst = input.materials.get(stock?.material ?? '')?.edgeThirst ?? 1;
  const edge = freeEdges(surface, neighbors);
  return { face: area, edge, back, primed: area + edge * thirst };
}

/** Width of a molding as the room sees it: its thickness where it stands on its edge. */
function flatView(stock: ShapedStock, surface: Surface): Mm {
  const height = surface.z - surface.bottom;
  const onEdge =
    Math.abs(height - stock.thickness) > SAME_LENGTH && Math.abs(height - stock.width) <= SAME_LENGTH;
  return onEdge ? stock.thickness : stock.width;
}

function finishUse(finish: Finish, sum: Sums, tape: Mm, input: FinishInput, checks: Check[]): FinishUse {
  const areas = areasOf(sum);
  const { volume, primer } = amountOf(finish, areas, input.paint.waste);
  const offers = offersOf(finish, input);
  const need = Math.max(0, volume - finish.owned_l);
  const buy = chooseContainers(need, offers);
  if (need > 0 && offers.length === 0) {
    checks.push({
      code: 'finish.no-containers',
      severity: 'warning',
      parts: [],
      figures: { finish: finish.id },
    });
  }
  if (finish.kind !== 'paint' && primer > 0) {
    const figures = { finish: finish.id };
    checks.push({ code: 'finish.primer-hides', severity: 'warning', parts: [], figures });
  }
  const bought = buy.reduce((all, { count, volume: each }) => all + count * each, 0);
  return {
    finish: finish.id,
    face: areas.face,
    edge: areas.edge,
    back: areas.back,
    coats: finish.coats,
    volume,
    primer,
    buy,
    left: Math.max(0, finish.owned_l + bought - volume),
    cost: buy.reduce((all, { count, price }) => all + count * price, 0),
    tape,
  };
}

/**
 * Containers of the chosen system that the finish names with their prices; where it names none of that system,
 * every size of it, unpriced.
 */
function offersOf(finish: Finish, { containers, paint }: FinishInput): ContainerOffer[] {
  const sold = containers.filter((container) => container.system === paint.containers);
  const named = sold.flatMap(({ id, volume }): ContainerOffer[] => {
    const offer = finish.containers.find((entry) => entry.container === id);
    return offer ? [{ container: id, volume, price: offer.price }] : [];
  });
  if (named.length > 0) return named;
  const known = finish.containers.filter(({ container }) => containers.some(({ id }) => id === container));
  if (finish.containers.length > 0 && known.length === 0) return [];
  return sold.map(({ id, volume }) => ({ container: id, volume, price: null }));
}
