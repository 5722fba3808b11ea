import { tablesFor } from './shipped.ts';

/** Addresses of the fonts that ship with the tool; each is fetched when a sign first asks for it. */
const urls = import.meta.glob<string>(
  [
    '../../../node_modules/@fontsource/*/files/*-latin-400-normal.woff',
    '!../../../node_modules/@fontsource/noto-*/**',
  ],
  { eager: true, query: '?url', import: 'default' },
);

export function fontUrl(id: string): string | null {
  const entry = tablesFor('en').fonts.find((f) => f.id === id);
  return entry ? (urls[`../../../node_modules/${entry.package}/${entry.file}`] ?? null) : null;
}

/** The bytes of a font of the tables; null for an unknown one. */
export async function fontBytes(id: string): Promise<Uint8Array | null> {
  const url = fontUrl(id);
  if (!url) return null;
  const response = await fetch(new URL(url, self.location.href));
  return response.ok ? new Uint8Array(await response.arrayBuffer()) : null;
}
