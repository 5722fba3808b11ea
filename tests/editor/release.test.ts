import { describe, expect, it, vi } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Rule } from '../../src/design/schema.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { edgesHeldTo, withOtherEdge } from '../../src/editor/edit/otherEdge.ts';
import { ruleInPieces, ruleSentence } from '../../src/editor/edit/sentence.ts';
import { readAgain, readOtherEdge } from '../../src/editor/gesture/release.ts';
import { undoStep } from '../../src/editor/state/commit.ts';
import { type EditorStore, releaseNow } from '../../src/editor/state/store.ts';
import { speak } from '../../src/editor/words/t.ts';
import { benchOf, perform } from './intent/hand.ts';
import { layoutOf } from './laid.ts';

const panel = (id: string, x: number, y: number, w: number, h: number) =>
  newPart('panel', { id, name: id, box: { x, y, w, h } });

/** Two stiles, and a panel drawn from one to the other, by a hand that misses by two and three pixels. */
function drawn(): EditorStore {
  const plain = newDesign();
  const design: Design = {
    ...plain,
    measure: { ...plain.measure, unit: 'mm' },
    parts: [panel('left', 100, 100, 80, 1500), panel('right', 700, 100, 80, 1500)],
  };
  const store = benchOf(design);
  perform(
    store,
    {
      tool: 'panel',
      from_mm: [180, 400],
      to_mm: [700, 700],
      pixels_per_mm: 0.5,
      jitter_px: [2, 0, -3, 0],
      modifier: 'none',
    },
    new Map(),
  );
  return store;
}

const boxOf = (store: EditorStore) => {
  const { release, edit } = store.getState();
  return layoutOf(edit.design).boxes.get(release?.part ?? '');
};
const held = (store: EditorStore, axis: 'x' | 'y'): Rule[] =>
  store.getState().edit.design.rules.filter((rule) => 'axis' in rule && rule.axis === axis);

describe('what a release held', () => {
  it('is told, with free at 0 and other readings by their digits', () => {
    const store = drawn();
    const release = releaseNow(store.getState());
    expect(release?.chosen).toBe(1);
    expect(release?.readings[1]?.says).toContain(
      'runs from the right edge of left to the left edge of right',
    );
    expect(release?.readings[0]?.rules).toEqual([]);
    const all = release?.readings.map(({ says }) => says) ?? [];
    expect(new Set(all).size).toBe(all.length);
  });

  it('is another reading by one digit, and free by 0, where the hand had it: each time one step of undo', () => {
    const store = drawn();
    const { design: before } = store.getState().release?.before ?? { design: null };
    const [, , next] = store.getState().release?.readings ?? [];
    expect(next).toBeDefined();
    expect(readAgain(store, 2)).toBe(true);
    expect(releaseNow(store.getState())?.chosen).toBe(2);
    expect(readAgain(store, 0)).toBe(true);
    expect(store.getState().edit.design.rules).toEqual([]);
    // 2 px are 4 mm, 3 px are 6 mm.
    expect(boxOf(store)).toEqual({ x: 184, y: 400, w: 510, h: 300 });
    expect(readAgain(store, 1)).toBe(true);
    expect(boxOf(store)).toMatchObject({ x: 180, w: 520 });
    expect(readAgain(store, 9)).toBe(false);
    undoStep(store);
    expect(store.getState().edit.design).toEqual(before);
  });

  it('goes with the next act: nothing is read again then', () => {
    const store = drawn();
    undoStep(store);
    expect(releaseNow(store.getState())).toBeNull();
    expect(readAgain(store, 2)).toBe(false);
  });

  it('runs to the far edge of a stile when that word is clicked, and back', () => {
    const store = drawn();
    const [between] = held(store, 'x');
    const other = between && withOtherEdge(between, 'high', store.getState().edit.shown);
    if (!other) throw new Error('no other edge');
    readOtherEdge(store, other.rule);
    expect(boxOf(store)).toMatchObject({ x: 180, w: 600 });
    expect(releaseNow(store.getState())?.readings[1]?.says).toContain('to the right edge of right');
    const [now] = held(store, 'x');
    const back = now && withOtherEdge(now, 'high', store.getState().edit.shown);
    if (!back) throw new Error('no way back');
    readOtherEdge(store, back.rule);
    expect(boxOf(store)).toMatchObject({ x: 180, w: 520 });
  });
});

describe('the edges in a sentence', () => {
  const edge = (of: string, side: 'low' | 'high', inner?: true) =>
    inner ? { of, side, inner } : { of, side };
  const between: Rule = {
    id: 'r',
    kind: 'between',
    axis: 'x',
    part: 'a',
    low: edge('frame', 'low', true),
    high: edge('stile', 'low'),
    insetLow: 0,
    insetHigh: 0,
  };
  const frame = newPart('run', { id: 'frame', name: 'frame', box: { x: 50, y: 50, w: 800, h: 900 } });
  const design: Design = {
    ...newDesign(),
    parts: [frame, panel('stile', 400, 100, 80, 800), panel('a', 120, 300, 280, 70)],
    rules: [between],
  };

  it('are of a frame its inside and outside, of anything else its two sides; the face has no other', () => {
    const shown = shownFrom(design);
    expect(withOtherEdge(between, 'low', shown)?.edge).toEqual(edge('frame', 'low'));
    expect(withOtherEdge(between, 'high', shown)?.edge).toEqual(edge('stile', 'high'));
    const low = withOtherEdge(between, 'low', shown)?.rule;
    expect(low && withOtherEdge(low, 'low', shown)?.rule).toEqual(between);
    expect(withOtherEdge({ ...between, low: edge('face', 'low') }, 'low', shown)).toBeNull();
  });

  it.each(['en', 'de'] as const)('leave the sentence as it is (%s)', async (language) => {
    vi.stubGlobal('document', { documentElement: {} });
    await speak(language);
    const rules: Rule[] = [
      between,
      { id: 's', kind: 'set', axis: 'y', edge: edge('a', 'low'), from: edge('stile', 'high'), distance: 40 },
      {
        id: 'c',
        kind: 'center',
        axis: 'y',
        parts: ['a'],
        low: edge('frame', 'low', true),
        high: edge('face', 'high'),
      },
      { id: 'm', kind: 'reveal', part: 'a', inside: 'frame', inner: true, margin: 20 },
    ];
    for (const rule of rules) {
      const pieces = ruleInPieces(design, rule, undefined);
      expect(pieces.map(({ text }) => text).join('')).toBe(ruleSentence(design, rule, undefined));
      expect(pieces.flatMap(({ field }) => field ?? []).sort()).toEqual(
        edgesHeldTo(rule)
          .map(({ field }) => field)
          .sort(),
      );
    }
    await speak('en');
    vi.unstubAllGlobals();
  });
});
