import type { Face } from '../../bed/face.ts';
import type { Axis, Edge, Part, PartArray } from '../../design/schema.ts';
import { pick } from '../../list/at.ts';
import type { Stock } from '../../materials/types.ts';
import type { Mm } from '../../measure/units.ts';
import { levelOf, readReference } from '../reference.ts';
import type { ShiftedEdge } from '../rule/found.ts';
import type { BlockEnds, Lines } from '../rule/rule.ts';
import { countOf, startOfMember } from '../rule/spacing.ts';
import { type Span, spanOf } from '../span.ts';
import { memberSize, type Structure } from '../structure.ts';
import { combine, constant, type Linear, mean, plus, variable } from './linear.ts';

/** What the expressions of a component are made from. */
export interface Ground {
  readonly axis: Axis;
  readonly face: Face;
  readonly stocks: ReadonlyMap<string, Stock>;
  /** Parts of the component in its order; part `i` has the variables `2 i` (low) and `2 i + 1` (high). */
  readonly parts: readonly Part[];
  readonly structures: readonly Structure[];
  /** Where each part stands in `parts`, when that is known. */
  readonly index?: ReadonlyMap<string, number>;
}

export const lowOf = (i: number): number => 2 * i;
export const highOf = (i: number): number => 2 * i + 1;

/** Zero where part `i` has the size. */
export const sizeIs = (i: number, size: Mm): Linear => ({
  terms: [
    [highOf(i), 1],
    [lowOf(i), -1],
  ],
  constant: -size,
});

/** Zero where part `i` has its middle at a place. */
export const middleIs = (i: number, at: Mm): Linear => ({
  terms: [
    [lowOf(i), 0.5],
    [highOf(i), 0.5],
  ],
  constant: -at,
});

/** What ends some blocks, by the rules that center them; the others are left to the guess. */
export type Choices = ReadonlyMap<string, BlockEnds>;

export const NO_CHOICES: Choices = new Map();

/** Lines of a component, with places as guessed. `counts` collects the member counts that were relied on. */
export function linesOf(
  ground: Ground,
  guesses: readonly Span[],
  choices: Choices = NO_CHOICES,
): Lines & { readonly counts: string[] } {
  const { axis, face, stocks, parts, structures } = ground;
  const index = ground.index ?? new Map(parts.map((part, i) => [part.id, i]));
  const counts: string[] = [];

  const at = (part: string): number => {
    const i = index.get(part);
    if (i === undefined) throw new RangeError(`part ${part} is not in this component`);
    return i;
  };
  const low = (part: string): Linear => {
    const i = at(part);
    return plus(variable(lowOf(i)), -pick(structures, i).outset);
  };
  const high = (part: string): Linear => {
    const i = at(part);
    return plus(variable(highOf(i)), pick(structures, i).outset);
  };
  const guess = (part: string): Span => {
    const i = at(part);
    const { low, high } = pick(guesses, i);
    const outset = pick(structures, i).outset;
    return outset === 0 ? { low, high } : { low: low - outset, high: high + outset };
  };
  const chosen = (rule: string) => choices.get(rule);

  const member = (array: PartArray, column: number, row: number): { low: Linear; high: Linear } => {
    const i = at(array.id);
    const whole = { low: variable(lowOf(i)), high: variable(highOf(i)) };
    const spacing = axis === 'x' ? array.across : array.up;
    const slot = memberSize(array, array.member, axis, stocks);
    if (spacing === null || slot === null) return whole;
    const span = guess(array.id);
    const count = countOf(span.high - span.low, slot, spacing);
    counts.push(`${array.id}:${count}`);
    const { share, offset } = startOfMember(
      Math.min(axis === 'x' ? column : row, count - 1),
      count,
      slot,
      spacing,
    );
    // A member of other stock keeps the center line of its place.
    const stock = array.overrides[`${column},${row}`]?.stock;
    const own =
      stock !== undefined && 'stock' in array.member
        ? (memberSize(array, { ...array.member, stock }, axis, stocks) ?? slot)
        : slot;
    const start = combine(
      [
        [1 - share, whole.low],
        [share, whole.high],
      ],
      offset + (slot - own) / 2,
    );
    return { low: start, high: plus(start, own) };
  };

  const ends = (edge: Edge): { low: Linear; high: Linear } => {
    const reference = readReference(edge.of);
    switch (reference.to) {
      case 'face':
        return fixedEnds(spanOf(face.box, axis));
      case 'level': {
        const level = levelOf(face, reference.level);
        const box = (edge.inner ? level?.inner : null) ?? level?.box ?? face.box;
        return fixedEnds(spanOf(box, axis));
      }
      case 'member': {
        const part = parts[at(reference.part)];
        if (part?.kind === 'array') return member(part, reference.column, reference.row);
        return { low: low(reference.part), high: high(reference.part) };
      }
      case 'part': {
        if (!edge.inner) return { low: low(reference.part), high: high(reference.part) };
        const i = at(reference.part);
        const inset = pick(structures, i).inset;
        return { low: plus(variable(lowOf(i)), inset), high: plus(variable(highOf(i)), -inset) };
      }
    }
  };

  const edge = (named: ShiftedEdge): Linear => {
    const found = ends(named);
    const on = named.side === 'mid' ? mean(found.low, found.high) : found[named.side];
    return named.by ? plus(on, named.by) : on;
  };

  return { axis, edge, low, high, guess, chosen, counts };
}

const fixedEnds = (span: Span) => ({ low: constant(span.low), high: constant(span.high) });
