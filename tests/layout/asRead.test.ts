import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Part, Rule, TapeRead } from '../../src/design/schema.ts';
import { hasReadings, laidAsRead } from '../../src/layout/asRead.ts';
import { type LayoutInput, laidFrom } from '../../src/layout/layout.ts';
import { runs } from '../runs.ts';
import { at, design, plainFace, STOCKS, strip } from './sample.ts';

/** Width of the stock `lath`. */
const T = 40;
const [WIDE, HIGH] = [1000, 2000];

function laid(parts: readonly Part[], rules: readonly Rule[]) {
  const input: LayoutInput = {
    design: design(parts, rules),
    face: plainFace(WIDE, HIGH),
    stocks: STOCKS,
    keepClears: [],
  };
  const planned = laidFrom(input, null);
  const found = hasReadings(parts) ? laidAsRead(input, planned) : planned;
  const boxOf = (id: string, of = found) => {
    const box = of.layout.boxes.get(id);
    if (!box) throw new Error(`no ${id}`);
    return box;
  };
  return { planned, found, boxOf, planAt: (id: string) => boxOf(id, planned) };
}

const edge = (of: string, side: 'low' | 'high') => ({ of, side });
const set = (of: string, side: 'low' | 'high', from: ReturnType<typeof edge>, distance = 0): Rule => ({
  ...{ id: `${of}-${side}`, kind: 'set', axis: 'x' },
  ...{ edge: edge(of, side), from, distance },
});
const between = (part: string, low: string, high: string): Rule => ({
  ...{ id: `${part}-between`, kind: 'between', axis: 'x', part, insetLow: 0, insetHigh: 0 },
  low: edge(low, 'high'),
  high: edge(high, 'low'),
});
const even = (parts: readonly string[], low = edge('left', 'high'), high = edge('right', 'low')): Rule => ({
  ...{ id: 'spread', kind: 'even', axis: 'x', mode: 'gaps' },
  ...{ parts, low, high },
});
const upright = (id: string, x = 0) => strip(id, at(x, 0, T, HIGH));
const rail = (id: string, y: number, read?: TapeRead) => ({
  ...strip(id, at(100, y, 300, T), 'across'),
  fit: true,
  ...(read ? { read } : {}),
});
const STILES = [upright('left'), upright('right')];
const TIED = [set('left', 'low', edge('face', 'low')), set('right', 'high', edge('face', 'high'))];
const PLANNED = WIDE - 2 * T;
const reads = (mm: number, more: Partial<TapeRead> = {}, planned = PLANNED): TapeRead => ({
  ...{ left: { planned, read: mm }, slant: 'end', of: planned, moves: 'end', ...more },
});

/** In sixteenths of a millimeter. */
const few = fc.integer({ min: -144, max: 144 }).map((n) => n / 16);

describe('a layout by what a tape read in place', () => {
  it('without readings is the planned one itself', () => {
    const { planned, found } = laid(
      [...STILES, rail('top', 1900)],
      [...TIED, between('top', 'left', 'right')],
    );
    expect(found).toBe(planned);
  });

  it('sets what the piece ends at where it was found, and all that is tied to that follows', () => {
    fc.assert(
      fc.property(few, fc.constantFrom('start', 'end' as const), (off, moves) => {
        const parts = [
          ...STILES,
          rail('top', 1900, reads(PLANNED + off, { moves })),
          rail('bottom', 100),
          ...['a', 'b', 'c'].map((id) => upright(id)),
        ];
        const rules = [
          ...TIED,
          between('top', 'left', 'right'),
          between('bottom', 'left', 'right'),
          even(['a', 'b', 'c']),
        ];
        const { found, boxOf } = laid(parts, rules);
        // Worked out from the tape alone.
        const [left, right] = moves === 'end' ? [0, WIDE - T + off] : [-off, WIDE - T];
        expect(boxOf('left').x).toBeCloseTo(left, 6);
        expect(boxOf('right').x).toBeCloseTo(right, 6);
        for (const id of ['top', 'bottom']) {
          expect(boxOf(id).x).toBeCloseTo(left + T, 6);
          expect(boxOf(id).w).toBeCloseTo(PLANNED + off, 6);
        }
        const gap = (PLANNED + off - 3 * T) / 4;
        for (const [i, id] of ['a', 'b', 'c'].entries())
          expect(boxOf(id).x).toBeCloseTo(left + T + gap * (i + 1) + T * i, 6);
        expect(found.layout.rules.every(({ holds }) => holds)).toBe(true);
        if (Math.abs(off) > 0.01) {
          const followers = found.layout.read?.[0]?.followers ?? [];
          expect([...followers].sort()).toEqual(
            [moves === 'end' ? 'right' : 'left', 'bottom', 'a', 'b', 'c'].sort(),
          );
        }
      }),
      { numRuns: runs(60) },
    );
  });

  it('takes the size of a piece that is free at one end, and the pieces after it follow', () => {
    const rules = [
      set('one', 'low', edge('face', 'low')),
      set('two', 'low', edge('one', 'high')),
      set('two', 'high', edge('face', 'high')),
    ];
    const one = { ...rail('one', 300, reads(412, {}, 400)), box: at(0, 300, 400, T) };
    const { boxOf, planAt } = laid([one, rail('two', 300)], rules);
    expect([planAt('one').w, planAt('two').w]).toEqual([400, 600]);
    expect(boxOf('one').w).toBeCloseTo(412, 9);
    expect(boxOf('two').x).toBeCloseTo(412, 9);
    expect(boxOf('two').w).toBeCloseTo(WIDE - 412, 9);
  });

  it('spreads what comes after over what is left, and leaves alone what stands already', () => {
    fc.assert(
      fc.property(few, fc.nat({ max: 4 }), fc.constantFrom('start', 'end' as const), (off, bay, moves) => {
        const ids = ['a', 'b', 'c', 'd'];
        const all = ['left', ...ids, 'right'];
        const gap = (PLANNED - 4 * T) / 5;
        const [low, high] = [all[bay] ?? '', all[bay + 1] ?? ''];
        const read = reads(gap + off, { moves }, gap);
        const parts = [...STILES, ...ids.map((id) => upright(id)), rail('r', 500, read)];
        const { boxOf, found } = laid(parts, [...TIED, even(ids), between('r', low, high)]);
        expect(boxOf('r').w).toBeCloseTo(gap + off, 6);
        expect(boxOf('r').x).toBeCloseTo(boxOf(low).x + T, 6);
        // What was planned, with the one that the tape found elsewhere.
        const place = all.map((_, i) => i * (gap + T));
        const at = moves === 'end' ? bay + 1 : bay;
        const by = moves === 'end' ? off : -off;
        const inner = at > 0 && at < 5;
        const want = place.map((x, i) => {
          if (i === at) return x + by;
          // The piece lies between a stile and one of them: they stand already.
          if (!inner) return x;
          if (moves === 'end') return i < at ? x : x + (by * (5 - i)) / (5 - at);
          return i > at ? x : x + (by * i) / at;
        });
        all.forEach((id, i) => {
          expect(boxOf(id).x).toBeCloseTo(want[i] ?? Number.NaN, 6);
        });
        expect(found.layout.rules.map(({ id, holds }) => [id, holds])).toEqual(
          [...TIED.map(({ id }) => id), 'spread', 'r-between'].map((id) => [id, true]),
        );
      }),
      { numRuns: runs(60) },
    );
  });

  it('takes one reading after the other', () => {
    const parts = [
      ...STILES,
      upright('mid'),
      rail('one', 500, reads(430 + 3, {}, 440 - 20)),
      rail('two', 500, reads(440, {}, 440)),
    ];
    const rules = [
      ...TIED,
      set('mid', 'low', edge('face', 'low'), 480),
      between('one', 'left', 'mid'),
      between('two', 'mid', 'right'),
    ];
    const { boxOf } = laid(parts, rules);
    // 440 was planned by the rules, 420 when it was read with 433: the opening is 433 + 20 less 0 of `of`.
    expect(boxOf('one').w).toBeCloseTo(433, 6);
    expect(boxOf('mid').x).toBeCloseTo(T + 433, 6);
    expect(boxOf('two').x).toBeCloseTo(T + 433 + T, 6);
    expect(boxOf('two').w).toBeCloseTo(440, 6);
    expect(boxOf('right').x).toBeCloseTo(T + 433 + T + 440, 6);
  });

  it('moves nothing but the piece where that is said, or where the rules do not let go', () => {
    const same: Rule = { id: 'same', kind: 'same', axis: 'x', parts: ['top', 'bottom'] };
    const alone = laid(
      [...STILES, rail('top', 1900, reads(PLANNED + 5, { moves: 'nothing' }))],
      [...TIED, between('top', 'left', 'right')],
    );
    expect(alone.found.layout.boxes).toBe(alone.planned.layout.boxes);
    expect(alone.found.layout.read).toEqual([{ part: 'top', followers: [] }]);
    // At the face the piece alone ends elsewhere.
    const atFace: Rule = {
      ...{ id: 'whole', kind: 'between', axis: 'x', part: 'top', insetLow: 0, insetHigh: 0 },
      ...{ low: edge('face', 'low'), high: edge('face', 'high') },
    };
    const free = laid([rail('top', 1900, reads(WIDE + 5, {}, WIDE))], [atFace]);
    expect(free.boxOf('top')).toMatchObject({ x: 0, w: WIDE + 5 });
    // As wide as another that is held by something else.
    const fixed = laid(
      [rail('top', 1900, reads(505, {}, 500)), rail('bottom', 100)],
      [same, set('bottom', 'low', edge('face', 'low')), set('bottom', 'high', edge('face', 'high'), -500)],
    );
    expect(fixed.boxOf('top').w).toBeCloseTo(500, 9);
    expect(fixed.found.layout.read).toEqual([{ part: 'top', followers: [] }]);
  });
});
