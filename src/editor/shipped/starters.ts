import type { Design } from '../../design/schema.ts';
import { theDoor } from './door.ts';

/** By their names: the file name without its folder and ending. */
const files = new Map(
  Object.entries(import.meta.glob<unknown>('../../../assets/starters/*.json', { import: 'default' })).map(
    ([path, load]) => [path.replace(/^.*\/|\.json$/g, ''), load],
  ),
);

/** Names of the starter designs. */
export const STARTERS: readonly string[] = [...files.keys()].sort();

/** The starters by the kind of building that they have the face of, as the first page shows them. */
export const STARTER_THEMES = {
  shops: ['bread-shop', 'harbor-ticket-kiosk'],
  halls: ['puppet-theater', 'village-library'],
  yards: ['glasshouse', 'orchard-barn-door', 'potting-shed'],
  ways: ['branch-line-shed', 'lighthouse-keeper'],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export const THEME_NAMES = Object.keys(STARTER_THEMES) as (keyof typeof STARTER_THEMES)[];

/** A starter with names of another language, by the English ones; whatever has none keeps its own. */
export function renamed(design: Design, names: Readonly<Record<string, string>>): Design {
  const named = <N extends { readonly name: string }>(of: N): N => ({
    ...of,
    name: names[of.name] ?? of.name,
  });
  return {
    ...named(design),
    parts: design.parts.map(named),
    finishes: design.finishes.map(named),
    groups: design.groups.map(named),
    keepClears: design.keepClears.map(named),
  };
}

/** Loads a starter design; null if its file does not open. */
export async function loadStarter(name: string): Promise<Design | null> {
  const load = files.get(name);
  if (!load) return null;
  const [{ openData }, data] = await Promise.all([theDoor(), load()]);
  const opened = openData(data);
  return opened.ok ? opened.design : null;
}
