import { factsOf } from '../design/job/record.ts';
import type { Fact } from '../design/job/schema.ts';
import { isLettered } from '../design/made.ts';
import type { Finish } from '../design/schema.ts';
import type { Box, Region } from '../geometry/shape.ts';
import { SAME_PLACE } from '../geometry/tolerance.ts';
import type { Piece } from '../joinery/piece.ts';
import type { LaidPart } from '../layout/laid.ts';
import { pick } from '../list/at.ts';
import { sameValue } from '../list/sameValue.ts';
import type { Stock } from '../materials/types.ts';
import { finishOfPaint, hadOf, lookOfPaint } from './bought.ts';
import { knownAgain } from './known.ts';
import { isMarked, markOf } from './mark.ts';

/**
 * What a change would do to something that is done: a part that is on moves, its wood would be of another size, its ends
 * would be cut otherwise for what it meets, paint would be another, or the part goes; or paint that is bought would serve
 * nothing any more.
 */
export type How = 'moved' | 'resized' | 'recut' | 'repainted' | 'gone' | 'unused';

export interface Touched {
  /** Part of the design; the finish where its paint would be `unused`. */
  readonly part: string;
  readonly how: How;
}

/** A design as far as what is done asks for it: laid out, and sawn. */
export interface There {
  /** What holds of the job. */
  readonly facts: readonly Fact[];
  readonly parts: readonly LaidPart[];
  /** Those of letters apart. */
  readonly pieces: readonly Piece[];
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly finishes: readonly Finish[];
}

/** Which is told of a part where several are: what is done anew for it covers the rest. */
const FIRST: readonly How[] = ['gone', 'resized', 'moved', 'recut', 'repainted', 'unused'];

/** What is done of laid parts, by their ids. */
interface DoneParts {
  readonly cut: ReadonlySet<string>;
  readonly fastened: ReadonlySet<string>;
  /** In which finishes. */
  readonly painted: ReadonlyMap<string, ReadonlySet<string>>;
}

/**
 * The parts with something done that a change touches, each once: by the pieces as they are planned, whether the change
 * is one of the part itself or of what it meets.
 */
export function touchedBy(before: There, after: There): readonly Touched[] {
  if (before.facts.length === 0) return [];
  const done = doneParts(before.facts);
  const now = new Map(after.parts.map((laid) => [laid.id, laid]));
  const recut = madeOtherwise(before, after, done.fastened);
  const repainted = finishesChanged(before.finishes, after.finishes);
  const found = new Map<string, How>();
  for (const was of before.parts) {
    const hows = howsOf(was, now.get(was.id), done, repainted);
    if (recut.has(was.id)) hows.add(isOtherwiseMade(was, now.get(was.id)) ? 'resized' : 'recut');
    const before = found.get(was.part);
    const [how] = FIRST.filter((one) => one === before || hows.has(one));
    if (how) found.set(was.part, how);
  }
  const parts = [...found].map(([part, how]) => ({ part, how }));
  return [...parts, ...paintUnused(before, after).map((part) => ({ part, how: 'unused' as const }))];
}

/** Finishes whose paint is bought, and would be paint for none any more. */
function paintUnused(before: There, after: There): readonly string[] {
  if (before.finishes === after.finishes) return [];
  const serving = hadOf(before.facts).flatMap(({ fact }) => {
    const was = fact.kind === 'paint' && finishOfPaint(fact, before.finishes);
    return was && !finishOfPaint(fact, after.finishes) ? [was.id] : [];
  });
  return [...new Set(serving)];
}

function doneParts(facts: readonly Fact[]): DoneParts {
  const painted = new Map<string, Set<string>>();
  const fastened = new Set<string>();
  for (const { part, box, finish } of factsOf(facts, 'done')) {
    if (part === null) continue;
    if (box) fastened.add(part);
    if (finish !== null) painted.set(part, (painted.get(part) ?? new Set()).add(finish));
  }
  return { cut: new Set(factsOf(facts, 'cut').map(({ part }) => part)), fastened, painted };
}

/** What becomes of a laid part by its own place, shape and paint. */
function howsOf(
  was: LaidPart,
  is: LaidPart | undefined,
  { cut, fastened, painted }: DoneParts,
  repainted: ReadonlySet<string>,
): Set<How> {
  const hows = new Set<How>();
  const paints = painted.get(was.id);
  if (!cut.has(was.id) && !fastened.has(was.id) && !paints) return hows;
  if (!is) return hows.add('gone');
  if (fastened.has(was.id)) {
    if (isElsewhere(was.box, is.box)) hows.add('moved');
    if (isOtherwiseMade(was, is)) hows.add('resized');
  }
  const rewritten = isLettered(was) && !(isLettered(is) && sameValue(was.lettering, is.lettering));
  // Letters that are sawn are no pieces of the wood's own joints.
  if (rewritten && cut.has(was.id)) hows.add('resized');
  if (paints && (was.finish !== is.finish || rewritten || [...paints].some((id) => repainted.has(id))))
    hows.add('repainted');
  return hows;
}

/** Finishes that are of another color or kind; a price or a rate changes no paint that is on. */
function finishesChanged(before: readonly Finish[], after: readonly Finish[]): ReadonlySet<string> {
  if (before === after) return new Set();
  const now = new Map(after.map((finish) => [finish.id, lookOfPaint(finish)]));
  return new Set(before.filter((one) => now.get(one.id) !== lookOfPaint(one)).map(({ id }) => id));
}

/** The laid parts of which a piece is made that the change wants made otherwise, or not at all. */
function madeOtherwise(before: There, after: There, fastened: ReadonlySet<string>): ReadonlySet<string> {
  const parts = new Set<string>();
  if (before.pieces === after.pieces && before.stocks === after.stocks) return parts;
  const now = new Map(after.pieces.map((piece) => [piece.id, piece]));
  const [was, is] = [servedIn(before), servedIn(after)];
  for (const { id, part } of before.pieces) if (was.has(id) && !is.has(id)) parts.add(part);
  for (const piece of before.pieces) {
    if (!fastened.has(piece.part)) continue;
    const is = now.get(piece.id);
    const stock = after.stocks.get(piece.stock) ?? null;
    if (is?.stock !== piece.stock || !isMarked(markOf(piece), is, stock)) parts.add(piece.part);
  }
  return parts;
}

/** The pieces that lie there cut. */
function servedIn({ facts, pieces, stocks }: There): ReadonlySet<string> {
  const cut = new Set(factsOf(facts, 'cut').map(({ stock }) => stock));
  return new Set(
    [...cut].flatMap((id) => {
      const stock = stocks.get(id);
      return stock ? [...knownAgain(pieces, facts, stock).byPiece.keys()] : [];
    }),
  );
}

const isElsewhere = (a: Box, b: Box): boolean =>
  Math.abs(a.x - b.x) > SAME_PLACE || Math.abs(a.y - b.y) > SAME_PLACE;

/** Of other stock, or another shape wherever it lies. */
function isOtherwiseMade(a: LaidPart, b: LaidPart | undefined): boolean {
  if (a === b) return false;
  if (!b || a.kind !== b.kind || a.stock !== b.stock) return true;
  const [p, q] = [cornersOf(a.region), cornersOf(b.region)];
  const [dx, dy] = [b.box.x - a.box.x, b.box.y - a.box.y];
  return (
    p.length !== q.length ||
    p.some(({ x, y }, i) => {
      const other = pick(q, i);
      return Math.abs(x + dx - other.x) > SAME_PLACE || Math.abs(y + dy - other.y) > SAME_PLACE;
    })
  );
}

const cornersOf = (region: Region) => region.flatMap(({ outer, holes }) => [outer, ...holes].flat());
