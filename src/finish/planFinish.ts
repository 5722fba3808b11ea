import type { Check } from '../check/check.ts';
import type { Finish } from '../design/schema.ts';
import { areaOf, boxOf } from '../geometry/region.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Solid } from '../joinery/piece.ts';
import type { ShapedStock } from '../materials/types.ts';
import type { Mm } from '../measure/units.ts';
import { type Areas, amountOf } from './amount.ts';
import { paintingOrder } from './before.ts';
import { ABUT } from './border.ts';
import { type ContainerOffer, chooseContainers } from './containers.ts';
import { contrastChecks } from './contrast.ts';
import { freeEdges } from './edge.ts';
import type { FinishInput, Surface } from './input.ts';
import { near } from './near.ts';
import type { FinishPlan, FinishUse } from './result.ts';
import { type Shown, shownOf } from './show.ts';
import { surfacesOf } from './surface.ts';
import { tapeOf } from './tape.ts';

const M2_PER_MM2 = 1e-6;

/** Running sums of one finish, square millimeters. */
interface Sums {
  face: number;
  edge: number;
  back: number;
  primed: number;
}

/**
 * What every finish covers, how much of it that takes, and what to buy.
 *
 * - Faces: what is seen from the room once all that lies above is taken away.
 * - Edges: what stands free of neighbors and of the bed's own wood, insides of openings too. Moldings are
 *   painted by their girth over what is seen of them; their sawn ends, a few square centimeters, are not counted.
 * - Backs, with back-priming: the underside of every part with a finish, and the face that others cover.
 * - Primer goes under all of it but painted shapes and lettering that lie on a finish already.
 *
 * Checks: `finish.no-containers` where paint is needed and no known container holds it;
 * `lettering.low-contrast`.
 */
export function planFinish(input: FinishInput): FinishPlan {
  const surfaces = surfacesOf(input);
  const shown = shownOf(surfaces);
  const neighborsOf = near(
    surfaces.map((surface) => boxOf(surface.region)),
    ABUT,
  );
  const solids = new Map(input.solids.map((solid) => [solid.part, solid]));
  const sums = new Map<string, Sums>();
  shown.forEach((seen, i) => {
    const { finish, kind } = seen.surface;
    if (finish === null) return;
    const sum = sums.get(finish) ?? { face: 0, edge: 0, back: 0, primed: 0 };
    sums.set(finish, sum);
    if (kind === 'solid') {
      const neighbors = neighborsOf(i).flatMap((j) => surfaces[j] ?? []);
      addSolid(sum, seen, neighbors, solids.get(seen.surface.part), input);
    } else {
      sum.face += seen.area;
      if (kind === 'painted' && !liesOnFinish(seen.surface, solids)) sum.primed += seen.area;
    }
  });
  const tape = tapeOf(shown, neighborsOf);
  const checks: Check[] = contrastChecks(
    input.lettering,
    (sign) => solids.get(sign)?.finish ?? null,
    input.finishes,
  );
  const uses = input.finishes.flatMap((finish) => {
    const sum = sums.get(finish.id);
    return sum ? [finishUse(finish, sum, tape.get(finish.id) ?? 0, input, checks)] : [];
  });
  return {
    uses,
    shown: shown
      .filter(({ region }) => region.length > 0)
      .map(({ surface, region }) => ({ part: surface.part, finish: surface.finish, z: surface.z, region })),
    ...paintingOrder(input.solids),
    checks,
  };
}

const liesOnFinish = (surface: Surface, solids: ReadonlyMap<string, Solid>): boolean =>
  (solids.get(surface.on ?? '')?.finish ?? null) !== null;

function addSolid(
  sum: Sums,
  { surface, area }: Shown,
  neighbors: readonly Surface[],
  solid: Solid | undefined,
  input: FinishInput,
): void {
  const stock = input.stocks.get(solid?.stock ?? '');
  const thirst = input.materials.get(stock?.material ?? '')?.edgeThirst ?? 1;
  sum.face += area;
  sum.primed += area;
  if (stock?.form === 'shaped') {
    const beyond = area * Math.max(0, stock.girth / flatView(stock, surface) - 1);
    sum.edge += beyond;
    sum.primed += beyond;
  } else {
    const edge = freeEdges(surface, neighbors);
    sum.edge += edge;
    sum.primed += edge * thirst;
  }
  if (input.paint.backPriming) sum.back += 2 * areaOf(surface.region) - area;
}

/** Width of a molding as the room sees it: its thickness where it stands on its edge. */
function flatView(stock: ShapedStock, surface: Surface): Mm {
  const height = surface.z - surface.bottom;
  const onEdge =
    Math.abs(height - stock.thickness) > SAME_LENGTH && Math.abs(height - stock.width) <= SAME_LENGTH;
  return onEdge ? stock.thickness : stock.width;
}

function finishUse(finish: Finish, sum: Sums, tape: Mm, input: FinishInput, checks: Check[]): FinishUse {
  const areas: Areas = {
    face: sum.face * M2_PER_MM2,
    edge: sum.edge * M2_PER_MM2,
    back: sum.back * M2_PER_MM2,
    primed: sum.primed * M2_PER_MM2,
  };
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

/** Containers the finish names with their prices; where it names none, every size of the system, unpriced. */
function offersOf(finish: Finish, { containers, paint }: FinishInput): ContainerOffer[] {
  if (finish.containers.length === 0) {
    return containers
      .filter((container) => container.system === paint.containers)
      .map(({ id, volume }) => ({ container: id, volume, price: null }));
  }
  return finish.containers.flatMap(({ container, price }) => {
    const found = containers.find((entry) => entry.id === container);
    return found ? [{ container, volume: found.volume, price }] : [];
  });
}
