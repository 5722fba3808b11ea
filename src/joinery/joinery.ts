import { orderChecks } from '../check/check.ts';
import { isBars, isSheet } from '../design/made.ts';
import type { Joint, Shop } from '../design/schema.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Box } from '../geometry/shape.ts';
import type { Laid, LaidPart } from '../layout/laid.ts';
import type { Stock } from '../materials/types.ts';
import type { MeasureStyle } from '../measure/style.ts';
import type { Mm } from '../measure/units.ts';
import { archesOf } from './arch.ts';
import { type Bar, barsOf } from './bar.ts';
import { type Attempt, chosenChecks } from './chosen.ts';
import { type Decisions, decisionsOf } from './decide.ts';
import type { Placed } from './draft.ts';
import { joinMeeting } from './join.ts';
import { labelPieces } from './label.ts';
import { pieceChecks } from './limits.ts';
import { lostChecks } from './lost.ts';
import { barsThatMeet, findLateMeetings, findMeetings, type Meeting, uncutOutline } from './meet.ts';
import { overlapChecks } from './overlap.ts';
import type { Joinery, JointFound } from './piece.ts';
import { joinRun } from './run.ts';
import { type Length, sawBar } from './saw.ts';
import { sheetPieces } from './sheet.ts';
import { shownLengths } from './shown.ts';
import { solidOf } from './solid.ts';
import { stickPieces } from './stick.ts';
import { type Stop, stopChecks, stopsOf } from './stops.ts';
import { touchOf } from './touch.ts';
import { type BarWork, newWork } from './work.ts';

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
 */
export function planJoinery(input: JoineryInput): Joinery {
  const sticks = sticksOf(input);
  const decisions = decisionsOf(input.joints);
  const { attempts, works, lengths, stops } = joinAndSaw(input, sticks, decisions);
  const byPart = lengthsByPart(lengths);
  const gone = new Set(works.map(({ bar }) => bar.laid.id).filter((id) => !byPart.has(id)));
  const pieces = piecesOf(input, byPart);
  const drafts = pieces.map(({ draft }) => draft);
  const shown = shownLengths(pieces, input.measure, { widths: widthsOf(sticks), boxes: boxesOf(sticks) });
  return {
    pieces: labelPieces(drafts, shown, input.stocks),
    joints: [...jointsOf(attempts), ...touchJoints(lengths)],
    solids: input.parts
      .filter(({ id }) => !gone.has(id))
      .map((laid) => solidOf(laid, byPart.get(laid.id) ?? [])),
    gone,
    arches: archesOf(input.parts),
    checks: orderChecks([
      ...overlapChecks(lengths),
      ...lostChecks(works, lengths),
      ...chosenChecks(input, attempts, lengths),
      ...stopChecks(stops),
      ...pieceChecks(drafts, input.shop.saw),
    ]),
  };
}

/** Joints as the parts are laid, and once more where a cut end has come to reach another part. */
function joinAndSaw(
  input: JoineryInput,
  sticks: readonly Stick[],
  decisions: Decisions,
): {
  readonly attempts: readonly Attempt[];
  readonly works: readonly BarWork[];
  readonly lengths: readonly Length[];
  readonly stops: readonly Stop[];
} {
  const works = sticks.flatMap(({ bars }) => bars.map(newWork));
  const join = (meetings: readonly Meeting[]): Attempt[] =>
    meetings.map((meeting) => {
      const [a, b] = barsThatMeet(meeting);
      const decision = decisions(a, b);
      return { a, b, shape: meeting.shape, decision, joint: joinMeeting(works, meeting, decision) };
    });
  const laid = findMeetings(works.map((work) => work.bar));
  const { meetings, stops } = stopsOf(laid, decisions);
  const attempts = [
    ...sticks.flatMap(({ laid, bars }) => (laid.kind === 'run' ? joinRun(works, laid, bars, decisions) : [])),
    ...join(meetings),
  ];
  const lengths = sawAll(input, works, meetings);
  const late = findLateMeetings(lengths.flatMap(outlinesOf), meetings);
  if (late.length === 0) return { attempts, works, lengths, stops };
  return { attempts: [...attempts, ...join(late)], works, lengths: sawAll(input, works, meetings), stops };
}

const jointsOf = (attempts: readonly Attempt[]): JointFound[] =>
  attempts.map(({ joint }) => joint).filter((joint) => joint !== null);

const outlinesOf = ({ bar, seen }: Length) => seen.map(({ outer }) => ({ bar, outline: outer }));

interface Stick {
  readonly laid: Laid<'strip'> | Laid<'run'>;
  readonly bars: readonly Bar[];
}

function sticksOf({ parts, stocks }: JoineryInput): Stick[] {
  const sticks: Stick[] = [];
  let count = 0;
  for (const laid of parts) {
    if (!isBars(laid)) continue;
    const bars = barsOf(laid, stocks, count);
    count += bars.length;
    sticks.push({ laid, bars });
  }
  return sticks;
}

function sawAll(input: JoineryInput, works: readonly BarWork[], meetings: readonly Meeting[]): Length[] {
  const stockOfPart = new Map(works.map(({ bar }) => [bar.laid.id, bar.stock]));
  const neighbors = neighborsOf(meetings);
  return works.flatMap((work) =>
    sawBar(work, {
      fitAllowance: input.shop.fitAllowance,
      stockOf: (id) => stockOfPart.get(id) ?? null,
      against: (bar, p, q) => touchOf(p, q, neighbors.get(bar.index) ?? []),
    }),
  );
}

function neighborsOf(meetings: readonly Meeting[]): ReadonlyMap<number, readonly Bar[]> {
  const neighbors = new Map<number, Bar[]>();
  const add = (bar: Bar, other: Bar): void => {
    const known = neighbors.get(bar.index);
    if (known) known.push(other);
    else neighbors.set(bar.index, [other]);
  };
  for (const meeting of meetings) {
    // What laps is cut by its joint, and lies against nothing else of the other.
    if (meeting.laps) continue;
    const [a, b] = barsThatMeet(meeting);
    add(a, b);
    add(b, a);
  }
  return neighbors;
}

function lengthsByPart(lengths: readonly Length[]): ReadonlyMap<string, readonly Length[]> {
  const byPart = new Map<string, Length[]>();
  for (const length of lengths) {
    const known = byPart.get(length.bar.laid.id);
    if (known) known.push(length);
    else byPart.set(length.bar.laid.id, [length]);
  }
  return byPart;
}

function piecesOf(input: JoineryInput, byPart: ReadonlyMap<string, readonly Length[]>): Placed[] {
  return input.parts.flatMap((laid) => {
    if (isBars(laid)) {
      return stickPieces(byPart.get(laid.id) ?? [], input.shop.fitAllowance);
    }
    if (!isSheet(laid)) return [];
    return sheetPieces(laid, laid.stock === null ? null : (input.stocks.get(laid.stock) ?? null));
  });
}

/** Where the bars lie on the face, as they were laid. */
const boxesOf = (sticks: readonly Stick[]): Box[] =>
  sticks.flatMap(({ bars }) => bars.map((bar) => boxOfPoints(uncutOutline(bar))));

/** Widest bar of every strip and run. */
function widthsOf(sticks: readonly Stick[]): ReadonlyMap<string, Mm> {
  return new Map(
    sticks.map(({ laid, bars }) => [laid.id, bars.reduce((most, bar) => Math.max(most, bar.width), 0)]),
  );
}

/** Joints of wood that only touches: what runs past runs through; end to end nothing does, told once. */
function touchJoints(lengths: readonly Length[]): JointFound[] {
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
