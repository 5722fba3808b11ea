import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newPart } from '../../src/design/defaults.ts';
import type { Design, Fill, Rule } from '../../src/design/schema.ts';
import { layOut } from '../../src/layout/layout.ts';
import { runs } from '../runs.ts';
import { allParts, someRules } from './arbitrary.ts';
import { at, design, layingAgain, panel, plainFace, recessedFace, STOCKS, strip } from './sample.ts';

const shift = fc.tuple(fc.integer({ min: -40, max: 40 }), fc.integer({ min: -40, max: 40 }));

/** As a hand does it: the part goes along, and the distances of the rules that set its edges go with it. */
const carried = (d: Design, part: string, [dx, dy]: readonly [number, number]): Design => ({
  ...d,
  parts: d.parts.map((p) =>
    p.id === part ? { ...p, box: { ...p.box, x: p.box.x + dx, y: p.box.y + dy } } : p,
  ),
  rules: d.rules.map((r) =>
    r.kind === 'set' && r.edge.of === part ? { ...r, distance: r.distance + (r.axis === 'x' ? dx : dy) } : r,
  ),
});

describe('a drag', () => {
  it('comes at every step to the very layout that is made from nothing', () => {
    fc.assert(
      fc.property(
        allParts,
        someRules(8),
        fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'),
        fc.array(shift, { minLength: 2, maxLength: 10 }),
        (parts, rules, part, shifts) => {
          const face = recessedFace();
          const held = new Set([part]);
          const again = layingAgain();
          let now = design(parts, rules);
          again({ design: now, face, keepClears: [], stocks: STOCKS });
          for (const by of shifts) {
            now = carried(now, part, by);
            const input = { design: now, face, keepClears: [], stocks: STOCKS, held };
            expect(again(input)).toEqual(layOut(input));
          }
          // Let go where it is: what the hand held comes back to its rules alone.
          const rest = { design: now, face, keepClears: [], stocks: STOCKS };
          expect(again(rest)).toEqual(layOut(rest));
        },
      ),
      { numRuns: runs(20) },
    );
  });

  it('of a filled shape too, through changes of how it is cut', () => {
    const pattern = fc.constantFrom<Fill['pattern']>(
      { form: 'planks', edge: 'lapped', lap: 9 },
      { form: 'lattice' },
      { form: 'courses', length: 150, bond: 'half' },
      { form: 'herringbone', length: 180 },
    );
    const shape = fc.constantFrom<Fill['shape']>({ form: 'rectangle' }, { form: 'arched', rise: 60 });
    const cut = fc.record({ pattern, shape, angle: fc.constantFrom(0, 30), gap: fc.constantFrom(0, 3.2) });
    const change = fc.oneof(
      { weight: 3, arbitrary: shift },
      { weight: 1, arbitrary: cut },
      { weight: 1, arbitrary: fc.record({ w: fc.integer({ min: 0, max: 400 }) }) },
    );
    fc.assert(
      fc.property(cut, fc.array(change, { minLength: 3, maxLength: 10 }), (first, changes) => {
        const box = at(200.3, 400.1, 300, 260);
        let fill: Fill = {
          ...newPart('fill', { id: 'fill', name: 'Fill', box, stock: 'lath' }),
          ...first,
        };
        const again = layingAgain();
        const laid = () => {
          const parts = [panel('under', at(150, 300, 500, 500)), fill];
          const input = { design: design(parts, []), face: recessedFace(), keepClears: [], stocks: STOCKS };
          const layout = again(input);
          expect(layout).toEqual(layOut(input));
          return layout;
        };
        expect(laid().parts.length).toBeGreaterThan(5);
        for (const one of changes) {
          if (Array.isArray(one)) {
            const [dx, dy] = one;
            fill = { ...fill, box: { ...fill.box, x: fill.box.x + dx / 7, y: fill.box.y + dy / 7 } };
          } else if ('w' in one) fill = { ...fill, box: { ...fill.box, ...one } };
          else fill = { ...fill, ...one };
          laid();
        }
      }),
      { numRuns: runs(3) },
    );
  });

  it('through changes of rules, locks, sizes, heights, counts and measures besides', () => {
    const what = fc.constantFrom(
      'move',
      'add',
      'drop',
      'tie',
      'lock',
      'size',
      'height',
      'count',
      'measure',
      'finish',
      'bed',
    );
    fc.assert(
      fc.property(
        allParts,
        someRules(6),
        fc.array(fc.tuple(what, fc.nat(7), shift), { minLength: 3, maxLength: 12 }),
        someRules(12),
        (parts, rules, changes, more) => {
          const again = layingAgain();
          let now = design(parts, rules);
          let face = plainFace();
          for (const [does, i, [dx, dy]] of changes) {
            const part = now.parts[i]!;
            const put = (fields: object) => {
              now = { ...now, parts: now.parts.with(i, { ...part, ...fields } as typeof part) };
            };
            if (does === 'move') now = carried(now, part.id, [dx, dy]);
            const other = more[Math.abs(dx) % (more.length || 1)];
            const govern = (next: readonly Rule[]) => {
              now = { ...now, rules: next };
            };
            if (does === 'add' && other)
              govern([...now.rules.filter((r) => r.id !== `n${i}`), { ...other, id: `n${i}` }]);
            if (does === 'drop') govern(now.rules.filter((_, k) => k !== i));
            if (does === 'tie' && other)
              govern(now.rules.map((r, k) => (k === i ? { ...other, id: r.id } : r)));
            if (does === 'lock') put({ locked: !part.locked });
            if (does === 'size') put({ box: { ...part.box, w: Math.max(0, part.box.w + dx) } });
            if (does === 'height' && 'stock' in part)
              put({ stock: part.stock === 'lath' ? 'board' : 'lath' });
            if (does === 'count' && part.kind === 'array' && part.across)
              put({ across: { ...part.across, count: 1 + Math.abs(dx) } });
            if (does === 'measure')
              now = {
                ...now,
                rules: now.rules.map((r, k): Rule => {
                  if (k !== i) return r;
                  if (r.kind === 'even') return { ...r, mode: 'centers', pitch: 50 + dx };
                  if (r.kind === 'graded') return { ...r, gap: 20 + Math.abs(dx) };
                  return r.kind === 'between' ? { ...r, insetLow: dx, insetHigh: dy } : r;
                }),
              };
            if (does === 'finish') now = { ...now, finishes: now.finishes.map((f) => ({ ...f, coats: 3 })) };
            if (does === 'bed') face = plainFace(1000 + dx);
            const input = { design: now, face, keepClears: [], stocks: STOCKS };
            expect(again(input)).toEqual(layOut(input));
          }
        },
      ),
      { numRuns: runs(20) },
    );
  });

  it('leaves what is not tied to it the same objects', () => {
    const parts = Array.from({ length: 30 }, (_, i) => strip(`s${i}`, at(20 + 30 * i, 100, 40, 500)));
    const rules: Rule[] = parts.slice(1, 10).map((part, i) => ({
      id: `r${i}`,
      kind: 'set',
      axis: 'x',
      edge: { of: part.id, side: 'low' },
      from: { of: `s${i}`, side: 'high' },
      distance: 5,
    }));
    const again = layingAgain();
    const input = { face: plainFace(2000), keepClears: [], stocks: STOCKS, held: new Set(['s0']) };
    const first = again({ ...input, design: design(parts, rules) });
    const moved = design([{ ...parts[0]!, box: at(25, 100, 40, 500) }, ...parts.slice(1)], rules);
    const after = again({ ...input, design: { ...moved, finishes: moved.finishes } });
    const fresh = first.parts.flatMap((p, i) => (p === after.parts[i] ? [] : [p.part]));
    expect(fresh).toEqual(parts.slice(0, 10).map((p) => p.id));
    expect(after.rules[3]).toEqual({ id: 'r3', holds: true, fights: [], result: 5 });
    const same = again({ ...input, design: { ...moved } });
    expect(same.parts).toBe(after.parts);
    expect(same.boxes).toBe(after.boxes);
    expect(same.rules).toBe(after.rules);
    expect(same.checks).toBe(after.checks);
  });

  it('puts a part anew that lies on one whose height has changed', () => {
    const again = layingAgain();
    const input = { face: recessedFace(), keepClears: [], stocks: STOCKS };
    const d = design([panel('a', at(200, 200, 100, 100)), { ...panel('b', at(210, 210, 20, 20)), on: 'a' }]);
    expect(again({ ...input, design: d }).parts[1]).toMatchObject({ z0: -18, z1: -6 });
    const moved = { ...d, parts: [{ ...d.parts[0]!, box: at(0, 0, 90, 100) }, d.parts[1]!] };
    expect(again({ ...input, design: moved }).parts[1]).toMatchObject({ z0: 12, z1: 24 });
  });
});
