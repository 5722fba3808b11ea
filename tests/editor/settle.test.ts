import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { DEFAULT_BED, newDesign, newPart } from '../../src/design/defaults.ts';
import { removing } from '../../src/design/edit/make.ts';
import { Settle } from '../../src/editor/gesture/settle.ts';
import { commit, select } from '../../src/editor/state/commit.ts';
import { createEditorStore, type EditorStore, inPanes } from '../../src/editor/state/store.ts';

/**
 * What the panes show beside a hand, against what the guide says of it: as before while the hand moves, what it took
 * once it rests for 200 ms or lets go, and never older than anything else that was done. The time is common practice,
 * no source.
 */
beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

function begun() {
  const parts = ['a', 'b'].map((id, i) =>
    newPart('strip', { id, name: id, box: { x: 200 + 200 * i, y: 200, w: 38.1, h: 70 }, stock: 'pine-1x2' }),
  );
  const store = createEditorStore({ ...newDesign(DEFAULT_BED, 'Two'), parts }, 'light');
  return { store, settle: new Settle(store) };
}

const seen = (store: EditorStore) => {
  const { selection, tab } = inPanes(store.getState());
  return [...selection, tab].join(' ');
};

it('keeps the panes while the hand moves, and selects at once', () => {
  const { store, settle } = begun();
  settle.take(['a']);
  expect(store.getState().edit.selection).toEqual(['a']);
  for (let i = 0; i < 40; i++) {
    vi.advanceTimersByTime(199);
    expect(seen(store)).toBe('step');
    settle.moved();
  }
  settle.settle();
  expect(seen(store)).toBe('a part');
});

it('shows what was taken when the hand has rested for 200 ms, from its last move on, and tells it once', () => {
  const { store, settle } = begun();
  settle.take(['a']);
  vi.advanceTimersByTime(150);
  settle.moved();
  const told = vi.fn();
  store.subscribe(told);
  vi.advanceTimersByTime(199);
  expect(seen(store)).toBe('step');
  vi.advanceTimersByTime(1);
  expect(seen(store)).toBe('a part');
  settle.moved();
  vi.advanceTimersByTime(1000);
  settle.settle();
  expect(told).toHaveBeenCalledTimes(1);
});

it('stays at the part that was shown before, of one press after another', () => {
  const { store, settle } = begun();
  select(store, ['a']);
  settle.take(['b']);
  expect(seen(store)).toBe('a part');
  settle.take(['a']);
  settle.take(['b']);
  expect(seen(store)).toBe('a part');
  settle.settle();
  expect(seen(store)).toBe('b part');
});

it.each<[string, (store: EditorStore) => void, string]>([
  ['another selection', (store) => select(store, ['b']), 'b part'],
  ['none', (store) => select(store, []), 'step'],
  ['an edit', (store) => commit(store, [removing('parts', 'b')], 'Removed'), 'a part'],
])('shows %s at once, though the hand has not let go', (_, act, expected) => {
  const { store, settle } = begun();
  settle.take(['a']);
  act(store);
  expect(seen(store)).toBe(expected);
  vi.advanceTimersByTime(1000);
  expect(seen(store)).toBe(expected);
});
