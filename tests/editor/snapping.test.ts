import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Run } from '../../src/design/schema.ts';
import { freshDocument } from '../../src/editor/document/document.ts';
import { boundsIn, shownFrom } from '../../src/editor/document/shown.ts';
import { groundOf, snapInHand } from '../../src/editor/gesture/snapping.ts';
import { createEditorStore } from '../../src/editor/state/store.ts';
import { inches } from '../../src/measure/units.ts';

const STOCK = 'pine-1x3';
/** Dressed width of a 1 x 3 (PS 20). */
const WIDTH = inches(2.5);
const FRAME = { x: 400, y: 600, w: 300, h: 400 };

function designWith(side: Run['side']): Design {
  const frame = newPart('run', { id: 'frame', name: 'Frame', box: FRAME, stock: STOCK });
  const panel = newPart('panel', { id: 'panel', name: 'Panel', box: { x: 100, y: 700, w: 120, h: 90 } });
  return { ...newDesign(), parts: [{ ...frame, side }, panel] };
}

function snapOf(design: Design, id: string, box: typeof FRAME) {
  const store = createEditorStore(design, 'light');
  store.setState({ edit: freshDocument(design), view: { scale: 1, x: 0, y: 0 } });
  const grip = { x: 'move', y: null } as const;
  const parts = design.parts.filter((part) => part.id === id);
  const snap = snapInHand(store.getState(), design, groundOf(shownFrom(design)), {
    moving: [{ id, box }],
    grip,
    parts,
  });
  return { ...snap, dx: (snap.boxes.get(id)?.x ?? Number.NaN) - box.x };
}

describe('snapping to a frame', () => {
  it('takes the visible outside where the stock lies outside of the path', () => {
    const design = designWith('outside');
    expect(boundsIn(shownFrom(design), 'frame')?.box.x).toBeCloseTo(FRAME.x - WIDTH, 6);
    // Its right edge is 3 mm short of the frame's visible left edge, 66.5 mm short of its path.
    const snap = snapOf(design, 'panel', { x: FRAME.x - WIDTH - 3 - 120, y: 700, w: 120, h: 90 });
    expect(snap.dx).toBeCloseTo(3, 6);
    expect(snap.rules).toContainEqual(
      expect.objectContaining({ kind: 'set', from: expect.objectContaining({ of: 'frame', side: 'low' }) }),
    );
  });

  it('takes the path where the stock lies inside of it', () => {
    const snap = snapOf(designWith('inside'), 'panel', { x: FRAME.x - 3 - 120, y: 700, w: 120, h: 90 });
    expect(snap.dx).toBeCloseTo(3, 6);
  });

  it('carries a frame by its visible outside', () => {
    const design = designWith('outside');
    // The panel's right edge is at 220; the frame's stock begins one width left of its box.
    const snap = snapOf(design, 'frame', { ...FRAME, x: 220 + WIDTH + 2 });
    expect(snap.dx).toBeCloseTo(-2, 6);
  });
});

describe('snapping to the members of an array', () => {
  const row = newPart('array', {
    id: 'row',
    name: 'Row',
    box: { x: 200, y: 300, w: 500, h: 300 },
    stock: STOCK,
  });
  const panel = newPart('panel', { id: 'panel', name: 'Panel', box: { x: 0, y: 320, w: 90, h: 60 } });
  // Five of 63.5 in 500 leave six gaps of 182.5 / 6; the second one begins at two gaps and a width.
  const second = 200 + (2 * (500 - 5 * WIDTH)) / 6 + WIDTH;

  it('names the member whose edge is met, and holds it', () => {
    const design = { ...newDesign(), parts: [row, panel] };
    const snap = snapOf(design, 'panel', { x: second + 0.5, y: 650, w: 90, h: 60 });
    expect(snap.dx).toBeCloseTo(-0.5, 6);
    expect(snap.rules).toEqual([
      {
        kind: 'set',
        axis: 'x',
        edge: { of: 'panel', side: 'low' },
        from: { of: 'row[1,0]', side: 'low' },
        distance: 0,
      },
    ]);
    const rule = { ...snap.rules[0], id: 'held' } as Design['rules'][number];
    const held = shownFrom({ ...design, rules: [rule] }).layout;
    expect(held.rules[0]?.holds).toBe(true);
    expect(held.boxes.get('panel')?.x).toBeCloseTo(second, 6);
  });

  it('centers between two members, and never asks a member to move', () => {
    const narrow = { ...panel, box: { x: 0, y: 400, w: 10, h: 60 } };
    const design = { ...newDesign(), parts: [row, narrow] };
    const gap = (500 - 5 * WIDTH) / 6;
    const middle = second - gap / 2;
    const snap = snapOf(design, 'panel', { x: middle - 5 + 1, y: 400, w: 10, h: 60 });
    expect(snap.dx).toBeCloseTo(-1, 6);
    expect(snap.rules).toEqual([
      {
        kind: 'center',
        axis: 'x',
        parts: ['panel'],
        low: { of: 'row[0,0]', side: 'high' },
        high: { of: 'row[1,0]', side: 'low' },
      },
    ]);
  });

  it('offers no members of an array that is far away', () => {
    const design = { ...newDesign(), parts: [row, panel] };
    const far = snapOf(design, 'panel', { x: second + 2, y: 1200, w: 90, h: 60 });
    expect(JSON.stringify(far.rules)).not.toContain('row[');
  });
});
