import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Run } from '../../src/design/schema.ts';
import { startState } from '../../src/design/state.ts';
import { boundsFor, layoutOf } from '../../src/editor/state/derive.ts';
import { createEditorStore } from '../../src/editor/state/store.ts';
import { snapInHand } from '../../src/editor/tool/snapping.ts';
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
  store.setState({ edit: startState(design), view: { scale: 1, x: 0, y: 0 } });
  const grip = { x: 'move', y: null } as const;
  return snapInHand(store.getState(), layoutOf(design), { moving: [{ id, box }], grip });
}

describe('snapping to a frame', () => {
  it('takes the visible outside where the stock lies outside of the path', () => {
    const design = designWith('outside');
    expect(boundsFor(layoutOf(design)).get('frame')?.box.x).toBeCloseTo(FRAME.x - WIDTH, 6);
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
