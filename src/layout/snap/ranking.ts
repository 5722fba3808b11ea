import type { Axis } from '../../design/schema.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';
import { middle, type Span } from '../span.ts';
import { alongAxis } from './around.ts';
import { centers } from './center.ts';
import { roundDistances, rounded, rulerStep } from './distance.ts';
import { equalGaps } from './gap.ts';
import { continuedLines } from './line.ts';
import { margins } from './margin.ts';
import type { Offer, OfferedRule, Reading, SnapAxis, SnapInput } from './snapping.ts';
import { touches } from './touch.ts';

interface Row {
  readonly readings: readonly Reading[];
  readonly find: (on: SnapAxis) => Offer[];
  /** Why it stands before the next. */
  readonly because: string;
}

/** What a release holds, each axis by itself and each edge by itself: the first row that offers something wins. */
export const RANKING: readonly Row[] = [
  { readings: ['touch'], find: touches, because: 'a joint that opens shows from across the room' },
  { readings: ['line'], find: continuedLines, because: 'the eye follows a line over a gap' },
  {
    readings: ['gap', 'margin'],
    find: (on) => [...equalGaps(on), ...margins(on)],
    because: 'nobody measures a third gap: one cuts a spacer',
  },
  { readings: ['center'], find: centers, because: 'a middle met by chance weighs less than an edge' },
  { readings: ['distance'], find: roundDistances, because: 'a rule is laid to the edge that is at hand' },
];

/** Rows that need something near; the last one always finds a place. */
const NEAR = RANKING.slice(0, -1);

/** The row of the ranking that a reading stands in. */
export const rankOf = (reading: Reading): number =>
  RANKING.findIndex((row) => row.readings.includes(reading));

/** A way to hold the moving parts along one axis. */
export interface Holding {
  /** Where the moving parts come to lie. */
  readonly span: Span;
  /** What they are held by: one offer, or one for each edge of a part that is drawn. */
  readonly offers: readonly Offer[];
  readonly rules: readonly OfferedRule[];
}

/** What a release would hold along one axis. */
export interface Held extends Holding {
  /** What else the hand may have meant, as ranked: worked out when it is asked for. */
  readonly next: () => readonly Holding[];
}

/**
 * What a release would hold. Two passes: what lies within half the reach was meant, in the order of the ranking;
 * only where that is nothing, what lies within the whole.
 */
export function heldBy(input: SnapInput): Readonly<Record<Axis, Held | null>> {
  const onX = alongAxis(input, 'x');
  const onY = alongAxis(input, 'y');
  const held = { x: onX && heldAlong(onX, true), y: onY && heldAlong(onY, true) };
  const margin = (one: Held | null) => one?.offers.some((offer) => offer.reading === 'margin') === true;
  // A margin is the same on all sides, or none.
  if (onX && onY && margin(held.x) !== margin(held.y)) {
    return { x: heldAlong(onX, false), y: heldAlong(onY, false) };
  }
  return held;
}

function heldAlong(on: SnapAxis, withMargin: boolean): Held {
  const near = NEAR.flatMap((row) => row.find(on)).filter(
    (offer) => (withMargin || offer.reading !== 'margin') && keepsItsSize(on, offer),
  );
  const taken = on.grip === 'both' ? ofBoth(on, near) : ofOne(on, near);
  const held = (offers: readonly Offer[]): Holding => ({
    span: spanWith(on, offers),
    offers,
    rules: rulesOf(on, offers),
  });
  const now = held(taken.length > 0 ? taken : roundDistances(on));
  // Of a part that is drawn the other edge keeps what it touches.
  const instead = (offer: Offer): Offer[] => {
    const kept =
      on.grip === 'both' && offer.side !== 'mid' ? now.offers.filter((one) => one.side !== 'mid') : [];
    const rest = kept.filter((one) => one.side !== offer.side);
    return [...rest, offer].sort((a, b) => a.at - b.at);
  };
  return { ...now, next: () => othersThan(now, near, on).map((offer) => held(instead(offer))) };
}

/**
 * What else was near. A margin is about both axes, a place that is held already is no other reading, and nobody lays a
 * rule to an edge that touches.
 */
function othersThan(now: Holding, near: readonly Offer[], on: SnapAxis): Offer[] {
  const { reach } = on.input;
  const known = new Set(now.offers.map((offer) => JSON.stringify(offer.rule)));
  const middles: Mm[] = [];
  const touching = now.offers.some((offer) => offer.reading === 'touch');
  return ranked(touching ? near : [...near, ...roundDistances(on)], reach, reach).filter((offer) => {
    const key = JSON.stringify(offer.rule);
    if (offer.reading === 'margin' || offer.rule === null || known.has(key)) return false;
    known.add(key);
    // The middle of the field is that of the face: one of them is enough.
    if (offer.side === 'mid' && middles.some((at) => isAt(at, offer.at))) return false;
    if (offer.side === 'mid') middles.push(offer.at);
    return !now.offers.some((one) => one.side === offer.side && isAt(one.at, offer.at));
  });
}

const isAt = (a: Mm, b: Mm): boolean => Math.abs(a - b) < SAME_LENGTH;

/** As ranked: row, then nearness (half pixels apart are the same to a hand), then what it is about. */
function ranked(offers: readonly Offer[], within: Mm, reach: Mm): Offer[] {
  const bucket = (miss: Mm) => Math.round((Math.abs(miss) / reach) * 16);
  return offers
    .filter(({ miss, reading }) => reading === 'distance' || Math.abs(miss) <= within + SAME_LENGTH)
    .map((offer) => ({ offer, rank: rankOf(offer.reading), key: JSON.stringify(offer.rule) }))
    .sort(
      (a, b) =>
        a.rank - b.rank ||
        bucket(a.offer.miss) - bucket(b.offer.miss) ||
        a.offer.prefer - b.offer.prefer ||
        a.offer.far - b.offer.far ||
        (a.key < b.key ? -1 : a.key > b.key ? 1 : 0),
    )
    .map(({ offer }) => offer);
}

const passes = ({ input: { reach } }: SnapAxis): readonly Mm[] => [reach / 2, reach];

function ofOne(on: SnapAxis, near: readonly Offer[]): Offer[] {
  for (const within of passes(on)) {
    const [best] = ranked(near, within, on.input.reach);
    if (best) return [best];
  }
  return [];
}

/** Each edge of a part being drawn for itself; the whole only where its row stands before those of the edges. */
function ofBoth(on: SnapAxis, near: readonly Offer[]): Offer[] {
  const best = (side: Offer['side'], within: Mm) =>
    ranked(
      near.filter((offer) => offer.side === side),
      within,
      on.input.reach,
    )[0];
  for (const within of passes(on)) {
    const whole = best('mid', within);
    const low = best('low', within);
    const high = best('high', within);
    const first = Math.min(...[low, high].map((one) => (one ? rankOf(one.reading) : RANKING.length)));
    if (whole && rankOf(whole.reading) < first) return [whole];
    if (!low && !high) continue;
    // One edge is meant; the other may be a little farther off.
    const { reach } = on.input;
    const [a, b] = [low ?? best('low', reach), high ?? best('high', reach)];
    if (a && b && b.at - a.at < SAME_LENGTH) return [low ?? b];
    return [a, b].flatMap((one) => one ?? []);
  }
  return [];
}

const keepsItsSize = (on: SnapAxis, { side, at }: Offer): boolean => {
  if (on.grip === 'move' || side === 'mid') return true;
  return (side === 'low' ? on.span.high - at : at - on.span.low) > SAME_LENGTH;
};

/** Where the moving parts come to lie. A size that nothing decides is a whole number of steps. */
function spanWith(on: SnapAxis, offers: readonly Offer[]): Span {
  const { span, grip, input } = on;
  const step = rulerStep(input.style, input.reach);
  const size = (drawn: Mm) => Math.max(step, rounded(drawn, step));
  const [first, second] = offers;
  if (grip === 'move') {
    if (!first) return span;
    const from = first.side === 'mid' ? middle(span) : span[first.side];
    return { low: span.low + first.at - from, high: span.high + first.at - from };
  }
  if (grip === 'low' || grip === 'high') return pulledTo(on, grip, first, size);
  if (first && second) return { low: first.at, high: second.at };
  const at = first?.at ?? span.low;
  if (first?.side === 'mid') {
    const half = (first.size ?? size(span.high - span.low)) / 2;
    return { low: at - half, high: at + half };
  }
  if (first?.side === 'high') return { low: at - size(at - span.low), high: at };
  return { low: at, high: at + size(span.high - at) };
}

function pulledTo(
  { span }: SnapAxis,
  grip: 'low' | 'high',
  offer: Offer | undefined,
  size: (drawn: Mm) => Mm,
): Span {
  const other = grip === 'low' ? span.high : span.low;
  const sign = grip === 'low' ? -1 : 1;
  const at = !offer
    ? other + sign * size(span.high - span.low)
    : offer.side === 'mid'
      ? 2 * offer.at - other
      : offer.at;
  return grip === 'low' ? { low: at, high: other } : { low: other, high: at };
}

/** The rules of the offers taken: touched at both ends, a part runs between. */
function rulesOf(on: SnapAxis, offers: readonly Offer[]): OfferedRule[] {
  const [low, high] = offers;
  const part = on.ids[0];
  if (part !== undefined && low?.rule?.kind === 'set' && high?.rule?.kind === 'set') {
    if (low.reading === 'touch' && high.reading === 'touch') {
      const between = { low: low.rule.from, high: high.rule.from, insetLow: 0, insetHigh: 0 };
      return [{ kind: 'between', axis: on.axis, part, ...between }];
    }
  }
  // Both axes find the same margin: it is one rule.
  if (low?.reading === 'margin' && on.axis === 'y' && on.input.grip.x === 'both') return [];
  return offers.flatMap((offer) => offer.rule ?? []);
}
