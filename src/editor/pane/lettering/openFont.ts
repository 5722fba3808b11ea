import type { Face } from '../../../lettering/font/faces.ts';
import type { FontReason } from '../../../lettering/font.ts';
import { base64Of } from '../../../plan/base64.ts';
import { t } from '../../words/t.ts';
import { fontsInFile, plainFont } from './lookAtFont.ts';

export type FoundFonts =
  | { readonly ok: true; readonly fonts: readonly Face[] }
  | { readonly ok: false; readonly message: string };

export type OpenedFont =
  | { readonly ok: true; readonly data: string }
  | { readonly ok: false; readonly message: string };

/** Base64 characters that a design keeps for one font. */
const MOST_KEPT = 8_000_000;
/** Largest file that is opened: of a collection one font is kept. */
const MOST_OPENED = 32_000_000;

const tooBig = (name: string, most: number) =>
  ({ ok: false, message: t('font.too-big', { name, detail: megabytes(most) }) }) as const;

/** The fonts of a file that the person chose, all of them named; in words, why none of it can be used when none can. */
export async function findFonts(file: File): Promise<FoundFonts> {
  const { name } = file;
  if (file.size > MOST_OPENED) return tooBig(name, MOST_OPENED);
  const found = await fontsInFile(new Uint8Array(await file.arrayBuffer()));
  if (!found) return { ok: false, message: t('file.too-slow', { name }) };
  if (!found.ok) return { ok: false, message: reasonWords(found.reason, name) };
  const stem = name.replace(/\.[^.]*$/, '');
  const fonts = found.fonts.map((font) => ({ ...font, name: (font.name || stem).slice(0, 200) }));
  return { ok: true, fonts };
}

/** One of them as a design keeps it. */
export async function openFont(font: Face): Promise<OpenedFont> {
  const { name } = font;
  const plain = await plainFont(font);
  if (!plain) return { ok: false, message: t('font.damaged', { name, detail: 'fvar' }) };
  const data = base64Of(plain);
  return data.length > MOST_KEPT ? tooBig(name, (MOST_KEPT / 4) * 3) : { ok: true, data };
}

function reasonWords(reason: FontReason, name: string): string {
  return t(`font.${reason.code}`, { name, detail: detailOf(reason) });
}

function detailOf(reason: FontReason): string {
  switch (reason.code) {
    case 'too-big':
      return megabytes(reason.most);
    case 'no-table':
    case 'damaged':
      return reason.table.trim();
    case 'too-many-glyphs':
      return String(reason.glyphs);
    case 'bad-units':
      return String(reason.units);
    default:
      return '';
  }
}

const megabytes = (bytes: number): string => `${Math.round(bytes / 1e5) / 10} MB`;
