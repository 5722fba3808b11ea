import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Design, Joint, Part } from '../../../src/design/schema.ts';
import { areaOf, boxOf } from '../../../src/geometry/region.ts';
import { planJoinery } from '../../../src/joinery/joinery.ts';
import type { Piece } from '../../../src/joinery/piece.ts';
import type { Arranged, Arranging } from '../../../src/layout/arrange/arranged.ts';
import { copyByRule } from '../../../src/layout/arrange/copy.ts';
import { mirrorCopy } from '../../../src/layout/arrange/mirror.ts';
import { layOut } from '../../../src/layout/layout.ts';
import { runs } from '../../runs.ts';
import { at, design, plainFace, STOCKS, strip } from '../sample.ts';

function arranging(parts: readonly Part[], joints: readonly Joint[]): Arranging {
  const input = { design: { ...design(parts), joints }, face: plainFace(), keepClears: [], stocks: STOCKS };
  return { input, layout: layOut(input) };
}

const after = ({ input: { design: d } }: Arranging, { add, rules, joints }: Arranged): Design => ({
  ...d,
  parts: [...d.parts, ...add],
  rules: [...d.rules, ...rules],
  joints: [...d.joints, ...joints],
});

function piecesOf(d: Design): readonly Piece[] {
  const { parts } = layOut({ design: d, face: plainFace(), keepClears: [], stocks: STOCKS });
  const shop = { saw: { miter: 60, bevel: 48 }, fitAllowance: 12 };
  return planJoinery({
    parts,
    joints: d.joints,
    stocks: STOCKS,
    shop,
    measure: { unit: 'mm', fraction: '16' },
  }).pieces;
}

const joint = (id: string, a: string, b: string, kind: Joint['kind'], through?: string): Joint => ({
  id,
  parts: [a, b],
  kind,
  ...(through === undefined ? {} : { through }),
});

/** Where the pieces of a part lie and how much wood each shows, as numbers that a mirror leaves alone. */
function shapes(pieces: readonly Piece[], part: string, turned: boolean): string[] {
  return pieces
    .filter((piece) => piece.part === part)
    .map(({ placed, notches }) => {
      const box = boxOf(placed) ?? at(0, 0, 0, 0);
      const x = turned ? 1000 - box.x - box.w : box.x;
      const cut = notches.map(({ side, depth }) => `${side} ${depth.toFixed(2)}`).sort();
      return (
        [x, box.y, box.w, box.h, areaOf(placed)].map((n) => (Math.round(n * 100) + 0) / 100).join(' ') +
        cut.join()
      );
    })
    .sort();
}

const half = fc.record({
  x: fc.integer({ min: 0, max: 300 }),
  y: fc.integer({ min: 100, max: 1500 }),
  l: fc.integer({ min: 100, max: 480 }),
  lie: fc.constantFrom('across' as const, 'up' as const),
});
const choice = fc.record({
  a: fc.nat(6),
  b: fc.nat(6),
  kind: fc.constantFrom('miter' as const, 'butt' as const, 'half-lap' as const),
  through: fc.nat(2),
});

describe('copies', () => {
  it('give a mirrored face two halves of the same pieces, whatever joints were chosen', () => {
    let chosen = 0;
    fc.assert(
      fc.property(
        fc.array(half, { minLength: 2, maxLength: 5 }),
        fc.array(choice, { minLength: 1, maxLength: 8 }),
        (halves, choices) => {
          const own = halves.map(({ x, y, l, lie }, i) =>
            strip(`s${i}`, lie === 'up' ? at(x, y, 40, l) : at(x, y, Math.min(l, 480 - x), 40), lie),
          );
          // A rail across the whole face and a stile in its middle stay: they are their own mirror images.
          const stays = [
            strip('rail', at(0, 700, 1000, 40), 'across'),
            strip('stile', at(480, 0, 40, 2000), 'up'),
          ];
          const ids = [...own, ...stays].map((part) => part.id);
          const pairs = new Map<string, Joint>();
          choices.forEach(({ a, b, kind, through }, i) => {
            const [p, q] = [ids[a % own.length] as string, ids[b % ids.length] as string];
            const key = [p, q].sort().join();
            // What runs through the stile from the left would meet its own twin from the right in it.
            const fits = q !== 'stile' || (kind === 'butt' && through !== 0);
            if (p !== q && fits) pairs.set(key, joint(`j${i}`, p, q, kind, [p, q, undefined][through]));
          });
          const on = arranging([...own, ...stays], [...pairs.values()]);
          const found = mirrorCopy(
            on,
            own.map((part) => part.id),
            { axis: 'x', about: { of: 'face', side: 'mid' } },
          );
          chosen += found.joints.length;
          const pieces = piecesOf(after(on, found));
          own.forEach((part, i) => {
            expect(shapes(pieces, found.add[i]?.id ?? '', true)).toEqual(shapes(pieces, part.id, false));
          });
          for (const { id } of stays) expect(shapes(pieces, id, true)).toEqual(shapes(pieces, id, false));
        },
      ),
      { numRuns: runs(60) },
    );
    expect(chosen).toBeGreaterThan(0.3 * runs(60));
  });

  it('in a row carry their joints, with each other and with what they still meet', () => {
    const parts = [
      strip('post', at(100, 0, 40, 400), 'up'),
      strip('arm', at(100, 200, 90, 40), 'across'),
      strip('rail', at(0, 0, 1000, 40), 'across'),
      strip('far', at(0, 360, 150, 40), 'across'),
    ];
    const on = arranging(parts, [
      joint('a', 'post', 'arm', 'half-lap', 'post'),
      joint('b', 'rail', 'post', 'butt', 'post'),
      joint('c', 'far', 'post', 'half-lap'),
    ]);
    const found = copyByRule(on, ['post', 'arm'], { axis: 'x', gap: 200, count: 2 });
    const [post, arm] = [found.add[0]?.id, found.add[2]?.id];
    expect(found.joints.filter((j) => j.parts.includes(post ?? '')).map(({ id, ...rest }) => rest)).toEqual([
      { parts: [post, arm], kind: 'half-lap', through: post },
      { parts: ['rail', post], kind: 'butt', through: post },
    ]);
    expect(found.joints).toHaveLength(4);
  });
});
