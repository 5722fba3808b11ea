import { PDFDocument } from '@cantoo/pdf-lib';
import type { Drawing } from '../../src/drawing/drawing.ts';
import { shape } from '../../src/drawing/items.ts';
import { type FlatPath, flatten } from '../../src/drawing/walk.ts';
import { inches } from '../../src/measure/units.ts';
import { pdfOf } from '../../src/output/pdf/pdf.ts';
import { tile } from '../../src/patterns/tile.ts';
import { letteredLine } from '../output/letters.ts';
import { LETTERS } from '../output/setWith.ts';
import { setupOf } from '../patterns/setup.ts';
import type { BenchRow } from './row.ts';

const ROUNDS = 7;
const LETTER_COLOR = '#000001';
const isLetter = (flat: FlatPath): boolean => flat.item.stroke === LETTER_COLOR;

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;

async function timed(work: () => Promise<unknown> | unknown): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

/** Sixty letters in four lines, about sixty Letter pages of them. */
function sixtyLetters(): { drawing: Drawing; paths: string[] } {
  const lines = ['HARBOR TICKETS', 'ORCHARD BAKERY', 'COFFEE AND TEA', 'OPEN ALL HOURS NOW'];
  const glyphs = lines.flatMap(
    (line, i) => letteredLine(line, inches(14), { x: 0, y: i * inches(19) }).glyphs,
  );
  const items = glyphs.map((g) => shape(g.path, { stroke: LETTER_COLOR, width: 0.25 }));
  // For the library alone: its own path reader, y down.
  const paths = glyphs
    .map((g) =>
      g.path
        .map((c) =>
          c.op === 'Z'
            ? 'Z'
            : c.op === 'C'
              ? `C${c.x1} ${-c.y1} ${c.x2} ${-c.y2} ${c.x} ${-c.y}`
              : `${c.op}${c.x} ${-c.y}`,
        )
        .join(''),
    )
    .filter((d) => d !== '');
  return { drawing: { width: inches(110), height: inches(76), title: 'letters', items }, paths };
}

/** Times of tiling and writing a large sign, over the time in which the PDF library alone writes the same paths. */
export async function bench(): Promise<BenchRow[]> {
  const { drawing, paths } = sixtyLetters();
  const setup = setupOf({});
  const set = tile(drawing, { setup, for: 'bench', title: 'bench' });
  const pages = set?.pages ?? [];
  const ours = async () => {
    const tiled = tile(drawing, { setup, for: 'bench', title: 'bench' });
    const written = (tiled?.pages ?? []).map((p) => ({
      width_mm: p.drawing.width,
      height_mm: p.drawing.height,
      drawing: p.drawing,
    }));
    return pdfOf(written, { title: 'bench', date: '', language: 'en' }, LETTERS);
  };
  // As many pages as ours, each with as many letters as ours show on average.
  const shown = pages.reduce((sum, p) => sum + flatten(p.drawing.items).paths.filter(isLetter).length, 0);
  const perPage = Math.max(1, Math.round(shown / Math.max(1, pages.length)));
  const alone = async () => {
    const document = await PDFDocument.create();
    for (let i = 0; i < pages.length; i++) {
      const page = document.addPage([612, 792]);
      for (let k = 0; k < perPage; k++)
        page.drawSvgPath(paths[(i * perPage + k) % paths.length] ?? '', { borderWidth: 1 });
    }
    return document.save();
  };
  await ours();
  await alone();
  const [own, library]: [number[], number[]] = [[], []];
  for (let i = 0; i < ROUNDS; i++) {
    own.push(await timed(ours));
    library.push(await timed(alone));
  }
  return [
    {
      name: 'letters to tiled pattern pages in a PDF',
      size: pages.length,
      ratio: median(own) / median(library),
      against: 'the PDF library alone writing as many of the same paths on as many pages',
      note: `${paths.length} letters, ${pages.length} pages`,
    },
  ];
}
