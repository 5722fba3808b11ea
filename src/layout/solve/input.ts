import type { Face } from '../../bed/face.ts';
import type { Part } from '../../design/schema.ts';
import type { Stock } from '../../materials/types.ts';
import { sameItems } from '../changes.ts';
import type { Structure } from '../structure.ts';
import type { Ground } from './lines.ts';
import type { Component } from './network.ts';

/** Everything that the solution of a component depends on. */
export interface ComponentInput {
  readonly component: Component;
  readonly face: Face;
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly parts: readonly Part[];
  readonly structures: readonly Structure[];
  /** Parts that the hand holds just now. */
  readonly held: readonly boolean[];
}

export const groundOf = (input: ComponentInput): Ground => ({
  ...input,
  axis: input.component.axis,
  index: input.component.index,
});

/** Fields of a part that say where it is wished to be or how it looks, and no equation depends on. */
const LOOSE = new Set([
  'box',
  'name',
  'on',
  'onChosen',
  'finish',
  'fixing',
  'locked',
  'ends',
  'fit',
  'read',
  'lettering',
  'openings',
]);

/** Whether the required equations are the same. */
export const sameEquations = (a: ComponentInput, b: ComponentInput): boolean =>
  sameItems(a.component.rules, b.component.rules) && sameGround(a, b);

/** Whether a rule that is the same has the same equations, unless these rest on choices. */
export function sameGround(a: ComponentInput, b: ComponentInput): boolean {
  return (
    a.face === b.face &&
    a.stocks === b.stocks &&
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
