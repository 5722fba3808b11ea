import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Rule } from '../../src/design/schema.ts';
import { preview, startState } from '../../src/design/state.ts';
import { editsToLoosen, rulesThatHold } from '../../src/editor/action/loosen.ts';
import { editsToPlace } from '../../src/editor/action/place.ts';

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
    expect(rulesThatHold(designWith([even]), 'a', 'x')).toEqual([even]);
    expect(rulesThatHold(designWith([even]), 'a', 'y')).toEqual([]);
  });

  it('takes the part out of a row and leaves the row to the others', () => {
    const design = designWith([even]);
    const after = preview(startState(design), editsToLoosen(design, new Set(['a']), 'x'));
    expect(after.rules).toEqual([{ ...even, parts: ['b'] }]);
    const last = preview(startState(after), editsToLoosen(after, new Set(['b']), 'x'));
    expect(last.rules).toEqual([]);
  });
});
