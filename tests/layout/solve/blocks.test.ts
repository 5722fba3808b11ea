import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Edge, Rule, Strip } from '../../../src/design/schema.ts';
import { runs } from '../../runs.ts';
import { canHold } from '../canHold.ts';
import { deviations } from '../holds.ts';
import { at, design, lay, plainFace, run, strip } from '../sample.ts';

const IDS = ['a', 'b', 'c', 'd', 'e'];

const id = fc.constantFrom(...IDS);
const edge: fc.Arbitrary<Edge> = fc.record({
  of: fc.oneof(fc.constant('face'), id),
  side: fc.constantFrom('low' as const, 'mid' as const, 'high' as const),
});
const step = fc.integer({ min: -20, max: 20 }).map((n) => 25 * n);
type Named = (name: string) => Rule;
const block: fc.Arbitrary<Named> = fc
  .record({ parts: fc.uniqueArray(id, { minLength: 2, maxLength: 3 }), low: edge, high: edge })
  .map((r) => (name) => ({ ...r, id: name, kind: 'center', axis: 'x' }));
const distance: fc.Arbitrary<Named> = fc
  .record({ edge, from: edge, distance: step })
  .map((r) => (name) => ({ ...r, id: name, kind: 'set', axis: 'x' }));
/** One or two blocks among distances, in any order. */
const rules = fc
  .tuple(fc.array(block, { minLength: 1, maxLength: 2 }), fc.array(distance, { maxLength: 4 }), fc.nat(4))
  .map(([blocks, others, at]) => [...others.slice(0, at), ...blocks, ...others.slice(at)])
  .map((all) => all.map((make, i) => make(`r${i}`)));
/** Strips standing up keep their widths, as nearly all that is centered does. */
const WIDTHS = { lath: 40, board: 90 };
const parts: fc.Arbitrary<Strip[]> = fc.tuple(
  ...IDS.map((name) =>
    fc
      .tuple(fc.integer({ min: 0, max: 40 }), fc.constantFrom('lath' as const, 'board' as const))
      .map(([x, stock]) => strip(name, at(25 * x, 0, WIDTHS[stock], 50), 'up', stock)),
  ),
);
const widthsOf = (some: readonly Strip[]) =>
  new Map(some.map((part) => [part.id, part.stock === 'lath' ? WIDTHS.lath : WIDTHS.board]));

const face = (side: Edge['side']): Edge => ({ of: 'face', side });

describe('blocks of several parts', () => {
  it('hold wherever some arrangement holds, up to the first rule that cannot, and that fights the fewest', () => {
    fc.assert(
      fc.property(parts, rules, (some, all) => {
        const layout = lay(design(some, all));
        const widths = widthsOf(some);
        layout.rules.forEach((state, i) => {
          const one = all[i];
          if (!one || !state.holds) return;
          for (const off of deviations(one, plainFace(), layout.boxes))
            expect(Math.abs(off)).toBeLessThan(1e-6);
        });
        const first = layout.rules.findIndex((state) => !state.holds);
        const one = all[first];
        expect(canHold(some, one ? all.slice(0, first) : all, widths)).toBe(true);
        if (!one) return;
        expect(canHold(some, all.slice(0, first + 1), widths)).toBe(false);
        const fights = all.filter((rule) => layout.rules[first]?.fights.includes(rule.id));
        expect(canHold(some, [...fights, one], widths)).toBe(false);
        for (const other of fights) {
          expect(canHold(some, [...fights.filter((rule) => rule !== other), one], widths)).toBe(true);
        }
      }),
      { numRuns: runs(60), seed: 11 },
    );
  });

  const strips = (...all: readonly [string, number][]) =>
    all.map(([name, x]) => strip(name, at(x, 0, 90, 50), 'up', 'board'));
  const between = (id: string, names: string[]): Rule => ({
    ...{ id, kind: 'center', axis: 'x', parts: names },
    ...{ low: face('low'), high: face('high') },
  });

  it('take other parts for their ends when those that lie outermost cannot be', () => {
    // a lies leftmost, but is set right of b: b and a end the block then.
    const some = strips(['a', 100], ['b', 300]);
    const all: Rule[] = [
      between('block', ['a', 'b']),
      {
        id: 'right',
        kind: 'set',
        axis: 'x',
        edge: { of: 'a', side: 'high' },
        from: face('low'),
        distance: 800,
      },
    ];
    const layout = lay(design(some, all));
    expect(layout.rules.map((one) => one.holds)).toEqual([true, true]);
    expect([...layout.boxes].map(([name, box]) => [name, box.x])).toEqual([
      ['a', 710],
      ['b', 200],
    ]);
  });

  it('hold a part level with an end where it would reach past it', () => {
    // The block is 180 wide at least: a to the left of the middle by half of it, c not past b.
    const some = strips(['a', 100], ['b', 300], ['c', 950]);
    const all: Rule[] = [
      { id: 'a', kind: 'set', axis: 'x', edge: { of: 'a', side: 'low' }, from: face('low'), distance: 300 },
      { id: 'b', kind: 'set', axis: 'x', edge: { of: 'b', side: 'high' }, from: face('low'), distance: 700 },
      between('block', ['a', 'b', 'c']),
    ];
    const layout = lay(design(some, all));
    expect(layout.rules.map((one) => one.holds)).toEqual([true, true, true]);
    expect([...layout.boxes].map(([name, box]) => [name, box.x])).toEqual([
      ['a', 300],
      ['b', 610],
      ['c', 610],
    ]);
  });

  it('measure to the outside of a frame whose stock lies outside its path', () => {
    // The frame's stock, 40 wide, reaches left of the strip: 60 to 240 and 90 to 180 visible.
    const frame = { ...run('f', at(100, 0, 100, 100)), side: 'outside' as const };
    const layout = lay(design([frame, ...strips(['s', 90])], [between('block', ['f', 's'])]));
    expect(layout.rules[0]?.holds).toBe(true);
    expect(layout.boxes.get('f')?.x).toBe(450);
    expect(layout.rules[0]?.result).toBe(410);
  });
});
