import type { CutBoard, CutSheet, Cutting } from '../cutting/result.ts';
import { factsOf } from '../design/job/record.ts';
import type { Fact } from '../design/job/schema.ts';

type Wood = CutBoard | CutSheet;

/** How a board of the job begins its name: no entry of a list has a colon in its own. */
const BOUGHT = 'b:';
const ON_HAND = 'o:';

const sizeOf = (wood: Wood): string =>
  [wood.length, ...('width' in wood ? [wood.width] : [])].map((v) => v.toFixed(1)).join('x');

/**
 * What each board and sheet of a plan is called in the job: those that are there by their own names, those to be bought
 * by stock, size and number, so that two devices with one plan call a board alike.
 */
export function boardIds(
  { boards, sheets }: Pick<Cutting, 'boards' | 'sheets'>,
  facts: readonly Fact[],
): ReadonlyMap<Wood, string> {
  const there = new Set(factsOf(facts, 'board').map(({ id }) => id));
  const next = new Map<string, number>();
  const fresh = (stem: string): string => {
    for (let n = (next.get(stem) ?? 0) + 1; ; n++) {
      next.set(stem, n);
      if (!there.has(`${stem}:${n}`)) return `${stem}:${n}`;
    }
  };
  return new Map(
    [...boards, ...sheets].map((wood): [Wood, string] => {
      const { owned } = wood;
      if (owned === null) return [wood, fresh(`${BOUGHT}${wood.stock}:${sizeOf(wood)}`)];
      return [wood, isOfJob(owned, there) ? owned : fresh(`${ON_HAND}${owned}`)];
    }),
  );
}

/** The name of a board as it was first told: one that was split in two by two devices has a number behind it. */
export const firstNamed = (id: string): string => id.replace(/~\d+$/, '');

const isOfJob = (id: string, there: ReadonlySet<string>): boolean => there.has(firstNamed(id));
