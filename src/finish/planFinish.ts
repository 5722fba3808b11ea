import type { Check } from '../check/check.ts';
import type { Finish } from '../design/schema.ts';
import type { Color } from '../drawing/drawing.ts';
import { neighborsOf } from '../geometry/meeting.ts';
import { boxOf } from '../geometry/region.ts';
import { KeptResults } from '../layout/kept.ts';
import { pick } from '../list/at.ts';
import { addUp, totalOf } from '../list/totals.ts';
import type { Liters, Mm } from '../measure/units.ts';
import { M2_PER_MM2 } from '../measure/units.ts';
import { tapeAround } from './bare.ts';
import { groundsBeside } from './beneath.ts';
import { ABUT } from './border.ts';
import { type ContainerOffer, chooseContainers } from './containers.ts';
import { contrastChecks, contrastsOf } from './contrast.ts';
import { freeEdges } from './edge.ts';
import type { Boxed, FinishInput, Surface } from './input.ts';
import { beyondFace, paintingOf } from './jobs.ts';
import { letterLook } from './look.ts';
import type { FinishPlan, FinishUse, PaintJob } from './result.ts';
import { type Shown, shownOf } from './show.ts';
import { surfacesOf } from './surface.ts';
import { tapeOf } from './tape.ts';

/** Areas of one finish, square millimeters. */
interface Seen {
  readonly face: number;
  readonly edge: number;
}

/**
 * What every finish covers, how much of it that takes, and what to buy.
 *
 * - Seen faces: what is seen from the room once all that lies above is taken away.
 * - Seen edges: what stands free of neighbors and of the bed's own wood, insides of openings too. Of moldings
 *   what their girth adds to what is seen of them.
 * - Sawn letters: their faces, and their edges all around and in their counters.
 * - Paint and primer: what the steps of the work paint, seen or not (see `paintingOf`).
 *
 * Checks: `finish.no-containers` where paint is needed and no known container holds it; `finish.primer-hides`
 * where a primer is set under a stain or clear coat; `lettering.low-contrast`.
 *
 * @param surfaces those of the input, or earlier ones that are the same
 */
export function planFinish(
  input: FinishInput,
  surfaces: readonly Surface[] = surfacesOf(input),
  results: KeptResults = new KeptResults(),
): FinishPlan {
  const shown = shownOf(surfaces, results);
  const boxed = surfaces.map((surface) => ({ surface, box: boxOf(surface.region) }));
  const near = neighborsOf(
    boxed.map(({ box }) => box),
    ABUT,
  );
  const nearTo = (i: number) => pick(near, i).flatMap((j) => pick(boxed, j));
  const { jobs, bare } = paintingOf(input, surfaces, nearTo, results);
  const seen = new Map<string, Seen>();
  shown.forEach((one, i) => {
    const { finish } = one.surface;
    if (finish === null) return;
    const before = seen.get(finish) ?? { face: 0, edge: 0 };
    const edge = seenEdges(one, () => nearTo(i), input, results);
    seen.set(finish, { face: before.face + one.area, edge: before.edge + edge });
  });
  const tape = tapeOf(shown, near);
  const around = tapeAround(bare);
  const contrasts = contrastsOf(input.lettering, input.looks, input.finishes, (sign) =>
    groundsBeside(sign, shown, (surface) => lookOf(surface, input), results),
  );
  const checks: Check[] = contrastChecks(contrasts);
  const uses = input.finishes.flatMap((finish) => {
    const areas = seen.get(finish.id);
    const own = jobs.filter((job) => job.finish === finish.id);
    return areas
      ? [finishUse(finish, areas, own, totalOf(tape, finish.id) + totalOf(around, finish.id), input, checks)]
      : [];
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
    jobs,
    bare,
    onParts: litersOnParts(jobs, input.finishes),
    before: partsOf(jobs, ['paint-before']),
    after: partsOf(jobs, ['paint-ground', 'paint-after']),
    contrasts,
    checks,
  };
}

/** Parts that the acts paint, each once. */
const partsOf = (jobs: readonly PaintJob[], acts: readonly PaintJob['act'][]): string[] => [
  ...new Set(jobs.filter(({ act }) => acts.includes(act)).map(({ part }) => part)),
];

function litersOnParts(jobs: readonly PaintJob[], finishes: FinishInput['finishes']): FinishPlan['onParts'] {
  const known = new Map(finishes.map((finish) => [finish.id, finish]));
  const liters = new Map<string, Liters>();
  for (const job of jobs) {
    const finish = known.get(job.finish);
    if (!finish) continue;
    const { volume, primer } = amountOf(finish, [job]);
    addUp(liters, job.part, volume + primer);
  }
  return [...liters].map(([part, onIt]) => ({ part, liters: onIt }));
}

/** What a painted or lettered surface looks like; null for the bed's own wood. */
function lookOf({ part, kind, finish }: Surface, { looks, finishes }: FinishInput): Color | null {
  if (kind !== 'letter' && kind !== 'sawn') return looks.parts.get(part) ?? null;
  return letterLook(looks, finishes, part, finish ?? '');
}

/** Edges that stand free in sight, square millimeters. */
function seenEdges(
  { surface, area }: Shown,
  neighbors: () => readonly Boxed[],
  input: FinishInput,
  results: KeptResults,
): number {
  if (surface.kind !== 'solid' && surface.kind !== 'sawn') return 0;
  const stock = input.stocks.get(surface.stock ?? '');
  return stock?.form === 'shaped'
    ? beyondFace(stock, surface, area)
    : freeEdges(surface, neighbors(), results);
}

function finishUse(
  finish: Finish,
  seen: Seen,
  jobs: readonly PaintJob[],
  tape: Mm,
  input: FinishInput,
  checks: Check[],
): FinishUse {
  const onThem = amountOf(finish, jobs);
  const volume = onThem.volume * (1 + input.paint.waste);
  const primer = onThem.primer * (1 + input.paint.waste);
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
    face: seen.face * M2_PER_MM2,
    edge: seen.edge * M2_PER_MM2,
    painted: paintedBy(jobs),
    coats: finish.coats,
    volume,
    primer,
    buy,
    left: Math.max(0, finish.owned_l + bought - volume),
    cost: buy.reduce((all, { count, price }) => all + count * price, 0),
    tape,
  };
}

/** What gets paint or primer at all: last coats go over what is painted already. */
function paintedBy(jobs: readonly PaintJob[]): FinishUse['painted'] {
  const first = jobs.filter(({ act }) => act !== 'last-coat');
  const sum = (of: 'face' | 'edge' | 'back') => first.reduce((all, job) => all + job[of], 0);
  return { face: sum('face'), edge: sum('edge'), back: sum('back') };
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

/** Paint and primer of what is painted, as it goes on: coats x area / spreading rate. */
function amountOf(finish: Finish, jobs: readonly PaintJob[]): { volume: Liters; primer: Liters } {
  let volume = 0;
  let primer = 0;
  for (const { face, edge, back, primed, coats, primerCoats } of jobs) {
    volume += ((face + edge + back) * coats) / finish.rate_m2_l;
    if (finish.primer) primer += (primed * primerCoats) / finish.primer.rate_m2_l;
  }
  return { volume, primer };
}
