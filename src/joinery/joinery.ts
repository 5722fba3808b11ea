import { type Check, orderChecks } from '../check/check.ts';
import { isBars, isBoards, isSheet } from '../design/made.ts';
import type { Joint, Shop } from '../design/schema.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import { KeptResults } from '../layout/kept.ts';
import type { Laid, LaidPart } from '../layout/laid.ts';
import { under } from '../list/at.ts';
import { addTo, type Groups, grouped, groupOf } from '../list/grouped.ts';
import type { Stock } from '../materials/types.ts';
import type { MeasureStyle } from '../measure/style.ts';
import type { Mm } from '../measure/units.ts';
import { archesOf } from './arch.ts';
import { readOf } from './asRead.ts';
import { type Bar, barsOf } from './bar.ts';
import { type Attempt, chosenChecks } from './chosen.ts';
import { type Decisions, decisionsOf } from './decide.ts';
import type { Placed } from './draft.ts';
import { fillJoints, fillPieces } from './fill.ts';
import { joinMeeting } from './join.ts';
import { labelPieces } from './label.ts';
import { pieceChecks } from './limits.ts';
import { lostChecks } from './lost.ts';
import {
  barsThatMeet,
  findLateMeetings,
  findMeetings,
  type Meeting,
  type Outlined,
  outlined,
  uncutOutline,
} from './meet.ts';
import { overlapChecks } from './overlap.ts';
import type { Joinery, JointFound } from './piece.ts';
import { joinRun } from './run.ts';
import { type SawnBar, sawBar } from './saw.ts';
import { arcPieces } from './sawnArcs.ts';
import { sheetPieces } from './sheet.ts';
import { shownLengths } from './shown.ts';
import { solidOf } from './solid.ts';
import { stickPieces } from './stick.ts';
import { type Stop, stopChecks, stopsOf } from './stops.ts';
import { touchOf } from './touch.ts';
import { type BarWork, factsOf, newWork } from './work.ts';

export interface JoineryInput {
  readonly parts: readonly LaidPart[];
  /** The person's decisions; what names unknown parts is passed over. */
  readonly joints: readonly Joint[];
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly shop: Pick<Shop, 'saw' | 'fitAllowance'>;
  readonly measure: MeasureStyle;
}

/**
 * From parts in place to pieces to cut: finds how strips and runs meet, joins them by proposal or decision,
 * saws them, and tells every piece, every joint and what each part is after its joints.
 *
 * @param kept what earlier plans found of parts, bars and pieces that nothing changed of
 */
export function planJoinery(input: JoineryInput, kept: KeptResults = new KeptResults()): Joinery {
  const sticks = sticksOf(input, kept);
  const decisions = decisionsOf(input.joints);
  const uncut = sticks.flatMap(({ bars }) => bars.map((bar) => uncutOf(bar, kept)));
  const { attempts, works, lengths, stops } = joinAndSaw(input, sticks, uncut, decisions, kept);
  const byPart = grouped(lengths, ({ bar }) => bar.laid.id);
  const gone = new Set(works.map(({ bar }) => bar.laid.id).filter((id) => !byPart.has(id)));
  const pieces = piecesOf(input, byPart, kept);
  const drafts = pieces.map(({ draft }) => draft);
  const boxes = uncut.map((one) => kept.of(one.bar, 'box', [one], () => boxOfPoints(one.outline)));
  const shown = shownLengths(pieces, input.measure, { widths: widthsOf(sticks), boxes });
  return {
    pieces: labelPieces(drafts, shown, input.stocks, kept),
    joints: [...jointsOf(attempts), ...touchJoints(lengths), ...fillJoints(input.parts)],
    solids: input.parts
      .filter(({ id }) => !gone.has(id))
      .map((laid) => {
        const own = groupOf(byPart, laid.id);
        return kept.of(laid, 'solid', own, () => solidOf(laid, own));
      }),
    gone,
    arches: archesOf(input.parts),
    checks: orderChecks([
      ...overlapChecks(lengths.flatMap((length) => seenOf(length, kept))),
      ...lostChecks(works, lengths),
      ...chosenChecks(input, attempts, lengths),
      ...stopChecks(stops),
      ...notAsRead(lengths),
      ...pieceChecks(drafts, input.shop.saw, kept, wholeOf(input.parts)),
    ]),
  };
}

/** Joints as the parts are laid, and once more where a cut end has come to reach another part. */
function joinAndSaw(
  input: JoineryInput,
  sticks: readonly Stick[],
  uncut: readonly Outlined[],
  decisions: Decisions,
  kept: KeptResults,
): {
  readonly attempts: readonly Attempt[];
  readonly works: readonly BarWork[];
  readonly lengths: readonly SawnBar[];
  readonly stops: readonly Stop[];
} {
  const works = sticks.flatMap(({ bars }) => bars.map(newWork));
  const join = (meetings: readonly Meeting[]): Attempt[] =>
    meetings.map((meeting) => {
      const [a, b] = barsThatMeet(meeting);
      const decision = decisions(a, b);
      return { a, b, shape: meeting.shape, decision, joint: joinMeeting(works, meeting, decision) };
    });
  const laid = findMeetings(uncut);
  const { meetings, stops } = stopsOf(laid, decisions);
  const attempts = [
    ...sticks.flatMap(({ laid, bars }) => (laid.kind === 'run' ? joinRun(works, laid, bars, decisions) : [])),
    ...join(meetings),
  ];
  const saw = (): SawnBar[] => sawAll(input, works, meetings, kept);
  const lengths = saw();
  const late = findLateMeetings(
    lengths.flatMap((length) => seenOf(length, kept)),
    meetings,
  );
  if (late.length === 0) return { attempts, works, lengths, stops };
  return { attempts: [...attempts, ...join(late)], works, lengths: saw(), stops };
}

const jointsOf = (attempts: readonly Attempt[]): JointFound[] =>
  attempts.map(({ joint }) => joint).filter((joint) => joint !== null);

/** The outline of a bar before any joint. */
const uncutOf = (bar: Bar, kept: KeptResults): Outlined =>
  kept.of(bar, 'uncut', [], () => outlined(bar, uncutOutline(bar)));

/** The outlines of what is seen of a length. */
const seenOf = (length: SawnBar, kept: KeptResults): Outlined[] =>
  kept.of(length, 'seen', [], () => length.seen.map(({ outer }) => outlined(length.bar, outer)));

const stockOf = ({ stock }: LaidPart, stocks: ReadonlyMap<string, Stock>): Stock | null =>
  stock === null ? null : (stocks.get(stock) ?? null);

interface Stick {
  readonly laid: Laid<'strip'> | Laid<'run'>;
  readonly bars: readonly Bar[];
}

function sticksOf({ parts, stocks }: JoineryInput, kept: KeptResults): Stick[] {
  const sticks: Stick[] = [];
  let count = 0;
  for (const laid of parts) {
    if (!isBars(laid)) continue;
    const stock = stockOf(laid, stocks);
    const first = count;
    const bars = kept.of(laid, 'bars', [stock, first], () => barsOf(laid, stock, first));
    count += bars.length;
    sticks.push({ laid, bars });
  }
  return sticks;
}

/** A bar is sawn anew where it, a cut, what a cut goes against or what lies beside the bar is another. */
function sawAll(
  { shop }: JoineryInput,
  works: readonly BarWork[],
  meetings: readonly Meeting[],
  kept: KeptResults,
): SawnBar[] {
  const stockOfPart = new Map(works.map(({ bar }) => [bar.laid.id, bar.stock]));
  const neighbors = neighborsOf(meetings);
  const madeOf = (id: string): Stock | null => stockOfPart.get(id) ?? null;
  return works.flatMap((work) => {
    const beside = groupOf(neighbors, work.bar.index);
    const facts = [shop.fitAllowance, beside.length, ...beside, ...factsOf(work, madeOf)];
    return kept.of(work.bar, 'sawn', facts, () =>
      sawBar(work, {
        fitAllowance: shop.fitAllowance,
        stockOf: madeOf,
        against: (p, q) => touchOf(p, q, beside),
      }),
    );
  });
}

function neighborsOf(meetings: readonly Meeting[]): ReadonlyMap<number, readonly Bar[]> {
  const neighbors: Groups<number, Bar> = new Map();
  for (const meeting of meetings) {
    // What laps is cut by its joint, and lies against nothing else of the other.
    if (meeting.laps) continue;
    const [a, b] = barsThatMeet(meeting);
    addTo(neighbors, a.index, b);
    addTo(neighbors, b.index, a);
  }
  return neighbors;
}

function piecesOf(
  { parts, stocks, shop }: JoineryInput,
  byPart: ReadonlyMap<string, readonly SawnBar[]>,
  kept: KeptResults,
): Placed[] {
  return parts.flatMap((laid) => {
    if (isBars(laid)) {
      const own = groupOf(byPart, laid.id);
      const sheet = laid.kind === 'run' && laid.sawn ? (stocks.get(laid.sawn.stock) ?? null) : null;
      return kept.of(laid, 'pieces', [shop.fitAllowance, sheet, ...own], () => {
        const sticks = stickPieces(own, shop.fitAllowance);
        return laid.kind === 'run' ? [...sticks, ...arcPieces(laid, sheet, sticks.length)] : sticks;
      });
    }
    if (isBoards(laid)) {
      const stock = stockOf(laid, stocks);
      return kept.of(laid, 'pieces', [stock, shop.saw.miter], () => fillPieces(laid, stock, shop.saw));
    }
    if (!isSheet(laid)) return [];
    const stock = stockOf(laid, stocks);
    return kept.of(laid, 'pieces', [stock], () => sheetPieces(laid, stock));
  });
}

/** Pieces that a tape read in place, and whose cuts do not let them be so. */
const notAsRead = (lengths: readonly SawnBar[]): Check[] =>
  lengths.flatMap(({ bar, plannedMiters }) =>
    readOf(bar) && !plannedMiters
      ? { code: 'piece.not-as-read', severity: 'warning', parts: [bar.laid.id], figures: {} }
      : [],
  );

/** What a piece is judged with: all pieces of its part of the design, such as of a row. */
function wholeOf(parts: readonly LaidPart[]): (piece: Pick<Placed['draft'], 'part'>) => string {
  const wholes = new Map(parts.map((laid) => [laid.id, laid.part]));
  return ({ part }) => under(wholes, part);
}

/** Widest bar of every strip and run. */
function widthsOf(sticks: readonly Stick[]): ReadonlyMap<string, Mm> {
  return new Map(
    sticks.map(({ laid, bars }) => [laid.id, bars.reduce((most, bar) => Math.max(most, bar.width), 0)]),
  );
}

/** Joints of wood that only touches: what runs past runs through; end to end nothing does, told once. */
function touchJoints(lengths: readonly SawnBar[]): JointFound[] {
  return lengths.flatMap(({ bar, touches }) =>
    touches
      .filter(({ on, other }) => on === 'side' || bar.index < other.index)
      .map(({ other, on, at }) => ({
        parts: [bar.laid.id, other.laid.id] as const,
        kind: 'butt' as const,
        through: on === 'side' ? other.laid.id : null,
        at,
        decided: false,
      })),
  );
}
