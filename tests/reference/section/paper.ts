import { PDFDocument } from '@cantoo/pdf-lib';
import { readTables } from '../../../src/command/supplies.ts';
import { inches } from '../../../src/measure/units.ts';
import { pdfOf } from '../../../src/output/pdf/pdf.ts';
import { pagesAlong } from '../../../src/patterns/cells.ts';
import { tile } from '../../../src/patterns/tile.ts';
import { LETTERS } from '../../output/setWith.ts';
import { fullOfInk, setupOf } from '../../patterns/setup.ts';
import { printed, type Row, type Section, WORKED } from '../table.ts';

const ISO = 'ISO 216:2007, as quoted by en.wikipedia.org/wiki/ISO_216';
const ANSI = 'ANSI/ASME Y14.1, as quoted by colorcopiesusa.com';

/** Sizes in points of 1/72 in. */
const POINTS: readonly [string, string, number, number][] = [
  ['a0', ISO, 2383.94, 3370.39],
  ['a1', ISO, 1683.78, 2383.94],
  ['a2', ISO, 1190.55, 1683.78],
  ['a3', ISO, 841.89, 1190.55],
  ['a4', ISO, 595.28, 841.89],
  ['a5', ISO, 419.53, 595.28],
  ['letter', ANSI, 612, 792],
  ['legal', ANSI, 612, 1008],
  ['tabloid', ANSI, 792, 1224],
  ['ansi-c', ANSI, 1224, 1584],
  ['ansi-d', ANSI, 1584, 2448],
  ['ansi-e', ANSI, 2448, 3168],
];

/** Pages of each paper of the tables as they stand in a PDF that was read back. */
async function sizes(): Promise<Row[]> {
  const { papers } = readTables();
  const drawing = fullOfInk(10, 10);
  const pages = POINTS.map(([id]) => {
    const paper = papers.find((p) => p.id === id);
    return { width_mm: paper?.width ?? 0, height_mm: paper?.height ?? 0, drawing };
  });
  const read = await PDFDocument.load(await pdfOf(pages, { title: '', date: '', language: 'en' }, LETTERS));
  return POINTS.flatMap(([id, source, width, height], i): Row[] => {
    const page = read.getPage(i);
    const tolerance = printed(2);
    return [
      {
        check: `${id}: page width in a PDF, points`,
        source,
        expected: width,
        found: page.getWidth(),
        tolerance,
      },
      {
        check: `${id}: page height in a PDF, points`,
        source,
        expected: height,
        found: page.getHeight(),
        tolerance,
      },
    ];
  });
}

function tiling(): Row[] {
  const cases: readonly [number, number, number, number][] = [
    [60, 80, 9, 9],
    [36, 12, 6, 2],
    [7.5, 10, 1, 1],
  ];
  const formula = 'ceil((W - o)/(p - o)), printable 7.5 x 10 in, overlap 0.5';
  const source = `${formula}; ${WORKED}`;
  return cases.flatMap(([w, h, columns, rows]): Row[] => {
    const set = tile(fullOfInk(inches(w), inches(h)), { setup: setupOf({}), for: 'x', title: 'x' });
    const pages = set?.pages.length ?? 0;
    return [
      {
        check: `${w} x ${h} in on Letter: columns`,
        source,
        expected: columns,
        found: pagesAlong(inches(w), inches(7.5), inches(0.5)),
      },
      {
        check: `${w} x ${h} in on Letter: rows`,
        source,
        expected: rows,
        found: pagesAlong(inches(h), inches(10), inches(0.5)),
      },
      {
        check: `${w} x ${h} in on Letter: pages, no more than columns x rows = ${columns * rows}`,
        source,
        expected: 'no more',
        found: pages > 0 && pages <= columns * rows ? 'no more' : `${pages}`,
      },
    ];
  });
}

/** ceil((36 - 0.5)/9.5) = 4 columns and ceil((12 - 0.5)/7) = 2 rows of paper laid on its side. */
function turned(): Row {
  const set = tile(fullOfInk(inches(36), inches(12)), { setup: setupOf({}), for: 'x', title: 'x' });
  return {
    check: '36 x 12 in on Letter turned: columns x rows, pages',
    source: `ceil((W - o)/(p - o)), printable 10 x 7.5 in, overlap 0.5; ${WORKED}`,
    expected: '4 x 2, 8',
    found: set?.turned ? `${set.columns} x ${set.rows}, ${set.pages.length}` : 'not turned',
  };
}

export const paper: Section = {
  number: 3,
  title: 'Paper and tiling',
  rows: async () => [...(await sizes()), ...tiling(), turned()],
};
