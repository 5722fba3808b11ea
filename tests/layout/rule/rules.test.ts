import { describe, expect, it } from 'vitest';
import { newPart } from '../../../src/design/defaults.ts';
import type { Edge, Rule } from '../../../src/design/schema.ts';
import { spread } from '../../../src/layout/rule/spacing.ts';
import { at, boxOfPart, codes, design, lay, panel, plainFace, recessedFace, run, strip } from '../sample.ts';

const low = (of: string, inner = false): Edge => ({ of, side: 'low', inner });
const mid = (of: string): Edge => ({ of, side: 'mid' });
const high = (of: string, inner = false): Edge => ({ of, side: 'high', inner });
const faceX = { axis: 'x', low: low('face'), high: high('face') } as const;

describe('set', () => {
  it('holds an edge off another; the part keeps its size and the other axis its place', () => {
    const rule: Rule = { id: 'r', kind: 'set', axis: 'x', edge: low('a'), from: low('face'), distance: 50 };
    const layout = lay(design([panel('a', at(200, 300, 100, 80))], [rule]));
    expect(boxOfPart(layout, 'a')).toEqual(at(50, 300, 100, 80));
    expect(layout.rules).toEqual([{ id: 'r', holds: true, fights: [], result: 50 }]);
  });

  it('counts from the middle and from the inside of a level and of a frame', () => {
    const rules: Rule[] = [
      { id: 'r1', kind: 'set', axis: 'x', edge: mid('a'), from: mid('face'), distance: 0 },
      { id: 'r2', kind: 'set', axis: 'y', edge: low('a'), from: low('level:rim', true), distance: 5 },
      { id: 'r3', kind: 'set', axis: 'x', edge: low('b'), from: low('f', true), distance: 7 },
      { id: 'r4', kind: 'set', axis: 'x', edge: low('c'), from: high('g'), distance: 0 },
    ];
    const parts = [
      panel('a', at(0, 0, 100, 80)),
      panel('b', at(0, 500, 10, 10)),
      panel('c', at(0, 600, 10, 10)),
      run('f', at(300, 500, 400, 400)),
      { ...run('g', at(300, 1000, 400, 400)), side: 'outside' as const },
    ];
    const layout = lay(design(parts, rules), { face: recessedFace() });
    expect(boxOfPart(layout, 'a')).toEqual(at(450, 105, 100, 80));
    expect(boxOfPart(layout, 'b').x).toBe(300 + 40 + 7);
    // Stock outside of the path: what is seen as its right edge is a width beyond the box.
    expect(boxOfPart(layout, 'c').x).toBe(700 + 40);
  });

  it('follows a member of an array', () => {
    const array = {
      ...newPart('array', { id: 'm', name: 'Battens', box: at(0, 0, 1000, 500), stock: 'lath' }),
      across: { mode: 'gaps', count: 4 } as const,
    };
    const rule: Rule = {
      id: 'r',
      kind: 'set',
      axis: 'x',
      edge: low('a'),
      from: high('m[2,0]'),
      distance: 10,
    };
    const layout = lay(design([array, panel('a', at(0, 900, 50, 50))], [rule]));
    const { starts } = spread(1000, 40, { mode: 'gaps', count: 4 });
    expect(boxOfPart(layout, 'a').x).toBeCloseTo((starts[2] ?? 0) + 40 + 10, 9);
    expect(boxOfPart(layout, 'm')).toEqual(array.box);
  });

  it('follows a member of an array whose count is found from the size that other rules give it', () => {
    const array = {
      ...newPart('array', { id: 'm', name: 'Battens', box: at(0, 0, 300, 500), stock: 'lath' }),
      across: { mode: 'most', count: 1, most: 60 } as const,
    };
    const rules: Rule[] = [
      {
        id: 'wide',
        kind: 'between',
        axis: 'x',
        part: 'm',
        low: low('face'),
        high: high('face'),
        insetLow: 0,
        insetHigh: 0,
      },
      { id: 'r', kind: 'set', axis: 'x', edge: low('a'), from: low('m[5,0]'), distance: 0 },
    ];
    const layout = lay(design([array, panel('a', at(0, 900, 50, 50))], rules));
    const { starts } = spread(1000, 40, { mode: 'most', count: 1, most: 60 });
    expect(boxOfPart(layout, 'a').x).toBeCloseTo(starts[5] ?? 0, 9);
  });
});

describe('center', () => {
  it('centers one part and says the margin', () => {
    const rule: Rule = { id: 'r', kind: 'center', ...faceX, parts: ['a'] };
    const layout = lay(design([panel('a', at(10, 0, 300, 50))], [rule]));
    expect(boxOfPart(layout, 'a').x).toBe(350);
    expect(layout.rules[0]?.result).toBe(350);
  });

  it('moves several as one block that keeps its arrangement', () => {
    const rule: Rule = { id: 'r', kind: 'center', ...faceX, parts: ['b', 'a'] };
    const layout = lay(design([panel('a', at(0, 0, 100, 50)), panel('b', at(130, 0, 70, 50))], [rule]));
    expect(boxOfPart(layout, 'a').x).toBe(400);
    expect(boxOfPart(layout, 'b').x).toBe(530);
  });

  it('finds the ends of the block again when another rule turns the order around', () => {
    const rules: Rule[] = [
      { id: 'c', kind: 'center', ...faceX, parts: ['a', 'b'] },
      { id: 's', kind: 'set', axis: 'x', edge: high('b'), from: low('a'), distance: -20 },
    ];
    const layout = lay(design([panel('a', at(0, 0, 100, 50)), panel('b', at(130, 0, 60, 50))], rules));
    expect(boxOfPart(layout, 'b').x + boxOfPart(layout, 'a').x + 100).toBeCloseTo(1000, 9);
    expect(boxOfPart(layout, 'a').x - boxOfPart(layout, 'b').x).toBeCloseTo(80, 9);
  });
});

describe('between', () => {
  it('fits a rail between two stiles, and follows the bed', () => {
    const parts = [
      strip('l', at(0, 0, 40, 900)),
      strip('r', at(900, 0, 40, 900)),
      strip('rail', at(0, 400, 10, 40), 'across'),
    ];
    const rules: Rule[] = [
      { id: '1', kind: 'set', axis: 'x', edge: low('l'), from: low('face'), distance: 0 },
      { id: '2', kind: 'set', axis: 'x', edge: high('r'), from: high('face'), distance: 0 },
      {
        id: '3',
        kind: 'between',
        axis: 'x',
        part: 'rail',
        low: high('l'),
        high: low('r'),
        insetLow: 1,
        insetHigh: 2,
      },
    ];
    const wide = lay(design(parts, rules));
    expect(boxOfPart(wide, 'rail')).toEqual(at(41, 400, 917, 40));
    expect(wide.rules[2]?.result).toBe(917);
    const narrow = lay(design(parts, rules), { face: plainFace(990.475) });
    expect(boxOfPart(narrow, 'rail').w).toBeCloseTo(917 - 9.525, 9);
  });
});

describe('even', () => {
  const parts = [10, 20, 30].map((w, i) => panel(`p${i}`, at(100 * i, 0, w, 50)));
  const even = (mode: 'gaps' | 'flush' | 'half' | 'centers' | 'most', more: object = {}) => {
    const rule: Rule = { id: 'r', kind: 'even', ...faceX, parts: ['p0', 'p1', 'p2'], mode, ...more };
    const layout = lay(design(parts, [rule]));
    return {
      layout,
      x: ['p0', 'p1', 'p2'].map((id) => boxOfPart(layout, id).x),
      gap: layout.rules[0]?.result,
    };
  };

  it('equal gaps, at the ends too', () => {
    const { x, gap } = even('gaps');
    expect(gap).toBeCloseTo(235, 9);
    [235, 480, 735].forEach((v, i) => {
      expect(x[i]).toBeCloseTo(v, 9);
    });
  });

  it('flush ends', () => {
    const { x, gap } = even('flush');
    expect(gap).toBeCloseTo(470, 9);
    [0, 480, 970].forEach((v, i) => {
      expect(x[i]).toBeCloseTo(v, 9);
    });
  });

  it('half gaps at the ends', () => {
    const { x, gap } = even('half');
    const third = 940 / 3;
    expect(gap).toBeCloseTo(third, 9);
    expect(x[0]).toBeCloseTo(third / 2, 9);
    expect(x[2]).toBeCloseTo(970 - third / 2, 9);
  });

  it('centers a pitch apart, centered as a group', () => {
    const { x } = even('centers', { pitch: 100 });
    expect((x[1] ?? 0) + 10 - ((x[0] ?? 0) + 5)).toBeCloseTo(100, 9);
    expect((x[2] ?? 0) + 15 - ((x[1] ?? 0) + 10)).toBeCloseTo(100, 9);
    expect(x[0]).toBeCloseTo(1000 - ((x[2] ?? 0) + 30), 9);
  });

  it('centers without a pitch: each in the middle of its share', () => {
    const { x } = even('centers');
    [1, 3, 5].forEach((sixth, i) => {
      expect((x[i] ?? 0) + [5, 10, 15][i]!).toBeCloseTo((1000 * sixth) / 6, 9);
    });
  });

  it('a gap over the largest wanted is told', () => {
    const { layout } = even('most', { most: 200 });
    expect(layout.checks.find((c) => c.code === 'rule.gap-over-most')?.figures).toEqual({
      rule: 'r',
      gap_mm: 235,
      most_mm: 200,
    });
    expect(codes(even('most', { most: 240 }).layout)).not.toContain('rule.gap-over-most');
  });

  it('negative gaps are told', () => {
    const wide = [0, 1, 2].map((i) => panel(`p${i}`, at(0, 0, 400, 50)));
    const rule: Rule = { id: 'r', kind: 'even', ...faceX, parts: ['p0', 'p1', 'p2'], mode: 'gaps' };
    const layout = lay(design(wide, [rule]));
    expect(layout.checks.find((c) => c.code === 'rule.gap-negative')?.figures).toEqual({
      rule: 'r',
      gap_mm: -50,
    });
  });

  it('agrees with the closed form for equal parts', () => {
    for (const mode of ['gaps', 'flush', 'half', 'most'] as const) {
      const same = Array.from({ length: 11 }, (_, i) => strip(`s${i}`, at(50 * i, 0, 40, 500)));
      const ids = same.map((s) => s.id);
      const layout = lay(design(same, [{ id: 'r', kind: 'even', ...faceX, parts: ids, mode }]));
      const { starts, gap } = spread(1000, 40, { mode, count: 11 });
      ids.forEach((id, i) => {
        expect(boxOfPart(layout, id).x).toBeCloseTo(starts[i] ?? Number.NaN, 9);
      });
      expect(layout.rules[0]?.result).toBeCloseTo(gap, 9);
    }
  });
});

describe('mirror, same, reveal, graded', () => {
  it('mirrors about a line and takes the same stretch along it', () => {
    const rule: Rule = { id: 'r', kind: 'mirror', axis: 'x', part: 'a', twin: 'b', about: mid('face') };
    const layout = lay(design([panel('a', at(100, 200, 50, 60)), panel('b', at(0, 0, 10, 10))], [rule]));
    expect(boxOfPart(layout, 'b')).toEqual(at(850, 200, 50, 60));
  });

  it('makes all as wide as the first', () => {
    const rule: Rule = { id: 'r', kind: 'same', axis: 'x', parts: ['b', 'a'] };
    const layout = lay(design([panel('a', at(100, 0, 50, 60)), panel('b', at(300, 0, 70, 60))], [rule]));
    expect(boxOfPart(layout, 'a')).toEqual(at(90, 0, 70, 60));
    expect(layout.rules[0]?.result).toBe(70);
  });

  it('keeps the same margin on all four sides', () => {
    const rule: Rule = { id: 'r', kind: 'reveal', part: 'a', inside: 'f', inner: true, margin: 3 };
    const layout = lay(design([run('f', at(100, 100, 500, 700)), panel('a', at(0, 0, 10, 10))], [rule]));
    expect(boxOfPart(layout, 'a')).toEqual(at(143, 143, 414, 614));
    expect(layout.rules[0]).toEqual({ id: 'r', holds: true, fights: [], result: 3 });
  });

  it('grades rows in a ratio', () => {
    const rule: Rule = {
      id: 'r',
      kind: 'graded',
      axis: 'y',
      parts: ['a', 'b', 'c'],
      low: low('face'),
      high: high('face'),
      ratio: [3, 2, 1],
      gap: 100,
    };
    const parts = ['a', 'b', 'c'].map((id) => panel(id, at(0, 0, 100, 100)));
    const layout = lay(design(parts, [rule]));
    const rows = ['a', 'b', 'c'].map((id) => boxOfPart(layout, id));
    expect(rows[0]?.h).toBeCloseTo(900, 9);
    expect(rows[1]?.h).toBeCloseTo(600, 9);
    expect(rows[2]?.h).toBeCloseTo(300, 9);
    expect(rows[2]?.y).toBeCloseTo(1700, 9);
    expect(layout.rules[0]?.result).toBeCloseTo(900, 9);
  });
});

describe('rules that cannot be', () => {
  it('names what is not there and leaves the rule out', () => {
    const rules: Rule[] = [
      { id: 'r1', kind: 'set', axis: 'x', edge: low('a'), from: low('gone'), distance: 0 },
      { id: 'r2', kind: 'set', axis: 'x', edge: low('a'), from: low('level:field'), distance: 0 },
      { id: 'r3', kind: 'set', axis: 'x', edge: low('a'), from: low('a[1,0]'), distance: 0 },
      { id: 'r4', kind: 'set', axis: 'y', edge: low('a'), from: low('face'), distance: 30 },
    ];
    const layout = lay(design([panel('a', at(5, 6, 10, 10))], rules));
    expect(boxOfPart(layout, 'a')).toEqual(at(5, 30, 10, 10));
    expect(layout.checks.filter((c) => c.code === 'rule.unknown-part').map((c) => c.figures)).toEqual([
      { rule: 'r1', part: 'gone' },
      { rule: 'r2', part: 'level:field' },
      { rule: 'r3', part: 'a[1,0]' },
    ]);
    expect(layout.rules.map((r) => r.holds)).toEqual([false, false, false, true]);
  });

  it('a rule between face and level that cannot hold moves nothing', () => {
    const rule: Rule = {
      id: 'r',
      kind: 'set',
      axis: 'x',
      edge: low('face'),
      from: high('face'),
      distance: 10,
    };
    const layout = lay(design([panel('a', at(5, 6, 10, 10))], [rule]));
    expect(layout.rules[0]).toEqual({ id: 'r', holds: false, fights: [], result: -1000 });
    expect(boxOfPart(layout, 'a')).toEqual(at(5, 6, 10, 10));
  });
});
