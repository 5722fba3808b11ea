import type { Axis } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';
import { readReference } from '../reference.ts';
import { AXES, middle, otherAxis, type Span, sizeOf, spanOf, spansMeet, startOf } from '../span.ts';
import { divisionSnaps } from './division.ts';
import { centerSnaps, edgeSnaps } from './edge.ts';
import { fractionSnaps } from './fraction.ts';
import { gapSnaps } from './gap.ts';
import { revealSnaps } from './reveal.ts';
import type { SnapAxis, SnapCandidate, SnapInput, SnapKind, Snapper, Target } from './snapping.ts';
import { stockSnaps } from './stock.ts';

/** Every kind of snapping; `cost` is what a kind has to be nearer by, in shares of the tolerance, to win. */
const KINDS: { readonly [K in SnapKind]: { readonly find: Snapper; readonly cost: number } } = {
  edge: { find: edgeSnaps, cost: 0 },
  center: { find: centerSnaps, cost: 0 },
  gap: { find: gapSnaps, cost: 0.1 },
  reveal: { find: revealSnaps, cost: 0.2 },
  division: { find: divisionSnaps, cost: 0.3 },
  stock: { find: stockSnaps, cost: 0.4 },
  fraction: { find: fractionSnaps, cost: 2 },
};

const ORDER = Object.keys(KINDS) as SnapKind[];

/** Everything within reach, the best of each axis first. The order depends on the input's figures only. */
export function snapCandidates(input: SnapInput): SnapCandidate[] {
  return AXES.flatMap((axis) => {
    const on = alongAxis(input, axis);
    if (on === null) return [];
    return ORDER.flatMap((kind) => KINDS[kind].find(on))
      .filter(({ delta }) => Math.abs(delta) <= input.tolerance && keepsItsSize(on, delta))
      .map((candidate) => ({ candidate, cost: costOf(on, candidate), key: JSON.stringify(candidate.rule) }))
      .sort((a, b) => a.cost - b.cost || (a.key < b.key ? -1 : a.key > b.key ? 1 : 0))
      .map(({ candidate }) => candidate);
  });
}

/** The best candidate of each axis. */
export function bestSnap(input: SnapInput): Readonly<Record<Axis, SnapCandidate | null>> {
  const all = snapCandidates(input);
  const first = (axis: Axis) => all.find((candidate) => candidate.axis === axis) ?? null;
  return { x: first('x'), y: first('y') };
}

/** Nearness, then kind; of lines in the same place the one nearest to the moving parts. */
function costOf(on: SnapAxis, candidate: SnapCandidate): number {
  const { tolerance } = on.input;
  const far = candidate.guides.reduce((most, guide) => {
    const across = Math.abs(on.axis === 'x' ? guide.to.y - guide.from.y : guide.to.x - guide.from.x);
    return Math.max(most, across);
  }, 0);
  const near = tolerance > 0 ? Math.abs(candidate.delta) / tolerance : 0;
  // Rounded, so that lines in the same place tie whatever their last digits.
  return Math.round(near * 1e6) / 1e6 + KINDS[candidate.kind].cost + far * 1e-9;
}

const keepsItsSize = (on: SnapAxis, delta: number): boolean =>
  on.grip === 'move' || on.span.high - on.span.low + (on.grip === 'high' ? delta : -delta) > SAME_LENGTH;

function alongAxis(input: SnapInput, axis: Axis): SnapAxis | null {
  const grip = input.handle[axis];
  const [first] = input.moving;
  if (grip === null || first === undefined) return null;
  let lowPart = first;
  let highPart = first;
  const across = { low: Number.POSITIVE_INFINITY, high: Number.NEGATIVE_INFINITY };
  for (const one of input.moving) {
    const span = spanOf(one.box, axis);
    if (span.low < spanOf(lowPart.box, axis).low) lowPart = one;
    if (span.high > spanOf(highPart.box, axis).high) highPart = one;
    const other = spanOf(one.box, otherAxis(axis));
    across.low = Math.min(across.low, other.low);
    across.high = Math.max(across.high, other.high);
  }
  const own = new Set(input.moving.map((one) => one.id));
  const others = input.others.filter((other) => !own.has(other.id));
  return {
    axis,
    grip,
    ids: input.moving.map((one) => one.id),
    span: { low: spanOf(lowPart.box, axis).low, high: spanOf(highPart.box, axis).high },
    across,
    lowPart: lowPart.id,
    highPart: highPart.id,
    targets: targetsOf({ ...input, others }, axis, {
      low: spanOf(lowPart.box, axis).low,
      high: spanOf(highPart.box, axis).high,
    }),
    beside: others.flatMap(({ id, box }) => {
      const stretch = spanOf(box, otherAxis(axis));
      if (!spansMeet(stretch, across)) return [];
      const member = readReference(id).to === 'member';
      return [{ id, member, span: spanOf(box, axis), across: stretch }];
    }),
    input: { ...input, others },
  };
}

/** Lines of face and levels, and of the other things those that the moving ones may reach. */
function targetsOf({ face, others, tolerance }: SnapInput, axis: Axis, moving: Span): Target[] {
  const center = middle(moving);
  const near = (at: Mm): boolean =>
    Math.abs(at - moving.low) <= tolerance ||
    Math.abs(at - moving.high) <= tolerance ||
    Math.abs(at - center) <= tolerance;
  const found: Target[] = [];
  const lines = (of: string, box: Box, inner: boolean, all: boolean): void => {
    const low = startOf(box, axis);
    const size = sizeOf(box, axis);
    const line = (side: 'low' | 'mid' | 'high', at: Mm) => {
      if (!all && !near(at)) return;
      const edge = inner ? { of, side, inner } : { of, side };
      found.push({ edge, at, across: spanOf(box, otherAxis(axis)) });
    };
    line('low', low);
    // The middle of the inside is the middle of the whole, said more simply.
    if (!inner) line('mid', low + size / 2);
    line('high', low + size);
  };
  lines('face', face.box, false, true);
  for (const level of face.levels) {
    lines(`level:${level.id}`, level.box, false, true);
    if (level.inner) lines(`level:${level.id}`, level.inner, true, true);
  }
  for (const other of others) {
    lines(other.id, other.box, false, false);
    if (other.inner) lines(other.id, other.inner, true, false);
  }
  return found;
}
