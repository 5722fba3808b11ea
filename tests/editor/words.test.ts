import { describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/schema.ts';
import { renamed } from '../../src/editor/shipped/starters.ts';
import { de, starterNames } from '../../src/editor/words/de.ts';
import { en, type WordKey } from '../../src/editor/words/en.ts';
import { pluralForm } from '../../src/editor/words/plural.ts';
import { STARTERS, starter } from '../plan/starters.ts';

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
  'place.both',
]);

/** A place, and the forms of a word that go with its count: `{pages:page|pages}`. */
const COUNTED = /\{(\w+):([^}]*)\}/g;

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

  it('have a form for every plural of their language, by a count that stands in the sentence', () => {
    for (const [language, table] of [
      ['en', en],
      ['de', de],
    ] as const) {
      const { pluralCategories } = new Intl.PluralRules(language).resolvedOptions();
      for (const key of KEYS)
        for (const [, name, forms = ''] of table[key].matchAll(COUNTED)) {
          expect(places(table[key]), `${language} ${key}`).toContain(`{${name}}`);
          expect(forms.split('|').filter(Boolean), `${language} ${key}`).toHaveLength(
            pluralCategories.length,
          );
        }
    }
    // CLDR: English and German have one and other.
    expect([1, 3, 12].map((n) => pluralForm('de', n, ['Blatt', 'Blätter']))).toEqual([
      'Blatt',
      'Blätter',
      'Blätter',
    ]);
    expect([0, 1, 2].map((n) => pluralForm('en', n, ['page', 'pages']))).toEqual(['pages', 'page', 'pages']);
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

describe('the starters', () => {
  it('have every name of theirs in every language, and keep what is none', () => {
    for (const name of STARTERS) {
      const design = starter(name);
      const german = renamed(design, starterNames);
      for (const list of ['parts', 'finishes', 'groups', 'keepClears'] as const) {
        const named = (of: Design) => of[list].map((one) => one.name);
        expect(named(design).filter((n) => starterNames[n] === undefined)).toEqual([]);
        expect(named(german)).toEqual(named(design).map((n) => starterNames[n]));
      }
      expect(german.name).toBe(starterNames[design.name]);
      const unnamed = (of: Design) => JSON.stringify(of, (key, value) => (key === 'name' ? null : value));
      expect(unnamed(german)).toBe(unnamed(design));
    }
  });
});
