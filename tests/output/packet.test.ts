import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../src/drawing/drawing.ts';
import { flatten, textCorners } from '../../src/drawing/walk.ts';
import { boxOfPath } from '../../src/geometry/path.ts';
import { boxOfPoints } from '../../src/geometry/ring.ts';
import type { Box } from '../../src/geometry/shape.ts';
import { compareLabels } from '../../src/joinery/label.ts';
import { formatReading } from '../../src/measure/format.ts';
import { parseMeasure } from '../../src/measure/parse.ts';
import { type Block, fillPages, type Section } from '../../src/output/packet/flow.ts';
import type { Packet } from '../../src/output/packet/leaf.ts';
import { leavesOf } from '../../src/output/packet/leaves.ts';
import { packetFor, packetOf, packetPages } from '../../src/output/packet/packet.ts';
import { cover } from '../../src/output/packet/pages/cover.ts';
import { bodyOf, packetSheet, turned } from '../../src/output/packet/sheet.ts';
import { EN as WORDS } from '../../src/output/packet/words/en.ts';
import { EN } from '../../src/plan/words/en.ts';
import { sayFor } from '../../src/plan/words/say.ts';
import { partNames } from '../../src/plan/words/words.ts';
import { planned, planOf, STARTERS, starter } from '../plan/starters.ts';
import { printerTools, textOf } from './raster.ts';
import { LETTERS } from './setWith.ts';

interface Written {
  readonly words: string;
  readonly box: Box;
}

const textsOn = (drawing: Drawing): Written[] =>
  flatten(drawing.items)
    .texts.filter((t) => t.item.text.trim() !== '')
    .map((t) => ({ words: t.item.text, box: boxOfPoints(textCorners(t)) }));

/** Pairs of texts that cover each other by more than a hair. */
function collisions(texts: readonly Written[]): string[] {
  const hair = 0.1;
  return texts.flatMap((a, i) =>
    texts.slice(i + 1).flatMap((b) => {
      const w = Math.min(a.box.x + a.box.w, b.box.x + b.box.w) - Math.max(a.box.x, b.box.x);
      const h = Math.min(a.box.y + a.box.h, b.box.y + b.box.h) - Math.max(a.box.y, b.box.y);
      return w > hair && h > hair ? [`${a.words} | ${b.words}`] : [];
    }),
  );
}

describe.each(STARTERS)('the packet of %s', (name) => {
  const plan = planOf(name);
  const pages = packetPages(plan);

  it('has no text over another text, nor over the edge of a page', () => {
    for (const { drawing } of pages) {
      const texts = textsOn(drawing);
      expect(collisions(texts), drawing.title).toEqual([]);
      for (const { box, words } of texts) {
        const inside =
          box.x > 3 && box.y > 3 && box.x + box.w < drawing.width - 3 && box.y + box.h < drawing.height - 3;
        expect(inside, `${drawing.title}: ${words}`).toBe(true);
      }
    }
  });

  it('says on its cover on which page each kind begins', () => {
    const cover = textsOn(pages[0]!.drawing);
    const starts = Object.values(WORDS.titles).filter((title) => title !== WORDS.titles.cover);
    let found = 0;
    for (const title of starts) {
      // Some titles are terms of the key figures too: the line with a page number at its end is meant.
      // The contents of a wide face stand in columns: the nearest number to the right is the title's.
      const number = cover
        .filter((t) => t.words === title)
        .flatMap((line) =>
          cover
            .filter((t) => Math.abs(t.box.y - line.box.y) < 0.7 && /^\d+$/.test(t.words))
            .filter((t) => t.box.x > line.box.x)
            .sort((a, b) => a.box.x - b.box.x)
            .slice(0, 1),
        )[0];
      if (!number) continue;
      const page = pages[Number(number.words) - 1];
      expect(page && textsOn(page.drawing).map((t) => t.words)).toContain(title);
      found++;
    }
    expect(found).toBeGreaterThanOrEqual(12);
  });

  it('numbers every page and names the design on it', () => {
    pages.forEach(({ drawing }, i) => {
      const words = textsOn(drawing).map((t) => t.words);
      expect(words).toContain(WORDS.block.pageOf(i + 1, pages.length));
      expect(words).toContain(plan.design.name);
    });
  });

  it.skipIf(!printerTools)('gives back every mark and every length of a piece as text', async () => {
    const text = textOf(await packetOf(plan, LETTERS)).replace(/\s+/g, ' ');
    for (const piece of plan.joinery.pieces) {
      expect(text).toContain(piece.label);
      expect(text).toContain(formatReading(piece.shown.length, plan.design.measure));
    }
    for (const check of plan.checks) expect(text).toContain(WORDS.checks.severity[check.severity]);
    for (const [term] of WORDS.cautions) expect(text).toContain(term);
  });

  it('warns on the cover and on page 2, before anything is sawn', () => {
    const words = (page: number) =>
      textsOn(pages[page]!.drawing)
        .map((t) => t.words)
        .join(' ');
    expect(words(0)).toContain(WORDS.cover.caution);
    for (const [term, sentence] of WORDS.cautions) {
      expect(words(1)).toContain(term);
      expect(words(1)).toContain(sentence);
    }
  });

  it('is the same byte for byte every time', async () => {
    const [a, b] = [await packetOf(plan, LETTERS), await packetOf(plan, LETTERS)];
    expect(Buffer.compare(Buffer.from(a), Buffer.from(b))).toBe(0);
  });

  it('draws the elevation to the scale that it states', () => {
    const elevation = pages.find((p) => p.drawing.title === WORDS.titles.elevation)!;
    // Letter and inches: an architect's scale, 1" = 1'-0".
    const stated = textsOn(elevation.drawing).find((t) => t.words.endsWith(`" = 1'-0"`));
    const inch = parseMeasure(stated!.words.split(' = ')[0]!, 'in');
    const scale = inch.ok ? 304.8 / inch.value : Number.NaN;
    const boxes = flatten(elevation.drawing.items)
      .paths.filter((p) => p.path.length > 1)
      .map((p) => boxOfPath(p.path));
    const { width, height } = plan.face;
    const found = boxes.some(
      (b) => Math.abs(b.w - width / scale) < 1e-6 && Math.abs(b.h - height / scale) < 1e-6,
    );
    expect(found).toBe(true);
  });
});

describe('the cover of a wide face', () => {
  it('keeps its contents clear of warnings, of a long name and of many paints', () => {
    const plan = planOf('orchard-barn-door');
    const [finish] = plan.finish.uses;
    const uses = Array.from({ length: 8 }, () => finish ?? []).flat();
    const checks = (['error', 'warning'] as const).map((severity) => ({
      code: 'boards.short' as never,
      severity,
      parts: [],
      figures: {},
    }));
    const name = 'A face with a name that takes three lines of the cover';
    const hostile = {
      ...plan,
      checks: [],
      finish: { ...plan.finish, uses },
      design: { ...plan.design, name },
    };
    const packet = packetFor({ ...hostile, checks });
    const { sheet } = packet;
    const contents = Object.values(WORDS.titles).map((title, page) => ({ title, page }));
    const items = cover(packet).flatMap((leaf) => leaf.draw(bodyOf(turned(sheet)), contents));
    const texts = textsOn({ width: sheet.height, height: sheet.width, title: '', items });
    expect(collisions(texts)).toEqual([]);
    expect(texts.map(({ words }) => words)).toEqual(expect.arrayContaining(['1 warning', WORDS.titles.load]));
    const { y } = bodyOf(turned(sheet));
    for (const { box, words } of texts) expect(box.y, words).toBeGreaterThan(y - 1);
  });
});

describe('a packet in millimeters on A4 with hostile names', () => {
  it('holds together', async () => {
    const kiosk = starter('harbor-ticket-kiosk');
    const long = 'Überlanger Name mit (Klammern) \\ und 漢字 😀 '.repeat(4);
    const design = {
      ...kiosk,
      name: long,
      date: 'den 31. Dezember',
      note: long.repeat(8),
      measure: { ...kiosk.measure, unit: 'mm' as const },
      pages: { ...kiosk.pages, paper: 'a4' },
      parts: kiosk.parts.map((part) => ({ ...part, name: long })),
    };
    const pages = packetPages(planned(design));
    expect(pages[0]).toMatchObject({ width_mm: 210, height_mm: 297 });
    for (const { drawing } of pages) expect(collisions(textsOn(drawing)), drawing.title).toEqual([]);
  });
});

describe('sheets of the packet', () => {
  it.each([
    ['letter', 215.9, 279.4],
    ['tabloid', 215.9, 279.4],
    ['roll', 215.9, 279.4],
    ['a4', 210, 297],
    ['a2', 210, 297],
  ])('for %s are %f by %f mm', (paper, width, height) => {
    const sheet = packetSheet(paper);
    expect(sheet.width).toBeCloseTo(width, 9);
    expect(sheet.height).toBeCloseTo(height, 9);
  });
});

describe('blocks on pages', () => {
  const block = (name: string, height: number, more: Partial<Block> = {}): Block => ({
    height,
    draw: (at) => [{ kind: 'text', at, text: name, size: 3, anchor: 'start', color: '#000000' }],
    ...more,
  });
  const body = { x: 0, y: 0, w: 100, h: 30 };
  const sheetBody = { ...body, h: 200 };
  const read = (blocks: Block[]) =>
    fillPages(blocks, body).map(({ draw }) =>
      draw(body).map((item) => (item.kind === 'text' ? item.text : '')),
    );

  it('go on to the next page when one is full', () => {
    expect(read([block('a', 20), block('b', 10), block('c', 10)])).toEqual([['a', 'b'], ['c']]);
  });

  it('take the head of their table along', () => {
    const head = block('head', 5, { heldToNext: true });
    expect(read([head, block('1', 20, { head }), block('2', 20, { head })])).toEqual([
      ['head', '1'],
      ['head', '2'],
    ]);
  });

  it('leave white out at the top and the foot of a page, and make no page of it', () => {
    const white = { ...block('', 5), white: true, draw: () => [] };
    expect(read([block('a', 28), white, white, block('b', 10), white])).toEqual([['a'], ['b']]);
    expect(fillPages([white, block('a', 10), white], body).map((page) => page.height)).toEqual([10]);
  });

  it('run on under the section before, each under its own heading, which a page of its own leaves out', () => {
    const section = (title: string, ...blocks: Block[]): Section => ({ title, blocks });
    const packet = { body: bodyOf(packetSheet('letter')) } as Packet;
    const pagesOf = (...sections: Section[]) =>
      leavesOf(sections, packet).map(({ leaf, begins }) => ({
        title: leaf.title,
        begins: begins.map(({ title }) => title),
        words: leaf.draw(sheetBody, []).flatMap((item) => (item.kind === 'text' ? [item.text] : [])),
      }));
    const half = packet.body.h / 2;
    expect(pagesOf(section('First', block('a', half)), section('Second', block('b', 40)))).toEqual([
      { title: 'First', begins: ['First', 'Second'], words: ['a', 'Second', 'b'] },
    ]);
    expect(pagesOf(section('First', block('a', half)), section('Second', block('b', half)))).toEqual([
      { title: 'First', begins: ['First'], words: ['a'] },
      { title: 'Second', begins: ['Second'], words: ['b'] },
    ]);
    const alone = { ...section('First', block('a', 60)), alone: true };
    expect(pagesOf(alone, section('Second', block('b', 40)))).toHaveLength(2);
  });

  it('end sooner where the last page would be almost bare', () => {
    const rows = Array.from({ length: 41 }, (_, i) => block(`${i}`, 1));
    const pages = fillPages(rows, { x: 0, y: 0, w: 100, h: 20 });
    expect(pages.map(({ height }) => height)).toEqual([20, 14, 7]);
  });

  it('leave no heading alone at the foot of a page', () => {
    const title = block('title', 5, { heldToNext: true });
    expect(read([block('a', 20), title, block('b', 20)])).toEqual([['a'], ['title', 'b']]);
  });
});

describe('the lettering page', () => {
  const base = starter('harbor-ticket-kiosk');
  const parts = base.parts.map((part) =>
    part.kind === 'sign'
      ? {
          ...part,
          lettering: {
            ...part.lettering,
            lines: [
              { text: 'PIER and N 4', sizes: [{ from: 5, count: 3, size: 0.5, stand: 'middle' as const }] },
            ],
          },
        }
      : part,
  );
  const plan = planned({ ...base, parts });
  const told = (mm: number) => formatReading(mm, plan.design.measure);
  const page = packetPages(plan).find(({ drawing }) =>
    textsOn(drawing).some((t) => t.words === WORDS.lettering.capHeight),
  );
  const texts = page ? textsOn(page.drawing) : [];
  /** The row of a table that begins with these words. */
  const rowOf = (words: string) => {
    const first = texts.find((t) => t.words === words);
    return texts
      .filter((t) => first && t !== first && Math.abs(t.box.y - first.box.y) < 0.1)
      .sort((a, b) => a.box.x - b.box.x)
      .map((t) => t.words);
  };

  it('tells heights and gaps of every line and of its letters of another size, as the outlines have them', () => {
    const [sign] = plan.signs;
    const laid = plan.layout.parts.find((part) => part.id === sign?.id);
    if (!sign || !laid) throw new Error('no sign');
    const boxOfLetter = (letter: string) => {
      const glyph = sign.lettered.glyphs.find((g) => g.character === letter);
      return boxOfPath(glyph?.path ?? []);
    };
    // Flat letters stand on their baseline and end at their cap height: P, I, 4 and, half as high, n and d.
    const [stem, half, p, four] = ['I', 'n', 'P', '4'].map(boxOfLetter) as [Box, Box, Box, Box];
    const a = boxOfLetter('a');
    const d = boxOfLetter('d');
    expect(rowOf('PIER and N 4')).toEqual([
      told(stem.h),
      told(stem.y),
      told(p.x),
      told(laid.box.w - four.x - four.w),
    ]);
    expect(rowOf('and')).toEqual([told(stem.h / 2), told(half.y), told(a.x), told(laid.box.w - d.x - d.w)]);
    expect(half.y - stem.y).toBeCloseTo(stem.h / 4, 6);
  });

  it('names letter style, way of making and colors', () => {
    const words = texts.map((t) => t.words);
    const font = plan.tables.fonts.find((f) => f.id === plan.signs[0]?.lettered.font);
    expect(words).toContain(font?.name);
    expect(words).toContain(EN.patterns.mode.stencil);
    expect(words.some((w) => w.startsWith(`${WORDS.lettering.role.fill}: `))).toBe(true);
  });

  it('names the features of the font and letters in other forms, as the OpenType registry calls them', () => {
    const chosen = parts.map((part) =>
      part.kind === 'sign'
        ? {
            ...part,
            lettering: {
              ...part.lettering,
              features: ['onum' as const, 'ss03' as const],
              lines: [{ text: 'PIER', forms: [{ at: 2, tag: 'salt', value: 1 }] }],
            },
          }
        : part,
    );
    const pages = packetPages(planned({ ...base, parts: chosen }));
    const words = pages.flatMap(({ drawing }) => textsOn(drawing).map((t) => t.words)).join(' ');
    expect(words).toContain('(Oldstyle figures, Stylistic set 3)');
    expect(words).toContain('E of line 1');
  });
});

describe('names and marks', () => {
  it('sort as a person counts', () => {
    expect(['AA1', 'B1', 'A10', 'A2', 'A1'].sort(compareLabels)).toEqual(['A1', 'A2', 'A10', 'B1', 'AA1']);
  });

  it('tell the members of an array together', () => {
    const plan = { design: starter('harbor-ticket-kiosk'), stocks: new Map(), language: 'en' as const };
    const array = plan.design.parts.find((p) => p.kind === 'array')!;
    const say = sayFor(plan);
    const name = array.name === '' ? array.id : array.name;
    expect(partNames([`${array.id}[0,0]`, `${array.id}[1,0]`, `${array.id}[1,0]`], say)).toEqual([
      `${name} (2)`,
    ]);
    expect(partNames([`${array.id}[1,0]`], say)).toEqual([`${name} 2`]);
  });

  it('tell parts called alike in several groups once, and a group that is there with all its wood as such', () => {
    const plan = planOf('glasshouse');
    const say = sayFor(plan);
    const glass = plan.design.parts.filter(({ name }) => name.startsWith('Glass (')).map(({ id }) => id);
    expect(partNames(['wall', ...glass], say)).toEqual([
      'Wall',
      'Glass (Door, Left window, Right window, Gable window)',
    ]);
    const door = plan.design.groups.find(({ name }) => name === 'Door')!;
    const wood = plan.joinery.pieces.filter(({ part }) => door.parts.includes(part.replace(/\[.*/, '')));
    const ids = [...new Set(wood.map(({ part }) => part))];
    expect(partNames(ids, say)).toEqual(['every piece (Door)']);
    const library = planOf('village-library');
    const named = (name: string) =>
      library.design.parts.filter((part) => part.name.startsWith(name)).map(({ id }) => id);
    const stiles = named('Left stile (Doors');
    expect(partNames(stiles, sayFor(library))).toEqual(['Left stile (Doors) (2)']);
    expect(partNames(stiles.slice(0, 1), sayFor(library))).toEqual(['Left stile (Doors, left leaf)']);
    // One piece of an array less, and all are told by name; 7 bars less the one.
    const less = ids.filter((id) => id !== ids.find((one) => one.startsWith('window-1.bars-1[')));
    expect(partNames(less, say)).toEqual([
      'Left stile (Door)',
      'Right stile (Door)',
      'Bottom rail (Door)',
      'Top rail (Door)',
      'Upright bars 1 (Door)',
      'Cross bars 1 (Door) (2)',
      'Cross bars 2 (Door) (3)',
    ]);
  });

  it('say in every step of every starter which parts it is about, none more and none less', () => {
    for (const name of STARTERS) {
      const plan = planOf(name);
      const say = sayFor(plan);
      for (const { parts } of plan.marks.steps) {
        const told = partNames(parts, say);
        const whole = say.wholes.filter((one) => one.parts.every((id) => parts.includes(id)));
        // Twin: what no whole group takes, by its own name or the name of its array, has that name told.
        const left = parts.filter((id) => !whole.some((one) => one.parts.includes(id)));
        for (const id of left) {
          const own =
            say.within(id.replace(/\[\d+,\d+\]$/, ''))?.own ?? say.name(id.replace(/\[\d+,\d+\]$/, ''));
          expect(
            told.some((words) => words.startsWith(own)),
            `${name}: ${own} in ${told.join(' | ')}`,
          ).toBe(true);
        }
        const every = told.filter((words) => words.startsWith('every piece'));
        expect(every.length).toBe(whole.length > 0 ? 1 : 0);
        for (const { place } of whole) expect(every[0]).toContain(place);
      }
    }
  });
});
