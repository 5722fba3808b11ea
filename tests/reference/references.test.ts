import { readFileSync, writeFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { SECTIONS } from './sections.ts';
import { agrees, PAGE_HEAD, type Row, textOf } from './table.ts';

const PAGE = new URL('README.md', import.meta.url);
const WRITE = process.env.SHOWFACE_REFERENCES === 'write';

/** Sections as they are found, by number. */
const texts = new Map<number, string>();

/** The page as it stands, taken apart at its headings. */
function sectionsOfPage(): string[] {
  return readFileSync(PAGE, 'utf8')
    .split(/^(?=## )/m)
    .map((text) => text.trimEnd());
}

describe.each(SECTIONS)('$title', (section) => {
  let rows: readonly Row[] = [];
  beforeAll(async () => {
    rows = await section.rows();
    texts.set(section.number, textOf(section, rows));
  }, 300_000);

  it('finds what the sources say', () => {
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) expect(row.check.length * row.source.length, row.check).toBeGreaterThan(0);
    expect(rows.filter((row) => !agrees(row))).toEqual([]);
  });

  if (WRITE) return;
  it('stands on the page as it is (npm run references)', () => {
    expect(sectionsOfPage()[section.number]).toBe(texts.get(section.number)?.trimEnd());
  });
});

describe('the page', () => {
  if (WRITE) {
    it('is written', () => {
      writeFileSync(PAGE, `${PAGE_HEAD}\n${[...texts.values()].join('\n')}`);
    });
  }

  it('has its head and every section, in order', () => {
    const [head = '', ...sections] = sectionsOfPage();
    expect(head).toBe(PAGE_HEAD.trimEnd());
    expect(sections.map((text) => text.split('\n')[0])).toEqual(
      SECTIONS.map(({ number, title }) => `## ${number}. ${title}`),
    );
  });
});

describe('a row', () => {
  const row = (expected: Row['expected'], found: Row['found'], tolerance?: number): Row =>
    tolerance === undefined
      ? { check: 'c', source: 's', expected, found }
      : { check: 'c', source: 's', expected, found, tolerance };

  it('agrees within its tolerance and no further, and never where nothing was found', () => {
    expect(agrees(row(1, 1.05, 0.05 + 1e-12))).toBe(true);
    expect(agrees(row(1, 1.06, 0.05))).toBe(false);
    expect(agrees(row(1, 1 + 1e-6))).toBe(false);
    expect(agrees(row(1, Number.NaN, 10))).toBe(false);
    expect(agrees(row('a', 'a'))).toBe(true);
    expect(agrees(row('1', 1))).toBe(false);
  });
});
