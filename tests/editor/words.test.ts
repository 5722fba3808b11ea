import { describe, expect, it } from 'vitest';
import { de } from '../../src/editor/words/de.ts';
import { en, type WordKey } from '../../src/editor/words/en.ts';

const KEYS = Object.keys(en) as WordKey[];

/** Texts that are the same in both languages: signs, figures, and words that German has taken in. */
const ALIKE = new Set<WordKey>([
  'fraction.8',
  'fraction.16',
  'fraction.32',
  'fraction.64',
  'zoom.title',
  'part.name',
  'stock.name',
  'finish.name',
  'paint.buyOne',
  'pages.size',
  'reading.of',
  'place.both',
]);

const places = (text: string): string[] => (text.match(/\{\w+\}/g) ?? []).sort();

describe('the words of the interface', () => {
  it('have the same keys in both languages', () => {
    expect(Object.keys(de).sort()).toEqual([...KEYS].sort());
  });

  it('are never empty', () => {
    expect(KEYS.filter((key) => en[key].trim() === '' || de[key].trim() === '')).toEqual([]);
  });

  it('have the same places for figures and names', () => {
    const differing = KEYS.filter((key) => places(en[key]).join() !== places(de[key]).join());
    expect(differing).toEqual([]);
  });

  it('are translated', () => {
    expect(KEYS.filter((key) => en[key] === de[key] && !ALIKE.has(key))).toEqual([]);
    expect([...ALIKE].filter((key) => en[key] !== de[key])).toEqual([]);
  });

  it('quote as each language does', () => {
    expect(KEYS.filter((key) => /[„]/.test(en[key]))).toEqual([]);
    expect(KEYS.filter((key) => /“[^„“]*”/.test(de[key]))).toEqual([]);
  });
});
