import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';
import type { Span } from '../span.ts';

/** Where a place along an axis comes to when what it belongs to is stretched. */
export type Stretch = (at: Mm) => Mm;

/** The stretches that keep their length, put together where they overlap, cut to what is stretched. */
function joined(rigid: readonly Span[], within: Span): Span[] {
  const spans: Span[] = [];
  const cut = rigid
    .map(({ low, high }) => ({ low: Math.max(low, within.low), high: Math.min(high, within.high) }))
    .filter(({ low, high }) => high - low > SAME_LENGTH)
    .sort((a, b) => a.low - b.low);
  for (const span of cut) {
    const last = spans.at(-1);
    if (last && span.low <= last.high + SAME_LENGTH)
      spans[spans.length - 1] = { low: last.low, high: Math.max(last.high, span.high) };
    else spans.push(span);
  }
  return spans;
}

/**
 * How things that lie in a span are stretched to another: what is rigid keeps its length, and all the rest gives in
 * one ratio. So what touches goes on touching, what was equally long stays so, and nothing new overlaps. Null where
 * nothing gives; where the new span is too short for what is rigid, what gives is left with `least` of its length.
 *
 * @param rigid stretches that keep their length: the width of stock, a distance that a rule holds
 * @param keep the end that stays where it is
 */
export function stretchTo(
  from: Span,
  rigid: readonly Span[],
  length: Mm,
  keep: 'low' | 'high',
  least = 0.02,
): Stretch | null {
  const solid = joined(rigid, from);
  const fixed = solid.reduce((sum, { low, high }) => sum + high - low, 0);
  const gives = from.high - from.low - fixed;
  if (gives <= SAME_LENGTH) return null;
  const ratio = Math.max(least, (length - fixed) / gives);
  const grown = gives * (ratio - 1);
  const start = keep === 'low' ? from.low : from.low - grown;
  return (at) => {
    if (at <= from.low) return start + at - from.low;
    if (at >= from.high) return start + at - from.low + grown;
    const before = solid.reduce((sum, { low, high }) => sum + Math.min(Math.max(at - low, 0), high - low), 0);
    return start + before + (at - from.low - before) * ratio;
  };
}
