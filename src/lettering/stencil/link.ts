import type { Choices, Placed } from './bridging.ts';
import type { Crossing } from './crossing.ts';
import { FRAME } from './solid.ts';

/**
 * Islands that hold each other but not the frame get one more bridge: the cheapest that leads out of their
 * group.
 */
export function linkAll(placed: Placed[], choices: readonly Choices[]): void {
  for (let round = 0; round < choices.length; round += 1) {
    const group = groupsOf(placed, choices.length);
    const way = wayOut(choices, group);
    if (!way) return;
    placed.push(way);
  }
}

/** The best bridge out of the first group adrift that has one. */
function wayOut(choices: readonly Choices[], group: (index: number) => number): Placed | null {
  const tried = new Set([group(FRAME)]);
  for (const { island } of choices) {
    const own = group(island.index);
    if (tried.has(own)) continue;
    tried.add(own);
    const members = choices.filter((other) => group(other.island.index) === own);
    const way = cheapest(members, ({ target }) => group(target) !== own);
    if (way) return way;
  }
  return null;
}

/** Which pieces of sheet the bridges join: equal numbers are one piece. */
function groupsOf(placed: readonly Placed[], count: number): (index: number) => number {
  const parent = Array.from({ length: count + 1 }, (_, i) => i);
  const rootOf = (index: number): number => {
    let at = index;
    while (parent[at] !== at) at = parent[at] ?? at;
    return at;
  };
  // The frame, -1, stands first.
  for (const { island, crossing } of placed) {
    if (island) parent[rootOf(island.index + 1)] = rootOf(crossing.target + 1);
  }
  return (index) => rootOf(index + 1);
}

/** The best place of all those islands that is allowed. */
export function cheapest(
  choices: readonly Choices[],
  allowed: (crossing: Crossing) => boolean,
): Placed | null {
  let best: Placed | null = null;
  let least = Infinity;
  for (const { island, candidates } of choices) {
    for (const { crossing, cost } of candidates) {
      if (cost >= least || !allowed(crossing)) continue;
      least = cost;
      best = { island, crossing };
    }
  }
  return best;
}
