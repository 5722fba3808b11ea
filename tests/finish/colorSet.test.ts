import { describe, expect, it } from 'vitest';
import colorSets from '../../assets/color-sets.json';
import { newFinish } from '../../src/design/defaults.ts';
import { isLettered } from '../../src/design/made.ts';
import type { Finish } from '../../src/design/schema.ts';
import { type ColorSet, inColors } from '../../src/finish/colorSet.ts';
import { chanceOf } from '../chance.ts';
import { STARTERS, starter } from '../plan/starters.ts';
import { runs } from '../runs.ts';

const SETS = colorSets as unknown as readonly ColorSet[];

/** Relative luminance and contrast as WCAG 2.x defines them, written again. */
function luminanceOf(color: string): number {
  const share = [1, 3, 5].map((from) => {
    const c = Number.parseInt(color.slice(from, from + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return [0.2126, 0.7152, 0.0722].reduce((sum, weight, i) => sum + weight * (share[i] ?? 0), 0);
}
const contrastOf = (a: string, b: string) =>
  (Math.max(luminanceOf(a), luminanceOf(b)) + 0.05) / (Math.min(luminanceOf(a), luminanceOf(b)) + 0.05);

const random = (seed: number): Finish[] => {
  const chance = chanceOf(seed);
  return Array.from({ length: 1 + Math.floor(chance() * 7) }, (_, i) => {
    const color = `#${Math.floor(chance() * 0xffffff)
      .toString(16)
      .padStart(6, '0')}`;
    return newFinish(`f${i}`, `f${i}`, color);
  });
};

describe.each(SETS.map((set) => [set.id, set] as const))('%s', (_, set) => {
  it('raises the contrasts of any colors to one power, so that darker stays darker', () => {
    for (let seed = 0; seed < runs(60); seed++) {
      const finishes = random(seed);
      const other = inColors(finishes, set);
      const lights = finishes.map(({ color }, i) => ({
        was: Math.log(luminanceOf(color) + 0.05),
        is: Math.log(luminanceOf(other[i]?.color ?? '') + 0.05),
      }));
      lights.sort((a, b) => a.was - b.was);
      const [first, last] = [lights[0], lights.at(-1)];
      if (!first || !last || last.was - first.was < 0.01) continue;
      const power = (last.is - first.is) / (last.was - first.was);
      expect(power).toBeGreaterThan(0);
      for (const { was, is } of lights) {
        // Colors are told in 256 steps of each channel.
        expect(Math.abs(is - first.is - power * (was - first.was)), JSON.stringify(finishes)).toBeLessThan(
          0.06,
        );
      }
    }
  });

  it('keeps the letters of every starter legible, 3 to 1 (WCAG 2.x, 1.4.3, large text)', () => {
    for (const name of STARTERS) {
      const { finishes, parts } = starter(name);
      const other = inColors(finishes, set);
      const colorOf = (all: readonly Finish[], id: string | null) => all.find((f) => f.id === id)?.color;
      for (const part of parts.filter(isLettered)) {
        if (!('lettering' in part)) continue;
        const of = (all: readonly Finish[]) => {
          const [letters, board] = [colorOf(all, part.lettering.finish), colorOf(all, part.finish)];
          return letters && board ? contrastOf(letters, board) : null;
        };
        const [was, is] = [of(finishes), of(other)];
        if (was !== null && was >= 3) expect(is, `${name} ${part.name} ${was}`).toBeGreaterThanOrEqual(3);
      }
    }
  });

  it('leaves stains and clear coats alone, and all of a finish but its color and sheen', () => {
    const [paint, stain] = [
      newFinish('a', 'a', '#884422'),
      { ...newFinish('b', 'b', '#553311'), kind: 'stain' as const },
    ];
    const [painted, stained] = inColors([paint, stain], set);
    expect(stained).toBe(stain);
    expect({ ...painted, color: '', sheen: '' }).toEqual({ ...paint, color: '', sheen: '' });
  });
});

describe('the table of sets', () => {
  it('tells colors from dark to light', () => {
    for (const set of SETS) {
      const told = 'colors' in set ? set.colors : set.range;
      const light = told.map(luminanceOf);
      expect(light).toEqual([...light].sort((a, b) => a - b));
    }
  });
});
