import { isMany } from '../../design/made.ts';
import type { Rule } from '../../design/schema.ts';
import { at, pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Lines } from '../rule/rule.ts';
import { choiceOf, equationsOf, resultOf } from '../rule/table.ts';
import { type Span, sizeOf, startOf } from '../span.ts';
import { again, type Elimination, eliminationOf } from './again.ts';
import type { Stated } from './conflict.ts';
import { allEquations, type Frame, frameOf, holdingFrame, type Order } from './frame.ts';
import { type ComponentInput, groundOf, sameEquations, sameGround } from './input.ts';
import type { Linear } from './linear.ts';
import { type Choices, highOf, linesOf, lowOf } from './lines.ts';
import type { Component } from './network.ts';
import { wishes } from './wishes.ts';

/** A solution nearer than this to where the part was is where it was: rounding moves nothing. */
export const UNMOVED: Mm = 1e-9;
/** Solutions stand on this lattice, finer than any rule's tolerance and coarser than elimination's rounding. */
const LATTICE: Mm = 2 ** -36;
/** Where a part comes to lie along the axis. */
export interface Placed {
  readonly start: Mm;
  readonly size: Mm;
}

/** A component solved with the choices that depend on places made as guessed. */
export interface Solution {
  /** The choices it was made with. */
  readonly signature: string;
  readonly stated: readonly Stated[];
  readonly frame: Frame;
  readonly elimination: Elimination;
  readonly placed: readonly Placed[];
  readonly found: readonly Span[];
}

/** The last solution of a component, and what of it still holds. */
export interface Past extends Solution {
  /** The required equations are the same, so their elimination is. */
  readonly sameEquations: boolean;
  /** What each rule says, where that rests on nothing but the rule. */
  readonly said: ReadonlyMap<Rule, Stated>;
}

export function pastOf(was: ComponentInput, solution: Solution | null, input: ComponentInput): Past | null {
  if (!solution || !sameGround(was, input)) return null;
  const lasting = isChoosy(input) ? [] : solution.stated;
  return {
    ...solution,
    sameEquations: sameEquations(was, input),
    said: new Map(lasting.map((one) => [one.rule, one])),
  };
}

/** One solution, with the choices that depend on places (which part ends a block) made as guessed. */
export function solveAsGuessed(
  input: ComponentInput,
  guesses: readonly Span[],
  without: ReadonlySet<Rule>,
  past: Past | null,
  order: Order,
  choices: Choices,
): Solution {
  const { component } = input;
  const lines = linesOf(groundOf(input), guesses, choices);
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

/** Whether any equation may depend on where parts are thought to be. */
export const isChoosy = ({ component, parts }: ComponentInput): boolean =>
  parts.some(isMany) || component.rules.some((rule) => rule.kind === 'center');

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
    const low = at(values, lowOf(i));
    const high = at(values, highOf(i));
    const fixed = pick(structures, i).fixed;
    const wasStart = startOf(part.box, component.axis);
    const wasSize = sizeOf(part.box, component.axis);
    const size = fixed ?? (Math.abs(high - low - wasSize) < UNMOVED ? wasSize : smooth(high - low));
    const start = Math.abs(low - wasStart) < UNMOVED ? wasStart : smooth(low);
    return { start, size };
  });
}
