import { endsOfMargin } from '../../design/rule/reveal.ts';
import type { Axis } from '../../design/schema.ts';
import type { Mm } from '../../measure/units.ts';
import { AXES, middle } from '../span.ts';
import { type Holding, rankOf } from './ranking.ts';
import type { Offer, OfferedRule } from './snapping.ts';

type Held = Readonly<Record<Axis, Holding | null>>;

/**
 * What still holds once a size is typed along an axis: the middle, or one edge, of equally strong ones that at which
 * the hand began. What holds along the other axis stays.
 */
export function holdingSize(held: Held, axis: Axis, size: Mm, began: 'low' | 'high'): Held {
  const each = withoutMargin(held);
  const holding = each[axis];
  return holding ? { ...each, [axis]: withSize(holding, size, began) } : each;
}

function withSize({ span, offers }: Holding, size: Mm, began: 'low' | 'high'): Holding {
  const before = (a: Offer, b: Offer) =>
    rankOf(a.reading) - rankOf(b.reading) || Number(b.side === began) - Number(a.side === began);
  const [kept] = [...offers].sort(before);
  const side = kept?.side ?? began;
  const from = side === 'mid' ? middle(span) : span[side];
  const low = side === 'low' ? from : side === 'high' ? from - size : from - size / 2;
  return {
    span: { low, high: low + size },
    offers: kept ? [{ ...kept, dimensions: [] }] : [],
    rules: kept?.rule ? [centered(kept.rule)] : [],
  };
}

/** A margin all around is about both axes: with a size of its own along one, each has a rule of its own. */
function withoutMargin(held: Held): Held {
  const each = { ...held };
  for (const axis of AXES) {
    const holding = held[axis];
    const [offer] = holding?.offers ?? [];
    if (!holding || offer?.rule?.kind !== 'reveal') continue;
    const { part } = offer.rule;
    const rule: OfferedRule = { kind: 'between', axis, part, ...endsOfMargin(offer.rule) };
    each[axis] = { ...holding, offers: [{ ...offer, rule }], rules: [rule] };
  }
  return each;
}

/** What ran between two lines with a size that follows from them stands in their middle with one of its own. */
const centered = (rule: OfferedRule): OfferedRule =>
  rule.kind === 'between'
    ? { kind: 'center', axis: rule.axis, parts: [rule.part], low: rule.low, high: rule.high }
    : rule;
