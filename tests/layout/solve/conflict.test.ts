import { describe, expect, it } from 'vitest';
import type { Edge, Rule } from '../../../src/design/schema.ts';
import { at, boxOfPart, design, lay, panel, strip } from '../sample.ts';

const low = (of: string): Edge => ({ of, side: 'low' });
const high = (of: string): Edge => ({ of, side: 'high' });
const set = (id: string, edge: Edge, from: Edge, distance: number): Rule => ({
  id,
  kind: 'set',
  axis: 'x',
  edge,
  from,
  distance,
});

const parts = ['a', 'b', 'c', 'd'].map((id, i) => panel(id, at(100 * i, 0, 50, 50)));

describe('rules that fight', () => {
  it('the later one yields and names the smallest set it fights', () => {
    const rules = [
      set('1', low('a'), low('face'), 10),
      set('2', low('d'), low('face'), 700),
      set('3', low('b'), low('a'), 100),
      set('4', low('c'), low('b'), 100),
      set('5', low('c'), low('face'), 300),
      set('6', low('d'), low('c'), 50),
    ];
    const layout = lay(design(parts, rules));
    expect(layout.rules.map((r) => [r.id, r.holds, r.fights])).toEqual([
      ['1', true, []],
      ['2', true, []],
      ['3', true, []],
      ['4', true, []],
      ['5', false, ['1', '3', '4']],
      ['6', false, ['1', '2', '3', '4']],
    ]);
    expect(['a', 'b', 'c', 'd'].map((id) => boxOfPart(layout, id).x)).toEqual([10, 110, 210, 700]);
    expect(
      layout.checks.filter((c) => c.code === 'rule.impossible').map((c) => [c.severity, c.parts, c.figures]),
    ).toEqual([
      ['error', ['c', 'a', 'b'], { rule: '5', fights: '1 3 4' }],
      ['error', ['d', 'c', 'a', 'b'], { rule: '6', fights: '1 2 3 4' }],
    ]);
  });

  it('a rule that says again what already holds fights nothing', () => {
    const rules = [
      set('1', low('a'), low('face'), 10),
      set('2', high('a'), low('a'), 50),
      set('3', high('a'), low('face'), 60),
    ];
    expect(lay(design(parts, rules)).rules.every((r) => r.holds)).toBe(true);
  });

  it('stock that cannot be stretched fights alone', () => {
    const rule: Rule = {
      id: 'r',
      kind: 'between',
      axis: 'x',
      part: 's',
      low: low('face'),
      high: high('face'),
      insetLow: 0,
      insetHigh: 0,
    };
    const layout = lay(design([strip('s', at(10, 0, 40, 500))], [rule]));
    expect(layout.rules).toEqual([{ id: 'r', holds: false, fights: [], result: 40 }]);
    expect(boxOfPart(layout, 's')).toEqual(at(10, 0, 40, 500));
  });

  it('a rule on both axes is left out only where it cannot hold', () => {
    const rules: Rule[] = [
      set('1', high('a'), low('a'), 50),
      { id: '2', kind: 'reveal', part: 'a', inside: 'face', inner: false, margin: 20 },
    ];
    const layout = lay(design(parts, rules));
    expect(layout.rules[1]).toMatchObject({ holds: false, fights: ['1'] });
    expect(boxOfPart(layout, 'a')).toEqual(at(0, 20, 50, 1960));
  });

  it('a rule that says part of what another said before is not blamed for it', () => {
    const rules: Rule[] = [
      { id: '1', kind: 'same', axis: 'x', parts: ['a', 'b'] },
      {
        id: '2',
        kind: 'graded',
        axis: 'x',
        parts: ['a', 'b', 'c'],
        low: low('face'),
        high: high('face'),
        ratio: [5, 5, 1],
        gap: 0,
      },
      { id: '3', kind: 'same', axis: 'x', parts: ['c', 'b'] },
    ];
    expect(lay(design(parts, rules)).rules[2]).toMatchObject({ holds: false, fights: ['2'] });
  });

  it('drops the fight when the opponent goes', () => {
    const rules = [set('1', low('a'), low('face'), 10), set('2', low('a'), low('face'), 20)];
    expect(boxOfPart(lay(design(parts, rules)), 'a').x).toBe(10);
    const freed = lay(design(parts, rules.slice(1)));
    expect(freed.rules).toEqual([{ id: '2', holds: true, fights: [], result: 20 }]);
    expect(boxOfPart(freed, 'a').x).toBe(20);
  });
});
