import { closePath, fill, lineTo, moveTo, PDFDocument } from '@cantoo/pdf-lib';
import type { Region } from '../../src/geometry/shape.ts';
import { letter } from '../../src/lettering/letter.ts';
import { sheetAround } from '../../src/lettering/stencil/sheet.ts';
import { stencil } from '../../src/lettering/stencil/stencil.ts';
import { fontOf } from '../lettering/fonts.ts';
import { lettering, stencilOptions } from '../lettering/lettering.ts';
import type { BenchRow } from './row.ts';

/** Sixty letters, spaces not counted, on four lines. */
const TEXT = ['HARBOR QUAY TICKETS', 'BOAT & BAGGAGE OFFICE', 'ROOMS BOARD & PARADE', 'DAQPBROS'];
const RUNS = 3;
const FONTS = ['bebas-neue', 'playfair-display', 'rye'];

/**
 * From text to a bridged stencil, against the document library alone writing the same outlines on sixty
 * pages. Both medians of one run, measured in turns.
 */
export async function bench(): Promise<BenchRow[]> {
  const rows: BenchRow[] = [];
  for (const id of FONTS) rows.push(await benchFont(id));
  return rows;
}

async function benchFont(id: string): Promise<BenchRow> {
  const font = fontOf(id);
  const options = stencilOptions();
  const text = lettering(TEXT, { font: id, capHeight: 120, stencil: options });
  const work = () => {
    const { lettered } = letter({ lettering: text, font, sign: { id: 's', w: 2400, h: 900 } });
    const letters = lettered.layers[0]?.whole ?? [];
    const made = stencil({ sign: 's', letters, sheet: sheetAround(lettered.box, options), options });
    if (made.stencil.loose > 0) throw new Error('a stencil that holds together expected');
    return made.stencil;
  };
  const { cut, bridges } = work();
  await write(cut);
  const times: { work: number[]; write: number[] } = { work: [], write: [] };
  for (let run = 0; run < RUNS; run += 1) {
    const start = performance.now();
    work();
    const between = performance.now();
    await write(cut);
    times.work.push(between - start);
    times.write.push(performance.now() - between);
  }
  const [working, writing] = [median(times.work), median(times.write)];
  return {
    name: `60 letters to bridged stencil, ${id}`,
    size: 60,
    ratio: working / writing,
    against: 'the document library writing the same outlines on 60 pages',
    note: `${bridges.length} bridges, ${Math.round(working)} ms`,
  };
}

async function write(cut: Region): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  for (let page = 0; page < 60; page += 1) {
    const sheet = document.addPage([612, 792]);
    for (const { outer, holes } of cut) {
      for (const ring of [outer, ...holes]) {
        ring.forEach(({ x, y }, i) => {
          sheet.pushOperators(i === 0 ? moveTo(x, y) : lineTo(x, y));
        });
        sheet.pushOperators(closePath());
      }
      sheet.pushOperators(fill());
    }
  }
  return document.save();
}

const median = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0;
