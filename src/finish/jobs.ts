import type { Finish } from '../design/schema.ts';
import { subtractedArea } from '../geometry/clip.ts';
import type { Region } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { trueAreaOf } from '../geometry/trueArea.ts';
import type { KeptResults } from '../layout/kept.ts';
import { isOnLetters } from '../lettering/result.ts';
import type { ShapedStock } from '../materials/types.ts';
import type { Mm } from '../measure/units.ts';
import { M2_PER_MM2 } from '../measure/units.ts';
import { bareOn } from './bare.ts';
import { freeEdges } from './edge.ts';
import type { Boxed, FinishInput, Surface } from './input.ts';
import type { BareArea, PaintJob } from './result.ts';
import { type Way, waysOf } from './ways.ts';

/** Everything that is painted, when and how often, and what stays bare for glue. */
interface Painting {
  readonly jobs: readonly PaintJob[];
  readonly bare: readonly BareArea[];
}

/** Areas of one job, square millimeters. */
interface Sizes {
  readonly face: number;
  readonly edge: number;
  readonly back: number;
}

/** A surface with what lies around it and what its finish asks for. */
interface Work {
  readonly surface: Surface;
  readonly finish: Finish;
  readonly neighbors: readonly Boxed[];
  readonly bare: readonly BareArea[];
  readonly input: FinishInput;
  readonly results: KeptResults;
}

/**
 * All painting as the steps of the work tell it, one job for each part, finish and step, in the order of the parts.
 *
 * - On the bench: the whole face but where something will be glued onto it, and all edges but those that a
 *   joint will be glued to. All coats but the last one, or all (see `waysOf`).
 * - The last coat, and parts painted in place: what no wood covers by then, and the edges that stand free.
 * - Painted shapes: all of them, under later ones too; the steps mask nothing but what will be glued.
 * - Lettering: all that its way of making paints.
 * - Backs, with back-priming: what no other step reaches, once, before anything is fixed; not where glue goes.
 *   Of primer where the finish has one, else of the finish.
 *
 * Primer goes under the first coat of all of it but lettering, and painted shapes that lie on a finish.
 *
 * @param surfaces from the highest to the deepest
 * @param neighborsOf what overlaps or touches the i-th surface
 * @param results what was found of them before
 */
export function paintingOf(
  input: FinishInput,
  surfaces: readonly Surface[],
  neighborsOf: (index: number) => readonly Boxed[],
  results: KeptResults,
): Painting {
  const ways = waysOf(input.solids, input.finishes);
  const finishes = new Map(input.finishes.map((finish) => [finish.id, finish]));
  const jobs: PaintJob[] = [];
  const bare: BareArea[] = [];
  // From the back: what is painted first stands before what is painted over it.
  for (let i = surfaces.length - 1; i >= 0; i--) {
    const surface = surfaces[i];
    const finish = finishes.get(surface?.finish ?? '');
    if (!surface || !finish) continue;
    const neighbors = neighborsOf(i);
    const way = ways.get(surface.part);
    const early = surface.kind !== 'letter' && surface.kind !== 'sawn' && way !== 'place';
    const own = early ? bareOn(surface, neighbors, input.glued, results) : [];
    bare.push(...own);
    jobs.push(...jobsOf({ surface, finish, neighbors, bare: own, input, results }, way));
  }
  const rank = new Map(input.solids.map(({ part }, i) => [part, i]));
  const inOrder = merged(jobs).sort((a, b) => (rank.get(a.part) ?? 0) - (rank.get(b.part) ?? 0));
  return { jobs: inOrder, bare };
}

function jobsOf(work: Work, way: Way | undefined): PaintJob[] {
  switch (work.surface.kind) {
    case 'letter':
      return [letterJob(work, way)];
    case 'sawn':
      return [sawnJob(work)];
    case 'painted':
      return [shapeJob(work, way)];
    default:
      return [...backJobs(work, way), ...solidJobs(work, way)];
  }
}

function job(work: Work, act: PaintJob['act'], sizes: Sizes, coats: number, primerCoats: number): PaintJob {
  const { surface, input } = work;
  const stock = input.stocks.get(surface.stock ?? '');
  const thirst = stock?.form === 'shaped' ? 1 : (input.materials.get(stock?.material ?? '')?.edgeThirst ?? 1);
  const { face, edge, back } = sizes;
  return {
    act,
    part: surface.part,
    finish: work.finish.id,
    of: surface.role ?? 'part',
    face: face * M2_PER_MM2,
    edge: edge * M2_PER_MM2,
    back: back * M2_PER_MM2,
    primed: (face + edge * thirst + back) * M2_PER_MM2,
    coats,
    primerCoats,
  };
}

const primerCoatsOf = ({ primer }: Finish): number => primer?.coats ?? 0;

function solidJobs(work: Work, way: Way | undefined): PaintJob[] {
  const { finish } = work;
  const primer = primerCoatsOf(finish);
  if (way === 'place') return [job(work, 'paint-after', inPlace(work), finish.coats, primer)];
  const flat = onBench(work);
  if (way === 'bench-all') return [job(work, 'paint-before', flat, finish.coats, primer)];
  return [
    job(work, 'paint-before', flat, finish.coats - 1, primer),
    job(work, 'last-coat', inPlace(work), 1, 0),
  ];
}

/** Lying flat: all of the face but what stays bare, and the edges that no joint takes up. */
function onBench(work: Work): Sizes {
  const { surface, neighbors, input, results } = work;
  const face = withoutBare(work);
  const joined = input.joined.get(surface.part);
  const cheeks = neighbors.filter((other) => joined?.has(other.surface.part));
  return withEdges(work, face, () => freeEdges(surface, cheeks, results));
}

/** As it stands once everything is fixed. */
function inPlace(work: Work): Sizes {
  const { surface, neighbors, results } = work;
  return withEdges(work, openFace(work), () => freeEdges(surface, neighbors, results));
}

/** The face less the wood that lies over it by then. */
const openFace = ({ surface, neighbors, results }: Work): number =>
  without(
    { surface, of: 'painted', results },
    neighbors.flatMap(({ surface: { kind, z, region } }) =>
      kind !== 'painted' && kind !== 'letter' && z > surface.z + SAME_LENGTH ? [region] : [],
    ),
  );

/** The face less what stays bare. */
const withoutBare = ({ surface, bare, results }: Work): number =>
  without(
    { surface, of: 'painted', results },
    bare.map(({ region }) => region),
  );

/** The area of an outline of a surface less what covers it. */
function without(
  { surface, of, results }: Pick<Work, 'surface' | 'results'> & { readonly of: 'region' | 'painted' },
  covers: readonly Region[],
): number {
  const whole = surface[of];
  if (covers.length === 0) return trueAreaOf(whole);
  return results.of(surface, `${of} less ${covers.length}`, covers, () =>
    subtractedArea(whole, covers.flat()),
  );
}

/** Moldings are painted by their girth; their sawn ends, a few square centimeters, are not counted. */
function withEdges({ surface, input }: Work, face: number, edges: () => number): Sizes {
  const stock = input.stocks.get(surface.stock ?? '');
  if (stock?.form !== 'shaped') return { face, edge: edges() + (surface.beyond ?? 0), back: 0 };
  return { face, edge: beyondFace(stock, surface, face), back: 0 };
}

/** What the girth of a molding adds to its flat view. */
export const beyondFace = (stock: ShapedStock, surface: Surface, face: number): number =>
  face * Math.max(0, stock.girth / flatView(stock, surface) - 1);

/** Width of a molding as the room sees it: its thickness where it stands on its edge. */
function flatView(stock: ShapedStock, surface: Surface): Mm {
  const height = surface.z - surface.bottom;
  const onEdge =
    Math.abs(height - stock.thickness) > SAME_LENGTH && Math.abs(height - stock.width) <= SAME_LENGTH;
  return onEdge ? stock.thickness : stock.width;
}

/** With back-priming: the underside, and of parts painted in place the face that is covered by then. */
function backJobs(work: Work, way: Way | undefined): PaintJob[] {
  const { surface, neighbors, finish, input, results } = work;
  const outline = { surface, of: 'region', results } as const;
  if (!input.paint.backPriming) return [];
  const glued = input.glued.has(surface.part);
  const under = neighbors.flatMap(({ surface: { kind, z, region } }) =>
    glued && (kind === 'solid' || kind === 'level') && Math.abs(z - surface.bottom) <= SAME_LENGTH
      ? [region]
      : [],
  );
  let back = without(outline, under);
  if (way === 'place') {
    const bare = bareOn(surface, neighbors, input.glued, results).map(({ region }) => region);
    back += without(outline, bare) - openFace(work);
  }
  const primes = primerCoatsOf(finish) > 0;
  const sizes = { face: 0, edge: 0, back: Math.max(0, back) };
  return [job(work, 'prime-backs', sizes, primes ? 0 : 1, primes ? 1 : 0)];
}

function shapeJob(work: Work, way: Way | undefined): PaintJob {
  const { surface, finish, input } = work;
  const under = input.solids.find(({ part }) => part === surface.on);
  const primer = (under?.finish ?? null) === null ? primerCoatsOf(finish) : 0;
  if (way === 'place') {
    return job(work, 'paint-after', { face: openFace(work), edge: 0, back: 0 }, finish.coats, primer);
  }
  const face = withoutBare(work);
  const act = way === 'ground' ? 'paint-ground' : 'paint-before';
  return job(work, act, { face, edge: 0, back: 0 }, finish.coats, primer);
}

/** A bare sign, or what has no board, is lettered once everything is fixed, what lies on it too. */
function letterJob(work: Work, way: Way | undefined): PaintJob {
  const { surface, finish, input } = work;
  const sawn = input.sawn.some(({ part }) => part === surface.part);
  const around = sawn && !isOnLetters(surface.role);
  const act = around ? 'paint-around-letters' : sawn ? 'mount-letters' : 'letter';
  const onFace = (way === undefined || way === 'place') && !sawn;
  const face = onFace ? openFace(work) : trueAreaOf(surface.painted);
  return job(work, act, { face, edge: 0, back: 0 }, finish.coats, 0);
}

/** A sawn letter is painted before it is glued on, all around; letters do not touch each other. */
function sawnJob(work: Work): PaintJob {
  const { surface, finish, results } = work;
  const face = trueAreaOf(surface.region);
  const edge = freeEdges(surface, [], results);
  return job(work, 'mount-letters', { face, edge, back: 0 }, finish.coats, primerCoatsOf(finish));
}

/** Jobs of one kind on one part as one. */
function merged(jobs: readonly PaintJob[]): PaintJob[] {
  const all = new Map<string, PaintJob>();
  for (const one of jobs) {
    if (one.face + one.edge + one.back === 0 || one.coats + one.primerCoats === 0) continue;
    const key = [one.act, one.part, one.finish, one.of, one.coats, one.primerCoats].join('|');
    const before = all.get(key);
    const sum = (of: 'face' | 'edge' | 'back' | 'primed') => one[of] + (before?.[of] ?? 0);
    all.set(key, { ...one, face: sum('face'), edge: sum('edge'), back: sum('back'), primed: sum('primed') });
  }
  return [...all.values()];
}
