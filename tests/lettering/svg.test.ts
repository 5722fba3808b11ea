import { describe, expect, it } from 'vitest';
import { pictureSchema } from '../../src/design/schema.ts';
import { regionOfRings, subtract } from '../../src/geometry/clip.ts';
import { ringsOfPath } from '../../src/geometry/curve.ts';
import { areaOf } from '../../src/geometry/region.ts';
import { pathOfOutline } from '../../src/lettering/picture/outline.ts';
import { readSvg } from '../../src/lettering/picture/svg/svg.ts';
import { HOSTILE } from './hostilePictures.ts';
import { iconsOf } from './icons.ts';

const opened = (inside: string, root = '') => {
  const read = readSvg(`<svg xmlns="http://www.w3.org/2000/svg"${root}>${inside}</svg>`);
  if (!read.ok) throw new Error(JSON.stringify(read.reason));
  expect(
    pictureSchema.safeParse({
      id: 'picture-1',
      name: '',
      width: read.picture.width,
      colors: read.picture.colors.map((c) => ({ ...c, finish: null })),
    }).error,
  ).toBeUndefined();
  return read.picture;
};
const regionOf = (outline: string) => regionOfRings(ringsOfPath(pathOfOutline(outline)), 'nonzero');
/** In squares of the picture's height. */
const shares = (inside: string) =>
  opened(inside).colors.map(({ outline }) => areaOf(regionOf(outline)) / 1e8);

describe('a file that is not to be trusted', () => {
  it('is refused with its reason, soon', () => {
    expect(HOSTILE.length).toBeGreaterThanOrEqual(40);
    for (const [what, code, text] of HOSTILE) {
      const before = process.cpuUsage().user;
      const read = readSvg(text);
      expect(read.ok ? 'opened' : read.reason.code, what).toBe(code);
      expect((process.cpuUsage().user - before) / 1000, what).toBeLessThan(3000);
    }
  });
});

describe('shapes', () => {
  it('cover what their formulas say', () => {
    expect(shares('<rect x="3" y="2" width="20" height="10"/>')[0]).toBeCloseTo(2, 4);
    expect(shares('<circle cx="5" cy="5" r="4"/>')[0]).toBeCloseTo(Math.PI / 4, 3);
    expect(shares('<ellipse cx="5" cy="5" rx="8" ry="4"/>')[0]).toBeCloseTo(Math.PI / 2, 3);
    // Four quarter circles and a cross of rectangles.
    expect(shares('<rect width="20" height="10" rx="2"/>')[0]).toBeCloseTo(2 - (4 - Math.PI) * 0.04, 3);
    expect(shares('<polygon points="0,0 10,0 10,10"/>')[0]).toBeCloseTo(0.5, 4);
    expect(shares('<path d="M0 0h10v10H0zm2 2v6h6V2z"/>')[0]).toBeCloseTo(0.64, 4);
    expect(shares('<path fill-rule="evenodd" d="M0 0h10v10H0zM2 2h6v6H2z"/>')[0]).toBeCloseTo(0.64, 4);
    expect(shares('<path d="M0 0h10v10H0zM2 2h6v6H2z"/>')[0]).toBeCloseTo(1, 4);
    // A parabola's segment is two thirds of its box (Archimedes).
    expect(shares('<path d="M0 0Q5 20 10 0z"/>')[0]).toBeCloseTo(2 / 3, 3);
    expect(shares('<path d="M0 5a5 5 0 1 1 10 0a5 5 0 1 1-10 0"/>')[0]).toBeCloseTo(Math.PI / 4, 3);
    // Radii that do not reach are grown; flags may run into what follows.
    expect(shares('<path d="M0 0A1 1 0 0110 0z"/>')[0]).toBeCloseTo(Math.PI / 2, 3);
  });

  it('have lines as wide as told, joined and ended as told', () => {
    const line = (more: string) =>
      shares(`<path fill="none" stroke="#000" stroke-width="2" ${more} d="M0 0H10"/>`)[0];
    // A bar 10 by 2; half disks or halves of squares beyond its ends: heights are 2.
    expect(line('')).toBeCloseTo(5, 3);
    expect(line('stroke-linecap="square"')).toBeCloseTo(6, 3);
    expect(line('stroke-linecap="round"')).toBeCloseTo(5 + Math.PI / 4, 2);
    const corner = (more: string) =>
      shares(`<path fill="none" stroke="#000" stroke-width="2" ${more} d="M1 11V1H11"/>`)[0];
    // An L of two bars 2 wide in a square of 11; what a bevel or a quarter disk leaves of its corner's square of 1.
    expect(corner('')).toBeCloseTo(40 / 121, 3);
    expect(corner('stroke-linejoin="bevel"')).toBeCloseTo(39.5 / 121, 3);
    expect(corner('stroke-linejoin="round"')).toBeCloseTo((39 + Math.PI / 4) / 121, 3);
    // Drawn out across: 20 long and 2 wide.
    const wide = shares('<path transform="scale(2 1)" stroke="#000" stroke-width="2" d="M0 0H10"/>')[0];
    expect(wide).toBeCloseTo(10, 3);
  });

  it('are moved, turned, drawn out and leaned by what is around them', () => {
    const { width } = opened('<g transform="rotate(90 3 4) translate(7)"><rect width="20" height="10"/></g>');
    expect(width).toBe(5000);
    expect(opened('<rect transform="matrix(1 0 0 2 5 5)" width="20" height="10"/>').width).toBe(10_000);
    expect(opened('<rect transform="skewX(45)" width="10" height="10"/>').width).toBe(20_000);
    expect(shares('<rect transform="skewX(45)" width="10" height="10"/>')[0]).toBeCloseTo(1, 4);
  });
});

describe('colors', () => {
  it('are told by attribute, style, class and group, the nearest word counting', () => {
    const one = (shape: string) => opened(shape).colors[0]?.color;
    expect(one('<g fill="red"><rect width="9" height="9"/></g>')).toBe('#ff0000');
    expect(one('<g fill="red"><rect fill="#0f0" width="9" height="9"/></g>')).toBe('#00ff00');
    expect(one('<rect style="fill: rgb(0, 50%, 255)" fill="red" width="9" height="9"/>')).toBe('#0080ff');
    expect(one('<style>.a{fill:#123456}</style><rect class="b a" width="9" height="9"/>')).toBe('#123456');
    expect(one('<rect width="9" height="9" color="teal" fill="currentColor"/>')).toBe('#008080');
    expect(one('<rect width="9" height="9"/>')).toBe('#000000');
  });

  it('lie over each other as shapes do, and run on under those that follow', () => {
    const { colors } = opened(
      '<rect width="10" height="10" fill="red"/><rect x="2" y="2" width="6" height="6" fill="blue"/>' +
        '<rect x="4" y="4" width="2" height="2" fill="red"/>',
    );
    expect(colors.map(({ color }) => color)).toEqual(['#ff0000', '#0000ff']);
    const [red, blue] = colors.map(({ outline }) => regionOf(outline));
    // Blue has a hole where red comes again; red lies under blue.
    expect(areaOf(blue ?? []) / 1e6).toBeCloseTo(36 - 4, 2);
    expect(areaOf(red ?? []) / 1e6).toBeCloseTo(100, 2);
    expect(areaOf(subtract(red ?? [], blue ?? [])) / 1e6).toBeCloseTo(68, 2);
  });

  it('are merged down to what a picture holds, the smallest into the nearest', () => {
    const shade = (i: number) => (i * 20).toString(16).padStart(2, '0');
    const bars = Array.from(
      { length: 12 },
      (_, i) => `<rect x="${i}" width="${i === 0 ? 0.5 : 1}" height="9" fill="#${shade(i)}0000"/>`,
    );
    const { colors } = opened(bars.join(''));
    expect(colors.length).toBe(8);
    const area = colors.reduce((sum, { outline }) => sum + areaOf(regionOf(outline)), 0);
    expect(area / 1e8).toBeCloseTo((11.5 * 9) / 81, 3);
  });
});

describe('icons of an open set', () => {
  // Against the browser's drawing of them in tests/browser/pictures.test.ts.
  it('open, all of them, in one color', async () => {
    const icons = await iconsOf(30);
    expect(icons.length).toBeGreaterThanOrEqual(60);
    for (const { name, inside } of icons) {
      const { colors } = opened(inside, ' fill="none" stroke="currentColor" stroke-width="2"');
      expect(colors.length, name).toBe(1);
    }
  });
});
