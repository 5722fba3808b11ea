import type { Part, Rule } from '../../design/schema.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';
import type { Lines } from '../rule/rule.ts';
import { choiceOf, equationsOf, resultOf } from '../rule/table.ts';
import { type Span, sizeOf, spanOf, startOf } from '../span.ts';
import type { Structure } from '../structure.ts';
import { again, type Elimination, eliminationOf } from './again.ts';
import type { Stated } from './conflict.ts';
import { allEquations, type Frame, frameOf, holdingFrame, type Order } from './frame.ts';
import { type ComponentInput, groundOf, sameEquations, sameGround } from './input.ts';
import { evaluate, type Linear } from './linear.ts';
import { highOf, linesOf, lowOf } from './lines.ts';
import type { Component } from './network.ts';
import { wishes } from './wishes.ts';

/** A solution nearer than this to where the part was is where it was: rounding moves nothing. */
const UNMOVED: Mm = 1e-9;
/** Solutions stand on this lattice, finer than any rule's tolerance and coarser than elimination's rounding. */
const LATTICE: Mm = 2 ** -36;
/** Rounds after which a rule whose choices (which part ends a block) keep overturning themselves is left out. */
const MOST_ROUNDS = 6;

/** Where a part comes to lie along the axis. */
interface Placed {
  readonly start: Mm;
  readonly size: Mm;
}

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
  const past = before ? pastOf(before, input) : null;
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

interface Solution {
  /** The choices it was made with. */
  readonly signature: string;
  readonly stated: readonly Stated[];
  readonly frame: Frame;
  readonly elimination: Elimination;
  readonly placed: readonly Placed[];
  readonly found: readonly Span[];
}

/** The last solution of a component, and what of it still holds. */
interface Past extends Solution {
  /** The required equations are the same, so their elimination is. */
  readonly sameEquations: boolean;
  /** What each rule says, where that rests on nothing but the rule. */
  readonly said: ReadonlyMap<Rule, Stated>;
}

function pastOf({ input: was, solution }: SolvedComponent, input: ComponentInput): Past | null {
  if (!solution || !sameGround(was, input)) return null;
  const lasting = isChoosy(input) ? [] : solution.stated;
  return {
    ...solution,
    sameEquations: sameEquations(was, input),
    said: new Map(lasting.map((one) => [one.rule, one])),
  };
}

/** One solution, with the choices that depend on places (which part ends a block) made as guessed. */
function solveAsGuessed(
  input: ComponentInput,
  guesses: readonly Span[],
  without: ReadonlySet<Rule>,
  past: Past | null,
  order: Order,
): Solution {
  const { component } = input;
  const lines = linesOf(groundOf(input), guesses);
  const stated = component.rules.flatMap((rule): Stated[] => {
    if (without.has(rule)) return [];
    const said = past?.said.get(rule);
    return [said ?? { rule, equations: equationsOf(rule, lines), result: resultOf(rule, lines) }];
  });
  const signature = isChoosy(input) ? signatureOf(component, lines, without) : '';
  const wanted = [...wishes(input, lines)];
  const { frame, elimination, values } =
    solvedAgain(input, past, stated, wanted, signature, order) ??
    solvedAnew(input, past, stated, wanted, signature, order);
  const placed = settle(input, values);
  return {
    signature,
    stated,
    frame,
    elimination,
    placed,
    found: placed.map(({ start, size }) => ({ low: start, high: start + size })),
  };
}

interface Solved {
  readonly frame: Frame;
  readonly elimination: Elimination;
  readonly values: readonly number[];
}

/** The last elimination's frame, where it is that of the same equations. */
function frameKept(past: Past | null, signature: string, order: Order): Frame | null {
  if (!past?.sameEquations || past.signature !== signature) return null;
  return order === 'design' || past.frame.rejected.length === 0 ? past.frame : null;
}

/** By the steps of the last elimination with other constants; null where they are not the steps of this one. */
function solvedAgain(
  input: ComponentInput,
  past: Past | null,
  stated: readonly Stated[],
  wanted: readonly Linear[],
  signature: string,
  order: Order,
): Solved | null {
  if (!past) return null;
  const kept = frameKept(past, signature, order);
  if (!kept && past.frame.rejected.length > 0) return null;
  const equations = kept?.equations ?? allEquations(input, stated);
  const expressions = [...equations, ...wanted];
  const values = again(past.elimination, expressions, 2 * input.parts.length);
  if (!values) return null;
  const elimination = { ...past.elimination, expressions };
  return { frame: kept ?? holdingFrame(equations, stated, signature), elimination, values };
}

function solvedAnew(
  input: ComponentInput,
  past: Past | null,
  stated: readonly Stated[],
  wanted: readonly Linear[],
  signature: string,
  order: Order,
): Solved {
  const frame = frameKept(past, signature, order) ?? frameOf(input, stated, signature, order);
  const rows = frame.rows().copy();
  for (const wish of wanted) rows.add(wish);
  const elimination = eliminationOf(rows, [...frame.equations, ...wanted], frame.equations.length);
  return { frame, elimination, values: rows.values(2 * input.parts.length) };
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

/** Whether any equation may depend on where parts are thought to be. */
const isChoosy = ({ component, parts }: ComponentInput): boolean =>
  parts.some((part) => part.kind === 'array') || component.rules.some((rule) => rule.kind === 'center');

/** Every choice that the equations of these lines rest on; empty where there is none. */
function signatureOf(
  component: Component,
  lines: Lines & { readonly counts: readonly string[] },
  without: ReadonlySet<Rule>,
): string {
  const choices = component.rules.flatMap((rule) => choiceOf(rule, lines) ?? []);
  const left = [...without].map((rule) => `without ${rule.id}`);
  return [...choices, ...new Set(lines.counts), ...left].join(';');
}

/** Without the last digits of elimination, so that sizes that rules make the same are the same number. */
const smooth = (value: Mm): Mm => Math.round(value / LATTICE) * LATTICE + 0;

/** Values as places, exactly where the part was when nothing but rounding moved it. */
function settle(input: ComponentInput, values: readonly number[]): Placed[] {
  const { component, parts, structures } = input;
  return parts.map((part, i) => {
    const low = values[lowOf(i)] ?? 0;
    const high = values[highOf(i)] ?? 0;
    const fixed = structures[i]?.fixed ?? null;
    const wasStart = startOf(part.box, component.axis);
    const wasSize = sizeOf(part.box, component.axis);
    const size = fixed ?? (Math.abs(high - low - wasSize) < UNMOVED ? wasSize : smooth(high - low));
    const start = Math.abs(low - wasStart) < UNMOVED ? wasStart : smooth(low);
    return { start, size };
  });
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
