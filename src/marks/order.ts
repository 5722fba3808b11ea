import type { Check } from '../check/check.ts';
import { isBars, isBought, isPaint } from '../design/made.ts';
import type { Rule } from '../design/schema.ts';
import type { JointFound, Piece, Solid } from '../joinery/piece.ts';
import type { KeptResults } from '../layout/kept.ts';
import type { LaidPart } from '../layout/laid.ts';
import { under } from '../list/at.ts';
import { type Beneath, beneathOf } from './beneath.ts';
import { type Unit, unitsOf } from './units.ts';

export interface OrderInput {
  readonly parts: readonly LaidPart[];
  /** What the joints leave of the parts. */
  readonly solids: readonly Solid[];
  readonly joints: readonly JointFound[];
  readonly pieces: readonly Piece[];
  readonly rules: readonly Rule[];
}

/** In which order parts are fixed. */
export interface FixingOrder {
  /** Parts that are fixed to the face; fittings only where something lies over them. */
  readonly fixed: readonly LaidPart[];
  /** Parts that are cut to a length taken off the face itself. */
  readonly inPlace: ReadonlySet<string>;
  /** What can be fixed once the rounds before it are, in the layout's order. */
  readonly rounds: readonly (readonly Unit[])[];
  readonly checks: readonly Check[];
}

function measuredInPlace({ parts, pieces }: Pick<OrderInput, 'parts' | 'pieces'>): Set<string> {
  const found = new Set(pieces.filter((p) => p.fit.inPlace).map((p) => p.part));
  for (const laid of parts) {
    if (isBars(laid) && laid.spec.fit) found.add(laid.id);
  }
  return found;
}

function fixedParts(parts: readonly LaidPart[], beneath: Beneath): LaidPart[] {
  const supports = new Set([...beneath.values()].flatMap((ids) => [...ids]));
  return parts.filter((laid) => !isPaint(laid) && (!isBought(laid) || supports.has(laid.id)));
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

/** Of each unit the units that have to be there before it. */
type Needs = ReadonlyMap<Unit, Set<Unit>>;

function needsOf(units: readonly Unit[], beneath: Beneath): Needs {
  const unitOf = byPart(units);
  const needs = new Map(units.map((unit) => [unit, new Set<Unit>()]));
  for (const [high, lower] of beneath) {
    const unit = unitOf.get(high);
    for (const id of unit ? lower : []) {
      const low = unitOf.get(id);
      if (unit && low && low !== unit) needs.get(unit)?.add(low);
    }
  }
  return needs;
}

const byPart = (units: readonly Unit[]): ReadonlyMap<string, Unit> =>
  new Map(units.flatMap((unit) => unit.map((laid) => [laid.id, unit] as const)));

/** Units in rounds, each in a later one than all it needs; and what is left where they need each other. */
function roundsOf(units: readonly Unit[], needs: Needs): { rounds: Unit[][]; stuck: readonly Unit[] } {
  const done = new Set<Unit>();
  const rounds: Unit[][] = [];
  let left = units;
  while (left.length > 0) {
    const round = left.filter((unit) => [...under(needs, unit)].every((other) => done.has(other)));
    if (round.length === 0) break;
    for (const unit of round) done.add(unit);
    rounds.push(round);
    left = left.filter((unit) => !done.has(unit));
  }
  return { rounds, stuck: left };
}

/** Units that need each other in a circle, out of those that are stuck. */
function circleIn(stuck: readonly Unit[], needs: Needs): Unit[] {
  const way: Unit[] = [];
  let unit = stuck[0];
  while (unit && !way.includes(unit)) {
    way.push(unit);
    unit = [...under(needs, unit)].find((other) => stuck.includes(other));
  }
  return unit ? way.slice(way.indexOf(unit)) : [];
}

/**
 * Units between which an order is to be had: those that lie over and under each other by way of others are
 * taken apart and told of, for nothing may be fixed before what lies under it.
 */
function untangled(all: readonly Unit[], beneath: Beneath): { units: readonly Unit[]; checks: Check[] } {
  const checks: Check[] = [];
  let units = all;
  for (;;) {
    const needs = needsOf(units, beneath);
    const circle = circleIn(roundsOf(units, needs).stuck, needs);
    const joined = circle.find((unit) => unit.length > 1);
    if (!joined) return { units, checks };
    const between = circle.filter((unit) => unit !== joined).flat();
    checks.push(circleCheck(joined, 'between', between));
    units = units.flatMap((unit) => (unit === joined ? unit.map((laid) => [laid]) : [unit]));
  }
}

const circleCheck = (
  joined: readonly LaidPart[],
  why: 'between' | 'cope',
  between: readonly LaidPart[],
): Check => ({
  code: 'order.circle',
  severity: 'warning',
  parts: joined.map((laid) => laid.id),
  figures: { why, between: between.map((laid) => laid.id).join(' ') },
});

/** Whether `unit` cannot be there before `other` is, directly or by way of others. */
function waitsFor(unit: Unit, other: Unit, needs: Needs): boolean {
  const seen = new Set<Unit>([unit]);
  for (const next of seen) {
    if (next === other) return true;
    for (const below of under(needs, next)) seen.add(below);
  }
  return false;
}

/** Pairs of which the second is coped to the first, and so fitted against it. */
const copes = (joints: readonly JointFound[]): [string, string][] =>
  joints.flatMap(({ kind, through, parts: [a, b] }): [string, string][] =>
    kind === 'cope' && through !== null && a !== b ? [[through, through === a ? b : a]] : [],
  );

/** Pairs of which the second is measured against the first. */
function measured(input: OrderInput, fixed: readonly LaidPart[], inPlace: ReadonlySet<string>) {
  const rank = new Map(fixed.map((laid, i) => [laid.id, i]));
  return fixed.flatMap((laid, i): [string, string][] => {
    if (!inPlace.has(laid.id)) return [];
    const first = boundsOf(laid, input).filter((id) => !inPlace.has(id) || (rank.get(id) ?? i) < i);
    return first.map((id) => [id, laid.id]);
  });
}

/**
 * Fixed parts in rounds: every part comes in a later round than all that lies beneath it, what is put
 * together at once comes as one unit, what is coped after what it is coped to, and a part that is measured in
 * place after what bounds it. Of two pieces measured in place that bound each other, the one laid first goes
 * first. Within a round the layout's order holds.
 *
 * What lies beneath comes before copes and bounds where both cannot be had: a part that lies on a piece
 * measured in place cannot bound it.
 *
 * Check: `order.circle` (warning) where joints that are to be glued at once hold parts that lie over and under
 * something else, or parts are coped to each other in a circle; these are fixed one by one, from below.
 */
export function fixingOrder(input: OrderInput, results: KeptResults): FixingOrder {
  const beneath = beneathOf(input.parts, input.solids, results);
  const fixed = fixedParts(input.parts, beneath);
  const inPlace = measuredInPlace(input);
  const { units, checks } = untangled(unitsOf(fixed, input.joints), beneath);
  const needs = needsOf(units, beneath);
  const unitOf = byPart(units);
  const add = ([first, then]: readonly [string, string]): boolean => {
    const [a, b] = [unitOf.get(first), unitOf.get(then)];
    if (!a || !b || a === b) return true;
    if (waitsFor(a, b, needs)) return false;
    under(needs, b).add(a);
    return true;
  };
  for (const pair of copes(input.joints)) {
    if (!add(pair))
      checks.push(
        circleCheck(
          fixed.filter(({ id }) => pair.includes(id)),
          'cope',
          [],
        ),
      );
  }
  for (const pair of measured(input, fixed, inPlace)) add(pair);
  return { fixed, inPlace, rounds: roundsOf(units, needs).rounds, checks };
}
