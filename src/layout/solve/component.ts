import type { Part, Rule } from '../../design/schema.ts';
import type { Mm } from '../../measure/units.ts';
import { resultOf } from '../rule/table.ts';
import { sizeOf, startOf } from '../span.ts';
import type { Structure } from '../structure.ts';
import type { Attempt } from './attempt.ts';
import { solveArranged } from './blocks.ts';
import { fightsOf } from './fights.ts';
import { type ComponentInput, groundOf } from './input.ts';
import { evaluate } from './linear.ts';
import { linesOf } from './lines.ts';
import type { Component } from './network.ts';
import { isChoosy, type Placed, pastOf, type Solution, UNMOVED } from './solution.ts';

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
  const found = solveArranged(input, past, 'nearest');
  return {
    input,
    placed: found.solution.placed,
    outcomes: outcomesOf(input, found),
    solution: found.solution,
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

function outcomesOf(input: ComponentInput, found: Attempt): Outcome[] {
  const { solution } = found;
  const choosy = isChoosy(input);
  const lines = linesOf(groundOf(input), solution.found);
  const values = solution.found.flatMap((span) => [span.low, span.high]);
  const said = new Map(choosy ? [] : solution.stated.map((one) => [one.rule, one]));
  const fights = fightsOf(input, found);
  return input.component.rules.map((rule) => {
    const known = said.get(rule);
    const result = known ? known.result : resultOf(rule, lines);
    return {
      rule,
      fights: fights.get(rule)?.map((other) => other.id) ?? null,
      result: result === null ? null : evaluate(result, values),
    };
  });
}
