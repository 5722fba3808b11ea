import { describe, expect, it } from 'vitest';
import { CHECK_CODES } from '../../src/check/codes.ts';
import { readTables } from '../../src/command/supplies.ts';
import type { Rule, RuleKind } from '../../src/design/schema.ts';
import { DE as PACKET_DE } from '../../src/output/packet/words/de.ts';
import { EN as PACKET_EN } from '../../src/output/packet/words/en.ts';
import { ES as PACKET_ES } from '../../src/output/packet/words/es.ts';
import { DE } from '../../src/plan/words/de.ts';
import { EN } from '../../src/plan/words/en.ts';
import { ES } from '../../src/plan/words/es.ts';
import { LANGUAGE_TAGS, LANGUAGES, styleIn } from '../../src/plan/words/languages.ts';
import { ruleSayFor } from '../../src/plan/words/say.ts';
import { tablesIn } from '../../src/plan/words/tableNames.ts';
import { PLAN_WORDS } from '../../src/plan/words/tables.ts';
import type { CheckFigures, PlanWords, RuleSay } from '../../src/plan/words/words.ts';
import { kiosk } from './starters.ts';

/** Says every figure by what it is asked for, so that a sentence shows what it was made from. */
const SAY: RuleSay = {
  length: (mm) => `<${mm} mm>`,
  fromRim: (mm) => `<${mm} mm from the rim>`,
  angle: (deg) => `<${deg} deg>`,
  mass: (kg) => `<${kg} kg>`,
  force: (n) => `<${n} N>`,
  area: (m2) => `<${m2} m2>`,
  covered: (m2) => `<${m2} m2>`,
  share: (ratio) => `<${ratio}>`,
  number: (value) => `<${value}>`,
  name: (id) => `<${id}>`,
  within: () => null,
  wholes: [],
  stock: (id) => `<${id}>`,
  finish: (id) => `<${id}>`,
  rule: (id) => `<${id}>`,
  edge: ({ of, side }, axis) => `linke Kante <${axis} ${side} ${of}>`,
};

/** Figures whose every key is a number of its own, or a text that no table knows. */
function figures(has: boolean): CheckFigures {
  const codeOf = (key: string) => [...key].reduce((sum, c) => (sum * 31 + c.charCodeAt(0)) % 9973, 7);
  return {
    ...{ parts: ['p0', 'p1'], part: 'p0', other: 'p1' },
    has: () => has,
    number: (key) => codeOf(key),
    text: (key) => `<${key}>`,
  };
}

/** What stands in angle brackets, and every number: all that a sentence was given. */
const given = (sentence: string): string[] => (sentence.match(/<[^>]*>|\d+/g) ?? []).sort();

const RULES: { readonly [K in RuleKind]: Extract<Rule, { kind: K }>[] } = {
  set: [
    {
      id: 'r',
      kind: 'set',
      axis: 'x',
      edge: { of: 'a', side: 'low' },
      from: { of: 'b', side: 'high' },
      distance: 12,
    },
    {
      id: 'r',
      kind: 'set',
      axis: 'y',
      edge: { of: 'a', side: 'low' },
      from: { of: 'b', side: 'high' },
      distance: -12,
    },
    {
      id: 'r',
      kind: 'set',
      axis: 'y',
      edge: { of: 'a', side: 'low' },
      from: { of: 'b', side: 'high' },
      distance: 0,
    },
  ],
  gap: [
    {
      id: 'r',
      kind: 'gap',
      axis: 'x',
      edge: { of: 'c', side: 'low' },
      from: { of: 'b', side: 'high' },
      likeEdge: { of: 'b', side: 'low' },
      likeFrom: { of: 'a', side: 'high' },
    },
  ],
  center: [
    {
      id: 'r',
      kind: 'center',
      axis: 'x',
      parts: ['a', 'b'],
      low: { of: 'face', side: 'low' },
      high: { of: 'face', side: 'high' },
    },
  ],
  between: [
    {
      id: 'r',
      kind: 'between',
      axis: 'x',
      part: 'a',
      low: { of: 'b', side: 'high' },
      high: { of: 'c', side: 'low' },
      insetLow: 3,
      insetHigh: 4,
    },
  ],
  even: (['gaps', 'flush', 'half', 'centers', 'most'] as const).map((mode) => ({
    id: 'r',
    kind: 'even' as const,
    axis: 'x' as const,
    mode,
    parts: ['a', 'b', 'c'],
    low: { of: 'face', side: 'low' as const },
    high: { of: 'face', side: 'high' as const },
    pitch: 90,
    most: 80,
  })),
  mirror: [{ id: 'r', kind: 'mirror', axis: 'x', part: 'a', twin: 'b', about: { of: 'face', side: 'mid' } }],
  same: [{ id: 'r', kind: 'same', axis: 'y', parts: ['a', 'b'] }],
  reveal: [{ id: 'r', kind: 'reveal', part: 'a', inside: 'b', margin: 20, inner: false }],
  graded: [
    {
      id: 'r',
      kind: 'graded',
      axis: 'y',
      parts: ['a', 'b', 'c'],
      ratio: [1, 2, 3],
      gap: 9,
      low: { of: 'face', side: 'low' },
      high: { of: 'face', side: 'high' },
    },
  ],
};

describe.each([
  ['German', DE],
  ['Spanish', ES],
])('the plan in %s says what it says in English', (_language, OWN) => {
  it.each(CHECK_CODES)('of %s, with the same figures', (code) => {
    for (const has of [true, false]) {
      const [english, own] = [EN, OWN].map((words) => words.checks[code](figures(has), SAY));
      expect(given(own ?? '')).toEqual(given(english ?? ''));
      expect(own).not.toBe(english);
    }
  });

  it('of every step', () => {
    for (const act of Object.keys(EN.steps) as (keyof PlanWords['steps'])[]) {
      const [english, own] = [EN, OWN].map((words) => words.steps[act](['a', 'b'], SAY));
      expect(given(own ?? '')).toEqual(given(english ?? ''));
      expect(own).not.toBe(english);
    }
  });

  it('of every kind of rule', () => {
    for (const rule of Object.values(RULES).flat()) {
      const speak = (words: PlanWords) =>
        (words.rules[rule.kind] as (r: Rule, result: number | null, say: RuleSay) => string)(rule, 50, SAY);
      // A reveal leaves out the edge's own words, which differ between the languages.
      const things = (text: string) => given(text).map((thing) => thing.replace(/^<x \w+ /, '<'));
      expect(things(speak(OWN))).toEqual(things(speak(EN)));
    }
  });
});

it('bends the names of edges', () => {
  const say = ruleSayFor({ design: kiosk(), stocks: new Map(), language: 'de' });
  const edge = { of: 'face', side: 'low' } as const;
  expect(say.edge(edge, 'x')).toBe('linke Kante der Front');
  expect(say.edge({ of: 'level:rim', side: 'high', inner: true }, 'y')).toBe('obere Innenkante des Rands');
  expect(
    DE.rules.set(
      { id: 'r', kind: 'set', axis: 'x', edge: { of: 'sign', side: 'low' }, from: edge, distance: 100 },
      null,
      say,
    ),
  ).toBe('Linke Kante von Sign liegt 3 15/16" rechts von der linken Kante der Front');
});

it('joins articles to prepositions in Spanish, and turns its “and” before an i', () => {
  const say = ruleSayFor({ design: kiosk(), stocks: new Map(), language: 'es' });
  const edge = { of: 'face', side: 'low' } as const;
  expect(
    ES.rules.set(
      { id: 'r', kind: 'set', axis: 'x', edge: { of: 'sign', side: 'low' }, from: edge, distance: 100 },
      null,
      say,
    ),
  ).toBe('El canto izquierdo de Sign está 3 15/16" a la derecha del canto izquierdo del frente');
  expect(ES.list(['aguja', 'hilo'])).toBe('aguja e hilo');
  expect(ES.list(['agua', 'hielo'])).toBe('agua y hielo');
});

/** Every text of a table with its path; sentences are made with marks that must come out again. */
function textsOf(table: unknown, path: string): [string, string][] {
  if (typeof table === 'string') return [[path, table]];
  if (typeof table === 'function') {
    const make = table as (...marks: string[]) => unknown;
    return textsOf(make(...Array.from({ length: make.length }, (_, i) => `<${i}>`)), `${path}()`);
  }
  return Object.entries(table as object).flatMap(([key, value]) => textsOf(value, `${path}.${key}`));
}

/** Words that both languages share. */
const ALIKE = new Set(['mm', 'cm', 'in', 'Name', 'Radius', 'panel', '<0>', '<0> x <1>, <2>']);

describe.each([
  ['packet, German', PACKET_EN, PACKET_DE],
  ['patterns, German', EN.patterns, DE.patterns],
  ['shopping, German', EN.shopping, DE.shopping],
  ['packet, Spanish', PACKET_EN, PACKET_ES],
  ['patterns, Spanish', EN.patterns, ES.patterns],
  ['shopping, Spanish', EN.shopping, ES.shopping],
])('the words of %s', (_name, english, other) => {
  const ours = new Map(textsOf(other, ''));
  it.each(textsOf(english, ''))('%s: %s', (path, text) => {
    const own = ours.get(path);
    expect(own?.trim()).toBeTruthy();
    expect(given(own ?? '').filter((g) => g.startsWith('<'))).toEqual(
      given(text).filter((g) => g.startsWith('<')),
    );
    if (!ALIKE.has(text)) expect(own).not.toBe(text);
  });
});

it('every language has its words, its notation and what is usual', () => {
  for (const language of LANGUAGE_TAGS) {
    expect(PLAN_WORDS[language].list(['a', 'b', 'c'])).toMatch(/^a, b \S+ c$/);
    expect(LANGUAGES[language].name).not.toBe('');
    expect(styleIn(language, kiosk().measure).notation).toBe(LANGUAGES[language].notation);
  }
});

describe.each([
  ['de', 'Kiefer 1 x 3 Zoll'],
  ['es', 'Pino 1 x 3 pulg.'],
] as const)('the names of the tables, %s', (language, pine) => {
  const english = readTables();
  const own = tablesIn(language, english);

  it('are exchanged, with everything else left alone', () => {
    expect(tablesIn('en', english)).toBe(english);
    expect(own.stocks.find((s) => s.id === 'pine-1x3')?.name).toBe(pine);
    expect(own.containers.find((c) => c.id === 'metric-2.5')?.name).toBe('2,5 L');
    const bare = <T extends { id: string; name: string }>(list: readonly T[]) =>
      list.map(({ name: _, ...rest }) => rest).sort((a, b) => a.id.localeCompare(b.id));
    expect(bare(own.stocks)).toEqual(bare(english.stocks));
  });

  it('tell of every stock which unit it is sold by, and begin with what is sold by millimeters', () => {
    const inch = { de: 'Zoll', es: 'pulg.' }[language];
    const units = own.stocks.map((stock) => / mm\b/.test(stock.name));
    for (const [i, { name }] of own.stocks.entries()) expect(name.includes(inch), name).toBe(!units[i]);
    expect(units.indexOf(false)).toBe(units.filter((metric) => metric).length);
    expect(own.stocks.find((s) => s.id.startsWith('crown') && s.name.includes(','))?.name).toMatch(
      /^\S+( de \S+)? [\d/ ]+ \S+, /,
    );
  });

  it('are all exchanged but for words that the language has taken in', () => {
    const lists = ['materials', 'stocks', 'brads', 'screws', 'glues', 'tapes'] as const;
    const alike = lists.flatMap((list) =>
      own[list].filter((entry, i) => entry.name === english[list][i]?.name).map((entry) => entry.name),
    );
    expect(alike.filter((name) => !name.startsWith('MDF'))).toEqual([]);
  });
});
