import type { Check } from '../../check/check.ts';
import { partsOfRule } from '../../design/references.ts';
import type { Axis, Edge, Rule } from '../../design/schema.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';
import type { Linear } from '../solve/linear.ts';
import type { Span } from '../span.ts';
import type { Found } from './found.ts';

/** The parts that end a block, and those that lie level with them where they would reach past them. */
export interface BlockEnds {
  readonly low: string;
  readonly high: string;
  readonly levelLow: readonly string[];
  readonly levelHigh: readonly string[];
}

/** The edges of one axis as expressions, while a component is solved. */
export interface Lines {
  readonly axis: Axis;
  edge(edge: Edge): Linear;
  /** Visible low and high edge of a part. */
  low(part: string): Linear;
  high(part: string): Linear;
  /** Where the part is thought to be visible: its last good place, then the last solution. */
  guess(part: string): Span;
  /** What ends the block of a rule, where that is not left to the guess. */
  chosen(rule: string): BlockEnds | undefined;
}

/** One kind of rule. Every equation is an expression that is zero where the rule holds. */
export interface RuleKindOf<R extends Rule> {
  equations(rule: R, lines: Lines): Linear[];
  /** Wishes, weaker than rules and sizes, stronger than the places of single parts. */
  keeps?(rule: R, lines: Lines): Linear[];
  /** A choice that the equations depend on and that the solution may overturn, as text to compare. */
  choice?(rule: R, lines: Lines): string;
  /** The gap or length that came out, of the rule's first axis. */
  result(rule: R, lines: Lines): Linear | null;
  checks?(rule: R, result: Mm): Check[];
  /** The field with the edge that holds one end of a part. */
  tie?(rule: R, part: string, side: 'low' | 'high'): string | null;
  /**
   * The rules that stand for it where a part that follows it was found elsewhere; null where it does not let go. Where
   * nothing is said, all that leads it is seen as much elsewhere.
   */
  found?(rule: R, found: Found): readonly Rule[] | null;
  /** The same where what it leads from was found elsewhere, and one of its parts stands already. */
  stands?(rule: R, part: string, found: Found): readonly Rule[];
}

/** Shared by the rules that fill a span: members in the way of each other. */
export function gapNegative(rule: Rule, gap: Mm): Check[] {
  if (gap >= -SAME_LENGTH) return [];
  return [
    {
      code: 'rule.gap-negative',
      severity: 'warning',
      parts: partsOfRule(rule),
      figures: { rule: rule.id, gap_mm: gap },
    },
  ];
}
