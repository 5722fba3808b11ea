import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Rule } from '../../src/design/schema.ts';
import { preview, startState } from '../../src/design/state.ts';
import { editsToLoosen, isPlacedBy } from '../../src/editor/edit/loosen.ts';
import { editsToPlace } from '../../src/editor/edit/place.ts';

const box = { x: 100, y: 200, w: 300, h: 400 };

function designWith(rules: readonly Rule[]): Design {
  const parts = ['a', 'b'].map((id) => newPart('panel', { id, name: id, box }));
  return { ...newDesign(), parts, rules: [...rules] };
}

function placed(rules: readonly Rule[], to: typeof box): Design {
  const design = designWith(rules);
  return preview(startState(design), editsToPlace(design, new Map([['a', box]]), new Map([['a', to]])));
}

describe('placing by hand', () => {
  it('re-measures the set rule that places the part, by as much as its edge moved', () => {
    const set: Rule = {
      id: 'r',
      kind: 'set',
      axis: 'x',
      edge: { of: 'a', side: 'high' },
      from: { of: 'face', side: 'low' },
      distance: 400,
    };
    // Moved 10 right and made 5 wider: its right edge went 15 to the right.
    const after = placed([set], { ...box, x: 110, w: 305 });
    expect(after.rules[0]).toEqual({ ...set, distance: 415 });
  });

  it('leaves rules by which others follow as they are', () => {
    const follow: Rule = {
      id: 'r',
      kind: 'set',
      axis: 'x',
      edge: { of: 'b', side: 'low' },
      from: { of: 'a', side: 'high' },
      distance: 20,
    };
    expect(placed([follow], { ...box, x: 150 }).rules[0]).toBe(follow);
  });

  it('holds a part between two edges back by what its sides moved', () => {
    const between: Rule = {
      id: 'r',
      kind: 'between',
      axis: 'x',
      part: 'a',
      low: { of: 'face', side: 'low' },
      high: { of: 'face', side: 'high' },
      insetLow: 100,
      insetHigh: 50,
    };
    const after = placed([between], { ...box, x: 110, w: 300 });
    expect(after.rules[0]).toMatchObject({ insetLow: 110, insetHigh: 40 });
  });
});

describe('placing freely', () => {
  const even: Rule = {
    id: 'even',
    kind: 'even',
    axis: 'x',
    parts: ['a', 'b'],
    low: { of: 'face', side: 'low' },
    high: { of: 'face', side: 'high' },
    mode: 'gaps',
  };

  it('knows the rules that hold a part along an axis', () => {
    expect(isPlacedBy(designWith([even]), 'a', 'x')).toBe(true);
    expect(isPlacedBy(designWith([even]), 'a', 'y')).toBe(false);
  });

  it('takes the part out of a row and leaves the row to the others', () => {
    const design = designWith([even]);
    const after = preview(startState(design), editsToLoosen(design, new Set(['a']), 'x'));
    expect(after.rules).toEqual([{ ...even, parts: ['b'] }]);
    const last = preview(startState(after), editsToLoosen(after, new Set(['b']), 'x'));
    expect(last.rules).toEqual([]);
  });

  const loosened = (rule: Rule, axis: 'x' | 'y', hand: 'move' | 'low' | 'high', ids = ['a']) => {
    const design = designWith([rule]);
    return preview(startState(design), editsToLoosen(design, new Set(ids), axis, hand)).rules;
  };
  const face = { low: { of: 'face', side: 'low' }, high: { of: 'face', side: 'high' } } as const;
  const between = {
    id: 'r',
    kind: 'between',
    axis: 'x',
    part: 'a',
    ...face,
    insetLow: 3,
    insetHigh: 4,
  } as const;

  it('takes what a pulled edge broke, and leaves what held the other', () => {
    const high = { kind: 'set', axis: 'x', edge: { of: 'a', side: 'high' }, from: face.high, distance: -4 };
    expect(loosened(between, 'x', 'low')).toEqual([{ ...high, id: 'r' }]);
    expect(loosened(between, 'y', 'low')).toEqual([between]);
    const margin = { id: 'r', kind: 'reveal', part: 'a', inside: 'b', inner: true, margin: 9 } as const;
    const edge = (side: 'low' | 'high') => ({ of: 'b', side, inner: true });
    expect(loosened(margin, 'x', 'high')).toEqual([
      {
        id: 'r',
        kind: 'between',
        axis: 'y',
        part: 'a',
        low: edge('low'),
        high: edge('high'),
        insetLow: 9,
        insetHigh: 9,
      },
      {
        id: 'rule-1',
        kind: 'set',
        axis: 'x',
        edge: { of: 'a', side: 'low' },
        from: edge('low'),
        distance: 9,
      },
    ]);
  });

  it('keeps what goes along with the hand', () => {
    const set: Rule = {
      id: 'r',
      kind: 'set',
      axis: 'x',
      edge: { of: 'a', side: 'low' },
      from: { of: 'b', side: 'high' },
      distance: 5,
    };
    expect(loosened(set, 'x', 'move', ['a', 'b'])).toEqual([set]);
    expect(loosened(set, 'x', 'move')).toEqual([]);
    expect(loosened(set, 'y', 'move')).toEqual([set]);
  });
});
