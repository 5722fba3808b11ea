import { describe, expect, it } from 'vitest';
import { formatLength } from '../../src/measure/format.ts';
import { parseMeasure } from '../../src/measure/parse.ts';
import { stepOf } from '../../src/measure/round.ts';
import type { FractionStyle, LengthUnit } from '../../src/measure/style.ts';
import { type Chance, chanceOf, pick } from '../chance.ts';

const UNITS: readonly LengthUnit[] = ['in', 'ft-in', 'mm', 'cm'];
const FRACTIONS: readonly FractionStyle[] = ['8', '16', '32', '64', 'decimal'];

/** What measures are made of, well formed and not. */
const BITS = [
  ...['38', '0', '7', '1/2', '3/16', '1/0', '½', '⅞', '¹⁄₁₆', '.5', '3.', '97.8', '1,5', '1,219', '1e3', '٣'],
  ...[' ', ' ', '\t', '\u00a0', '\u202f', '-', '–', '−', '+', '*', '×', '/', '÷', '⁄', '(', ')', '(', ')'],
  ...['"', "'", '″', '′', "''", '”', 'in', 'in.', 'inches', 'ft', 'feet', 'mm', 'cm', 'm', 'km', 'MM'],
  ...[
    'heavy',
    'light',
    'constructor',
    '__proto__',
    'NaN',
    'Infinity',
    '\ud83d',
    '😀',
    '\u0000',
    'é',
    '\u202e',
  ],
];

/** Measures as a person types them; each is damaged in turn. */
const TYPED = [
  '38 1/2',
  '38-1/2"',
  '38½',
  `6' 2 3/8"`,
  '6\'-2"',
  '3.25 in',
  '97.8cm',
  '978 mm',
  '75 + 2*1 1/2',
  '(38 1/2 - 3*3 1/4) / 4',
  '12 ft 3 1/16 heavy',
];

function madeOfBits(chance: Chance): string {
  return Array.from({ length: Math.floor(chance() * 14) }, () => pick(BITS, chance)).join('');
}

function damaged(chance: Chance): string {
  let text = pick(TYPED, chance);
  for (let i = Math.floor(chance() * 4); i >= 0; i--) {
    const at = Math.floor(chance() * (text.length + 1));
    text =
      text.slice(0, at) +
      (chance() < 0.6 ? pick(BITS, chance) : '') +
      text.slice(at + Math.floor(chance() * 3));
  }
  return text;
}

/** Any code units at all, halves of pairs too. */
function noise(chance: Chance): string {
  const length = Math.floor(chance() ** 2 * 260);
  const top = pick([128, 0x2100, 0x10000], chance);
  return String.fromCharCode(...Array.from({ length }, () => Math.floor(chance() * top)));
}

/** What is wrong with the answer to one text; null where nothing is. */
function faultOf(text: string, unit: LengthUnit): string | null {
  const read = parseMeasure(text, unit);
  if (!read.ok) {
    if (!(Number.isInteger(read.at) && read.at >= 0 && read.at <= text.length)) return `place ${read.at}`;
    return read.found === '' || read.expected.length === 0 ? 'nothing said' : null;
  }
  if (!Number.isFinite(read.value) || Object.is(read.value, -0)) return `value ${read.value}`;
  if (text.length > 190) return null;
  const inside = parseMeasure(`(${text})`, unit);
  if (!(inside.ok && inside.value === read.value)) return 'another value in parentheses';
  const taken = parseMeasure(`-(${text})`, unit);
  return taken.ok && taken.value === 0 - read.value ? null : 'another value taken away';
}

describe('a hundred thousand measures', () => {
  it('never throw, and read as a length or say where they cannot be', () => {
    const faults: string[] = [];
    let lengths = 0;
    for (let seed = 0; seed < 100_000; seed++) {
      const chance = chanceOf(seed);
      const text = pick([madeOfBits, damaged, damaged, noise], chance)(chance);
      const unit = pick(UNITS, chance);
      const fault = faultOf(text, unit);
      if (fault !== null) faults.push(`${seed} ${JSON.stringify(text)} ${unit}: ${fault}`);
      if (parseMeasure(text, unit).ok) lengths++;
    }
    expect(faults.slice(0, 20)).toEqual([]);
    // A generator that made only nonsense, or only sense, would prove little.
    expect(lengths).toBeGreaterThan(10_000);
    expect(lengths).toBeLessThan(90_000);
  });

  it('and every length is read back as it was shown, within half a step', () => {
    const faults: string[] = [];
    for (let seed = 0; seed < 20_000; seed++) {
      const chance = chanceOf(seed);
      const mm = (chance() - 0.5) * 10 ** Math.floor(chance() * 7);
      const style = { unit: pick(UNITS, chance), fraction: pick(FRACTIONS, chance) };
      const shown = formatLength(mm, style);
      const read = parseMeasure(shown, style.unit);
      const off = read.ok ? Math.abs(read.value - mm) : Number.POSITIVE_INFINITY;
      if (!(off <= stepOf(style) / 2 + 1e-6)) faults.push(`${seed} ${mm} ${JSON.stringify(style)} ${shown}`);
    }
    expect(faults.slice(0, 20)).toEqual([]);
  });
});
