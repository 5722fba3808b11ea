import type { Rule, RuleOf } from '../../design/schema.ts';
import { pick } from '../../list/at.ts';
import { sizeOf, spanOf, startOf } from '../span.ts';
import { type Attempt, attempt } from './attempt.ts';
import { type ComponentInput, groundOf } from './input.ts';
import { type Choices, linesOf, NO_CHOICES } from './lines.ts';
import { type Past, UNMOVED } from './solution.ts';

/** Arrangements of blocks that are tried before the best of them is taken; fewer where each takes longer. */
const mostTried = (rules: number): number => Math.max(8, Math.min(96, Math.floor(1000 / rules)));

/** Whether the rule centers several parts as one, so that it depends on which of them end the block. */
export const isBlock = (rule: Rule): rule is RuleOf<'center'> =>
  rule.kind === 'center' && rule.parts.length > 1;

/** Choices yet to be tried, and how far inside their blocks the chosen ends lie now. */
interface Candidate {
  readonly choices: Choices;
  readonly inside: number;
}

/**
 * The best way found to hold the rules. As the parts lie, if all hold so. Else other parts are tried as the
 * ends of the blocks that a failure touches, those first that lie near the ends now: of any two ways the one
 * in which the earlier rules of the design hold, then the one that moves less. Where only the question is
 * whether all can hold, any way that does will do.
 */
export function solveArranged(input: ComponentInput, past: Past | null, want: 'any' | 'nearest'): Attempt {
  let best = attempt(input, past, NO_CHOICES);
  if (best.failing.size === 0) return best;
  const most = mostTried(input.component.rules.length);
  const seen = new Set<string>();
  const waiting: Candidate[] = [];
  const wait = (candidates: readonly Candidate[]) => {
    for (const one of candidates) {
      const key = keyOf(one.choices);
      if (!seen.has(key)) waiting.push(one);
      seen.add(key);
    }
  };
  wait(furtherThan(input, { choices: NO_CHOICES, inside: 0 }, best));
  for (let tried = 0; tried < most; tried++) {
    const next = takeNearest(waiting);
    if (!next) break;
    const now = attempt(input, past, next.choices);
    if (isBetter(input, now, best)) best = now;
    if (want === 'any' && best.failing.size === 0) break;
    wait(furtherThan(input, next, now));
  }
  return best;
}

function takeNearest(waiting: Candidate[]): Candidate | undefined {
  let least = 0;
  waiting.forEach((one, i) => {
    if (one.inside < pick(waiting, least).inside) least = i;
  });
  return waiting.splice(least, 1)[0];
}

const keyOf = (choices: Choices): string =>
  [...choices]
    .map(([rule, { low, high }]) => JSON.stringify([rule, low, high]))
    .sort()
    .join();

/** The same choices with one more block's ends chosen: of blocks that fail or that a failing rule fights. */
function furtherThan(input: ComponentInput, from: Candidate, found: Attempt): Candidate[] {
  const boxes = input.parts.map((part) => spanOf(part.box, input.component.axis));
  const lines = linesOf(groundOf(input), boxes);
  const blocks = [...found.suspects].filter(isBlock).filter((rule) => !from.choices.has(rule.id));
  return blocks
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .flatMap((rule) => {
      const least = Math.min(...rule.parts.map((part) => lines.guess(part).low));
      const most = Math.max(...rule.parts.map((part) => lines.guess(part).high));
      return rule.parts.flatMap((low) =>
        rule.parts.map((high): Candidate => {
          const ends = { low, high, levelLow: [], levelHigh: [] };
          const inside = lines.guess(low).low - least + (most - lines.guess(high).high);
          return { choices: new Map([...from.choices, [rule.id, ends]]), inside: from.inside + inside };
        }),
      );
    });
}

function isBetter(input: ComponentInput, a: Attempt, b: Attempt): boolean {
  const differs = input.component.rules.find((rule) => a.failing.has(rule) !== b.failing.has(rule));
  if (differs) return b.failing.has(differs);
  return movement(input, a) < movement(input, b) - UNMOVED;
}

/** How far all parts move and stretch together. */
function movement({ component: { axis }, parts }: ComponentInput, { solution }: Attempt): number {
  let sum = 0;
  parts.forEach((part, i) => {
    const placed = solution.placed[i];
    if (!placed) return;
    const middle = placed.start + placed.size / 2 - startOf(part.box, axis) - sizeOf(part.box, axis) / 2;
    sum += Math.abs(middle) + Math.abs(placed.size - sizeOf(part.box, axis));
  });
  return sum;
}
