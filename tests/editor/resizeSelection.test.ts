import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newDesign } from '../../src/design/defaults.ts';
import type { Axis, Design, Rule } from '../../src/design/schema.ts';
import { preview, startState } from '../../src/design/state.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { arrangingOf, editsToArrange } from '../../src/editor/edit/arrange.ts';
import { editsToResize } from '../../src/editor/edit/resizeSelection.ts';
import { commit } from '../../src/editor/state/commit.ts';
import type { EditorStore } from '../../src/editor/state/store.ts';
import type { Box } from '../../src/geometry/shape.ts';
import { divide } from '../../src/layout/arrange/divide.ts';
import { stretchTo } from '../../src/layout/arrange/stretch.ts';
import { runs } from '../runs.ts';
import { benchOf, perform } from './intent/hand.ts';
import { layoutOf } from './laid.ts';

const empty = newDesign();
/** What the solver may be off by, in millimeters. */
const NEAR = 1e-3;

const drawn = (
  store: EditorStore,
  tool: string,
  from: readonly [number, number],
  to: readonly [number, number],
) =>
  perform(
    store,
    { tool, from_mm: from, to_mm: to, pixels_per_mm: 0.5, jitter_px: [0, 0, 0, 0], modifier: 'none' },
    new Map(),
  );

/** A space divided into bays between two places of the face. */
function divided(store: EditorStore, columns: number, rows: number, framed: boolean): void {
  const { shown } = store.getState().edit;
  const face = { of: 'face' } as const;
  const made = divide(arrangingOf(shown), {
    left: { ...face, side: 'low' },
    right: { ...face, side: 'high' },
    bottom: { ...face, side: 'low' },
    top: { ...face, side: 'high' },
    columns,
    rows,
    framed,
    through: 'up',
    upright: 'pine-1x3',
    across: 'pine-1x2',
    names: { upright: 'stile', across: 'rail' },
    like: {
      on: 'face',
      finish: null,
      fixing: { how: 'brads', glue: true },
      onEdge: false,
      ends: { start: { cut: 'square' }, end: { cut: 'square' } },
      fit: false,
      locked: false,
    },
  });
  commit(store, editsToArrange(shown, made), 'divide');
}

const boxesIn = (design: Design): ReadonlyMap<string, Box> => layoutOf(design).boxes;
const low = (box: Box, axis: Axis) => (axis === 'x' ? box.x : box.y);
const high = (box: Box, axis: Axis) => (axis === 'x' ? box.x + box.w : box.y + box.h);
const other = (axis: Axis): Axis => (axis === 'x' ? 'y' : 'x');

function extent(boxes: readonly Box[], axis: Axis) {
  return {
    low: Math.min(...boxes.map((b) => low(b, axis))),
    high: Math.max(...boxes.map((b) => high(b, axis))),
  };
}

/** Pairs of which one begins along an axis where the other ends, beside each other. */
function touching(
  boxes: ReadonlyMap<string, Box>,
  ids: readonly string[],
): (readonly [string, string, Axis])[] {
  return ids.flatMap((a) =>
    ids.flatMap((b) =>
      (['x', 'y'] as const).flatMap((axis) => {
        const [p, q] = [boxes.get(a), boxes.get(b)];
        if (!p || !q || a === b || Math.abs(high(p, axis) - low(q, axis)) > NEAR) return [];
        const across = other(axis);
        const shared = Math.min(high(p, across), high(q, across)) - Math.max(low(p, across), low(q, across));
        return shared > 1 ? [[a, b, axis] as const] : [];
      }),
    ),
  );
}

/** The gaps of an even rule between its parts, by their boxes. */
function gapsOf(rule: Extract<Rule, { kind: 'even' }>, boxes: ReadonlyMap<string, Box>): number[] {
  const row = rule.parts
    .flatMap((id) => boxes.get(id) ?? [])
    .sort((a, b) => low(a, rule.axis) - low(b, rule.axis));
  return row.slice(1).map((box, i) => low(box, rule.axis) - high(row[i] ?? box, rule.axis));
}

describe('a stretch', () => {
  it('keeps what is rigid, and gives all else in one ratio', () => {
    // 100 of which 20 and 10 keep their length: 70 that give become 140.
    const to = stretchTo(
      { low: 0, high: 100 },
      [
        { low: 0, high: 20 },
        { low: 50, high: 60 },
      ],
      170,
      'low',
    );
    expect([0, 20, 35, 50, 60, 100].map((at) => to?.(at))).toEqual([0, 20, 50, 80, 90, 170]);
    const up = stretchTo({ low: 0, high: 100 }, [{ low: 0, high: 20 }], 60, 'high');
    expect([0, 20, 60, 100].map((at) => up?.(at))).toEqual([40, 60, 80, 100]);
    expect(stretchTo({ low: 0, high: 20 }, [{ low: -5, high: 30 }], 60, 'low')).toBeNull();
  });
});

describe('several parts sized together', () => {
  const face = fc.record({
    columns: fc.integer({ min: 1, max: 4 }),
    rows: fc.integer({ min: 1, max: 3 }),
    framed: fc.boolean(),
    panels: fc.array(
      fc.tuple(
        fc.constantFrom('panel', 'frame', 'strip', 'fitting'),
        fc.integer({ min: 0, max: 700 }),
        fc.integer({ min: 0, max: 1500 }),
        fc.integer({ min: 120, max: 500 }),
        fc.integer({ min: 120, max: 700 }),
      ),
      { minLength: 1, maxLength: 4 },
    ),
    chosen: fc.array(fc.nat(40), { minLength: 2, maxLength: 12 }),
    axis: fc.constantFrom('x', 'y'),
    keep: fc.constantFrom('low', 'high'),
    by: fc.integer({ min: 6, max: 16 }).map((n) => n / 10),
  });

  it('touch as before, keep every rule that is not told as let go, and have the size that was asked for', () => {
    let sized = 0;
    let lost = 0;
    fc.assert(
      fc.property(face, ({ columns, rows, framed, panels, chosen, axis, keep, by }) => {
        const store = benchOf(empty);
        divided(store, columns, rows, framed);
        for (const [tool, x, y, w, h] of panels) drawn(store, tool, [x, y], [x + w, y + h]);
        const { design } = store.getState().edit;
        const ids = [...new Set(chosen.map((n) => design.parts[n % design.parts.length]?.id ?? ''))];
        if (ids.length < 2) return;
        const before = boxesIn(design);
        const holding = new Set(layoutOf(design).rules.flatMap(({ id, holds }) => (holds ? [id] : [])));
        const boxes = ids.flatMap((id) => before.get(id) ?? []);
        const was = extent(boxes, axis);
        const size = (was.high - was.low) * by;
        const resized = editsToResize(shownFrom(design), ids, [{ axis, size, keep }]);
        if (!resized) return;
        const there = preview(startState(design), resized.edits);
        const then = layoutOf(there, new Set(ids));
        const now = extent(
          ids.flatMap((id) => then.boxes.get(id) ?? []),
          axis,
        );
        expect(Math.abs(now[keep] - was[keep])).toBeLessThan(NEAR);
        // Less than what is rigid in them they cannot have.
        expect(now.high - now.low).toBeGreaterThan(size - NEAR);
        if (by >= 1) expect(now.high - now.low).toBeCloseTo(size, 3);
        const gone = new Set(resized.letGo.map(({ id }) => id));
        lost += gone.size;
        sized++;
        for (const rule of design.rules) {
          if (gone.has(rule.id) || !holding.has(rule.id)) continue;
          expect(
            there.rules.some(({ id }) => id === rule.id),
            rule.id,
          ).toBe(true);
          expect(then.rules.find(({ id }) => id === rule.id)?.holds, rule.id).toBe(true);
          if (rule.kind !== 'even') continue;
          const gaps = gapsOf(rule, then.boxes);
          for (const gap of gaps) expect(gap).toBeCloseTo(gaps[0] ?? gap, 3);
        }
        for (const [a, b, along] of touching(before, ids)) {
          const [p, q] = [then.boxes.get(a), then.boxes.get(b)];
          if (p && q) expect(Math.abs(high(p, along) - low(q, along)), `${a} and ${b}`).toBeLessThan(NEAR);
        }
      }),
      { numRuns: runs(2) },
    );
    expect(sized).toBeGreaterThan(0);
    process.stdout.write(`Sized ${sized} selections; ${lost} rules let go.\n`);
  });
});
