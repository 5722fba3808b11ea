import type { Face } from '../../bed/face.ts';
import type { Part, Rule } from '../../design/schema.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Stock } from '../../materials/types.ts';
import type { Mm } from '../../measure/units.ts';
import type { Lines } from '../rule/rule.ts';
import { choiceOf, equationsOf, keepsOf, resultOf } from '../rule/table.ts';
import { middle, type Span, sizeOf, spanOf, startOf } from '../span.ts';
import type { Structure } from '../structure.ts';
import { judge, type Rejected, type Stated } from './conflict.ts';
import { apart, evaluate, type Linear, mean, variable } from './linear.ts';
import { type Ground, highOf, linesOf, lowOf } from './lines.ts';
import type { Component } from './network.ts';
import { Rows } from './rows.ts';

/** A solution nearer than this to where the part was is where it was: rounding moves nothing. */
const UNMOVED: Mm = 1e-9;
/** Solutions stand on this lattice, finer than any rule's tolerance and coarser than elimination's rounding. */
const LATTICE: Mm = 2 ** -36;
/** Rounds after which a choice that keeps overturning itself (which part ends a block) is taken as it is. */
const MOST_ROUNDS = 6;

/** Where a part comes to lie along the axis. */
export interface Placed {
  readonly start: Mm;
  readonly size: Mm;
}

export interface Outcome {
  readonly rule: Rule;
  readonly fights: readonly string[] | null;
  readonly result: Mm | null;
}

export interface ComponentInput {
  readonly component: Component;
  readonly face: Face;
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly parts: readonly Part[];
  readonly structures: readonly Structure[];
  /** Parts that the hand holds just now. */
  readonly held: readonly boolean[];
}

/** The required equations of a component, eliminated; they do not depend on where parts are wished to be. */
interface Frame {
  readonly signature: string;
  readonly rows: Rows;
  /** Rules it was made from, those that could not hold among them. */
  readonly stated: ReadonlySet<Rule>;
  readonly rejected: readonly Rejected[];
}

export interface SolvedComponent {
  readonly input: ComponentInput;
  /** In the component's order. */
  readonly placed: readonly Placed[];
  readonly outcomes: readonly Outcome[];
  readonly frame: Frame | null;
}

export function solveComponent(input: ComponentInput, before: SolvedComponent | undefined): SolvedComponent {
  const { component, parts, structures } = input;
  if (component.rules.length === 0) {
    return {
      input,
      placed: parts.map((part, i) => alone(part, component, structures[i])),
      outcomes: [],
      frame: null,
    };
  }
  const known = before && sameFrame(before.input, input) ? before.frame : null;
  const start: readonly Span[] = parts.map((part) => spanOf(part.box, component.axis));
  const without = new Set<Rule>();
  let guesses = start;
  for (let round = 1; ; round++) {
    const now = solveAsGuessed(input, guesses, without, known, 'own');
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
    const last = solveAsGuessed(input, guesses, without, known, 'design');
    return answer(input, last, [...without, ...(last.signature === '' ? [] : notHolding(input, last))]);
  }
}

function answer(input: ComponentInput, solution: Solution, astray: readonly Rule[]): SolvedComponent {
  return {
    input,
    placed: solution.placed,
    outcomes: outcomesOf(input, solution, astray),
    frame: solution.frame,
  };
}

const groundOf = (input: ComponentInput): Ground => ({ ...input, axis: input.component.axis });

/**
 * Whose order decides which rule yields. While guesses are still being improved an order of the rules'
 * own, so that where they lead does not depend on the design's order; at the end the design's.
 */
type Order = 'own' | 'design';

interface Solution {
  /** The choices it was made with. */
  readonly signature: string;
  readonly frame: Frame;
  readonly placed: readonly Placed[];
  readonly found: readonly Span[];
}

/** One solution, with the choices that depend on places (which part ends a block) made as guessed. */
function solveAsGuessed(
  input: ComponentInput,
  guesses: readonly Span[],
  without: ReadonlySet<Rule>,
  known: Frame | null,
  order: Order,
): Solution {
  const { component, parts } = input;
  const lines = linesOf(groundOf(input), guesses);
  const state = (): Stated[] =>
    component.rules.flatMap((rule) =>
      without.has(rule) ? [] : [{ rule, equations: equationsOf(rule, lines) }],
    );
  const chosen = isChoosy(input) ? state() : null;
  const signature = chosen ? signatureOf(component, lines, without) : '';
  const usable = known?.signature === signature && (order === 'design' || known.rejected.length === 0);
  const frame = usable && known ? known : frameOf(input, chosen ?? state(), signature, order);
  const rows = frame.rows.copy();
  for (const wish of wishes(input, lines)) rows.add(wish);
  const placed = settle(input, rows.values(2 * parts.length));
  return {
    signature,
    frame,
    placed,
    found: placed.map(({ start, size }) => ({ low: start, high: start + size })),
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

function frameOf(input: ComponentInput, stated: readonly Stated[], signature: string, order: Order): Frame {
  const structure = structureEquations(input.structures);
  const canonical = [...stated].sort((a, b) => (a.rule.id < b.rule.id ? -1 : 1));
  const rows = eliminated(structure, canonical);
  const rules = new Set(stated.map((s) => s.rule));
  if (rows) return { signature, rows, stated: rules, rejected: [] };
  // Only when something fights does the design's order count; the answer is then made of those that hold,
  // again in an order of their own.
  const verdict = judge(structure, order === 'design' ? stated : canonical);
  const holding = new Set(verdict.accepted);
  return {
    signature,
    rows:
      eliminated(
        structure,
        canonical.filter((s) => holding.has(s)),
        true,
      ) ?? new Rows(),
    stated: rules,
    rejected: verdict.rejected,
  };
}

function structureEquations(structures: readonly Structure[]): Linear[] {
  return structures.flatMap(({ fixed }, i) =>
    fixed === null ? [] : [apart(variable(highOf(i)), variable(lowOf(i)), fixed)],
  );
}

/** Null where the equations contradict each other, unless `forgiving`: then by rounding only. */
function eliminated(structure: readonly Linear[], rules: readonly Stated[], forgiving = false): Rows | null {
  const rows = new Rows();
  for (const equation of structure) rows.add(equation);
  for (const { equations } of rules) {
    for (const equation of equations) {
      if (rows.add(equation).found === 'contradicts' && !forgiving) return null;
    }
  }
  return rows;
}

/**
 * What parts would like, most important first: locked parts stay, then what the hand holds is where the
 * hand is, then leaders before followers, each rank its sizes first (better moved than stretched), then
 * blocks as blocks, then places. A wish against what stands before it has no effect, so an edit moves
 * what it must and nothing else.
 */
function* wishes(input: ComponentInput, lines: Lines): Generator<Linear> {
  const { component, parts, structures, held } = input;
  const boxes = parts.map((part) => spanOf(part.box, component.axis));
  const sizeWish = (i: number): Linear[] => {
    const box = boxes[i];
    if (!box || structures[i]?.fixed !== null) return [];
    return [apart(variable(highOf(i)), variable(lowOf(i)), box.high - box.low)];
  };
  const placeWish = (i: number): Linear[] => {
    const box = boxes[i];
    return box
      ? [apart(mean(variable(lowOf(i)), variable(highOf(i))), { terms: [], constant: middle(box) })]
      : [];
  };
  const every = parts.map((_, i) => i);
  const locked = every.filter((i) => parts[i]?.locked);
  const inHand = every.filter((i) => held[i] && !parts[i]?.locked);
  for (const some of [locked, inHand]) {
    for (const i of some) yield* sizeWish(i);
    for (const i of some) yield* placeWish(i);
  }
  const blocks = blocksByRank(component, lines);
  for (let from = 0; from < parts.length; ) {
    const rank = component.ranks[from] ?? 0;
    let to = from;
    while (to < parts.length && component.ranks[to] === rank) to++;
    for (let i = from; i < to; i++) yield* sizeWish(i);
    for (const block of blocks.get(rank) ?? []) {
      for (const i of block.parts) yield* sizeWish(i);
      yield* block.keeps;
    }
    for (let i = from; i < to; i++) yield* placeWish(i);
    from = to;
  }
}

interface Block {
  readonly parts: readonly number[];
  readonly keeps: readonly Linear[];
}

/** Parts that would move together, by the lowest rank among them. */
function blocksByRank(component: Component, lines: Lines): Map<number, Block[]> {
  const found = new Map<number, Block[]>();
  const index = new Map(component.parts.map((id, i) => [id, i]));
  for (const rule of [...component.rules].sort((a, b) => (a.id < b.id ? -1 : 1))) {
    const keeps = keepsOf(rule, lines);
    if (keeps.length === 0 || !('parts' in rule)) continue;
    const parts = rule.parts.flatMap((id) => index.get(id) ?? []).sort((a, b) => a - b);
    const rank = component.ranks[parts[0] ?? 0] ?? 0;
    found.set(rank, [...(found.get(rank) ?? []), { parts, keeps }]);
  }
  return found;
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
  const lines = linesOf(groundOf(input), solution.found);
  const values = solution.found.flatMap((span) => [span.low, span.high]);
  const fights = new Map<Rule, readonly string[]>(astray.map((rule) => [rule, []]));
  for (const { rule, fights: others } of solution.frame.rejected)
    fights.set(
      rule,
      others.map((r) => r.id),
    );
  return input.component.rules.map((rule) => {
    const result = resultOf(rule, lines);
    return {
      rule,
      fights: fights.get(rule) ?? null,
      result: result === null ? null : evaluate(result, values),
    };
  });
}

/** Fields of a part that say where it is wished to be or how it looks, and no equation depends on. */
const LOOSE = new Set([
  'box',
  'name',
  'on',
  'finish',
  'fixing',
  'locked',
  'ends',
  'fit',
  'lettering',
  'openings',
]);

function sameFrame(a: ComponentInput, b: ComponentInput): boolean {
  return (
    a.face === b.face &&
    a.stocks === b.stocks &&
    sameItems(a.component.rules, b.component.rules) &&
    a.parts.length === b.parts.length &&
    a.parts.every((part, i) => samePart(part, b.parts[i])) &&
    a.structures.every((one, i) => sameStructure(one, b.structures[i]))
  );
}

/** Whether the whole solution can be taken over. */
export function sameComponentInput(a: ComponentInput, b: ComponentInput): boolean {
  return (
    a.face === b.face &&
    a.stocks === b.stocks &&
    sameItems(a.parts, b.parts) &&
    sameItems(a.component.rules, b.component.rules) &&
    sameItems(a.held, b.held) &&
    a.structures.every((one, i) => sameStructure(one, b.structures[i]))
  );
}

const sameItems = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a === b || (a.length === b.length && a.every((one, i) => one === b[i]));

const sameStructure = (a: Structure, b: Structure | undefined): boolean =>
  a.fixed === b?.fixed && a.inset === b.inset && a.outset === b.outset;

function samePart(a: Part, b: Part | undefined): boolean {
  if (a === b) return true;
  if (b === undefined) return false;
  const fields: Record<string, unknown> = { ...a };
  const others: Record<string, unknown> = { ...b };
  const names = Object.keys(fields);
  if (names.length !== Object.keys(others).length) return false;
  return names.every((name) => LOOSE.has(name) || fields[name] === others[name]);
}
