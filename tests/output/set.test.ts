import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PDFArray, PDFDict, PDFDocument, PDFHexString, PDFName, PDFNumber, PDFString } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { PACKET_SECTIONS, type PacketSection } from '../../src/design/limits.ts';
import { openDesign } from '../../src/design/open.ts';
import { saveDesign } from '../../src/design/save.ts';
import type { Design } from '../../src/design/schema.ts';
import { flatten, textCorners } from '../../src/drawing/walk.ts';
import { boxOfPoints } from '../../src/geometry/ring.ts';
import { packetOf, packetPages, revisionOf } from '../../src/output/packet/packet.ts';
import { PACKET_WORDS } from '../../src/output/packet/words/words.ts';
import { planned, starter } from '../plan/starters.ts';
import { printerTools, textOf } from './raster.ts';
import { LETTERS } from './setWith.ts';

const design = starter('bread-shop');
const plan = planned(design);
const pages = packetPages(plan);
const { titles } = PACKET_WORDS.en;
const textsOn = (page: number) => flatten(pages[page]?.drawing.items ?? []).texts;

const bytes = packetOf(plan, LETTERS);
const document = bytes.then((written) => PDFDocument.load(written, { updateMetadata: false }));
const name = (key: string) => PDFName.of(key);

/** Index of the page that a destination shows. */
async function pageOf(destination: PDFArray): Promise<number> {
  const read = await document;
  return read.getPages().findIndex((page) => page.ref === destination.get(0));
}

describe('the title block (fields of ISO 7200)', () => {
  it('tells on every sheet what it is of, which one of how many, in which units, on which paper, and its state', () => {
    const revision = revisionOf(design);
    pages.forEach((page, i) => {
      const told = textsOn(i).map(({ item }) => item.text);
      const asked = ['Bread shop', `${i + 1} of ${pages.length}`, 'inches', 'Letter', 'none given', revision];
      for (const words of asked) expect(told, `sheet ${i + 1}`).toContain(words);
      expect(told).toContain(PACKET_WORDS.en.block.check);
      expect(told.filter((words) => words === page.drawing.title).length).toBeGreaterThanOrEqual(2);
    });
  });

  it('names another state for any other design', () => {
    const revision = revisionOf(design);
    expect(revision).toMatch(/^[0-9A-F]{8}$/);
    expect(revisionOf(structuredClone(design))).toBe(revision);
    const others = design.parts.map((part, i) =>
      revisionOf({
        ...design,
        parts: design.parts.with(i, { ...part, box: { ...part.box, x: part.box.x + 0.1 } }),
      }),
    );
    expect(new Set([revision, ...others]).size).toBe(design.parts.length + 1);
  });

  it('names the same state in whatever unit and on whatever paper it is printed', () => {
    const printed = {
      ...design,
      measure: { ...design.measure, unit: 'mm' as const },
      pages: { ...design.pages, paper: 'a4' },
    };
    expect(revisionOf(printed)).toBe(revisionOf(design));
    expect(revisionOf({ ...printed, pages: { ...design.pages, overlap: 1 } })).not.toBe(revisionOf(design));
  });

  it('names the same state as edited and as saved and opened again, which puts entries into the order of the format', () => {
    const parts = design.parts.map((part) =>
      part.kind === 'sign' ? { ...part, lettering: { ...part.lettering, pounce: 5 } } : part,
    );
    const edited = { ...design, parts };
    const opened = openDesign(saveDesign(edited));
    if (!opened.ok) throw new Error('it does not open');
    expect(JSON.stringify(opened.design)).not.toBe(JSON.stringify(edited));
    expect(revisionOf(opened.design)).toBe(revisionOf(edited));
    expect(revisionOf(edited)).not.toBe(revisionOf(design));
  });
});

describe('the unit of figures', () => {
  const { block } = PACKET_WORDS.en;
  const sheetsIn = (unit: Design['measure']['unit']) =>
    packetPages({ ...plan, design: { ...design, measure: { ...design.measure, unit } } }).map(({ drawing }) =>
      flatten(drawing.items).texts.map((flat) => ({
        words: flat.item.text,
        low: boxOfPoints(textCorners(flat)).y,
      })),
    );

  it('stands once on each sheet in millimeters, and beside no figure (ISO 129-1, from memory)', () => {
    for (const texts of sheetsIn('mm')) {
      expect(texts.filter(({ words }) => words === block.all)).toHaveLength(1);
      // Above the title block, whose scale bar has its unit.
      const above = texts.filter(({ low }) => low > 31);
      expect(above.filter(({ words }) => /^\D{0,3}[\d.,]+( x [\d.,]+)* mm$/.test(words))).toEqual([]);
    }
  });

  it('stands beside each figure in centimeters', () => {
    const sheets = sheetsIn('cm').map((texts) => texts.map(({ words }) => words));
    for (const texts of sheets) expect(texts).toContain('cm');
    expect(sheets.flat()).not.toContain(block.all);
    expect(sheets.flat().filter((words) => words.endsWith(' cm')).length).toBeGreaterThan(100);
  });
});

describe('what the packet leaves out', () => {
  const told = (without?: readonly PacketSection[]) => {
    const asked = {
      ...plan,
      design: { ...design, pages: { ...design.pages, without: without && [...without] } },
    };
    const all = packetPages(asked).map(({ drawing }) =>
      flatten(drawing.items).texts.map(({ item }) => item.text),
    );
    return { titles: new Set(all.slice(1).flat()), cover: (all[0] ?? []).join(' '), count: all.length };
  };
  const leftOut = (...names: string[]) => PACKET_WORDS.en.cover.leftOut(names.join(', '));

  it('is what others say again where the design says nothing, and the cover names it', () => {
    const { titles: found, cover } = told();
    expect(found.has(titles.places)).toBe(false);
    expect(cover).toContain(leftOut(titles.places));
  });

  it('is nothing where the design says so, and any of its sections', () => {
    const whole = told([]);
    expect(whole.titles.has(titles.places)).toBe(true);
    expect(whole.cover).not.toContain(leftOut(''));
    const few = told(PACKET_SECTIONS);
    expect(few.count).toBe(2);
    expect(few.titles.has(titles.checks)).toBe(true);
    for (const section of ['boards', 'maps', 'swing'] as const) {
      const without = told([section]);
      const own = without.cover.includes(leftOut(titles[section]));
      // The bread shop has no fill, and so no map of one.
      expect(own, section).toBe(section !== 'maps');
      expect(without.titles.has(titles[section]), section).toBe(false);
    }
  });

  it('is no other state of the design', () => {
    const without = { ...design, pages: { ...design.pages, without: ['swing' as const] } };
    expect(revisionOf(without)).toBe(revisionOf(design));
  });
});

describe('the packet as a reader opens it', () => {
  it('has the sections in its outline, each at the page where its heading stands', async () => {
    const { catalog } = await document;
    const outlines = catalog.lookup(name('Outlines'), PDFDict);
    const found: { title: string; page: number }[] = [];
    for (let entry = outlines.lookupMaybe(name('First'), PDFDict); entry; ) {
      const title = entry.lookup(name('Title'), PDFHexString).decodeText();
      found.push({ title, page: await pageOf(entry.lookup(name('Dest'), PDFArray)) });
      entry = entry.lookupMaybe(name('Next'), PDFDict);
    }
    expect(found.length).toBe(outlines.lookup(name('Count'), PDFNumber).asNumber());
    expect(found.length).toBeGreaterThan(12);
    for (const { title, page } of found) {
      expect(textsOn(page).map(({ item }) => item.text)).toContain(title);
    }
    expect(found.map(({ page }) => page)).toEqual(found.map(({ page }) => page).sort((a, b) => a - b));
    expect(found.map(({ title }) => title)).toEqual(
      Object.values(titles)
        .filter((title) => found.some((entry) => entry.title === title))
        .sort((a, b) => found.findIndex((e) => e.title === a) - found.findIndex((e) => e.title === b)),
    );
  });

  it('leads from each line of the contents to its section, and from each label of the cut list to its wood', async () => {
    const read = await document;
    const links = await Promise.all(
      read.getPages().flatMap((page, from) =>
        (page.node.Annots()?.asArray() ?? []).map(async (ref) => {
          const link = read.context.lookup(ref, PDFDict);
          const [left, low, right, high] = link
            .lookup(name('Rect'), PDFArray)
            .asArray()
            .map((side) => ((side as PDFNumber).asNumber() * 25.4) / 72) as [number, number, number, number];
          const clicked = textsOn(from).find((flat) => {
            const box = boxOfPoints(textCorners(flat));
            const [x, y] = [box.x + box.w / 2, box.y + box.h / 2];
            return flat.item.leadsTo !== undefined && x > left && x < right && y > low && y < high;
          });
          return { from, words: clicked?.item.text, to: await pageOf(link.lookup(name('Dest'), PDFArray)) };
        }),
      ),
    );
    expect(links.filter(({ from }) => from === 0).length).toBeGreaterThan(12);
    for (const { words, to } of links) {
      expect(textsOn(to).map(({ item }) => item.text)).toContain(words);
    }
    const labels = new Set(plan.joinery.pieces.map(({ label }) => label));
    expect(new Set(links.filter(({ from }) => from > 0).map(({ words }) => words))).toEqual(labels);
  });

  it('is tagged, with every text in it once, and says its language and title', async () => {
    const { catalog, context } = await document;
    expect(catalog.lookup(name('Lang'), PDFString).asString()).toBe('en');
    expect(catalog.lookup(name('MarkInfo'), PDFDict).get(name('Marked'))?.toString()).toBe('true');
    const elements = context
      .enumerateIndirectObjects()
      .flatMap(([, object]) =>
        object instanceof PDFDict && object.get(name('S')) && object.get(name('Pg')) ? [object] : [],
      );
    const marks = elements.map((element) => element.lookup(name('K'), PDFArray).size());
    const texts = pages.map((_, i) => textsOn(i).filter(({ item }) => item.text.trim() !== '').length);
    const sum = (counts: number[]) => counts.reduce((a, b) => a + b, 0);
    expect(sum(marks)).toBe(sum(texts));
    const heads = elements.filter((element) => element.get(name('S'))?.toString() === '/H1');
    expect(heads.length).toBeGreaterThanOrEqual(pages.length);
  });

  it.skipIf(!printerTools)('is read aloud by a second reader, heading first', async () => {
    const written = await bytes;
    const dir = mkdtempSync(join(tmpdir(), 'showface-'));
    try {
      const file = join(dir, 'packet.pdf');
      writeFileSync(file, written);
      const told = execFileSync('pdfinfo', ['-struct-text', file], { encoding: 'utf8' });
      expect(told).toMatch(/^Document\n {2}Sect\n {4}H1 \(block\)\n {6}"The face"/m);
      const read = [...told.matchAll(/"(.*)"$/gm)].map(([, words = '']) => words);
      const shown = textOf(written);
      expect(read.length).toBeGreaterThan(500);
      for (const words of read.slice(0, 60)) expect(shown).toContain(words);
    } finally {
      rmSync(dir, { recursive: true });
    }
  });
});
