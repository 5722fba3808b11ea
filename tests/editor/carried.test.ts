import { afterAll, describe, expect, it, vi } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { carrier } from '../../src/editor/drawing/carried.ts';
import { type Painted, type PartsLook, paintParts } from '../../src/editor/drawing/paintParts.ts';
import type { Pen, Picture } from '../../src/editor/drawing/pen.ts';

import { chanceOf } from '../chance.ts';
import { runs } from '../runs.ts';
import { type Mark, NAMED, recorder } from './recorder.ts';

afterAll(() => vi.unstubAllGlobals());

const VIEW = { scale: 0.37, x: 60, y: 1000 };
const PAGE = { width: 1200, height: 1100 };
const LOOK: PartsLook = {
  ...PAGE,
  view: VIEW,
  scale: VIEW.scale,
  look: 'color',
  palette: NAMED,
  light: { x: 0.5, y: -0.5 },
  lamp: { azimuth: 120, altitude: 40 },
  appearance: () => ({ fill: 'wood', sheen: null, grained: true, molding: null }),
  gleamsOn: () => () => null,
  signOf: () => undefined,
  imageOf: () => undefined,
  letterOf: () => ({ fill: 'ink', sheen: null }),
  shadows: null,
};
const GROUND: Picture = { canvas: PAGE as HTMLCanvasElement, ratio: 1 };

/** A fill of forty boards and a strip beside it, whose pieces of the fill come to lie at `at`. */
function laidAt(at: { readonly x: number; readonly y: number; readonly w?: number }) {
  const fill = {
    ...newPart('fill', { id: 'f', name: 'f', box: { w: 500, h: 304.8, ...at }, stock: 'pine-1x2' }),
    pattern: { form: 'courses', length: 100, bond: 'stacked' } as const,
    angle: 0,
    start: 'low' as const,
  };
  const box = { x: 20, y: 900, w: 300, h: 38.1 };
  const strip = newPart('strip', { id: 's', name: 's', box, stock: 'pine-1x2' });
  return shownFrom({ ...newDesign(), parts: [fill, strip] }).layout.parts;
}

/** Pictures are recorded as they are made, one list of marks each. */
function recordedCarrier() {
  const made: Mark[][] = [];
  const carry = carrier((size, ratio, draw: (pen: Pen) => void): Picture => {
    const sheet = recorder();
    draw(sheet.pen);
    made.push(sheet.marks);
    return { canvas: { width: size.width * ratio, height: size.height * ratio } as HTMLCanvasElement, ratio };
  });
  return { made, carry };
}

const wood = (marks: readonly Mark[]) => marks.filter(({ color }) => color === 'wood');
const left = (mark: Mark | undefined): number => Math.min(...(mark?.paths.flat() ?? []).map((p) => p.x));
const top = (mark: Mark | undefined): number => Math.min(...(mark?.paths.flat() ?? []).map((p) => p.y));

describe('what is carried', () => {
  it('is drawn once, and its picture goes along to the nearest pixel of the screen', () => {
    const chance = chanceOf(8);
    for (let run = 0; run < runs(3); run++) {
      const { made, carry } = recordedCarrier();
      const ratio = run % 2 === 0 ? 1 : 2;
      let at = { x: 100, y: 100 };
      expect(carry(laidAt(at), LOOK, ratio, true), 'nothing has moved yet').toEqual([]);
      const first = carry(laidAt(at), LOOK, ratio, true);
      expect(first.length).toBeLessThanOrEqual(1);
      for (let step = 0; step < 4; step++) {
        at = { x: at.x + 50 * chance(), y: at.y + 50 * chance() };
        const parts = laidAt(at);
        const [carried, ...others] = carry(parts, LOOK, ratio, true);
        expect(others).toEqual([]);
        expect(made).toHaveLength(1);
        expect(wood(made[0] ?? [])).toHaveLength(carried?.count ?? 0);
        // Where the picture has the first board, it lies within half a pixel of where it would be drawn.
        const sheet = recorder();
        paintParts(sheet.pen, painted(parts), null);
        const drawn = wood(sheet.marks)[carried?.first ?? 0];
        const kept = wood(made[0] ?? [])[0];
        const pixel = 0.5 / ratio + 1e-6;
        expect(Math.abs((carried?.box.x ?? 0) + left(kept) - left(drawn))).toBeLessThanOrEqual(pixel);
        expect(Math.abs((carried?.box.y ?? 0) + top(kept) - top(drawn))).toBeLessThanOrEqual(pixel);
        expect((carried?.box.x ?? 0) * ratio).toBeCloseTo(Math.round((carried?.box.x ?? 0) * ratio), 6);
      }
    }
  });

  it('stands for its boards, between what lies under and over them, and is drawn board by board when let go', () => {
    const { carry } = recordedCarrier();
    carry(laidAt({ x: 100, y: 100 }), LOOK, 1, true);
    const parts = laidAt({ x: 130, y: 120 });
    const carried = carry(parts, LOOK, 1, true);
    const sheet = recorder();
    paintParts(sheet.pen, painted(parts, carried), null);
    expect(wood(sheet.marks)).toHaveLength(1);
    const { x = 0, y = 0, w = 0, h = 0 } = carried[0]?.box ?? {};
    const corners = sheet.pictures.find(({ image }) => image === carried[0]?.picture.canvas)?.corners;
    const [low, high] = [corners?.[0], corners?.[2]];
    expect([low?.x, low?.y, high?.x, high?.y].map((v) => (v ?? 0).toFixed(6))).toEqual(
      [x, y, x + w, y + h].map((v) => v.toFixed(6)),
    );
    expect(carry(parts, LOOK, 1, false)).toEqual([]);
    const after = recorder();
    paintParts(after.pen, painted(parts), painted(parts, carried));
    expect(wood(after.marks)).toHaveLength(parts.length);
  });

  it('is no picture where boards change, or of few', () => {
    const { made, carry } = recordedCarrier();
    carry(laidAt({ x: 100, y: 100 }), LOOK, 1, true);
    for (const w of [520, 540, 560]) expect(carry(laidAt({ x: 100, y: 100, w }), LOOK, 1, true)).toEqual([]);
    expect(made).toEqual([]);
  });
});

const painted = (parts: Painted['parts'], carried: Painted['carried'] = []): Painted => ({
  ...{ look: LOOK, parts, carried, keepClears: [], ground: GROUND, above: [] },
});
