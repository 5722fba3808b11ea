import { factsOf } from '../design/job/record.ts';
import type { Fact } from '../design/job/schema.ts';
import type { Box, Region } from '../geometry/shape.ts';
import { SAME_PLACE } from '../geometry/tolerance.ts';
import type { LaidPart } from '../layout/laid.ts';
import { pick } from '../list/at.ts';

/**
 * What a change would do to something that is done: a part that is on moves, wood that is cut would be of another size,
 * paint would be another, or the part goes.
 */
export type How = 'moved' | 'resized' | 'repainted' | 'gone';

export interface Touched {
  /** Part of the design. */
  readonly part: string;
  readonly how: How;
}

/** Which is told of a part where several are: what is done anew for it covers the rest. */
const FIRST: readonly How[] = ['gone', 'resized', 'moved', 'repainted'];

/**
 * The parts with something done that a change of the layout touches, each once.
 * @param facts what holds of the job
 */
export function touchedBy(
  facts: readonly Fact[],
  before: readonly LaidPart[],
  after: readonly LaidPart[],
): readonly Touched[] {
  if (facts.length === 0 || before === after) return [];
  const done = factsOf(facts, 'done');
  const fastened = new Set(done.flatMap(({ box, part }) => (box && part !== null ? [part] : [])));
  const painted = new Set(
    done.flatMap(({ finish, part }) => (finish !== null && part !== null ? [part] : [])),
  );
  const cut = new Set(factsOf(facts, 'cut').map(({ part }) => part));
  const now = new Map(after.map((laid) => [laid.id, laid]));
  const found = new Map<string, How>();
  for (const was of before) {
    const is = now.get(was.id);
    if (is === was) continue;
    const isDone = fastened.has(was.id) || cut.has(was.id) || painted.has(was.id);
    if (!isDone) continue;
    const hows: (How | false)[] = is
      ? [
          (cut.has(was.id) || fastened.has(was.id)) && isOtherwiseMade(was, is) && 'resized',
          fastened.has(was.id) && isElsewhere(was.box, is.box) && 'moved',
          painted.has(was.id) && was.finish !== is.finish && 'repainted',
        ]
      : ['gone'];
    const before = found.get(was.part);
    const [how] = FIRST.filter((one) => one === before || hows.includes(one));
    if (how) found.set(was.part, how);
  }
  return [...found].map(([part, how]) => ({ part, how }));
}

const isElsewhere = (a: Box, b: Box): boolean =>
  Math.abs(a.x - b.x) > SAME_PLACE || Math.abs(a.y - b.y) > SAME_PLACE;

/** Of other stock, or another shape wherever it lies. */
function isOtherwiseMade(a: LaidPart, b: LaidPart): boolean {
  if (a.kind !== b.kind || a.stock !== b.stock) return true;
  const [p, q] = [cornersOf(a.region), cornersOf(b.region)];
  const [dx, dy] = [b.box.x - a.box.x, b.box.y - a.box.y];
  return (
    p.length !== q.length ||
    p.some(({ x, y }, i) => {
      const other = pick(q, i);
      return Math.abs(x + dx - other.x) > SAME_PLACE || Math.abs(y + dy - other.y) > SAME_PLACE;
    })
  );
}

const cornersOf = (region: Region) => region.flatMap(({ outer, holes }) => [outer, ...holes].flat());
