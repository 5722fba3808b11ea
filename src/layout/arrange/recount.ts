import type { RuleOf } from '../../design/schema.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { at } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import { boundsOfPart } from '../bounds.ts';
import { edgesAt } from '../edgeAt.ts';
import { MOST_MEMBERS } from '../rule/spacing.ts';
import { sizeOf } from '../span.ts';
import { type Arranged, type Arranging, NOTHING } from './arranged.ts';
import { copyByRule } from './copy.ts';

type Even = RuleOf<'even'>;

/** A number of parts in a row, and the gap that they leave. */
export interface Count {
  readonly count: number;
  readonly gap: Mm;
}

interface Row {
  readonly room: Mm;
  readonly sizes: readonly Mm[];
}

/** The space of an even rule and the sizes of its parts as they show; null where an edge of it is not there. */
function rowOf({ input, layout }: Arranging, rule: Even): Row | null {
  const at = edgesAt(input, layout, rule.axis);
  const [low, high] = [at(rule.low), at(rule.high)];
  if (low === null || high === null) return null;
  const byId = new Map(input.design.parts.map((part) => [part.id, part]));
  const sizes = rule.parts.flatMap((id) => {
    const part = byId.get(id);
    return part ? [sizeOf(boundsOfPart(input, layout, part).box, rule.axis)] : [];
  });
  return sizes.length === 0 ? null : { room: high - low, sizes };
}

/** The gap that so many leave: the first of those there are, and more like the last. */
function gapOf({ room, sizes }: Row, mode: Even['mode'], count: number): Mm {
  let left = room;
  for (let i = 0; i < count; i++) left -= at(sizes, Math.min(i, sizes.length - 1));
  if (mode === 'flush') return count === 1 ? left / 2 : left / (count - 1);
  return mode === 'half' ? left / count : left / (count + 1);
}

/**
 * The least number of parts whose gaps are no larger than `most`: with fewer the last ones go, with more they are
 * like the last. Null where the parts would stand in each other before that, and for fixed centers.
 */
export function countFor(on: Arranging, rule: Even, most: Mm): Count | null {
  const row = rowOf(on, rule);
  if (!row || rule.mode === 'centers') return null;
  for (let count = 1; count <= MOST_MEMBERS; count++) {
    const gap = gapOf(row, rule.mode, count);
    if (gap < -SAME_LENGTH) return null;
    if (gap <= most + SAME_LENGTH) return { count, gap };
  }
  return null;
}

/**
 * The distance of centers at which the parts there are leave just this gap, as a group in the middle; null where
 * they are of several sizes, or do not fit.
 */
export function pitchFor(on: Arranging, rule: Even, gap: Mm): Mm | null {
  const row = rowOf(on, rule);
  const size = row?.sizes[0];
  if (!row || size === undefined || row.sizes.length < 2) return null;
  if (row.sizes.some((one) => Math.abs(one - size) > SAME_LENGTH)) return null;
  const taken = row.sizes.length * size + (row.sizes.length - 1) * gap;
  return taken > row.room + SAME_LENGTH ? null : size + gap;
}

/** What becomes of a row that is to have another number of parts. */
export interface Recounted {
  readonly arranged: Arranged;
  readonly rule: Even;
  /** Parts that go. */
  readonly gone: readonly string[];
}

/** Copies of the last part, in line with it and of its size, or the last parts gone. The rule spaces them anew. */
export function recounted(on: Arranging, rule: Even, count: number): Recounted {
  const gone = rule.parts.slice(Math.max(1, count));
  const more = count - rule.parts.length;
  const last = rule.parts.at(-1);
  if (more <= 0 || last === undefined) {
    return { arranged: NOTHING, rule: { ...rule, parts: rule.parts.slice(0, Math.max(1, count)) }, gone };
  }
  const copied = copyByRule(on, [last], { axis: rule.axis, gap: 0, count: more });
  // In the row it is the rule that places them.
  const rules = copied.rules.filter((one) => one.kind !== 'set' || one.axis !== rule.axis);
  const parts = [...rule.parts, ...copied.add.map((part) => part.id)];
  return { arranged: { ...copied, rules }, rule: { ...rule, parts }, gone: [] };
}
