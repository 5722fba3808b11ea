import { PDFDocument } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { inches } from '../../src/measure/units.ts';
import { dxfOf } from '../../src/output/dxf/dxf.ts';
import { pdfOf } from '../../src/output/pdf/pdf.ts';
import { svgOf } from '../../src/output/svg/svg.ts';
import { pagesAlong } from '../../src/patterns/cells.ts';
import { tile } from '../../src/patterns/tile.ts';
import { fullOfInk, PAPERS, setupOf } from '../patterns/setup.ts';

// Values of check-values.md: section 3 (paper and tiles) and section 14 (drawing and printing units).

describe('paper sizes in points', () => {
  it.each([
    ['letter', 612, 792],
    ['legal', 612, 1008],
    ['tabloid', 792, 1224],
    ['a4', 595.28, 841.89],
    ['a3', 841.89, 1190.55],
    ['a2', 1190.55, 1683.78],
  ] as const)('%s is %f by %f points (ISO 216, ANSI/ASME Y14.1)', async (name, w, h) => {
    const { width, height } = PAPERS[name];
    const drawing = fullOfInk(10, 10);
    const bytes = await pdfOf([{ width_mm: width, height_mm: height, drawing }], { title: '', date: '' });
    const page = (await PDFDocument.load(bytes)).getPage(0);
    expect(page.getWidth()).toBeCloseTo(w, 2);
    expect(page.getHeight()).toBeCloseTo(h, 2);
  });
});

describe('tiling formula, Letter upright, 0.5 in margins and overlap (printable 7.5 x 10 in)', () => {
  it.each([
    [60, 80, 9, 9],
    [36, 12, 6, 2],
    [7.5, 10, 1, 1],
  ])('%f x %f in takes %i columns and %i rows', (w, h, columns, rows) => {
    expect(pagesAlong(inches(w), inches(7.5), inches(0.5))).toBe(columns);
    expect(pagesAlong(inches(h), inches(10), inches(0.5))).toBe(rows);
  });

  it.each([
    [60, 80, 81],
    [36, 12, 12],
    [7.5, 10, 1],
  ])('never takes more pages than the formula for %f x %f in', (w, h, most) => {
    const set = tile(fullOfInk(inches(w), inches(h)), { setup: setupOf({}), for: 'x', title: 'x' });
    expect(set?.pages.length).toBeGreaterThan(0);
    expect(set?.pages.length).toBeLessThanOrEqual(most);
  });

  it('turns the paper where that saves pages: 36 x 12 in takes 4 x 2 landscape pages, not 6 x 2', () => {
    // ceil((36 - 0.5) / 9.5) = 4 columns, ceil((12 - 0.5) / 7) = 2 rows.
    const set = tile(fullOfInk(inches(36), inches(12)), { setup: setupOf({}), for: 'x', title: 'x' });
    expect(set).toMatchObject({ turned: true, columns: 4, rows: 2 });
    expect(set?.pages).toHaveLength(8);
  });
});

describe('units of the files', () => {
  const drawing = fullOfInk(25.4, 50.8);

  it('SVG states millimeters, so that 25.4 mm are 96 px (CSS Values and Units 5.2)', () => {
    expect(svgOf(drawing)).toContain('width="25.4mm" height="50.8mm" viewBox="0 0 25.4 50.8"');
  });

  it('DXF is AC1009, the version word of R11 and R12, without $INSUNITS, which is newer', () => {
    const dxf = dxfOf(drawing);
    expect(dxf).toMatch(/\$ACADVER\n {2}1\nAC1009/);
    expect(dxf).not.toContain('$INSUNITS');
    expect(dxf.slice(0, 200)).toContain('millimeters');
  });
});
