import { defectsOn, unusedOf } from '../cutting/boards/stretch.ts';
import type { CutBoard } from '../cutting/result.ts';
import { liveFacts } from '../design/job/record.ts';
import type { Design } from '../design/schema.ts';
import { boardsOf } from './boards.ts';

/** What of a board is not used: of one that is there what is split, spoiled or too short for its name, else as of any other. */
export function unusedOn(board: CutBoard, design: Pick<Design, 'owned' | 'shop' | 'job'>) {
  const real = boardsOf(liveFacts(design.job)).find(({ id }) => id === board.owned);
  if (!real) return unusedOf(board, design);
  const trims = real.fact.got === 'bought' ? unusedOf({ ...board, owned: null }, design) : [];
  const spoiled = real.cuts.filter(({ is }) => is === 'spoiled');
  return [...trims, ...defectsOn(board.length, [...real.bad, ...spoiled])];
}
