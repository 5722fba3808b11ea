import type { Part, Rule } from '../../design/schema.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';
import { equationsOf, resultOf } from '../rule/table.ts';
import { type Span, sizeOf, spanOf, startOf } from '../span.ts';
import type { Structure } from '../structure.ts';
import { type ComponentInput, groundOf } from './input.ts';
import { evaluate } from './linear.ts';
import { linesOf } from './lines.ts';
import type { Component } from './network.ts';
import { isChoosy, type Placed, pastOf, type Solution, solveAsGuessed, UNMOVED } from './solution.ts';

/** Rounds after which a rule whose choices (which part ends a block) keep overturning themselves is left out. */
const MOST_ROUNDS = 6;

/** How a rule came out. */
export interface Outcome {
  readonly rule: Rule;
  /** Null: it holds; else what it fights. */
  readonly fights: readonly string[] | null;
  readonly result: Mm | null;
}

export interface SolvedComponent {
  readonly input: ComponentInput;
  /** In the component's order. */
  readonly placed: readonly Placed[];
  readonly outcomes: readonly Outcome[];
  /** How it was solved, for the next time; null where there was nothing to solve. */
  readonly solution: Solution | null;
}

/** Solves the rules of one component along its axis. `before`: its last solution, for what can be taken over. */
export function solveComponent(input: ComponentInput, before: SolvedComponent | undefined): SolvedComponent {
  const { component, parts, structures } = input;
  if (component.rules.length === 0) {
    return {
      input,
      placed: parts.map((part, i) => alone(part, component, structures[i])),
      outcomes: [],
      solution: null,
    };
  }
  const past = before ? pastOf(before.input, before.solution, input) : null;
  const start: readonly Span[] = parts.map((part) => spanOf(part.box, component.axis));
  const without = new Set<Rule>();
  let guesses = start;
  for (let round = 1; ; round++) {
    const now = solveAsGuessed(input, guesses, without, past, 'own');
    const astray = now.signature === '' ? [] : notHolding(input, now);
    if (astray.length > 0 && round < MOST_ROUNDS) {
      guesses = now.found;
      continue;
    }
    if (astray.length > 0) {
      for (const rule of astray) without.add(rule);
      guesses = start;
      round = 0;
      continue;
    }
    if (now.frame.rejected.length === 0) return answer(input, now, [...without]);
    const last = solveAsGuessed(input, guesses, without, past, 'design');
    return answer(input, last, [...without, ...(last.signature === '' ? [] : notHolding(input, last))]);
  }
}

function answer(input: ComponentInput, solution: Solution, astray: readonly Rule[]): SolvedComponent {
  return {
    input,
    placed: solution.placed,
    outcomes: outcomesOf(input, solution, astray),
    solution,
  };
}

/** The part keeps its place; where its make decides its size, about its center line. */
function alone(part: Part, component: Component, structure: Structure | undefined): Placed {
  const start = startOf(part.box, component.axis);
  const size = sizeOf(part.box, component.axis);
  const fixed = structure?.fixed ?? null;
  if (fixed === null || Math.abs(fixed - size) < UNMOVED) return { start, size: fixed ?? size };
  return { start: start + size / 2 - fixed / 2, size: fixed };
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

function outcomesOf(input: ComponentInput, solution: Solution, astray: readonly Rule[]): Outcome[] {
  const choosy = isChoosy(input);
  const lines = linesOf(groundOf(input), solution.found);
  const values = solution.found.flatMap((span) => [span.low, span.high]);
  const said = new Map(choosy ? [] : solution.stated.map((one) => [one.rule, one]));
  const fights = new Map<Rule, readonly string[]>(astray.map((rule) => [rule, []]));
  for (const { rule, fights: others } of solution.frame.rejected)
    fights.set(
      rule,
      others.map((r) => r.id),
    );
  return input.component.rules.map((rule) => {
    const known = said.get(rule);
    const result = known ? known.result : resultOf(rule, lines);
    return {
      rule,
      fights: fights.get(rule) ?? null,
      result: result === null ? null : evaluate(result, values),
    };
  });
}
