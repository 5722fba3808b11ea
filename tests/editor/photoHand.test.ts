import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newDesign } from '../../src/design/defaults.ts';
import type { Touch } from '../../src/editor/gesture/gesture.ts';
import { startPhoto } from '../../src/editor/gesture/photo.ts';
import { fitToBox, fitToFace, type Shown } from '../../src/editor/state/fit.ts';
import type { Photo, PhotoMode } from '../../src/editor/state/photo.ts';
import { createEditorStore, toFace, toScreen } from '../../src/editor/state/store.ts';
import type { Point } from '../../src/geometry/shape.ts';
import { faceFor } from './laid.ts';

const VIEW = { scale: 0.5, x: 80, y: 900 };
const SIZE = { width: 600, height: 400 };
/** 2 mm a pixel, with its lower left corner at (100, 50) on the face. */
const PLACING: Photo['placing'] = {
  at: { x: 100, y: 50 },
  scale: 2,
  marks: [
    { x: 100, y: 200 },
    { x: 500, y: 200 },
  ],
  quad: [
    { x: 0, y: 400 },
    { x: 600, y: 400 },
    { x: 600, y: 0 },
    { x: 0, y: 0 },
  ],
  straight: false,
};
/** Where a point of the picture lies on the face: pictures count down, the face up. */
const onFace = ({ x, y }: Point): Point => ({ x: 100 + 2 * x, y: 50 + 2 * (400 - y) });

function bench(mode: PhotoMode, changed: Partial<Photo> = {}) {
  const store = createEditorStore(newDesign(), 'light');
  const photo = { image: SIZE, placing: PLACING, opacity: 1, shown: true, locked: false, ...changed };
  store.setState({ photo: photo as unknown as Photo, photoMode: mode, view: VIEW });
  return { store, placing: () => store.getState().photo?.placing };
}

const touchAt = (face: Point): Touch => ({
  ...{ px: toScreen(VIEW, face), face, shift: false, free: false, touch: false },
});

describe('a photo in the hand', () => {
  const way = fc.record({ x: fc.integer({ min: -900, max: 900 }), y: fc.integer({ min: -900, max: 900 }) });
  const plus = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });

  it('goes the way of the hand, and back where that lets go of it by Escape', () => {
    fc.assert(
      fc.property(way, (by) => {
        const { store, placing } = bench('move');
        const from = { x: 400, y: 300 };
        const gesture = startPhoto(store, touchAt(from));
        gesture?.move(touchAt(plus(from, by)));
        expect(placing()).toEqual({ ...PLACING, at: plus(PLACING.at, by) });
        gesture?.cancel();
        expect(placing()).toEqual(PLACING);
      }),
    );
  });

  it.each([
    ['scale', PLACING.marks],
    ['straighten', PLACING.quad],
  ] as const)(
    'a point pulled to %s it follows the hand, stays in the picture, and moves nothing else',
    (mode, points) => {
      fc.assert(
        fc.property(fc.nat(points.length - 1), way, (index, by) => {
          const { store, placing } = bench(mode);
          const point = points[index] as Point;
          const from = onFace(point);
          startPhoto(store, touchAt(from))?.move(touchAt(plus(from, by)));
          const now = mode === 'scale' ? placing()?.marks : placing()?.quad;
          const pulled = {
            x: expect.closeTo(Math.min(600, Math.max(0, point.x + by.x / 2)), 6),
            y: expect.closeTo(Math.min(400, Math.max(0, point.y - by.y / 2)), 6),
          };
          expect(now).toEqual(points.map((p, i) => (i === index ? pulled : p)));
          expect(placing()?.at).toEqual(PLACING.at);
        }),
      );
    },
  );

  it('is let alone while it rests, where it is locked, and where there is none', () => {
    const from = touchAt({ x: 400, y: 300 });
    expect(startPhoto(bench('rest').store, from)).toBeNull();
    expect(startPhoto(bench('move', { locked: true }).store, from)).toBeNull();
    expect(startPhoto(createEditorStore(newDesign(), 'light'), from)).toBeNull();
  });
});

describe('the fitted view', () => {
  const { bed } = newDesign();
  const face = faceFor(bed);
  const side = fc.integer({ min: 280, max: 2400 });

  it('shows the whole face on any window, and a box whole, clear of what covers a side', () => {
    fc.assert(
      fc.property(side, side, fc.constantFrom('left', 'top', 'none'), (width, height, where) => {
        const tray = where === 'left' ? { x: 0, y: 0, w: 48, h: height } : { x: 0, y: 0, w: width, h: 48 };
        const page: Shown = { width, height, covers: where === 'none' ? [] : [tray] };
        const box = { x: -300, y: 200, w: 4000, h: 900 };
        for (const [view, area] of [
          [fitToFace(face, bed, page), face.box],
          [fitToBox(box, page), box],
        ] as const) {
          const low = toFace(view, { x: where === 'left' ? 48 : 0, y: height });
          const high = toFace(view, { x: width, y: where === 'top' ? 48 : 0 });
          expect(low.x).toBeLessThanOrEqual(area.x);
          expect(low.y).toBeLessThanOrEqual(area.y);
          expect(high.x).toBeGreaterThanOrEqual(area.x + area.w);
          expect(high.y).toBeGreaterThanOrEqual(area.y + area.h);
        }
      }),
    );
  });
});
