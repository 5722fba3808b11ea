import type { FontReason } from '../../../lettering/font.ts';
import { t } from '../../words/t.ts';
import { lookAtFont } from './lookAtFont.ts';

export type OpenedFont =
  | { readonly ok: true; readonly name: string; readonly data: string }
  | { readonly ok: false; readonly message: string };

/** Base64 characters that a design keeps for one font. */
const MOST_KEPT = 8_000_000;

/** Reads a font file that the person chose, and says in words why it cannot be used when it cannot. */
export async function openFont(file: File): Promise<OpenedFont> {
  const { name } = file;
  if (Math.ceil(file.size / 3) * 4 > MOST_KEPT) {
    return { ok: false, message: t('font.too-big', { name, detail: megabytes((MOST_KEPT / 4) * 3) }) };
  }
  const bytes = new Uint8Array(await file.arrayBuffer());
  const look = await lookAtFont(bytes, name);
  if (!look) return { ok: false, message: t('font.too-slow', { name }) };
  if (!look.ok) return { ok: false, message: reasonWords(look.reason, name) };
  return { ok: true, name: name.replace(/\.[^.]*$/, '').slice(0, 200), data: base64Of(bytes) };
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

/** In stretches, since a call takes only so many arguments. */
function base64Of(bytes: Uint8Array): string {
  const STRETCH = 0x8000;
  let text = '';
  for (let i = 0; i < bytes.length; i += STRETCH) {
    text += String.fromCharCode(...bytes.subarray(i, i + STRETCH));
  }
  return btoa(text);
}
