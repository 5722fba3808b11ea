import { pick } from '../../list/at.ts';
import { addTo, type Groups } from '../../list/grouped.ts';

/**
 * Letters of the Arabic script in the shapes that they take beside each other, as characters of their own:
 * fonts that are drawn character by character then join. The rules are those of the Unicode Standard,
 * chapter 9.2 (cursive joining); which letter has which shapes is read from the compatibility mappings of its
 * presentation forms, which list them as alone, final, initial, medial.
 */

/** Blocks of single letters, and of lam with alef. */
const BLOCKS: readonly (readonly [number, number])[] = [
  [0xfb50, 0xfbb1],
  [0xfbd3, 0xfbe7],
  [0xfbfc, 0xfbff],
  [0xfe80, 0xfefc],
];

const TATWEEL = '\u0640';
const LAM = '\u0644';
const MARK = /\p{Mn}/u;

type Forms = readonly string[];

function readForms(): ReadonlyMap<string, Forms> {
  const forms: Groups<string, string> = new Map();
  for (const [from, to] of BLOCKS) {
    for (let code = from; code <= to; code++) {
      const form = String.fromCodePoint(code);
      const letters = form.normalize('NFKC');
      if (letters === form) continue;
      addTo(forms, letters, form);
    }
  }
  return forms;
}

const FORMS = readForms();
const formsOf = (letters: string): Forms | undefined => FORMS.get(letters);

/** Letters with four shapes join on both sides, those with two only to the letter before. */
const joinsOn = (char: string | undefined): boolean =>
  char !== undefined && (char === TATWEEL || (formsOf(char)?.length ?? 0) >= 4);
const joinsBack = (char: string | undefined): boolean =>
  char !== undefined && (char === TATWEEL || (formsOf(char)?.length ?? 0) >= 2);

/** The text with its Arabic letters joined, still in the order in which it is read. */
export function joined(text: string): string {
  if (!/\p{Script=Arabic}/u.test(text)) return text;
  const chars = [...text];
  const out: string[] = [];
  let before: string | undefined;
  for (let i = 0; i < chars.length; i++) {
    const char = pick(chars, i);
    if (MARK.test(char)) {
      out.push(char);
      continue;
    }
    const next = nextLetter(chars, i);
    const pair = char === LAM && next !== undefined ? formsOf(LAM + next) : undefined;
    const last = pair ? next : char;
    const forms = pair ?? formsOf(char);
    const back = joinsOn(before) && joinsBack(char);
    const on = !pair && joinsOn(char) && joinsBack(next);
    out.push(forms?.[(on ? 2 : 0) + (back ? 1 : 0)] ?? char);
    if (pair) i = chars.indexOf(next ?? '', i + 1);
    before = last;
  }
  return out.join('');
}

function nextLetter(chars: readonly string[], at: number): string | undefined {
  return chars.slice(at + 1).find((char) => !MARK.test(char));
}

/** The plain letters of shapes that stand from left to right, for search; a pair is read from the right. */
export function unjoined(shapes: string): string {
  return shapes.replace(/[\ufb50-\ufefc]/gu, (form) => [...form.normalize('NFKC')].reverse().join(''));
}
