import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Finish } from '../../src/design/schema.ts';
import { colorOfLight, lightOf } from '../../src/drawing/color.ts';
import { finishOver, letterLook, looksOf, looksOfFinish } from '../../src/finish/look.ts';
import { gleamOf } from '../../src/finish/sheen.ts';
import type { LaidPart } from '../../src/layout/laid.ts';
import type { Material, Stock } from '../../src/materials/types.ts';
import { box, finish } from './build.ts';

const hex = fc.integer({ min: 0, max: 0xffffff }).map((n) => `#${n.toString(16).padStart(6, '0')}`);
const stain = (color: string) => ({ kind: 'stain' as const, color });

describe('color and light', () => {
  it('goes to light and back to the same color', () => {
    fc.assert(fc.property(hex, (color) => colorOfLight(lightOf(color)) === color));
  });

  // Middle gray of sRGB: 21.4 % of the light (IEC 61966-2-1, worked here from its formula).
  it('knows that #7f7f7f is a fifth of white', () => {
    expect(lightOf('#7f7f7f').g).toBeCloseTo(((127 / 255 + 0.055) / 1.055) ** 2.4, 12);
    expect(lightOf('#7f7f7f').g).toBeCloseTo(0.212, 3);
  });
});

describe('a finish over wood', () => {
  it('hides it as paint, shows it as clear coat', () => {
    expect(finishOver({ kind: 'paint', color: '#1e5f74' }, '#e4cfa4')).toBe('#1e5f74');
    expect(finishOver({ kind: 'clear', color: '#1e5f74' }, '#e4cfa4')).toBe('#e4cfa4');
  });

  // Beer and Lambert: two layers in a row let through the product of what each lets through.
  it('takes away light as a stain, share by share', () => {
    expect(finishOver(stain('#ffffff'), '#b97f55')).toBe('#b97f55');
    expect(finishOver(stain('#b97f55'), '#ffffff')).toBe('#b97f55');
    expect(finishOver(stain('#000000'), '#b97f55')).toBe('#000000');
    // By hand: 0x80 is 0.21586 of the light; squared 0.046596, which is 0x3d.
    expect(finishOver(stain('#808080'), '#808080')).toBe('#3d3d3d');
  });

  it('is never brighter than the wood, and does not care which layer comes first', () => {
    fc.assert(
      fc.property(hex, hex, (film, wood) => {
        const [mixed, under, turned] = [
          finishOver(stain(film), wood),
          lightOf(wood),
          finishOver(stain(wood), film),
        ];
        const light = lightOf(mixed);
        return (
          mixed === turned &&
          light.r <= under.r + 1e-9 &&
          light.g <= under.g + 1e-9 &&
          light.b <= under.b + 1e-9
        );
      }),
    );
  });
});

const material = (id: string, color: string): Material => ({
  id,
  name: id,
  density: 500,
  color,
  edgeThirst: 1,
  hardness: 'soft',
  source: 'test',
});
const board = (id: string, of: string): Stock => ({
  form: 'flat',
  id,
  name: id,
  material: of,
  width: 40,
  thickness: 19,
  lengths: [],
});
const laid = (id: string, more: Record<string, unknown>): LaidPart =>
  ({
    id,
    part: id,
    kind: 'strip',
    stock: 'pine-board',
    finish: null,
    on: 'skin',
    ...more,
  }) as unknown as LaidPart;

describe('the looks of a face', () => {
  const finishes: Finish[] = [
    finish('brown', { kind: 'stain', color: '#8a5a33' }),
    finish('blue', { color: '#1e5f74' }),
    finish('clear', { kind: 'clear' }),
  ];
  const looksWith = (parts: readonly LaidPart[]) =>
    looksOf({
      parts,
      levels: [{ id: 'skin', material: 'oak' }],
      finishes,
      stocks: new Map([board('pine-board', 'pine'), board('oak-board', 'oak')].map((s) => [s.id, s])),
      materials: new Map([material('pine', '#e4cfa4'), material('oak', '#c7a97b')].map((m) => [m.id, m])),
    });

  it('mixes one stain with each wood by itself', () => {
    const { parts } = looksWith([
      laid('a', { finish: 'brown' }),
      laid('b', { finish: 'brown', stock: 'oak-board' }),
      laid('c', { finish: 'clear', stock: 'oak-board' }),
      laid('d', {}),
      laid('e', { finish: 'blue' }),
    ]);
    expect(parts.get('a')).toBe(finishOver(stain('#8a5a33'), '#e4cfa4'));
    expect(parts.get('b')).toBe(finishOver(stain('#8a5a33'), '#c7a97b'));
    expect(parts.get('a')).not.toBe(parts.get('b'));
    expect([parts.get('c'), parts.get('d'), parts.get('e')]).toEqual(['#c7a97b', '#e4cfa4', '#1e5f74']);
  });

  it('stains what a painted shape lies on: wood of the bed, or what is painted there already', () => {
    const { parts } = looksWith([
      laid('on-bed', { kind: 'painted', finish: 'brown', stock: null }),
      laid('board', { finish: 'blue' }),
      laid('over', { kind: 'painted', finish: 'brown', stock: null, on: 'board' }),
    ]);
    expect(parts.get('on-bed')).toBe(finishOver(stain('#8a5a33'), '#c7a97b'));
    expect(parts.get('over')).toBe(finishOver(stain('#8a5a33'), '#1e5f74'));
    expect(parts.has('skin')).toBe(false);
  });

  it('keeps the color of a fitting', () => {
    const lamp = laid('lamp', { kind: 'fitting', stock: null, spec: { color: '#222222' } });
    expect(looksWith([lamp]).parts.get('lamp')).toBe('#222222');
  });

  it('letters a sign over its finish, and cut-out letters over the wood they are sawn from', () => {
    const sign = (make: string) =>
      laid('sign', { kind: 'sign', finish: 'blue', lettering: { make, stock: 'oak-board' } });
    const look = (make: string) => letterLook(looksWith([sign(make)]), finishes, 'sign', 'brown');
    expect(look('trace')).toBe(finishOver(stain('#8a5a33'), '#1e5f74'));
    expect(look('cut-out')).toBe(finishOver(stain('#8a5a33'), '#c7a97b'));
    expect(letterLook(looksWith([]), finishes, 'sign', 'brown')).toBeNull();
  });

  it('lists the colors of one finish, that of the largest area first', () => {
    const area = (finish: string, look: string | null, side: number) => ({
      finish,
      look,
      region: box(0, 0, side, side),
    });
    const shown = [
      area('brown', '#111111', 10),
      area('brown', '#222222', 12),
      area('brown', '#111111', 8),
      area('blue', '#333333', 90),
      area('brown', null, 90),
    ];
    expect(looksOfFinish(shown, 'brown')).toEqual(['#111111', '#222222']);
  });
});

describe('gleam', () => {
  const face = { x: 0, y: 0, w: 1000, h: 2000 };
  const light = { azimuth: 90, altitude: 45 };
  const peak = (sheen: Finish['sheen'], at = light) =>
    Math.max(0, ...(gleamOf(sheen, at, face)?.stops.map((s) => s.alpha) ?? []));

  it('grows with the sheen, and a flat finish has none', () => {
    expect(gleamOf('flat', light, face)).toBeNull();
    expect(peak('eggshell')).toBeLessThan(peak('satin'));
    expect(peak('satin')).toBeLessThan(peak('gloss'));
    expect(peak('gloss')).toBeLessThan(0.5);
  });

  it('fades to nothing at both sides, on the side that the light comes from', () => {
    const gleam = gleamOf('gloss', light, face);
    expect(gleam?.stops[0]?.alpha).toBeCloseTo(0, 12);
    expect(gleam?.stops.at(-1)?.alpha).toBeCloseTo(0, 12);
    // From above, halfway up the sky: the middle of the band stands half the way to the top.
    expect(((gleam?.from.y ?? 0) + (gleam?.to.y ?? 0)) / 2).toBeCloseTo(1500, 9);
    expect(gleam?.from.x).toBeCloseTo(500, 9);
  });
});
