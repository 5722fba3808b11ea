import { codeAt } from '../list/at.ts';
import { MM_PER_INCH, type Mm } from './units.ts';

/** What may be missing in a length; English as it stands, and the key under which other languages say it. */
export const EXPECTED = [
  'no more than 200 characters',
  'a sign (+ - * /), a unit or the end',
  'a length',
  'a number',
  'a number, a unit or a sign',
  'a number, or a unit: in, ft, mm, cm or m',
  'a number other than 0 below a fraction',
  'a number other than 0 to divide by',
  'a number without unit',
  'a number without unit to divide by',
  'a number without unit to multiply by',
  'a fraction less than 1 behind a whole number',
  'a decimal point',
  'thousands written close, such as 1200, or one decimal mark, such as 1.2',
  'a closing parenthesis',
  'one unit only',
  'two lengths to add or take away',
] as const;
export type Expected = (typeof EXPECTED)[number];

/** What is found that cannot be quoted from the text. */
export const FOUND = ['the end', 'a number without unit', 'a number beyond measure'] as const;

/** A problem in what was typed: `at` is the index in the text, the rest is for the message. */
export interface Unread {
  readonly ok: false;
  readonly at: number;
  /** A piece of the text, or one of `FOUND`. */
  readonly found: string;
  readonly expected: Expected;
}

export type Token =
  | { readonly kind: 'number'; readonly at: number; readonly text: string; readonly value: number }
  | { readonly kind: 'unit'; readonly at: number; readonly text: string; readonly mm: Mm }
  | { readonly kind: 'sign'; readonly at: number; readonly text: string; readonly sign: Sign }
  | { readonly kind: 'mark'; readonly at: number; readonly text: string; readonly mm: Mm }
  | { readonly kind: 'end'; readonly at: number; readonly text: string };

export type Sign = '+' | '-' | '*' | '/' | '(' | ')';

export const MM_PER_FOOT: Mm = 12 * MM_PER_INCH;

const SIGNS: Readonly<Record<string, Sign>> = {
  '+': '+',
  '-': '-',
  '\u2212': '-',
  '\u2013': '-',
  '\u2010': '-',
  '\u2011': '-',
  '*': '*',
  '×': '*',
  '·': '*',
  '/': '/',
  '÷': '/',
  '(': '(',
  ')': ')',
};

const UNITS: ReadonlyMap<string, Mm> = new Map(
  Object.entries({
    '"': MM_PER_INCH,
    in: MM_PER_INCH,
    inch: MM_PER_INCH,
    inches: MM_PER_INCH,
    zoll: MM_PER_INCH,
    "'": MM_PER_FOOT,
    ft: MM_PER_FOOT,
    foot: MM_PER_FOOT,
    feet: MM_PER_FOOT,
    mm: 1,
    cm: 10,
    m: 1000,
  }),
);

/** A reading called heavy or light is taken a sixty-fourth over or under, the middle of what that can mean. */
const MARKS: ReadonlyMap<string, Mm> = new Map(
  Object.entries({
    heavy: MM_PER_INCH / 64,
    light: -MM_PER_INCH / 64,
    reichlich: MM_PER_INCH / 64,
    knapp: -MM_PER_INCH / 64,
  }),
);

const VULGAR: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅕': 1 / 5,
  '⅖': 2 / 5,
  '⅗': 3 / 5,
  '⅘': 4 / 5,
  '⅙': 1 / 6,
  '⅚': 5 / 6,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};

// Sticky and without nested repeats, so that reading takes time in proportion to the text.
const SPACE = /[\s\u00a0\u202f]+/y;
const DECIMAL = /\d+(?:\.\d*)?|\.\d+/y;
const COMMA = /,(\d*)/y;
/** `1/2` set close, with either slash; `10/2.5` is a division. */
const FRACTION = /(\d+)[/\u2044](\d+)(?!\d|[.,]\d)/y;
/** Raised and lowered figures around a slash. */
const RAISED = /([⁰¹²³⁴⁵⁶⁷⁸⁹]+)[/\u2044]([₀₁₂₃₄₅₆₇₈₉]+)/y;
/** Two single marks are one double mark; primes, straight and curly quotes are all in use. */
const INCH_MARK = /["\u201c\u201d\u2033\u02dd]|['\u2018\u2019\u2032]{2}/y;
const FOOT_MARK = /['\u2018\u2019\u2032]/y;
const DASH = /^[-\u2010\u2011\u2013]$/;
const WORD = /[a-z]+\.?/iy;

/** How a reader of tokens takes the numbers that have a comma or points in them; null: there is none at `at`. */
export type Grouped = (text: string, at: number) => Token | Unread | null;

/** Splits the text into numbers (fractions and mixed numbers whole), units, signs and marks. */
export function tokensOf(text: string, grouped: Grouped = () => null): Token[] | Unread {
  const tokens: Token[] = [];
  let at = 0;
  const match = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = at;
    return pattern.exec(text);
  };
  while (at < text.length) {
    const space = match(SPACE);
    if (space) {
      at += space[0].length;
      continue;
    }
    const number = grouped(text, at) ?? readNumber(text, at);
    const token = number ?? readOther(match, text, at);
    if (!('kind' in token)) return token;
    tokens.push(token);
    at += token.text.length;
  }
  tokens.push({ kind: 'end', at: text.length, text: '' });
  return tokens;
}

function readOther(match: (p: RegExp) => RegExpExecArray | null, text: string, at: number): Token | Unread {
  const inch = match(INCH_MARK);
  if (inch) return { kind: 'unit', at, text: inch[0], mm: MM_PER_INCH };
  const foot = match(FOOT_MARK);
  if (foot) return { kind: 'unit', at, text: foot[0], mm: MM_PER_FOOT };
  const word = match(WORD);
  if (word) {
    const name = word[0].toLowerCase().replace('.', '');
    const [unit, mark] = [UNITS.get(name), MARKS.get(name)];
    if (unit !== undefined) return { kind: 'unit', at, text: word[0], mm: unit };
    if (mark !== undefined) return { kind: 'mark', at, text: word[0], mm: mark };
    return { ok: false, at, found: word[0], expected: 'a number, or a unit: in, ft, mm, cm or m' };
  }
  const character = String.fromCodePoint(codeAt(text, at));
  const sign = SIGNS[character];
  if (sign) return { kind: 'sign', at, text: character, sign };
  return { ok: false, at, found: character, expected: 'a number, a unit or a sign' };
}

/** A number at `at`: decimal, fraction, or whole number with a fraction behind it; null if there is none. */
function readNumber(text: string, at: number): Token | Unread | null {
  const bare = readFraction(text, at);
  if (bare) return 'ok' in bare ? bare : { kind: 'number', at, text: bare.text, value: bare.value };
  DECIMAL.lastIndex = at;
  const digits = DECIMAL.exec(text)?.[0];
  if (digits === undefined) return null;
  const end = at + digits.length;
  if (text[end] === ',') return readComma(text, at, digits);
  if (/^\d+$/.test(digits)) {
    // `38 1/2`, `38-1/2` and `38½`; a minus with room around it takes away.
    const joined = readGap(text, end);
    const fraction = readFraction(text, joined);
    if (fraction && 'ok' in fraction) return fraction;
    if (fraction && (joined > end || fraction.set)) {
      if (fraction.value >= 1) {
        return {
          ok: false,
          at: joined,
          found: fraction.text,
          expected: 'a fraction less than 1 behind a whole number',
        };
      }
      const whole = text.slice(at, joined + fraction.text.length);
      return { kind: 'number', at, text: whole, value: Number(digits) + fraction.value };
    }
  }
  return { kind: 'number', at, text: digits, value: Number(digits) };
}

/** Where a fraction that belongs to a whole number ending at `end` could begin. */
function readGap(text: string, end: number): number {
  if (DASH.test(text.charAt(end))) return end + 1;
  SPACE.lastIndex = end;
  return SPACE.test(text) ? SPACE.lastIndex : end;
}

interface Fraction {
  readonly text: string;
  readonly value: number;
  /** Drawn as a fraction, so that it may follow a whole number without a space. */
  readonly set: boolean;
}

function readFraction(text: string, at: number): Fraction | Unread | null {
  const vulgar = VULGAR[text.charAt(at)];
  if (vulgar !== undefined) return { text: text.charAt(at), value: vulgar, set: true };
  for (const pattern of [FRACTION, RAISED]) {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (!found) continue;
    const [all, over = '', under = ''] = found;
    const below = figures(under);
    if (below === 0) {
      return {
        ok: false,
        at: at + all.length - under.length,
        found: under,
        expected: 'a number other than 0 below a fraction',
      };
    }
    return { text: all, value: figures(over) / below, set: pattern === RAISED };
  }
  return null;
}

/** Plain, raised or lowered figures as a number. */
function figures(text: string): number {
  const plain = text.replace(/[^0-9]/g, (c) => {
    const raised = '⁰¹²³⁴⁵⁶⁷⁸⁹'.indexOf(c);
    return String(raised >= 0 ? raised : '₀₁₂₃₄₅₆₇₈₉'.indexOf(c));
  });
  return Number(plain);
}

/**
 * A comma is read as a decimal comma where it can be nothing else. Before exactly three digits it could
 * set off thousands, and a length ten or a thousand times too long costs wood: refused.
 */
function readComma(text: string, at: number, digits: string): Token | Unread {
  const comma = at + digits.length;
  COMMA.lastIndex = comma;
  const [, after = ''] = COMMA.exec(text) ?? [];
  const next = text[comma + 1 + after.length];
  if (digits.includes('.') || after === '' || after.length === 3 || next === ',' || next === '.') {
    return { ok: false, at: comma, found: ',', expected: 'a decimal point' };
  }
  return { kind: 'number', at, text: `${digits},${after}`, value: Number(`${digits}.${after}`) };
}
