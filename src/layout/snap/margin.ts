import type { Edge } from '../../design/schema.ts';
import { boxArea } from '../../geometry/box.ts';
import type { Box } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { at } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import { rounded, rulerStep } from './distance.ts';
import { dimensionAlong, offerOf } from './drawing.ts';
import { type Container, type Offer, PREFERENCE, type SnapAxis } from './snapping.ts';

/** What a margin is kept to: the innermost of what lies around, which the face is only of a bed without levels. */
function innermost(on: SnapAxis): Container | null {
  const area = (one: Container) => boxArea(one.box);
  const isLess = (a: Container, b: Container) => area(a) < area(b) || (area(a) === area(b) && a.of < b.of);
  return on.containers
    .filter((one) => one.prefer <= PREFERENCE.level)
    .reduce<Container | null>((least, one) => (least && !isLess(one, least) ? least : one), null);
}

/** Margins to the left, right, bottom and top. */
const marginsIn = (around: Box, box: Box): readonly [left: Mm, right: Mm, bottom: Mm, top: Mm] => [
  box.x - around.x,
  around.x + around.w - box.x - box.w,
  box.y - around.y,
  around.y + around.h - box.y - box.h,
];

/**
 * The same margin on all four sides of what lies around: of a part being drawn the round one that all four are near
 * to, of a pulled edge the one that the other three have.
 */
export function margins(on: SnapAxis): Offer[] {
  const { moving, grip, reach, style } = on.input;
  const [only] = moving;
  const around = innermost(on);
  if (!only || moving.length > 1 || !around) return [];
  const all = marginsIn(around.box, only.box);
  const drawn = grip.x === 'both' && grip.y === 'both';
  const pulled = on.grip === 'low' || on.grip === 'high' ? on.grip : null;
  const own = (on.axis === 'x' ? 0 : 2) + (pulled === 'high' ? 1 : 0);
  const kept = drawn ? all : pulled ? all.filter((_, i) => i !== own) : [];
  if (kept.length < 3) return [];
  // The round margin that the worst of the sides is nearest to.
  const amid = (Math.min(...kept) + Math.max(...kept)) / 2;
  const margin = drawn ? rounded(amid, rulerStep(style, reach)) : amid;
  const near = drawn ? reach : SAME_LENGTH;
  // A margin within reach of nothing at all is a touch.
  if (margin <= reach || kept.some((one) => Math.abs(one - margin) > near)) return [];
  const side: Edge['side'] = pulled ?? 'mid';
  const low = around.span.low + margin;
  const high = around.span.high - margin;
  const worst = drawn
    ? Math.max(...all.map((one) => Math.abs(one - margin)))
    : Math.abs(at(all, own) - margin);
  if (worst > reach || high - low < SAME_LENGTH) return [];
  return [
    offerOf(on, {
      reading: 'margin',
      side,
      at: side === 'low' ? low : side === 'high' ? high : (low + high) / 2,
      size: high - low,
      miss: worst,
      prefer: around.prefer,
      rule: { kind: 'reveal', part: only.id, inside: around.of, inner: around.inner, margin },
      dimensions: [dimensionAlong(on, around.span.low, low), dimensionAlong(on, high, around.span.high)],
    }),
  ];
}
