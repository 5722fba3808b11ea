import type { Face } from '../../bed/face.ts';
import type { Check } from '../../check/check.ts';
import { stopsAt } from '../../design/ends.ts';
import { isBoards } from '../../design/made.ts';
import { asOne } from '../../geometry/clip.ts';
import { regionOfBox } from '../../geometry/region.ts';
import type { Region } from '../../geometry/shape.ts';
import { pick } from '../../list/at.ts';
import { levelOf, readReference } from '../reference.ts';
import type { PlacedPart, Placing, Source, Unstopped } from './placed.ts';
import { regionOfFill } from './shape.ts';
import { isToStop, type Missed, stopped, stopsAskedOf } from './stop.ts';

/**
 * Brings the ends of all strips and runs that stop at something to its border, what they stop at first. Of parts
 * that stop at each other in a circle one counts as it was laid. What did not change is the same object as before.
 *
 * @param ranks where each part of the design stands in `placed`
 */
export function withStops(
  placed: readonly PlacedPart[],
  ranks: ReadonlyMap<string, number>,
  face: Face,
  cutAround: CutAround,
): readonly PlacedPart[] {
  if (!placed.some(mayStop)) return placed;
  const done: (PlacedPart | undefined)[] = placed.map((one) => (mayStop(one) ? undefined : one));
  const open = new Set<number>();
  const settle = (rank: number): PlacedPart => {
    const known = done[rank];
    const own = pick(placed, rank);
    if (known || open.has(rank)) return known ?? own.unstopped?.placed ?? own;
    open.add(rank);
    const placedOf = (id: string): PlacedPart | null => {
      const other = ranks.get(id);
      return other === undefined ? null : settle(other);
    };
    const now = stoppedPart(own, (of) => sourceOf(of, own, face, placedOf), cutAround);
    done[rank] = now;
    return now;
  };
  return placed.map((_, rank) => settle(rank));
}

/** A fill with its pieces cut by what lies in their way. */
export type CutAround = (own: PlacedPart, less: Region) => PlacedPart;

/** Whether a part of the design, or what it is many of, has an end that is to stop. */
const mayStop = ({ from }: PlacedPart): boolean => stopsAt(from.part, () => true);

function sourceOf(
  of: string,
  own: PlacedPart,
  face: Face,
  placedOf: (id: string) => PlacedPart | null,
): Source | null {
  const reference = readReference(of);
  if (reference.to === 'face') return face;
  if (reference.to === 'level') return levelOf(face, reference.level) ?? null;
  if (reference.part === own.from.part.id) return null;
  const other = placedOf(reference.part);
  if (reference.to === 'part' || other === null) return other;
  return other.placings.find(({ laid }) => laid.id === of) ?? null;
}

function borderOf(source: Source | null): Region {
  if (source === null) return [];
  if ('laid' in source) return source.laid.region;
  if ('levels' in source) return regionOfBox(source.box);
  if ('region' in source) return source.region;
  const { part, box } = source.from;
  if (isBoards(part)) return regionOfFill(part, box);
  const regions = source.placings.map(({ laid }) => laid.region);
  return asOne(regions);
}

function stoppedPart(
  own: PlacedPart,
  source: (of: string) => Source | null,
  cutAround: CutAround,
): PlacedPart {
  const uncut = own.unstopped?.placed ?? own;
  const { part } = uncut.from;
  const around = isBoards(part) ? (part.around ?? []) : [];
  const named = new Set([
    ...around,
    ...uncut.placings.flatMap(({ laid }) => stopsAskedOf(laid).map(({ at }) => at)),
  ]);
  const sources = new Map([...named].map((of) => [of, source(of)] as const));
  if (own.unstopped && sameSources(own.unstopped.sources, sources)) return own;
  const borders = new Map([...sources].map(([of, one]) => [of, borderOf(one)] as const));
  if (around.length > 0) {
    const missing = around
      .filter((of) => !sources.get(of))
      .map((at): Missed => ({ end: 'end', at, meets: 'nowhere' }));
    const cut = cutAround(uncut, asOne([...borders.values()]));
    const checks = [...cut.checks, ...missedChecks(part.id, missing, sources, 'around')];
    return { ...cut, checks, unstopped: { placed: uncut, sources } };
  }
  const missed: Missed[] = [];
  const placings = uncut.placings.map((placing): Placing => {
    if (!isToStop(placing.laid)) return placing;
    const { laid, bounds, missed: own } = stopped(placing.laid, borders);
    missed.push(...own);
    return { laid, bounds };
  });
  const checks = [...uncut.checks, ...missedChecks(uncut.from.part.id, missed, sources)];
  return { ...uncut, placings, checks, unstopped: { placed: uncut, sources } };
}

const sameSources = (a: Unstopped['sources'], b: Unstopped['sources']): boolean =>
  a.size === b.size && [...a].every(([of, source]) => b.get(of) === source && b.has(of));

/** What does not come to its border is told once for each border and reason, with how many ends. */
function missedChecks(
  part: string,
  missed: readonly Missed[],
  sources: Unstopped['sources'],
  unknown: 'unknown' | 'around' = 'unknown',
): Check[] {
  const told = new Map<string, { readonly at: string; readonly why: string; count: number }>();
  for (const { at, meets } of missed) {
    const why = sources.get(at) ? meets : unknown;
    const known = told.get(`${at} ${why}`) ?? { at, why, count: 0 };
    known.count++;
    told.set(`${at} ${why}`, known);
  }
  return [...told.values()].map(({ at, why, count }) => ({
    code: 'end.not-met',
    severity: 'warning',
    parts: [part],
    figures: { at, why, count },
  }));
}
