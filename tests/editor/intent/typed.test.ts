import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newDesign } from '../../../src/design/defaults.ts';
import type { Design } from '../../../src/design/schema.ts';
import { startDraw } from '../../../src/editor/gesture/draw.ts';
import type { Touch } from '../../../src/editor/gesture/gesture.ts';
import { type EditorStore, toScreen } from '../../../src/editor/state/store.ts';
import type { DrawnKind } from '../../../src/editor/state/tools.ts';
import type { Box } from '../../../src/geometry/shape.ts';
import { runs } from '../../runs.ts';
import { layoutOf } from '../laid.ts';
import { benchOf } from './hand.ts';

type Spot = readonly [number, number];

const view = { scale: 0.5, x: 0, y: 0 };
const touchAt = ([x, y]: Spot): Touch => {
  const face = { x, y };
  return { px: toScreen(view, face), face, shift: false, free: false, touch: false };
};

/** Draws from here to there; `typed` in millimeters before the hand lets go, null for what the hand drew. */
function draw(store: EditorStore, kind: DrawnKind, from: Spot, to: Spot, typed: number | null): string {
  store.setState({ view });
  const gesture = startDraw(store, touchAt(from), kind);
  for (let i = 1; i <= 4; i++)
    gesture.move(touchAt([from[0] + ((to[0] - from[0]) * i) / 4, from[1] + ((to[1] - from[1]) * i) / 4]));
  if (typed !== null) gesture.typed?.(typed);
  gesture.end(touchAt(to));
  return store.getState().edit.selection[0] ?? '';
}

const boxIn = (design: Design, id: string): Box => {
  const box = layoutOf(design).boxes.get(id);
  if (!box) throw new Error(`${id} is not laid`);
  return box;
};

/** What the frame boards and cleats leave of a recessed face, from the measures of the bed. */
function field({ bed }: Design) {
  const by = bed.frame.thickness + bed.cleats.width;
  const [w, h] = [bed.mattress.width + bed.allowance.width, bed.mattress.length + bed.allowance.length];
  const out = 2 * bed.frame.thickness;
  return { l: by, b: by, r: w + out - by, t: h + out - by };
}

const onBed = (design: Design, by: number): Design => ({
  ...design,
  bed: {
    ...design.bed,
    mattress: {
      ...design.bed.mattress,
      width: design.bed.mattress.width + by,
      length: design.bed.mattress.length + by,
    },
  },
});

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('a measure typed while a part is drawn', () => {
  it('keeps the edge that touched where the hand began, or the one it touched at its end, and what held across', () => {
    fc.assert(
      fc.property(
        fc.record({
          // Which edge of the field the hand begins at, or ends at; a millimeter is half a pixel.
          begins: fc.boolean(),
          fromHigh: fc.boolean(),
          miss: mm(-5, 5),
          pulled: mm(330, 500),
          typed: mm(100, 700),
          by: fc.constantFrom(9.525, -25.4, 50.8),
        }),
        ({ begins, fromHigh, miss, pulled, typed, by }) => {
          const plain = newDesign();
          const { l, r, b } = field(plain);
          const edge = (fromHigh ? r : l) + miss;
          const away = edge + (fromHigh ? -pulled : pulled);
          const store = benchOf({ ...plain, measure: { ...plain.measure, unit: 'mm' } });
          // Up from the bottom of the field: that touches all the while.
          const [from, to]: [Spot, Spot] = begins
            ? [
                [edge, b + 2],
                [away, b + 250],
              ]
            : [
                [away, b + 2],
                [edge, b + 250],
              ];
          const id = draw(store, 'panel', from, to, typed);
          const { design } = store.getState().edit;
          for (const one of [design, onBed(design, by)]) {
            const box = boxIn(one, id);
            const now = field(one);
            expect(box.w).toBeCloseTo(typed, 6);
            expect(box.y).toBeCloseTo(now.b, 6);
            if (fromHigh) expect(box.x + box.w).toBeCloseTo(now.r, 6);
            else expect(box.x).toBeCloseTo(now.l, 6);
          }
        },
      ),
      { numRuns: runs(60), seed: 17 },
    );
  });

  it('stays in the middle where the part was centered', () => {
    const plain = newDesign();
    const { l, r } = field(plain);
    const store = benchOf(plain);
    const id = draw(store, 'panel', [l + 200, 700], [r - 202, 900], 300);
    const wider = onBed(store.getState().edit.design, 50.8);
    const box = boxIn(wider, id);
    expect(box.w).toBeCloseTo(300, 6);
    expect(box.x + box.w / 2).toBeCloseTo((field(wider).l + field(wider).r) / 2, 6);
  });

  it('gives up a margin all around along that side only', () => {
    const plain = newDesign();
    const { l, r, b, t } = field(plain);
    const store = benchOf(plain);
    const margin = 76.2;
    const id = draw(store, 'run', [l + margin, b + margin], [r - margin, t - margin], 1500);
    const wider = onBed(store.getState().edit.design, 50.8);
    const now = field(wider);
    const box = boxIn(wider, id);
    expect(box.h).toBeCloseTo(1500, 6);
    expect([box.x - now.l, now.r - box.x - box.w].map((one) => one.toFixed(6))).toEqual(
      Array(2).fill(margin.toFixed(6)),
    );
    expect(box.y + box.h / 2).toBeCloseTo((now.b + now.t) / 2, 6);
  });
});

it('a click sets a part of usual size down as a hand does that carries it there', () => {
  const plain = newDesign();
  const { r, b } = field(plain);
  const store = benchOf(plain);
  // Of the table, a cup pull of 3 3/4 by 1 5/8 in is nearest to 4 by 2: its right edge is 3 mm off the field's, its lower one 4.
  const at: Spot = [r - 95.25 / 2 - 3, b + 41.275 / 2 + 4];
  const id = draw(store, 'fitting', at, at, null);
  const wider = onBed(store.getState().edit.design, 50.8);
  const box = boxIn(wider, id);
  expect([box.w, box.h]).toEqual([95.25, 41.275]);
  expect(box.x + box.w).toBeCloseTo(field(wider).r, 6);
  expect(box.y).toBeCloseTo(b, 6);
});
