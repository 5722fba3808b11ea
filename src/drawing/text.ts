import { at, under } from '../list/at.ts';
import type { Deg, Mm } from '../measure/units.ts';
import { asTyped, spelled } from './spelled.ts';
import { BOLD, CHARACTERS, REGULAR } from './typeface.ts';

/** Place of each character in the tables of advances. */
const PLACE: ReadonlyMap<string, number> = new Map([...CHARACTERS].map((char, i) => [char, i]));

export interface TextStyle {
  readonly size: Mm;
  readonly bold?: boolean | undefined;
}

/** Signs as wide as they are high: East Asian scripts, their punctuation, and pictures. */
const FULL_WIDTH =
  /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\p{Extended_Pictographic}\u3000-\u303f\uff01-\uff60]/u;

/** Signs that take no room of their own: marks over and under letters, joiners, variation selectors. */
const NO_WIDTH = /[\p{Mn}\p{Me}\p{Cf}]/u;

/** Room, in thousandths of an em, for a letter of another script: what nearly all of them keep within. */
const OTHER_WIDTH = 680;

/**
 * Room for a character that the typeface of the sheets lacks, in thousandths of an em. Its true width is known
 * only with its font, when the file is written; there it is narrowed to this where it is wider.
 */
export function otherWidth(char: string): number {
  if (NO_WIDTH.test(char)) return 0;
  return FULL_WIDTH.test(char) ? 1000 : OTHER_WIDTH;
}

/** Advance of a text as the PDF sets it: no kerning. */
export function textWidth(text: string, style: TextStyle): Mm {
  const widths = style.bold ? BOLD : REGULAR;
  let sum = 0;
  // Nearly all texts are plain: those need no look-up of their characters.
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code < 32 || code > 126) return widthOfAny(text, style);
    sum += at(widths, code - 32);
  }
  return (sum * style.size) / 1000;
}

/** As `textWidth`, of a text with any characters. */
function widthOfAny(text: string, style: TextStyle): Mm {
  const widths = style.bold ? BOLD : REGULAR;
  let sum = 0;
  for (const char of text.normalize('NFC')) {
    if (char >= ' ' && char <= '~') sum += at(widths, char.charCodeAt(0) - 32);
    else if (!asTyped(char)) sum += otherWidth(char);
    else for (const set of spelled(char)) sum += at(widths, under(PLACE, set));
  }
  return (sum * style.size) / 1000;
}

/** Em size, not over `style.size`, at which the text is no wider than `room`. */
export function fittedSize(text: string, style: TextStyle, room: Mm): Mm {
  const width = textWidth(text, style);
  return width <= room || width === 0 ? style.size : (style.size * Math.max(room, 0)) / width;
}

/** The text itself if it fits, else its longest beginning that fits with an ellipsis; empty if not even that. */
export function shortened(text: string, style: TextStyle, room: Mm): string {
  if (textWidth(text, style) <= room) return text;
  const letters = [...text];
  let low = 0;
  let high = letters.length;
  const cut = (n: number) => `${letters.slice(0, n).join('').trimEnd()}…`;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (textWidth(cut(middle), style) <= room) low = middle;
    else high = middle - 1;
  }
  return low === 0 && textWidth('…', style) > room ? '' : cut(low);
}

/** Longest beginning of `word` that fits, at least one letter. */
function headThatFits(word: string, style: TextStyle, room: Mm): number {
  const letters = [...word];
  let n = 1;
  while (n < letters.length && textWidth(letters.slice(0, n + 1).join(''), style) <= room) n++;
  return n;
}

/** Lines no wider than `room`, broken between words; a word that is wider than the room is broken inside. */
export function wrapped(text: string, style: TextStyle, room: Mm): string[] {
  const lines: string[] = [];
  for (const paragraph of text.split('\n')) {
    let line = '';
    for (const whole of paragraph.split(/ +/)) {
      let word = whole;
      const joined = line === '' ? word : `${line} ${word}`;
      if (textWidth(joined, style) <= room) {
        line = joined;
        continue;
      }
      if (line !== '') lines.push(line);
      while (textWidth(word, style) > room) {
        const n = headThatFits(word, style, room);
        const letters = [...word];
        if (n >= letters.length) break;
        lines.push(letters.slice(0, n).join(''));
        word = letters.slice(n).join('');
      }
      line = word;
    }
    lines.push(line);
  }
  return lines;
}

/** The angle at which text along a line reads from below or from the right. */
export function readable(angle: Deg): Deg {
  const turned = ((angle % 360) + 360) % 360;
  return turned > 90.001 && turned <= 270.001 ? turned - 180 : turned;
}
