import type { Rule } from '../../design/schema.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { BlockEnds, Lines } from '../rule/rule.ts';
import { equationsOf } from '../rule/table.ts';
import { type Span, spanOf } from '../span.ts';
import { type ComponentInput, groundOf } from './input.ts';
import { evaluate } from './linear.ts';
import { type Choices, linesOf } from './lines.ts';
import { type Past, type Solution, solveAsGuessed } from './solution.ts';

/** Rounds after which a rule whose choices (which part ends a block) keep overturning themselves is left out. */
const MOST_ROUNDS = 6;

/** A component solved with what ends some of its blocks given. */
export interface Attempt {
  /** As given, with the parts that had to be held level with the ends. */
  readonly choices: Choices;
  readonly solution: Solution;
  /** Rules that do not hold for another reason than that others contradict them. */
  readonly astray: readonly Rule[];
  /** Every rule that does not hold. */
  readonly failing: ReadonlySet<Rule>;
  /** Rules that fail or are fought, whatever the design's order: which of two yields, does not count here. */
  readonly suspects: ReadonlySet<Rule>;
}

/** Solves from where the parts lie; what is not chosen is guessed anew from each solution until it stands. */
export function attempt(input: ComponentInput, past: Past | null, given: Choices): Attempt {
  const start: readonly Span[] = input.parts.map((part) => spanOf(part.box, input.component.axis));
  const without = new Set<Rule>();
  let guesses = start;
  let choices = given;
  for (let round = 1; ; round++) {
    const now = solveAsGuessed(input, guesses, without, past, 'own', choices);
    const astray = now.signature === '' ? [] : notHolding(input, now);
    if (astray.length > 0 && round < MOST_ROUNDS) {
      guesses = now.found;
      choices = leveled(input, choices, now, astray);
      continue;
    }
    if (astray.length > 0) {
      for (const rule of astray) without.add(rule);
      guesses = start;
      round = 0;
      continue;
    }
    if (now.frame.rejected.length === 0) return attempted(choices, now, [...without], without);
    const suspects = new Set(without);
    for (const { rule, fights } of now.frame.rejected) for (const one of [rule, ...fights]) suspects.add(one);
    const last = solveAsGuessed(input, guesses, without, past, 'design', choices);
    const lost = last.signature === '' ? [] : notHolding(input, last);
    return attempted(choices, last, [...without, ...lost], suspects);
  }
}

function attempted(
  choices: Choices,
  solution: Solution,
  astray: readonly Rule[],
  suspects: ReadonlySet<Rule>,
): Attempt {
  const failing = new Set([...astray, ...solution.frame.rejected.map((one) => one.rule)]);
  return { choices, solution, astray, failing, suspects };
}

/**
 * Rules taken as holding that do not when the choices they rest on are made anew from the solution: the
 * guess was wrong. A rule that is still among them after some rounds chases its own ends and is left out.
 */
function notHolding(input: ComponentInput, solution: Solution): Rule[] {
  const lines = linesOf(groundOf(input), solution.found);
  const values = solution.found.flatMap((span) => [span.low, span.high]);
  const judged = new Set(solution.frame.rejected.map((r) => r.rule));
  return input.component.rules.filter(
    (rule) =>
      !judged.has(rule) &&
      solution.frame.stated.has(rule) &&
      equationsOf(rule, lines).some((equation) => Math.abs(evaluate(equation, values)) > SAME_LENGTH),
  );
}

/** The choices with the part of each block that reaches farthest past a chosen end held level with that end. */
function leveled(
  input: ComponentInput,
  choices: Choices,
  solution: Solution,
  astray: readonly Rule[],
): Choices {
  const lines = linesOf(groundOf(input), solution.found);
  const found = new Map(choices);
  for (const rule of astray) {
    const ends = choices.get(rule.id);
    if (ends && rule.kind === 'center') found.set(rule.id, leveledEnds(rule.parts, ends, lines));
  }
  return found;
}

function leveledEnds(parts: readonly string[], ends: BlockEnds, lines: Lines): BlockEnds {
  const low = lines.guess(ends.low).low;
  const high = lines.guess(ends.high).high;
  let farthest = SAME_LENGTH;
  let leveledTo = ends;
  for (const part of parts) {
    const under = low - lines.guess(part).low;
    const over = lines.guess(part).high - high;
    if (Math.max(under, over) <= farthest) continue;
    farthest = Math.max(under, over);
    leveledTo =
      under > over
        ? { ...ends, levelLow: [...ends.levelLow, part] }
        : { ...ends, levelHigh: [...ends.levelHigh, part] };
  }
  return leveledTo;
}
