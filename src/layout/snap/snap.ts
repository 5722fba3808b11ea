import type { Axis } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { readReference } from '../reference.ts';
import { AXES, otherAxis, type Span, sizeOf, spanOf } from '../span.ts';
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
    targets: targetsOf({ ...input, others }, axis),
    beside: others
      .map(({ id, box }) => ({
        id,
        member: readReference(id).to === 'member',
        span: spanOf(box, axis),
        across: spanOf(box, otherAxis(axis)),
      }))
      .filter((other) => meet(other.across, across)),
    input: { ...input, others },
  };
}

const meet = (a: Span, b: Span): boolean => Math.min(a.high, b.high) - Math.max(a.low, b.low) > SAME_LENGTH;

function targetsOf({ face, others }: SnapInput, axis: Axis): Target[] {
  const lines = (of: string, box: Box, inner: boolean): Target[] => {
    const span = spanOf(box, axis);
    const across = spanOf(box, otherAxis(axis));
    const edge = (side: 'low' | 'mid' | 'high') => (inner ? { of, side, inner } : { of, side });
    const middleLine = { edge: edge('mid'), at: span.low + sizeOf(box, axis) / 2, across };
    return [
      { edge: edge('low'), at: span.low, across },
      // The middle of the inside is the middle of the whole, said more simply.
      ...(inner ? [] : [middleLine]),
      { edge: edge('high'), at: span.high, across },
    ];
  };
  return [
    ...lines('face', face.box, false),
    ...face.levels.flatMap((level) => [
      ...lines(`level:${level.id}`, level.box, false),
      ...(level.inner ? lines(`level:${level.id}`, level.inner, true) : []),
    ]),
    ...others.flatMap((other) => [
      ...lines(other.id, other.box, false),
      ...(other.inner ? lines(other.id, other.inner, true) : []),
    ]),
  ];
}
