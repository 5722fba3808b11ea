import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const ICONS = fileURLToPath(new URL('../../node_modules/lucide-react/dist/esm/icons/', import.meta.url));

/** An icon of the set that the editor's own icons are of (lucide, ISC license), as the inside of an SVG file 24 by 24. */
export interface Icon {
  readonly name: string;
  readonly inside: string;
}

/** Icons by their names, every `every`th file; names that only repeat another icon are left out. */
export async function iconsOf(every: number): Promise<Icon[]> {
  const files = readdirSync(ICONS).filter((file) => /^[a-z0-9-]+\.mjs$/.test(file) && file !== 'index.mjs');
  const icons: Icon[] = [];
  for (const file of files.filter((_, i) => i % every === 0)) {
    const { __iconData: data } = (await import(/* @vite-ignore */ ICONS + file)) as {
      __iconData?: { node: [string, Record<string, string>][] };
    };
    const inside = (data?.node ?? []).map(([name, attributes]) => {
      const told = Object.entries(attributes).filter(([key]) => key !== 'key');
      return `<${name} ${told.map(([key, value]) => `${key}="${value}"`).join(' ')}/>`;
    });
    if (inside.length > 0) icons.push({ name: file, inside: inside.join('') });
  }
  return icons;
}
