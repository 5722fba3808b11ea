import type { Face } from '../../bed/face.ts';
import type { Part } from '../../design/schema.ts';
import type { Stock } from '../../materials/types.ts';
import { type Sizes, structureOf } from '../structure.ts';
import { type SolvedComponent, solveComponent } from './component.ts';
import { sameComponentInput } from './input.ts';
import { type Component, componentKey, type Network } from './network.ts';

export interface SolveInput {
  readonly face: Face;
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly sizes: Sizes | undefined;
  readonly held: ReadonlySet<string> | undefined;
}

/** The components of a network and what they came to, in the same order. */
export interface SolvedNetwork {
  readonly network: Network;
  readonly solved: readonly SolvedComponent[];
}

/** Solves every component; one whose input is as it was last time is taken over. */
export function solveAll(
  input: SolveInput,
  network: Network,
  partOf: (id: string) => Part,
  last: SolvedNetwork | undefined,
): SolvedComponent[] {
  const before = new Map(
    last?.network.components.map((one, i) => [componentKey(one), last.solved[i]] as const),
  );
  return network.components.map((one) => solveOne(input, one, partOf, before.get(componentKey(one))));
}

/** Solves some components of a network whose others are as they were: by number, what has changed. */
export function solveSome(
  input: SolveInput,
  network: Network,
  partOf: (id: string) => Part,
  solved: readonly SolvedComponent[],
  touched: Iterable<number>,
): Map<number, SolvedComponent> {
  const found = new Map<number, SolvedComponent>();
  for (const i of touched) {
    const component = network.components[i];
    const before = solved[i];
    if (!component) continue;
    const now = solveOne(input, component, partOf, before);
    if (now !== before) found.set(i, now);
  }
  return found;
}

function solveOne(
  { face, stocks, sizes, held }: SolveInput,
  component: Component,
  partOf: (id: string) => Part,
  before: SolvedComponent | undefined,
): SolvedComponent {
  const parts = component.parts.map(partOf);
  const now = {
    component,
    face,
    stocks,
    parts,
    structures: parts.map((part) => structureOf(part, component.axis, stocks, sizes)),
    held: parts.map((part) => held?.has(part.id) === true),
  };
  // A number may have been given to parts of the other axis.
  const past = before?.input.component.axis === component.axis ? before : undefined;
  return past && sameComponentInput(past.input, now) ? past : solveComponent(now, past);
}
