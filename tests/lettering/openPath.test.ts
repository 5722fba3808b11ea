import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Lettering, OutlineCorner } from '../../src/design/schema.ts';
import { regionOfBox } from '../../src/geometry/region.ts';
import { letter } from '../../src/lettering/letter.ts';
import { pathTracks } from '../../src/lettering/openPath.ts';
import { standsOf } from '../../src/lettering/placed.ts';
import { setText } from '../../src/lettering/setting.ts';
import { fontOf } from './fonts.ts';
import { lettering } from './lettering.ts';

const lato = fontOf('lato');
const [W, H] = [600, 300];
const BOX = { x: 0, y: 0, w: W, h: H };

const stands = (path: readonly OutlineCorner[], text: string, shift = { x: 0, y: 0 }) => {
  const set = lettering(text, { kerning: false, capHeight: 24 });
  const made = setText(set, () => lato, 1);
  return standsOf(made, pathTracks(made.lines, path, BOX, shift));
};
const wide = (text: string) => [...text].map((c) => (lato.advance(c) * 24) / lato.capHeight);

/** A cubic from end to end as the shape language has it, and its points by Bernstein's polynomials, in plain arithmetic. */
interface Curve {
  readonly path: OutlineCorner[];
  readonly at: (t: number) => { readonly x: number; readonly y: number };
}
function cubic(p: readonly (readonly [number, number])[]): Curve {
  const [a, b, c, d] = p.map(([u, v]) => ({ u, v })) as [
    { u: number; v: number },
    { u: number; v: number },
    { u: number; v: number },
    { u: number; v: number },
  ];
  return {
    path: [{ ...a, side: { as: 'smooth', handles: [b, c] } }, d],
    at: (t) => {
      const s = 1 - t;
      const mix = (k: 'u' | 'v') =>
        s ** 3 * a[k] + 3 * s * s * t * b[k] + 3 * s * t * t * c[k] + t ** 3 * d[k];
      return { x: mix('u') * W, y: mix('v') * H };
    },
  };
}

/** Length of a curve by Simpson's rule over the speed, told by differences: nothing of the project's. */
function lengthBy(at: Curve['at'], from: number, to: number): number {
  const N = 60;
  const speed = (t: number) => {
    const [p, q] = [at(t - 1e-5), at(t + 1e-5)];
    return Math.hypot(q.x - p.x, q.y - p.y) / 2e-5;
  };
  let sum = 0;
  for (let i = 0; i <= N; i++) {
    const weight = i === 0 || i === N ? 1 : i % 2 ? 4 : 2;
    sum += weight * speed(from + ((to - from) * i) / N);
  }
  return (sum * (to - from)) / (3 * N);
}

describe('text along an open path', () => {
  it('stands on an arc by the angle of its advances: a letter a wide takes a / r', () => {
    // A rise of 100 over a chord of 600: r = (300² + 100²) / 200 = 500 (intersecting chords), its middle at the top.
    const path: OutlineCorner[] = [
      { u: 0, v: 0, side: { as: 'rise', rise: -100 } },
      { u: 1, v: 0 },
    ];
    const text = 'HARBOR LIGHT';
    const own = stands(path, text);
    const advances = wide(text);
    const center = { x: 300, y: 100 - 500 };
    own.forEach((stand, i) => {
      expect(Math.hypot(stand.x - center.x, stand.y - center.y)).toBeCloseTo(500, 1);
      const angle = Math.atan2(stand.x - center.x, stand.y - center.y);
      expect(Math.abs(stand.turn + (angle * 180) / Math.PI)).toBeLessThan(0.05);
      const next = own[i + 1];
      if (!next) return;
      const after = Math.atan2(next.x - center.x, next.y - center.y);
      const by = ((advances[i] ?? 0) + (advances[i + 1] ?? 0)) / 2;
      expect(Math.abs((after - angle) * 500 - by)).toBeLessThan(0.05);
    });
  });

  it('hangs on an arc with its letters apart at their tops, where they lean together', () => {
    const path: OutlineCorner[] = [
      { u: 0, v: 0.5, side: { as: 'rise', rise: 100 } },
      { u: 1, v: 0.5 },
    ];
    const text = 'HARBOR';
    const own = stands(path, text);
    const advances = wide(text);
    const center = { x: 300, y: 50 + 500 };
    own.slice(0, -1).forEach((stand, i) => {
      const next = own[i + 1] ?? stand;
      const angle = Math.atan2(stand.x - center.x, center.y - stand.y);
      const after = Math.atan2(next.x - center.x, center.y - next.y);
      const by = ((advances[i] ?? 0) + (advances[i + 1] ?? 0)) / 2;
      expect(Math.abs((after - angle) * (500 - 24) - by)).toBeLessThan(0.05);
    });
  });

  it('stands on smooth curves, its letters as far apart as they are wide, by the length of the curve', () => {
    const v = fc.double({ min: 0.3, max: 0.6, noNaN: true });
    fc.assert(
      fc.property(v, v, v, v, (a, b, c, d) => {
        const curve = cubic([
          [0, a],
          [0.33, b],
          [0.66, c],
          [1, d],
        ]);
        const text = 'WAVES';
        const own = stands(curve.path, text);
        // Where on the curve each letter stands, by the nearest of its points: x rises along all of it.
        const shareOf = (x: number) => {
          let [low, high] = [0, 1];
          for (let i = 0; i < 50; i++) {
            const mid = (low + high) / 2;
            if (curve.at(mid).x < x) low = mid;
            else high = mid;
          }
          return low;
        };
        const shares = own.map(({ x }) => shareOf(x));
        own.forEach((stand, i) => {
          expect(Math.abs(curve.at(shares[i] ?? 0).y - stand.y)).toBeLessThan(0.1);
        });
        const advances = wide(text);
        for (let i = 0; i + 1 < own.length; i++) {
          const by = ((advances[i] ?? 0) + (advances[i + 1] ?? 0)) / 2;
          // On their baselines never nearer than that; farther only where the way turns to their tops.
          const far = lengthBy(curve.at, shares[i] ?? 0, shares[i + 1] ?? 0);
          expect(far).toBeGreaterThan(by - 0.1);
          const turned = Math.abs((own[i + 1]?.turn ?? 0) - (own[i]?.turn ?? 0)) * (Math.PI / 180);
          expect(far).toBeLessThan(by + 24 * turned * 1.5 + 0.3);
        }
        // The middle of the text, by its ink, stands at the middle of the way: 3 mm for the white beside its first and last letter.
        const ends = [
          lengthBy(curve.at, 0, shares[0] ?? 0) - (advances[0] ?? 0) / 2,
          lengthBy(curve.at, shares.at(-1) ?? 1, 1) - (advances.at(-1) ?? 0) / 2,
        ];
        expect(Math.abs((ends[0] ?? 0) - (ends[1] ?? 0))).toBeLessThan(3);
      }),
      { numRuns: 30 },
    );
  });

  it('reads from left to right whichever end was drawn first', () => {
    const there: OutlineCorner[] = [
      { u: 0, v: 0.2, side: { as: 'rise', rise: -60 } },
      { u: 0.6, v: 0.5 },
      { u: 1, v: 0.5 },
    ];
    const back: OutlineCorner[] = [
      { u: 1, v: 0.5 },
      { u: 0.6, v: 0.5, side: { as: 'rise', rise: 60 } },
      { u: 0, v: 0.2 },
    ];
    const [a, b] = [stands(there, 'PIER'), stands(back, 'PIER')];
    a.forEach((stand, i) => {
      expect(stand.x).toBeCloseTo(b[i]?.x ?? 0, 6);
      expect(stand.y).toBeCloseTo(b[i]?.y ?? 0, 6);
      expect(stand.turn).toBeCloseTo(b[i]?.turn ?? 0, 6);
    });
  });

  it('has lines above each other in parallels, the last on the path, and moves along and off it', () => {
    const level: OutlineCorner[] = [
      { u: 0, v: 0.5 },
      { u: 1, v: 0.5 },
    ];
    const set = {
      ...lettering('AB', { kerning: false, capHeight: 24 }),
      lines: [{ text: 'AB' }, { text: 'AB' }],
    };
    const made = setText(set, () => lato, 1);
    const own = standsOf(made, pathTracks(made.lines, level, BOX, { x: 30, y: 7 }));
    const between = (made.lines[0]?.baseline ?? 0) - (made.lines[1]?.baseline ?? 0);
    expect(own.slice(2).map(({ y }) => y)).toEqual([157, 157]);
    for (const { y } of own.slice(0, 2)) expect(y).toBeCloseTo(157 + between, 6);
    const unmoved = standsOf(made, pathTracks(made.lines, level, BOX, { x: 0, y: 0 }));
    own.forEach((stand, i) => {
      expect(stand.x).toBeCloseTo((unmoved[i]?.x ?? 0) + 30, 6);
    });
  });

  const signed = (path: readonly OutlineCorner[], text: string, more: Partial<Lettering> = {}) =>
    letter({
      lettering: { ...lettering(text, { capHeight: 24, along: 'path', ...more }), path },
      font: lato,
      sign: { id: 's', w: W, h: H },
      board: regionOfBox(BOX),
      free: true,
    });

  it('is told where it is longer than its path, and where a letter stands over a sharp corner', () => {
    const roof: OutlineCorner[] = [
      { u: 0.2, v: 0.1 },
      { u: 0.5, v: 0.9 },
      { u: 0.8, v: 0.1 },
    ];
    const codes = (text: string, path = roof) =>
      signed(path, text).checks.map(({ code, figures }) => [code, figures.by ?? figures.characters]);
    // Three letters: the middle one stands over the corner; two have it between them.
    expect(codes('ABA')).toEqual([['lettering.corner', 'B']]);
    expect(codes('AA')).toEqual([]);
    const short: OutlineCorner[] = [
      { u: 0.45, v: 0.5 },
      { u: 0.55, v: 0.5 },
    ];
    expect(codes('FAR TOO LONG', short)).toEqual([['lettering.off-sign', 'path']]);
  });

  it('fills its path but for a margin at each end where it is fitted', () => {
    const path: OutlineCorner[] = [
      { u: 0, v: 0, side: { as: 'rise', rise: -100 } },
      { u: 1, v: 0 },
    ];
    const { lettered } = signed(path, 'HARBOR', { fit: 'width', margin: 25 });
    // The arc of r 500 over a chord of 600 is 2 r asin(0.6) long.
    const arc = 1000 * Math.asin(0.6);
    const set = setText(lettering('HARBOR', { capHeight: lettered.capHeight }), () => lato, 1);
    const [line] = set.lines;
    expect(Math.abs((line?.right ?? 0) - (line?.left ?? 0) - (arc - 50))).toBeLessThan(0.2);
  });
});
