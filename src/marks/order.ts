import type { Rule } from '../design/schema.ts';
import type { JointFound, Piece } from '../joinery/piece.ts';
import type { LaidPart } from '../layout/laid.ts';

export interface OrderInput {
  readonly parts: readonly LaidPart[];
  readonly joints: readonly JointFound[];
  readonly pieces: readonly Piece[];
  readonly rules: readonly Rule[];
}

/** Parts that are cut to a length taken off the face itself. */
export function measuredInPlace({ parts, pieces }: Pick<OrderInput, 'parts' | 'pieces'>): Set<string> {
  const found = new Set(pieces.filter((p) => p.fit.inPlace).map((p) => p.part));
  for (const laid of parts) {
    if ((laid.kind === 'strip' || laid.kind === 'run') && laid.spec.fit) found.add(laid.id);
  }
  return found;
}

/** Whatever is set onto another part is fixed; fittings only where something lies on them. */
export function fixedParts(parts: readonly LaidPart[]): LaidPart[] {
  const supports = new Set(parts.map((laid) => laid.on));
  return parts.filter(
    (laid) => laid.kind !== 'painted' && (laid.kind !== 'fitting' || supports.has(laid.id)),
  );
}

/** The part that holds this one: paint is looked through, a level needs nothing. */
function supportOf(laid: LaidPart, byId: ReadonlyMap<string, LaidPart>): string | null {
  const seen = new Set<string>();
  let on = byId.get(laid.on);
  while (on && on.kind === 'painted' && !seen.has(on.id)) {
    seen.add(on.id);
    on = byId.get(on.on);
  }
  return on ? on.id : null;
}

/** Laid parts that a rule's edge names: one member of an array, or all of them. */
const named = (of: string, parts: readonly LaidPart[]): string[] =>
  parts.filter((laid) => laid.id === of || laid.part === of).map((laid) => laid.id);

/** Parts between which another runs: those it is joined to and those its rules stretch it between. */
function boundsOf(laid: LaidPart, { parts, joints, rules }: OrderInput): string[] {
  const joined = joints.flatMap(({ parts: [a, b] }) => (a === laid.id ? [b] : b === laid.id ? [a] : []));
  const between = rules.flatMap((rule) =>
    rule.kind === 'between' && (rule.part === laid.part || rule.part === laid.id)
      ? [...named(rule.low.of, parts), ...named(rule.high.of, parts)]
      : [],
  );
  return [...joined, ...between].filter((id) => id !== laid.id);
}

/**
 * Fixed parts in rounds: every part comes in a later round than what it lies on, and a part that is
 * measured in place in a later round than what bounds it. Of two pieces measured in place that bound each
 * other, the one laid first goes first. Within a round the layout's order holds.
 *
 * Supports come before bounds where both cannot be had: a part that lies on a piece measured in place
 * cannot bound it. Parts that lie on each other in a circle (a check of the layout) are taken one by one.
 */
export function fixingRounds(input: OrderInput): LaidPart[][] {
  const fixed = fixedParts(input.parts);
  const byId = new Map(input.parts.map((laid) => [laid.id, laid]));
  const rank = new Map(fixed.map((laid, i) => [laid.id, i]));
  const inPlace = measuredInPlace(input);
  const supports = new Map(fixed.map((laid) => [laid.id, supportOf(laid, byId)]));
  const bounds = new Map(
    fixed.map((laid, i) => {
      const all = inPlace.has(laid.id) ? boundsOf(laid, input) : [];
      const first = all.filter((id) => !inPlace.has(id) || (rank.get(id) ?? i) < i);
      return [laid.id, first.filter((id) => rank.has(id) && !liesOn(id, laid.id, supports))] as const;
    }),
  );
  const done = new Set<string>();
  const supported = ({ id }: LaidPart) => {
    const on = supports.get(id) ?? null;
    return on === null || !rank.has(on) || done.has(on);
  };
  const ready = (laid: LaidPart) =>
    supported(laid) && (bounds.get(laid.id) ?? []).every((id) => done.has(id));
  const rounds: LaidPart[][] = [];
  let left = fixed;
  while (left.length > 0) {
    const all = left.filter(ready);
    const round = all.length > 0 ? all : [left.find(supported) ?? left[0]].filter((l) => l !== undefined);
    for (const laid of round) done.add(laid.id);
    rounds.push(round);
    left = left.filter((laid) => !done.has(laid.id));
  }
  return rounds;
}

/** Whether `id` lies on `below`, directly or by way of others. */
function liesOn(id: string, below: string, supports: ReadonlyMap<string, string | null>): boolean {
  const seen = new Set<string>();
  for (let on = supports.get(id) ?? null; on !== null && !seen.has(on); on = supports.get(on) ?? null) {
    if (on === below) return true;
    seen.add(on);
  }
  return false;
}
