import { readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/schema.ts';
import { renamed } from '../../src/editor/shipped/starters.ts';
import { de, starterNames as german } from '../../src/editor/words/de.ts';
import { deskWords } from '../../src/editor/words/en/desk.ts';
import { late } from '../../src/editor/words/en/late.ts';
import { letteringWords } from '../../src/editor/words/en/lettering.ts';
import { pagesWords } from '../../src/editor/words/en/pages.ts';
import { sawWords } from '../../src/editor/words/en/saw.ts';
import { en as first, type WordKey, type Words } from '../../src/editor/words/en.ts';
import { es, starterNames as spanish } from '../../src/editor/words/es.ts';
import { pluralForm } from '../../src/editor/words/plural.ts';
import { STARTERS, starter } from '../plan/starters.ts';

const en: Words = { ...first, ...late };
const KEYS = Object.keys(en) as WordKey[];

/** Signs and figures, the same in every language. */
const SIGNS: readonly WordKey[] = [
  'fraction.8',
  'fraction.16',
  'fraction.32',
  'fraction.64',
  'paint.buyOne',
  'pages.size',
  'place.both',
];

/** Every language but English, with the texts that are the same in it: signs, and words that it shares. */
const OTHERS = [
  {
    language: 'de',
    words: de,
    names: german,
    alike: new Set<WordKey>([...SIGNS, 'zoom.title', 'part.name']),
    quote: /“[^„“]*”/,
  },
  {
    language: 'es',
    words: es,
    names: spanish,
    alike: new Set<WordKey>([
      ...SIGNS,
      'saved.blocked',
      'saved.full',
      'look.color',
      'kind.panel',
      'noun.panel',
      'keys.press.region',
      'keys.press.add',
      'keys.press.center',
      'keys.press.print',
      'keys.press.undo',
      'keys.press.copy',
      'keys.press.group',
      'keys.press.zoom',
      'keys.press.escape',
    ]),
    quote: /[“”„]/,
  },
] as const;

/** A place, and the forms of a word that go with its count: `{pages:page|pages}`. */
const COUNTED = /\{(\w+):([^}]*)\}/g;

const places = (text: string): string[] => (text.match(/\{\w+\}/g) ?? []).sort();

describe.each(OTHERS)('the words of the interface, $language', ({ language, words, names, alike, quote }) => {
  it('have the keys of English, none empty, with the same places for figures and names', () => {
    expect(Object.keys(words).sort()).toEqual([...KEYS].sort());
    expect(KEYS.filter((key) => en[key].trim() === '' || words[key].trim() === '')).toEqual([]);
    expect(KEYS.filter((key) => places(en[key]).join() !== places(words[key]).join())).toEqual([]);
  });

  it('are translated, and quoted as the language does', () => {
    expect(KEYS.filter((key) => en[key] === words[key] && !alike.has(key))).toEqual([]);
    expect([...alike].filter((key) => en[key] !== words[key])).toEqual([]);
    expect(KEYS.filter((key) => quote.test(words[key]))).toEqual([]);
  });

  it('have every name of the starters, and keep what is none', () => {
    for (const name of STARTERS) {
      const design = starter(name);
      const own = renamed(design, names);
      for (const list of ['parts', 'finishes', 'groups', 'keepClears'] as const) {
        const made = new Set(design.groups.flatMap(({ assembly, parts }) => (assembly ? parts : [])));
        // Parts of assemblies are named anew when the starter is opened.
        const named = (of: Design) => of[list].filter(({ id }) => !made.has(id)).map((one) => one.name);
        expect(named(design).filter((n) => names[n] === undefined)).toEqual([]);
        expect(named(own)).toEqual(named(design).map((n) => names[n]));
      }
      expect(own.name).toBe(names[design.name]);
      const unnamed = (of: Design) => JSON.stringify(of, (key, value) => (key === 'name' ? null : value));
      expect(unnamed(own)).toBe(unnamed(design));
    }
    expect(language).not.toBe('en');
  });
});

describe('words that come later', () => {
  it('come with whatever says them, and are said by nothing of the first page', () => {
    const root = new URL('../../src/editor/', import.meta.url);
    const textOf = (name: string) => readFileSync(new URL(name, root), 'utf8');
    const tables = { deskWords, letteringWords, pagesWords, sawWords };
    expect(Object.keys(late).sort()).toEqual(Object.values(tables).flatMap(Object.keys).sort());
    /** Files of the editor that are come to from the first, at once or later, without coming by one that brings a table. */
    const reached = (by: string): ReadonlyMap<string, string> => {
      const found = new Map<string, string>();
      const visit = (name: string) => {
        if (found.has(name) || name.startsWith('words/') || name.startsWith('..')) return;
        const text = textOf(name);
        if (text.includes(by)) return;
        found.set(name, text);
        for (const [, to = ''] of text.matchAll(/(?:from |import |import\()'(\.[^']*\.tsx?)'/g))
          visit(posix.join(posix.dirname(name), to));
      };
      visit('main.tsx');
      return found;
    };
    // The first page asks for the caution of the bed alone; the other names roles of parts, and says nothing.
    const toldApart = ['control/Caution.tsx', 'saw/madeParts.ts'];
    for (const [table, words] of Object.entries(tables)) {
      const keys = Object.keys(words);
      // By the whole key, or by where it begins.
      const begins = new Set(keys.map((key) => `\`${key.slice(0, key.lastIndexOf('.') + 1)}\${`));
      const files = reached(`words/${table}.ts`);
      expect(files.size).toBeGreaterThan(30);
      const says = [...files].filter(
        ([name, text]) =>
          !toldApart.includes(name) &&
          (keys.some((key) => text.includes(`'${key}'`)) ||
            [...begins].some((start) => text.includes(start))),
      );
      expect(
        says.map(([name]) => name),
        table,
      ).toEqual([]);
    }
  });
});

describe('counts', () => {
  it('have a form for every plural of their language, by a count that stands in the sentence', () => {
    for (const { language, words } of [{ language: 'en', words: en }, ...OTHERS]) {
      const { pluralCategories } = new Intl.PluralRules(language).resolvedOptions();
      for (const key of KEYS)
        for (const [, name, forms = ''] of words[key].matchAll(COUNTED)) {
          expect(places(words[key]), `${language} ${key}`).toContain(`{${name}}`);
          expect(forms.split('|').filter(Boolean), `${language} ${key}`).toHaveLength(
            pluralCategories.length,
          );
        }
    }
    // CLDR: English and German have one and other; Spanish has many too, for whole millions.
    expect([1, 3, 12].map((n) => pluralForm('de', n, ['Blatt', 'Blätter']))).toEqual([
      'Blatt',
      'Blätter',
      'Blätter',
    ]);
    expect([0, 1, 2].map((n) => pluralForm('en', n, ['page', 'pages']))).toEqual(['pages', 'page', 'pages']);
    expect([1, 2, 2_000_000].map((n) => pluralForm('es', n, ['hoja', 'de hojas', 'hojas']))).toEqual([
      'hoja',
      'hojas',
      'de hojas',
    ]);
  });

  it('in English are quoted as English does', () => {
    expect(KEYS.filter((key) => /[„«]/.test(en[key]))).toEqual([]);
  });
});
