import { PDFDocument } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import type { DrawItem, Drawing } from '../../src/drawing/drawing.ts';
import { layer, line, rectangle, shape, text } from '../../src/drawing/items.ts';
import { ringsOfPath } from '../../src/geometry/curve.ts';
import { distanceToSegment } from '../../src/geometry/segment.ts';
import type { Point } from '../../src/geometry/shape.ts';
import { pdfOf } from '../../src/output/pdf/pdf.ts';
import { letteredLine } from './letters.ts';
import { printerTools, rasterOf, textOf } from './raster.ts';
import { LETTERS } from './setWith.ts';

const INFO = { title: 'Title', author: 'Somebody', date: 'as given', language: 'en' };
const drawingOf = (items: DrawItem[], width = 120, height = 80): Drawing => ({
  width,
  height,
  title: 't',
  items,
});
const pageOf = (drawing: Drawing) => ({ width_mm: drawing.width, height_mm: drawing.height, drawing });
const onePage = (items: DrawItem[], width?: number, height?: number) =>
  pdfOf([pageOf(drawingOf(items, width, height))], INFO, LETTERS);

describe('the file', () => {
  it('is the same byte for byte every time', async () => {
    const items = () => [
      layer('one', [text({ x: 5, y: 5 }, 'äöü ½ — “x”'), line({ x: 0, y: 0 }, { x: 9, y: 9 })]),
    ];
    const [a, b] = [await onePage(items()), await onePage(items())];
    expect(Buffer.compare(Buffer.from(a), Buffer.from(b))).toBe(0);
  });

  it('changes its identifier with its content', async () => {
    const id = async (x: number) =>
      await PDFDocument.load(await onePage([line({ x, y: 0 }, { x: 9, y: 9 })]));
    const [a, b] = [await id(1), await id(2)];
    expect(String(a.context.trailerInfo.ID)).not.toBe(String(b.context.trailerInfo.ID));
  });

  it('holds title, author and the date as given', async () => {
    const document = await PDFDocument.load(await onePage([]), { updateMetadata: false });
    expect(document.getTitle()).toBe('Title');
    expect(document.getAuthor()).toBe('Somebody');
    expect(document.getSubject()).toBe('as given');
    expect(document.getCreationDate()).toBeUndefined();
  });

  it('keeps layers as optional content that a second reader lists', async () => {
    const inner = line({ x: 0, y: 0 }, { x: 9, y: 9 });
    const bytes = await onePage([layer('cut', [inner]), layer('guides', [inner]), layer('cut', [inner])]);
    const groups = (await PDFDocument.load(bytes)).getOptionalContentGroups();
    expect(groups.map((g) => g.name)).toEqual(['cut', 'guides']);
  });

  it('writes any text at all, replacing visibly what the typeface lacks', async () => {
    const bytes = await onePage([text({ x: 5, y: 5 }, '漢字 😀 \u0000 ≤ ⅜ Ł')]);
    expect(bytes.length).toBeGreaterThan(500);
  });
});

describe.skipIf(!printerTools)('printed', () => {
  it('measures a 50 mm square within one pixel at 300 dpi', async () => {
    const black = { stroke: '#000000', width: 0.2 };
    const raster = rasterOf(await onePage([rectangle({ x: 20, y: 15, w: 50, h: 50 }, black)]), 300);
    const row = Math.round(((80 - 40) / 25.4) * 300);
    const dark = Array.from({ length: raster.width }, (_, x) => x).filter((x) => raster.at(x, row) < 160);
    const column = Math.round((45 / 25.4) * 300);
    const darkY = Array.from({ length: raster.height }, (_, y) => y).filter(
      (y) => raster.at(column, y) < 160,
    );
    const middle = (pixels: number[]) => {
      const half = (pixels[0]! + pixels[pixels.length - 1]!) / 2;
      const low = pixels.filter((p) => p < half);
      const high = pixels.filter((p) => p >= half);
      const mean = (v: number[]) => v.reduce((a, b) => a + b, 0) / v.length;
      return mean(high) - mean(low);
    };
    expect(Math.abs(middle(dark) - (50 / 25.4) * 300)).toBeLessThanOrEqual(1);
    expect(Math.abs(middle(darkY) - (50 / 25.4) * 300)).toBeLessThanOrEqual(1);
  });

  it('fills letters as a direct raster of their outlines does, but for pixels on an edge', async () => {
    const dpi = 300;
    const height = 60;
    const { glyphs, width } = letteredLine('R8Q&', 40, { x: 8, y: 8 });
    const look = { fill: '#000000' };
    const bytes = await onePage(
      glyphs.map((g) => shape(g.path, look)),
      width + 16,
      height,
    );
    const raster = rasterOf(bytes, dpi);
    const rings = glyphs.flatMap((g) => ringsOfPath(g.path, 0.002));
    const place = (x: number, y: number): Point => ({
      x: ((x + 0.5) * 25.4) / dpi,
      y: height - ((y + 0.5) * 25.4) / dpi,
    });
    let different = 0;
    let worst = 0;
    for (let y = 0; y < raster.height; y++) {
      const inside = crossingsAt(rings, place(0, y).y);
      for (let x = 0; x < raster.width; x++) {
        const p = place(x, y);
        const direct = inside(p.x);
        if (direct === raster.at(x, y) < 128) continue;
        different++;
        worst = Math.max(worst, distanceToRings(rings, p));
      }
    }
    const pixel = 25.4 / dpi;
    expect(worst).toBeLessThanOrEqual(pixel * Math.SQRT1_2 * 1.5);
    expect(different).toBeGreaterThanOrEqual(0);
    expect(different).toBeLessThan(raster.width * raster.height * 0.01);
  });

  it('gives its text back', async () => {
    const words = ['A1 38 1/2"', '978 mm', 'Fünf Größen', 'Miter 22.5°'];
    const bytes = await onePage(words.map((w, i) => text({ x: 10, y: 10 + i * 12 }, w)));
    for (const w of words) expect(textOf(bytes)).toContain(w);
  });

  it('clips, scales, turns and moves groups in that order', async () => {
    const black = { fill: '#000000' };
    const square = rectangle({ x: 0, y: 0, w: 10, h: 10 }, black);
    // Scaled to 20 x 10, turned a quarter left to lie at x -10..0, y 0..20, moved to 50..60, 30..50.
    const items: DrawItem[] = [
      { kind: 'group', scale: { x: 2, y: 1 }, turn: 90, move: { x: 60, y: 30 }, items: [square] },
    ];
    const raster = rasterOf(await onePage(items), 254);
    const dark = (x: number, y: number) => raster.at(Math.round(x * 10), Math.round((80 - y) * 10)) < 128;
    expect([dark(55, 31), dark(55, 49), dark(51, 40), dark(59, 40)]).toEqual([true, true, true, true]);
    expect([dark(55, 29), dark(55, 51), dark(49, 40), dark(61, 40)]).toEqual([false, false, false, false]);
  });
});

/** Inside test along one line by the nonzero rule: winding at x. */
function crossingsAt(rings: readonly (readonly Point[])[], y: number): (x: number) => boolean {
  const crossings: { x: number; up: number }[] = [];
  for (const ring of rings) {
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length]!;
      if (p.y > y === q.y > y) return;
      crossings.push({ x: p.x + ((y - p.y) / (q.y - p.y)) * (q.x - p.x), up: q.y > p.y ? 1 : -1 });
    });
  }
  return (x) => crossings.reduce((sum, c) => sum + (c.x > x ? c.up : 0), 0) !== 0;
}

function distanceToRings(rings: readonly (readonly Point[])[], p: Point): number {
  let least = Number.POSITIVE_INFINITY;
  for (const ring of rings) {
    ring.forEach((a, i) => {
      least = Math.min(least, distanceToSegment(p, a, ring[(i + 1) % ring.length]!));
    });
  }
  return least;
}
