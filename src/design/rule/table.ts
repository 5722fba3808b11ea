import { under } from '../../list/at.ts';
import type { Axis, Edge } from '../field.ts';
import { betweenShape } from './between.ts';
import { centerShape } from './center.ts';
import { evenShape } from './even.ts';
import { gapShape } from './gap.ts';
import { gradedShape } from './graded.ts';
import type { Room, RuleShape, Slot } from './kind.ts';
import { mirrorShape } from './mirror.ts';
import { revealShape } from './reveal.ts';
import { sameShape } from './same.ts';
import type { Rule, RuleKind, RuleOf } from './schema.ts';
import { setShape } from './set.ts';

/** Every kind of rule; a kind without a line here does not compile. */
const SHAPES: { readonly [K in RuleKind]: RuleShape<RuleOf<K>> } = {
  set: setShape,
  gap: gapShape,
  center: centerShape,
  between: betweenShape,
  even: evenShape,
  mirror: mirrorShape,
  same: sameShape,
  reveal: revealShape,
  graded: gradedShape,
};

// The table is keyed by the rule's own kind, which the compiler cannot follow through a union.
export const shapeOf = (rule: Rule): RuleShape<Rule> => SHAPES[rule.kind] as unknown as RuleShape<Rule>;

/** A slot of a kind with the field that it describes. */
export type NamedSlot = Slot<string> & { readonly field: string };

const SLOTS: ReadonlyMap<string, readonly NamedSlot[]> = new Map(
  Object.entries(SHAPES).map(([kind, { slots }]) => [
    kind,
    Object.entries(slots).map(([field, slot]): NamedSlot => ({ ...(slot as Slot<string>), field })),
  ]),
);

/** What the fields of a rule are, in their order. */
export const slotsOf = (rule: Rule): readonly NamedSlot[] => under(SLOTS, rule.kind);

type Values = {
  edge: Edge;
  part: string;
  parts: readonly string[];
  thing: string;
  measure: number | undefined;
};

/** The value that a rule has in a slot. */
export const inSlot = <K extends keyof Values>(
  rule: Rule,
  slot: { readonly is: K; readonly field: string },
): Values[K] => rule[slot.field as keyof Rule] as unknown as Values[K];

export type MeasureSlot = NamedSlot & { readonly is: 'measure' };

/** The measures that count in a rule as it is. */
export const measuresOf = (rule: Rule): readonly MeasureSlot[] =>
  slotsOf(rule).filter(
    (slot): slot is MeasureSlot =>
      slot.is === 'measure' &&
      (slot.where === undefined || rule[slot.where.field as keyof Rule] === slot.where.is),
  );

/** A rule with other values in some of its fields. */
export const withFields = (rule: Rule, fields: Readonly<Record<string, unknown>>): Rule =>
  ({ ...rule, ...fields }) as Rule;

/** Whether a rule says something along an axis. */
export const isAlong = (rule: Rule, axis: Axis): boolean =>
  shapeOf(rule).both === true || !('axis' in rule) || rule.axis === axis;

/** The rooms that a rule keeps beside a part which follows it. */
export const roomsOf = (rule: Rule, part: string): readonly Room[] => shapeOf(rule).rooms?.(rule, part) ?? [];
