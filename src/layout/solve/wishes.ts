import { at, under } from '../../list/at.ts';
import { addTo, type Groups, groupOf } from '../../list/grouped.ts';
import type { Lines } from '../rule/rule.ts';
import { keepsOf } from '../rule/table.ts';
import { middle, spanOf } from '../span.ts';
import type { ComponentInput } from './input.ts';
import type { Linear } from './linear.ts';
import { middleIs, sizeIs } from './lines.ts';
import type { Component } from './network.ts';

/**
 * What parts would like, most important first: locked parts stay, then what the hand holds is where the
 * hand is, then leaders before followers, each rank its sizes first (better moved than stretched), then
 * blocks as blocks, then places. A wish against what stands before it has no effect, so an edit moves
 * what it must and nothing else.
 */
export function* wishes(input: ComponentInput, lines: Lines): Generator<Linear> {
  const { component, parts, structures, held } = input;
  const boxes = parts.map((part) => spanOf(part.box, component.axis));
  const sizeWish = (i: number): Linear[] => {
    const box = boxes[i];
    if (!box || structures[i]?.fixed !== null) return [];
    return [sizeIs(i, box.high - box.low)];
  };
  const placeWish = (i: number): Linear[] => {
    const box = boxes[i];
    return box ? [middleIs(i, middle(box))] : [];
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
    const rank = at(component.ranks, from);
    let to = from;
    while (to < parts.length && component.ranks[to] === rank) to++;
    for (let i = from; i < to; i++) yield* sizeWish(i);
    for (const block of groupOf(blocks, rank)) {
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
  const found: Groups<number, Block> = new Map();
  const blocks = component.rules.flatMap((rule) => {
    const keeps = keepsOf(rule, lines);
    return keeps.length > 0 && 'parts' in rule ? [{ rule, keeps }] : [];
  });
  for (const { rule, keeps } of blocks.sort((a, b) => (a.rule.id < b.rule.id ? -1 : 1))) {
    const parts = rule.parts.map((id) => under(component.index, id)).sort((a, b) => a - b);
    const rank = at(component.ranks, at(parts, 0));
    addTo(found, rank, { parts, keeps });
  }
  return found;
}
