import { describe, expect, it } from 'vitest';
import { TEXT } from '../../src/drawing/style.ts';
import { textWidth } from '../../src/drawing/text.ts';
import { flatten } from '../../src/drawing/walk.ts';
import { formatReading } from '../../src/measure/format.ts';
import { type Column, table } from '../../src/output/packet/flow.ts';
import { packetFor, packetPages } from '../../src/output/packet/packet.ts';
import { bodyOf } from '../../src/output/packet/sheet.ts';
import { EN } from '../../src/output/packet/words/en.ts';
import { pdfOf } from '../../src/output/pdf/pdf.ts';
import { inMetric, planned, STARTERS, starter } from '../plan/starters.ts';
import { LETTERS } from './setWith.ts';
import { type SetText, setTexts } from './textOperators.ts';

/** Sizes in points that the client of the packet asked for: all text, tables, and what is read at the saw. */
const LEAST = { text: 8, table: 9, saw: 12 } as const;
/** What the numbers of a file are rounded to. */
const ROUND = 0.01;

const SETS = STARTERS.flatMap((name) => [
  [`${name}, inches on Letter`, () => starter(name)] as const,
  [`${name}, millimeters on A4`, () => inMetric(starter(name))] as const,
]);

const under = (least: number) => (one: SetText) => one.words.trim() !== '' && one.points < least - ROUND;
const told = ({ words, points }: SetText) => `${words} at ${points.toFixed(2)}`;

/** What stands small in every title block. */
const BLOCK = new Set(
  Object.values(EN.block).flatMap((words) => (typeof words === 'string' ? [words as string] : [])),
);

describe.each(SETS)('the file of %s', (_, design) => {
  const plan = planned(design());
  const packet = packetFor(plan);
  const pages = packetPages(plan);
  const file = pdfOf(pages, { title: 'Sizes', date: '', language: 'en' }, LETTERS).then(setTexts);
  const on = async (...titles: readonly string[]) =>
    (await file).flatMap((texts, i) => (titles.includes(pages[i]?.drawing.title ?? '') ? texts : []));

  it('sets all text in 8 points at least', async () => {
    const read = await file;
    // What was read is what was drawn: nothing is missing that could be smaller.
    const drawn = pages.map(
      ({ drawing }) => flatten(drawing.items).texts.filter(({ item }) => item.text.trim() !== '').length,
    );
    expect(read.map((texts) => texts.length)).toEqual(drawn);
    expect(read.flat().filter(under(LEAST.text)).map(told)).toEqual([]);
  });

  it('sets pages of tables in 9 points but for the title block', async () => {
    const { titles } = EN;
    const small = (await on(titles.shopping, titles.places, titles.saw, titles.steps)).filter(
      under(LEAST.table),
    );
    expect(small.length).toBeGreaterThan(0);
    expect(small.filter(({ words }) => !BLOCK.has(words)).map(told)).toEqual([]);
  });

  it('sets lengths under boards in 12 points, but where a piece is shorter on paper than its figure', async () => {
    const { pieces } = plan.joinery;
    const { boards } = plan.cutting;
    const room = bodyOf(packet.sheet).w;
    // Boards of a stock are drawn as large as this or larger.
    const scale = room / Math.max(...boards.map((board) => board.length));
    const byId = new Map(pieces.map((piece) => [piece.id, piece]));
    const cuts = boards.flatMap((board) => board.cuts);
    const figures = new Map(
      cuts.map(({ piece, from, to }) => {
        const words = formatReading(byId.get(piece)?.shown.length ?? 0, packet.measure);
        return [words, { words, on: (to - from) * scale }] as const;
      }),
    );
    const texts = await on(EN.titles.boards);
    const small = texts.filter(under(LEAST.saw)).filter(({ words }) => {
      const figure = figures.get(words);
      // A piece mark may read as a length does in millimeters; an offcut has its word.
      return figure !== undefined && textWidth(words, { size: TEXT.figure }) + 1 <= figure.on;
    });
    expect(small.map(told)).toEqual([]);
    expect(texts.filter(({ words }) => figures.has(words)).length).toBeGreaterThan(0);
  });

  it('sets what the saw is set to in 12 points: miters, bevels and the fence', async () => {
    const sawn = plan.joinery.pieces.filter(({ form }) => form !== 'sheet').flatMap(({ ends }) => ends);
    const angles = new Set(sawn.map(({ miter }) => packet.say.angle(Math.abs(miter))));
    const read = (await file).flat();
    for (const words of angles) {
      expect(
        read.some((one) => one.words === words && !under(LEAST.saw)(one)),
        words,
      ).toBe(true);
    }
    const fences = plan.cutting.sheets.flatMap(({ sequence }) => sequence.map(({ fence }) => fence));
    const large = (await on(EN.titles.sheets, EN.titles.boards)).filter((one) => !under(LEAST.saw)(one));
    const set = new Set(large.map(({ words }) => words));
    expect(fences.map((mm) => formatReading(mm, packet.measure)).filter((words) => !set.has(words))).toEqual(
      [],
    );
  });
});

describe('a table', () => {
  it('has cells of 9 points, and 12 in columns for the saw, whatever stands beside them', () => {
    const columns: Column[] = [
      { title: 'Cut', share: 1, figure: true },
      { title: 'Fence at', share: 1, figure: true, saw: true },
      { title: 'From its', share: 3 },
    ];
    const rows = [{ cells: ['1', '26 1/2"', 'left edge'] }, { cells: ['2', '3"', 'lower edge '.repeat(30)] }];
    const blocks = table(columns, rows, 120);
    const texts = blocks.flatMap(({ draw }) =>
      flatten(draw({ x: 0, y: 0 }, 120)).texts.map(({ item }) => item),
    );
    const points = (words: string) => (72 / 25.4) * (texts.find(({ text }) => text === words)?.size ?? 0);
    expect(points('26 1/2"')).toBeCloseTo(12, 6);
    expect(points('3"')).toBeCloseTo(12, 6);
    expect(points('left edge')).toBeCloseTo(9, 6);
    expect(points('Fence at')).toBeCloseTo(9, 6);
    // Nothing of a row stands over the row above it.
    for (const { draw, height } of blocks) {
      for (const { item } of flatten(draw({ x: 0, y: 0 }, 120)).texts) {
        expect(item.at.y + 0.72 * item.size).toBeLessThanOrEqual(0);
        expect(item.at.y).toBeGreaterThanOrEqual(-height);
      }
    }
  });
});
