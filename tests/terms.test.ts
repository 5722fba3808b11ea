import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { late } from '../src/editor/words/en/late.ts';
import { en as first } from '../src/editor/words/en.ts';

const en = { ...first, ...late };

const ROOT = new URL('../', import.meta.url);
const read = (path: string) => readFileSync(new URL(path, ROOT), 'utf8');

/** The table of terms in DEVELOPERS.md: what a thing is called, and what it is not to be called. */
const SECTION =
  read('DEVELOPERS.md')
    .split('\n## ')
    .find((section) => section.startsWith('Terms')) ?? '';
const TERMS = [...SECTION.matchAll(/^\| ([^|]+) \| [^|]+ \| ((?:`[^`]+`(?:, )?)+) \|$/gm)].map(
  ([, term = '', banned = '']) => ({
    term,
    banned: [...banned.matchAll(/`([^`]+)`/g)].map(([, b = '']) => b),
  }),
);

/** Every English sentence: tables of the editor by key, those of plan and packet as the texts in their files, without names of figures. */
function sentences(): { readonly at: string; readonly text: string }[] {
  const folder = 'src/plan/words/en/';
  const files = [
    ...readdirSync(new URL(folder, ROOT)).map((f) => folder + f),
    'src/plan/words/en.ts',
    'src/output/packet/words/en.ts',
  ];
  const literals = files.flatMap((at) =>
    [...read(at).matchAll(/(?<!\()'((?:[^'\\\n]|\\.)*)'(?!:)|`((?:[^`\\]|\\.)*)`/g)].map(([, a, b]) => ({
      at,
      text: a ?? (b ?? '').replace(/\$\{[^}]*\}/g, '…'),
    })),
  );
  return [...Object.entries(en).map(([at, text]) => ({ at, text })), ...literals];
}

/** Whole words only. */
const saying = (term: string) => new RegExp(`${/^\w/.test(term) ? '(?<![\\w-])' : ''}${term}(?!\\w)`, 'i');

describe('the table of terms', () => {
  it('is read', () => {
    expect(TERMS.length).toBeGreaterThan(15);
    expect(saying('at hand').test('Brads at hand.')).toBe(true);
    expect(saying('tick').test('a sticky plate')).toBe(false);
  });

  it('holds in every English word table', () => {
    const all = sentences();
    expect(all.length).toBeGreaterThan(1000);
    const found = TERMS.flatMap(({ term, banned }) =>
      banned.flatMap((b) =>
        all
          .filter(({ text }) => saying(b).test(text))
          .map(({ at, text }) => `${b} for ${term}: ${at}: ${text}`),
      ),
    );
    expect(found).toEqual([]);
  });
});
