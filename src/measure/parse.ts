import { pick } from '../list/at.ts';
import { groupedWith } from './grouped.ts';
import { type LengthUnit, MM_PER_BARE, type Notation } from './style.ts';
import { type Expected, MM_PER_FOOT, type Token, tokensOf, type Unread } from './token.ts';
import { MM_PER_INCH, type Mm } from './units.ts';

/** What was read, or where reading stopped and why. */
export type Parsed = { readonly ok: true; readonly value: Mm } | Unread;

export type ParsedNumber = { readonly ok: true; readonly value: number } | Unread;

/** Longer than any measure a person types. */
const LONGEST = 200;
/** A hundred kilometers; what a field takes is for the field to say. */
const FARTHEST: Mm = 1e8;

/**
 * A value on the way: `bare` numbers may still become lengths (in the design's unit) or factors; a `ratio` of
 * two lengths is a factor for good.
 */
interface Quantity {
  readonly kind: 'bare' | 'length' | 'ratio';
  /** Millimeters for lengths. */
  readonly value: number;
}

/**
 * Reads a length as it is typed at the bench.
 *
 * - Numbers: `38`, `3.25`, `1/2`, `38 1/2`, `38-1/2` (a dash set close before a fraction joins, with room
 *   around it takes away), `38½`.
 * - Units: `in`, `"`, `ft`, `'`, `mm`, `cm`, `m`, written out too, with primes or curly quotes. Feet take
 *   inches behind them: `6' 2 3/8"`, `6'-2"`, `6 ft 2`. A bare number is in `unit`; for `ft-in`, inches.
 * - Arithmetic: `+ - * /` and parentheses. `heavy` and `light` behind a length are a sixty-fourth of an inch.
 * - A decimal comma is read unless three digits follow it, which could mean thousands.
 *
 * Never throws; takes time in proportion to the text.
 */
export function parseMeasure(text: string, unit: LengthUnit): Parsed {
  if (text.length > LONGEST) {
    return { ok: false, at: LONGEST, found: '…', expected: 'no more than 200 characters' };
  }
  const tokens = tokensOf(text);
  if (!Array.isArray(tokens)) return tokens;
  return new Reader(tokens, MM_PER_BARE[unit]).read();
}

/**
 * Reads a plain number as it is typed into a field: a price, a count, a share, an angle.
 *
 * - Both languages' ways: `1200.5`, `1200,5`, `1,200.50`, `1.200,50`, `1 200`, `1,200,000`.
 * - Fractions and arithmetic as in measures: `1/2`, `1 1/2`, `3*12`. No unit; the field takes its own off.
 * - One mark before three last digits, as in `1,200`, sets off thousands in one language and decimals in the
 *   other. It is read as decimals where it is the language's own decimal mark, else refused.
 *
 * Never throws; takes time in proportion to the text.
 */
export function parseNumber(text: string, decimalMark: Notation['decimalMark']): ParsedNumber {
  if (text.length > LONGEST) {
    return { ok: false, at: LONGEST, found: '…', expected: 'no more than 200 characters' };
  }
  const tokens = tokensOf(text, groupedWith(decimalMark));
  if (!Array.isArray(tokens)) {
    const anyUnit = tokens.expected === 'a number, or a unit: in, ft, mm, cm or m';
    return anyUnit ? { ...tokens, expected: 'a number without unit' } : tokens;
  }
  const unit = tokens.find(({ kind }) => kind === 'unit' || kind === 'mark');
  return unit ? unread(unit, 'a number without unit') : new Reader(tokens, 1).number();
}

/** Recursive descent over the tokens; `text` is short, so the depth of parentheses is bounded. */
class Reader {
  #next = 0;
  readonly #tokens: readonly Token[];
  readonly #mmPerBare: Mm;

  constructor(tokens: readonly Token[], mmPerBare: Mm) {
    this.#tokens = tokens;
    this.#mmPerBare = mmPerBare;
  }

  read(): Parsed {
    const sum = this.#sum();
    if ('ok' in sum) return sum;
    const end = this.#peek();
    if (end.kind !== 'end') return unread(end, 'a sign (+ - * /), a unit or the end');
    if (sum.kind === 'ratio')
      return { ok: false, at: 0, found: 'a number without unit', expected: 'a length' };
    const value = this.#length(sum) + 0;
    if (!(Math.abs(value) <= FARTHEST))
      return { ok: false, at: 0, found: 'a number beyond measure', expected: 'a length' };
    return { ok: true, value };
  }

  /** A number; the tokens have no units. */
  number(): ParsedNumber {
    const sum = this.#sum();
    if ('ok' in sum) return sum;
    const end = this.#peek();
    if (end.kind !== 'end') return unread(end, 'a number without unit');
    const value = sum.value + 0;
    return Math.abs(value) <= FARTHEST
      ? { ok: true, value }
      : { ok: false, at: 0, found: 'a number beyond measure', expected: 'a number' };
  }

  #peek(): Token {
    return pick(this.#tokens, Math.min(this.#next, this.#tokens.length - 1));
  }

  #takeSign(...signs: string[]): Token | null {
    const token = this.#peek();
    if (token.kind !== 'sign' || !signs.includes(token.sign)) return null;
    this.#next++;
    return token;
  }

  #length(q: Quantity): Mm {
    return q.kind === 'bare' ? q.value * this.#mmPerBare : q.value;
  }

  #sum(): Quantity | Unread {
    let left = this.#product();
    for (;;) {
      if ('ok' in left) return left;
      const sign = this.#takeSign('+', '-');
      if (!sign) return left;
      const right = this.#product();
      if ('ok' in right) return right;
      left = this.#added(left, right, sign.text === '+' ? 1 : -1, sign);
    }
  }

  #added(a: Quantity, b: Quantity, direction: 1 | -1, sign: Token): Quantity | Unread {
    if (a.kind === b.kind) return { kind: a.kind, value: a.value + direction * b.value };
    if (a.kind === 'ratio' || b.kind === 'ratio') return unread(sign, 'two lengths to add or take away');
    return { kind: 'length', value: this.#length(a) + direction * this.#length(b) };
  }

  #product(): Quantity | Unread {
    let left = this.#signed();
    for (;;) {
      if ('ok' in left) return left;
      const sign = this.#takeSign('*', '/');
      if (sign?.kind !== 'sign') return left;
      const factor = this.#peek();
      const right = this.#signed();
      if ('ok' in right) return right;
      left = sign.sign === '*' ? multiplied(left, right, factor) : divided(left, right, factor);
    }
  }

  #signed(): Quantity | Unread {
    let direction = 1;
    for (let sign = this.#takeSign('+', '-'); sign; sign = this.#takeSign('+', '-')) {
      if (sign.text !== '+') direction = -direction;
    }
    const value = this.#single();
    return 'ok' in value || direction === 1 ? value : { kind: value.kind, value: -value.value };
  }

  #single(): Quantity | Unread {
    if (this.#takeSign('(')) {
      const inside = this.#sum();
      if ('ok' in inside) return inside;
      if (!this.#takeSign(')')) return unread(this.#peek(), 'a closing parenthesis');
      return this.#withUnit(inside);
    }
    const token = this.#peek();
    if (token.kind !== 'number') return unread(token, 'a number');
    this.#next++;
    return this.#withUnit({ kind: 'bare', value: token.value });
  }

  /** The unit behind a number, inches behind feet, and heavy or light behind the whole. */
  #withUnit(q: Quantity): Quantity | Unread {
    const unit = this.#peek();
    let result = q;
    if (unit.kind === 'unit') {
      if (q.kind !== 'bare') return unread(unit, 'one unit only');
      this.#next++;
      result = { kind: 'length', value: q.value * unit.mm };
      if (unit.mm === MM_PER_FOOT)
        result = { kind: 'length', value: result.value + this.#inchesBehindFeet(unit) };
    }
    const mark = this.#peek();
    if (mark.kind !== 'mark' || result.kind === 'ratio') return result;
    this.#next++;
    return { kind: 'length', value: this.#length(result) + mark.mm };
  }

  #inchesBehindFeet(feet: Token): Mm {
    const dash = this.#peek();
    const after = this.#tokens[this.#next + 1];
    // `6'-2"` as drawings have it; with room around the dash it takes away.
    const joined =
      dash.kind === 'sign' &&
      dash.sign === '-' &&
      dash.at === feet.at + feet.text.length &&
      after?.at === dash.at + dash.text.length;
    const at = this.#next + (joined ? 1 : 0);
    const number = this.#tokens[at];
    const unit = this.#tokens[at + 1];
    if (number?.kind !== 'number') return 0;
    if (unit?.kind === 'unit' && unit.mm !== MM_PER_INCH) return 0;
    this.#next = at + (unit?.kind === 'unit' ? 2 : 1);
    return number.value * MM_PER_INCH;
  }
}

function multiplied(a: Quantity, b: Quantity, at: Token): Quantity | Unread {
  if (a.kind === 'length' && b.kind === 'length') return unread(at, 'a number without unit to multiply by');
  const kind = a.kind === 'length' || b.kind === 'length' ? 'length' : pureKind(a, b);
  return { kind, value: a.value * b.value };
}

function divided(a: Quantity, b: Quantity, at: Token): Quantity | Unread {
  if (b.value === 0) return unread(at, 'a number other than 0 to divide by');
  if (b.kind === 'length' && a.kind !== 'length') return unread(at, 'a number without unit to divide by');
  if (b.kind === 'length') return { kind: 'ratio', value: a.value / b.value };
  return { kind: a.kind === 'length' ? 'length' : pureKind(a, b), value: a.value / b.value };
}

/** A bare number may yet be a length, so it stays one unless both are ratios. */
const pureKind = (a: Quantity, b: Quantity): Quantity['kind'] =>
  a.kind === 'bare' || b.kind === 'bare' ? 'bare' : 'ratio';

function unread(token: Token, expected: Expected): Unread {
  const found = token.kind === 'end' ? 'the end' : token.text;
  return { ok: false, at: token.at, found, expected };
}
