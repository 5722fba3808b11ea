import { isRead } from '../design/reading.ts';
import { mentionsOf } from '../design/references.ts';
import { inSlot, isAlong, withFields } from '../design/rule/table.ts';
import type { Axis, Part, Rule, Strip, TapeRead } from '../design/schema.ts';
import { under } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { whatMoved } from './compare.ts';
import type { LayoutInput } from './input.ts';
import type { ReadPart } from './laid.ts';
import { laidFrom } from './layout.ts';
import { partOf, readReference } from './reference.ts';
import type { Remembered } from './remembered.ts';
import { edgeBy, type Found, type ShiftedEdge } from './rule/found.ts';
import { foundIn, standsIn, tieOf } from './rule/table.ts';
import { sizeOf, startOf, withSpan } from './span.ts';

/** Whether anything of a design was measured in place. */
export const hasReadings = (parts: readonly Part[]): boolean => parts.some(isRead);

/** How long the box of a strip is where its edges are what was read. */
export function sizeRead({ of, left, right }: TapeRead): Mm {
  const off = [left, right].flatMap((edge) => (edge ? [edge.read - edge.planned] : []));
  return off.length === 0 ? of : of + off.reduce((sum, mm) => sum + mm, 0) / off.length;
}

/** Parts, rules and imposed sizes as they stand after some readings. */
interface State {
  readonly parts: readonly Part[];
  readonly rules: readonly Rule[];
  readonly sizes: ReadonlyMap<string, { readonly w?: Mm; readonly h?: Mm }>;
}

/**
 * The layout with every reading of a piece in place, one after the other in the order of the parts. A piece that lies up
 * or across is as long as it was read; what it ends at at the end that `moves` stands farther off by what that is more
 * than planned, and all that rules tie to either follows: equal gaps over what is left, pieces between, marks. Where the
 * rules do not let go of what it ends at, its own tie is loosened by as much; where they fight even so, nothing follows.
 *
 * @param planned the same layout without any reading
 */
export function laidAsRead(input: LayoutInput, planned: Remembered): Remembered {
  const { parts, rules } = input.design;
  let state: State = { parts, rules, sizes: new Map() };
  let now = planned;
  const read: ReadPart[] = [];
  for (const part of parts) {
    if (!isRead(part)) continue;
    const found = following(part, state, now, (next) => laidFrom(withState(input, next), now));
    const followers = found
      ? whatMoved(now.layout, found.laid.layout).flatMap((one) => (one.part === part.id ? [] : one.part))
      : [];
    read.push({ part: part.id, followers });
    if (found) [state, now] = [found.state, found.laid];
  }
  return ofDesign(now, rules, read);
}

const withState = (input: LayoutInput, { parts, rules, sizes }: State): LayoutInput => ({
  ...input,
  design: { ...input.design, parts, rules },
  sizes: new Map([...(input.sizes ?? []), ...sizes]),
});

/** What is told of rules is told of those of the design; others stand for one of them. */
function ofDesign(laid: Remembered, rules: readonly Rule[], read: readonly ReadPart[]): Remembered {
  const known = new Set(rules.map(({ id }) => id));
  const { layout } = laid;
  return { ...laid, layout: { ...layout, rules: layout.rules.filter(({ id }) => known.has(id)), read } };
}

/** The first way in which all rules hold that held before; null where nothing can follow. */
function following(
  part: Strip & { readonly read: TapeRead },
  state: State,
  now: Remembered,
  lay: (next: State) => Remembered,
) {
  const { lie, read } = part;
  if ((lie !== 'up' && lie !== 'across') || read.moves === 'nothing') return null;
  const axis: Axis = lie === 'up' ? 'y' : 'x';
  const side = read.moves === 'end' ? 'high' : 'low';
  const size = sizeRead(read);
  const by = (size - sizeOf(under(now.boxes, part.id), axis)) * (side === 'high' ? 1 : -1);
  const sizes = new Map(state.sizes).set(part.id, axis === 'x' ? { w: size } : { h: size });
  const imposed = { ...state, sizes };
  const tie = tieAt(part.id, axis, side, state.rules);
  const found: Found = {
    ...{ part: tie?.edge.of ?? '', side, by },
    startOf: (id) => startOf(under(now.boxes, id), axis),
  };
  const ways = tie
    ? [
        neighborMoved(
          tie,
          axis,
          found,
          tieAt(part.id, axis, side === 'high' ? 'low' : 'high', state.rules),
          imposed,
        ),
        imposed,
        tieShifted(tie, by, imposed),
      ]
    : [imposed];
  const held = now.layout.rules.filter(({ holds }) => holds).map(({ id }) => id);
  for (const next of ways) {
    if (!next) continue;
    const laid = lay(next);
    const holds = new Map(laid.layout.rules.map((rule) => [rule.id, rule.holds]));
    if (held.every((id) => holds.get(id))) return { state: next, laid };
  }
  return null;
}

/** A rule that holds one end of a part, and the edge that it holds it by. */
interface Tie {
  readonly rule: Rule;
  readonly field: string;
  readonly edge: ShiftedEdge;
}

function tieAt(part: string, axis: Axis, side: 'low' | 'high', rules: readonly Rule[]): Tie | null {
  for (const rule of rules) {
    const field = tieOf(rule, axis, part, side);
    if (field !== null) return { rule, field, edge: inSlot(rule, { is: 'edge', field }) };
  }
  return null;
}

const replaced = (rules: readonly Rule[], one: Rule, by: readonly Rule[]): Rule[] =>
  rules.flatMap((rule) => (rule === one ? by : [rule]));

/** The part's own tie let out: it ends beyond the edge that it was held by, or short of it. */
const tieShifted = ({ rule, field, edge }: Tie, by: Mm, state: State): State => {
  const loose = withFields(rule, { [field]: edgeBy(edge, by) });
  return { ...state, rules: replaced(state.rules, rule, [loose]) };
};

/** What the part ends at set where it was found; null where that is no part by itself, or a rule does not let go of it. */
function neighborMoved(
  { edge }: Tie,
  axis: Axis,
  found: Found,
  other: Tie | null,
  state: State,
): State | null {
  if (readReference(edge.of).to !== 'part') return null;
  const { part: id, by } = found;
  const holding = state.rules.filter(
    (rule) => isAlong(rule, axis) && mentionsOf(rule).follow.some((of) => partOf(of) === id),
  );
  if (holding.length === 0) {
    const parts = state.parts.map((part): Part => {
      const { box } = part;
      const start = startOf(box, axis) + by;
      return part.id === id ? { ...part, box: withSpan(box, axis, start, sizeOf(box, axis)) } : part;
    });
    return { ...state, parts };
  }
  let { rules } = state;
  for (const rule of holding) {
    const next = foundIn(rule, found);
    if (!next) return null;
    rules = replaced(rules, rule, next);
  }
  // What the other end is at stands already, and what is spread with it.
  if (other)
    rules = rules.flatMap((rule) => (isAlong(rule, axis) ? standsIn(rule, other.edge.of, found) : [rule]));
  return { ...state, rules };
}
