import { describe, expect, it } from 'vitest';
import { newPart } from '../../../src/design/defaults.ts';
import { applyEdits } from '../../../src/design/edit/edit.ts';
import { editsToRemove } from '../../../src/design/removal.ts';
import type { Design, Fill } from '../../../src/design/schema.ts';
import { areaOf } from '../../../src/geometry/region.ts';
import type { Layout } from '../../../src/layout/laid.ts';
import { layOut } from '../../../src/layout/layout.ts';
import type { Stock } from '../../../src/materials/types.ts';
import { design, layingAgain, plainFace } from '../sample.ts';

const STOCKS = new Map<string, Stock>([
  [
    'board',
    { form: 'flat', id: 'board', name: 'b', material: 'pine', width: 90, thickness: 10, lengths: [] },
  ],
  [
    'sheet',
    { form: 'sheet', id: 'sheet', name: 's', material: 'mdf', thickness: 10, grain: false, sizes: [] },
  ],
]);
const box = { x: 100, y: 100, w: 800, h: 600 };
const fill = (more: Partial<Fill> = {}): Fill => ({
  ...newPart('fill', { id: 'fill', name: 'Fill', box, stock: 'board' }),
  ...more,
});
const disk = (x: number, y = 250) => ({
  ...newPart('panel', { id: 'disk', name: 'Disk', box: { x, y, w: 300, h: 300 }, stock: 'sheet' }),
  shape: { form: 'round' as const },
});
const laid = (of: Design): Layout =>
  layOut({ design: of, face: plainFace(), stocks: STOCKS, keepClears: [] });
const woodOf = ({ parts }: Layout): number =>
  parts.filter(({ kind }) => kind === 'fill').reduce((sum, { region }) => sum + areaOf(region), 0);
const codes = ({ checks }: Layout) => checks.map(({ code }) => code);

describe('a fill that ends at a part', () => {
  it('leaves its footprint free, wherever it lies, and overlaps nothing', () => {
    for (const x of [350, 420.3, 700, 850]) {
      const over = laid(design([fill(), disk(x)]));
      const round = laid(design([fill({ around: ['disk'] }), disk(x)]));
      const region = round.parts.find(({ id }) => id === 'disk')?.region ?? [];
      // What of the disk lies in the box of the fill, by its corners and a ray each millimeter.
      const right = box.x + box.w;
      let covered = 0;
      const ring = region[0]?.outer ?? [];
      for (let row = 250.5; row < 550; row++) {
        const hits = ring.flatMap((p, i) => {
          const q = ring[(i + 1) % ring.length] as typeof p;
          return p.y > row !== q.y > row ? [p.x + ((q.x - p.x) * (row - p.y)) / (q.y - p.y)] : [];
        });
        covered += Math.max(0, Math.min(right, Math.max(...hits)) - Math.min(...hits));
      }
      expect(codes(over)).toContain('part.overlap');
      expect(codes(round)).not.toContain('part.overlap');
      expect(woodOf(round)).toBeCloseTo(woodOf(over) - covered, -1.5);
    }
  });

  it('is as it was where the part lies beyond it, runs on once the part is gone, and says what is not there', () => {
    const around = fill({ around: ['disk'] });
    const far = laid(design([around, disk(1000)]));
    const plain = laid(design([fill()]));
    expect(woodOf(far)).toBeCloseTo(woodOf(plain), 6);
    const whole = design([around, disk(350)]);
    const gone = applyEdits(whole, editsToRemove(whole, ['disk']));
    if (!gone.ok) throw new Error('not removed');
    expect(gone.design.parts).toEqual([fill()]);
    const missing = laid(design([around])).checks.filter(({ code }) => code === 'end.not-met');
    expect(missing).toMatchObject([{ figures: { at: 'disk', why: 'around' } }]);
    expect(woodOf(laid(design([around])))).toBeCloseTo(woodOf(plain), 6);
  });

  it('follows step by step, whatever of the two moves, as when laid out from nothing', () => {
    const again = layingAgain();
    const steps: [number, number, number][] = [
      [350, 250, 100],
      [351, 250, 100],
      [420, 310, 100],
      [420, 310, 130],
      [1200, 310, 130],
      [700, 10, 100],
    ];
    for (const [x, y, low] of steps) {
      const parts = [{ ...fill({ around: ['disk'] }), box: { ...box, y: low } }, disk(x, y)];
      const input = { design: design(parts), face: plainFace(), stocks: STOCKS, keepClears: [] };
      expect(again(input)).toEqual(layOut(input));
    }
  });

  it('leaves nothing where the part covers all of it', () => {
    const all = { ...newPart('panel', { id: 'disk', name: 'Disk', box, stock: 'sheet' }) };
    expect(codes(laid(design([fill({ around: ['disk'] }), all])))).toContain('part.no-size');
  });
});
