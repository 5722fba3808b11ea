import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Strip } from '../../src/design/schema.ts';
import { removeSelection } from '../../src/editor/edit/selection.ts';
import { editsToType, made } from '../../src/editor/edit/typed.ts';
import { select, undoStep } from '../../src/editor/state/commit.ts';
import type { EditorStore } from '../../src/editor/state/store.ts';
import { benchOf, perform } from './intent/hand.ts';

/** An arched panel, 600 wide with a rise of 150: R = 375 about (500, 825), by the sagitta (common geometry). */
const underArch = (x: number): number => 825 + Math.sqrt(375 ** 2 - (x - 500) ** 2);

const STOP = { cut: 'stop', at: 'head' } as const;
const SQUARE = { cut: 'square' } as const;

/** A strip that stands on the arch, and one that ends at its foot from below. */
function design(): Design {
  const up = (id: string, box: Strip['box'], ends: Strip['ends']): Strip => ({
    ...newPart('strip', { id, name: id, box, stock: 'pine-1x2' }),
    lie: 'up',
    ends,
  });
  return {
    ...newDesign(),
    parts: [
      {
        ...newPart('panel', { id: 'head', name: 'Head', box: { x: 200, y: 300, w: 600, h: 900 } }),
        shape: { form: 'arched', rise: 150 },
      },
      up('rib', { x: 600, y: 1100, w: 38.1, h: 600 }, { start: STOP, end: SQUARE }),
      up('leg', { x: 300, y: 50, w: 38.1, h: 200 }, { start: SQUARE, end: STOP }),
    ],
  };
}

const partIn = (store: EditorStore, id: string): Strip => {
  const part = store.getState().edit.design.parts.find((one) => one.id === id);
  if (part?.kind !== 'strip') throw new Error(`no ${id}`);
  return part;
};
const footOf = (store: EditorStore) => store.getState().edit.shown.layout.boxes.get('rib')?.y ?? 0;

const pull = (store: EditorStore, from: number, to: number, miss: number) =>
  perform(
    store,
    {
      tool: 'resize-low-y',
      part: 'rib',
      from_mm: [619, from],
      to_mm: [619, to],
      pixels_per_mm: 0.5,
      jitter_px: [0, 0, 0, miss],
      modifier: 'none',
    },
    new Map(),
  );

describe('an end that stops', () => {
  it('is square and told where what it stopped at is deleted, in one step of undo', () => {
    const store = benchOf(design());
    select(store, ['head']);
    removeSelection(store);
    expect(partIn(store, 'rib').ends).toEqual({ start: SQUARE, end: SQUARE });
    expect(store.getState().notice?.lines).toEqual([
      'rib no longer ends at Head: it is cut square there',
      'leg no longer ends at Head: it is cut square there',
    ]);
    undoStep(store);
    expect(partIn(store, 'rib').ends.start).toEqual(STOP);
  });

  it('lets go where the hand pulls it away, and stops again where it is pulled back to the border', () => {
    const store = benchOf(design());
    const foot = underArch(638.1);
    expect(footOf(store)).toBeCloseTo(foot, 1);
    pull(store, foot, 1437, 0);
    expect(partIn(store, 'rib').ends.start).toEqual(SQUARE);
    expect(Math.abs(footOf(store) - 1437)).toBeLessThan(25);
    expect(store.getState().said.text).toContain('rib no longer ends at Head');
    pull(store, footOf(store), foot, 3);
    expect(partIn(store, 'rib').ends.start).toEqual(STOP);
    expect(footOf(store)).toBeCloseTo(foot, 1);
    const held = store
      .getState()
      .edit.design.rules.filter((rule) => rule.kind === 'set' && rule.axis === 'y');
    expect(held).toEqual([]);
    undoStep(store);
    undoStep(store);
    expect(partIn(store, 'rib').ends.start).toEqual(STOP);
  });

  it('is proposed of every batten of a row that is spread under an arch, told, and undone in one step', () => {
    const battens = [0.5, 0.7, 1].map((scale) => {
      const store = benchOf({ ...design(), parts: design().parts.slice(0, 1) });
      const id = perform(
        store,
        {
          tool: 'row',
          // Beside the crown, and well within the straight sides of the panel.
          from_mm: [260, 520],
          to_mm: [740, 1192],
          pixels_per_mm: scale,
          jitter_px: [0, 0, 0, 0],
          modifier: 'none',
        },
        new Map(),
      );
      const row = store.getState().edit.design.parts.find((part) => part.id === id);
      expect(row?.kind === 'array' && row.member.kind === 'strip' && row.member.ends).toEqual({
        start: SQUARE,
        end: STOP,
      });
      expect(store.getState().said.text).toContain('ends at Head');
      const laid = store.getState().edit.shown.layout.parts.filter(({ part }) => part === id);
      undoStep(store);
      expect(store.getState().edit.design.parts).toHaveLength(1);
      return laid;
    });
    for (const laid of battens) {
      expect(laid.length).toBeGreaterThan(2);
      // Each reaches as far as the arch does over it, at whichever of its edges stands nearer to the middle.
      for (const { box, region } of laid) {
        const inner = Math.min(Math.max(500, box.x), box.x + box.w);
        const top = Math.max(...region.flatMap(({ outer }) => outer.map(({ y }) => y)));
        expect(Math.abs(top - underArch(inner))).toBeLessThan(0.1);
      }
    }
  });

  it('lets go of the side that a typed length pulls, and of no other', () => {
    const { shown } = benchOf(design()).getState().edit;
    const endsOnce = (id: string, h: number) => {
      const box = shown.layout.boxes.get(id);
      if (!box) throw new Error(`no ${id}`);
      const now = made(shown.design, editsToType(shown, id, box, { h }).edits).parts.find((p) => p.id === id);
      return now?.kind === 'strip' ? now.ends : null;
    };
    expect(endsOnce('leg', 120)).toEqual({ start: SQUARE, end: SQUARE });
    expect(endsOnce('rib', 120)?.start).toEqual(STOP);
  });
});
