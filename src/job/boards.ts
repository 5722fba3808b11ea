import { factsOf } from '../design/job/record.ts';
import type { Fact, FactOf } from '../design/job/schema.ts';
import type { Owned, Shop } from '../design/schema.ts';
import type { Mm } from '../measure/units.ts';

/** A stretch along a board, from its left end. */
interface Stretch {
  readonly from: Mm;
  readonly to: Mm;
}

type Cut = FactOf<'cut'> | FactOf<'spoiled'>;

/** A board or sheet that is there, as it really is. */
export interface JobBoard {
  readonly id: string;
  readonly fact: FactOf<'board'>;
  /** As the tape reads it, where it was read. */
  readonly length: Mm;
  readonly width: Mm | undefined;
  /** What was cut of it, in the order in which that was said. */
  readonly cuts: readonly Cut[];
  /** What nothing can be cut of: split, or gone. */
  readonly bad: readonly Stretch[];
}

/** Two pieces that say they were cut of the same wood were cut of two boards. */
const ON_EACH_OTHER = 0.5;

function onEachOther(a: Stretch, b: Stretch): boolean {
  const shared = Math.min(a.to, b.to) - Math.max(a.from, b.from);
  return shared > ON_EACH_OTHER * Math.min(a.to - a.from, b.to - b.from);
}

/**
 * The boards and sheets of the job. Two devices that went on by themselves may each have begun a board that the other
 * calls by the same name: what lies on what was cut before is of another board alike, so that no piece is lost.
 */
export function boardsOf(facts: readonly Fact[]): JobBoard[] {
  const cuts = [...factsOf(facts, 'cut'), ...factsOf(facts, 'spoiled')].sort(
    (a, b) => a.at - b.at || (a.id < b.id ? -1 : 1),
  );
  return factsOf(facts, 'board').flatMap((fact) => {
    const size = factsOf(facts, 'size').find(({ board }) => board === fact.id);
    const bad = factsOf(facts, 'bad').filter(({ board }) => board === fact.id);
    const own = cuts.filter(({ board }) => board === fact.id);
    const common = {
      fact,
      length: size?.length ?? fact.length,
      width: fact.width === undefined ? undefined : (size?.width ?? fact.width),
    };
    const heaps: Cut[][] = [[]];
    for (const cut of own) {
      // A layout of a sheet gives each piece a place of its own, and its cuts no stretch.
      const heap = heaps.find((h) => fact.lay !== undefined || h.every((other) => !onEachOther(other, cut)));
      if (heap) heap.push(cut);
      else heaps.push([cut]);
    }
    return heaps.map((heap, i) => ({
      ...common,
      id: i === 0 ? fact.id : `${fact.id}~${i + 1}`,
      cuts: heap,
      bad: i === 0 ? bad : [],
    }));
  });
}

/** What is left of a board to cut pieces of: nothing of what a blade was in, of bad stretches, and of ends to be trimmed. */
export function leftOf({ id, fact, length, cuts, bad }: JobBoard, shop: Shop): Owned {
  const trim = fact.got === 'bought' ? shop.endTrim : 0;
  const trims =
    trim > 0
      ? [
          { from: 0, to: trim },
          { from: Math.max(0, length - trim), to: length },
        ]
      : [];
  const gone = cuts.map(({ from, to, blade: [left, right] }) => ({
    from: Math.max(0, from - left),
    to: to + right,
  }));
  const stretches = [...trims, ...gone, ...bad.map(({ from, to }) => ({ from, to }))];
  return { id, stock: fact.stock, length, count: 1, defects: joined(stretches) };
}

/** Stretches that touch, as one. */
function joined(stretches: readonly Stretch[]): Stretch[] {
  const found: { from: Mm; to: Mm }[] = [];
  for (const { from, to } of [...stretches].sort((a, b) => a.from - b.from)) {
    const last = found.at(-1);
    if (last && from <= last.to) last.to = Math.max(last.to, to);
    else found.push({ from, to });
  }
  return found;
}
