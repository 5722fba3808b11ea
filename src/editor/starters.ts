import { openData } from '../design/open.ts';
import type { Design } from '../design/schema.ts';

const files = import.meta.glob<unknown>('../../assets/starters/*.json', { import: 'default' });

/** Names of the starter designs: the file name without its folder and ending. */
export const STARTERS: readonly string[] = Object.keys(files)
  .map((path) => path.replace(/^.*\/|\.json$/g, ''))
  .sort();

/** Loads a starter design; null if its file does not open. */
export async function loadStarter(name: string): Promise<Design | null> {
  const load = files[`../../assets/starters/${name}.json`];
  if (!load) return null;
  const opened = openData(await load());
  return opened.ok ? opened.design : null;
}
