import { difference, type Geom, xor } from 'polyclip-ts';
import { beforeAll, describe, expect, it } from 'vitest';
import { readSupplies } from '../../src/command/supplies.ts';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { characterOf } from '../../src/design/picture.ts';
import type { Design, Lettering, Picture } from '../../src/design/schema.ts';
import { flatten } from '../../src/drawing/walk.ts';
import { ringsOfPath } from '../../src/geometry/curve.ts';
import { boxOfPath } from '../../src/geometry/path.ts';
import { regionOfBox } from '../../src/geometry/region.ts';
import { distanceToSegment } from '../../src/geometry/segment.ts';
import type { Region, Ring } from '../../src/geometry/shape.ts';
import { cutOuts } from '../../src/lettering/cut-out.ts';
import { letter } from '../../src/lettering/letter.ts';
import { pathOfOutline } from '../../src/lettering/picture/outline.ts';
import { readSvg } from '../../src/lettering/picture/svg/svg.ts';
import type { Lettered, Stencil } from '../../src/lettering/result.ts';
import { stencilSet } from '../../src/lettering/stencil/layers.ts';
import { printOf } from '../../src/patterns/kind/print.ts';
import type { SignPattern } from '../../src/patterns/kind/sign.ts';
import { patternsOf } from '../../src/patterns/planPatterns.ts';
import { plan } from '../../src/plan/plan.ts';
import { EN } from '../../src/plan/words/en.ts';
import { fontOf } from './fonts.ts';
import { faultsOf } from './held.ts';
import { iconsOf } from './icons.ts';
import { lettering, stencilOptions } from './lettering.ts';

/*
 * Sixty icons of an open set, made in every way that a sign is made. Areas are told by a second polygon library
 * (polyclip-ts), from the outlines as they were read and from what each way draws.
 */

const WAYS = ['trace', 'pounce', 'stencil', 'mirrored', 'cut-out', 'printed'] as const;
const HEIGHT = 60;
const SIGN = { id: 'board', w: 400, h: 200 };
const BOARD = regionOfBox({ x: 0, y: 0, w: SIGN.w, h: SIGN.h });
const BRIDGE = 2;
const SPACING = 2;
const lato = fontOf('lato');

const pictures: Picture[] = [];
beforeAll(async () => {
  for (const { name, inside } of (await iconsOf(30)).slice(0, 60)) {
    const root = 'fill="none" stroke="#000" stroke-width="2"';
    const read = readSvg(`<svg xmlns="http://www.w3.org/2000/svg" ${root}>${inside}</svg>`);
    if (!read.ok) throw new Error(`${name}: ${read.reason.code}`);
    const { width, colors } = read.picture;
    const own = colors.map((one) => ({ ...one, finish: 'blue' }));
    pictures.push({ id: `picture-${pictures.length + 1}`, name, width, colors: own });
  }
});

const pairs = (ring: Ring, turn = (x: number) => x): [number, number][] =>
  ring.map(({ x, y }) => [turn(x), y]);
const geom = (region: Region): Geom =>
  region.map(({ outer, holes }) => [outer, ...holes].map((ring) => pairs(ring)));
/** What rings cover an odd number of times: ours run along each other nowhere. */
const ofRings = (rings: readonly Ring[], turn?: (x: number) => number): Geom => {
  const [first = [], ...others] = rings.map((ring): Geom => [[pairs(ring, turn)]]);
  return others.length > 0 ? xor(first, ...others) : first;
};
/** Of what the second library cut; holes are counted out. */
const area = (of: Geom): number =>
  difference(of, []).reduce(
    (sum, [outer = [], ...holes]) => sum + around(outer) - holes.reduce((all, hole) => all + around(hole), 0),
    0,
  );
const around = (ring: readonly (readonly [number, number])[]): number =>
  Math.abs(
    ring.reduce((twice, [x, y], i) => {
      const [nx, ny] = ring[(i + 1) % ring.length] ?? [x, y];
      return twice + x * ny - nx * y;
    }, 0) / 2,
  );
const drawnRings = (items: Parameters<typeof flatten>[0], layer: string): Ring[] =>
  flatten(items)
    .paths.filter((one) => one.layer === layer)
    .flatMap(({ path }) => ringsOfPath(path));

const iconOn = (picture: Picture, make: Lettering['make']): Lettered => {
  const text = characterOf(picture.id);
  const { lettered, checks } = letter({
    lettering: lettering(text, { capHeight: HEIGHT, make }),
    font: lato,
    pictures,
    sign: SIGN,
  });
  expect(checks, picture.name).toEqual([]);
  return lettered;
};
/** As it was read, by the second library: its height is ten thousand units. */
const meantArea = ({ colors: [color] }: Picture): number =>
  area(ofRings(ringsOfPath(pathOfOutline(color?.outline ?? '')))) * (HEIGHT / 10_000) ** 2;
const patternOf = (lettered: Lettered, mode: SignPattern['mode'], stencils: Stencil[] = []) =>
  patternsOf(
    {
      ...{ kind: 'sign', id: 'board', name: 'Board', mode, spacing: SPACING, board: BOARD, lettered },
      ...{ bent: false, seams: [], stencils: stencils.map((stencil) => ({ finish: 'blue', stencil })) },
    } as SignPattern,
    EN.patterns,
  ).flatMap(({ drawing }) => drawing.items);

describe('sixty icons', () => {
  it('cover what they were read to cover, painted, traced, mirrored, sawn out and printed', () => {
    expect(pictures).toHaveLength(60);
    for (const picture of pictures) {
      const lettered = iconOn(picture, 'trace');
      const meant = meantArea(picture);
      const [layer] = lettered.layers.filter(({ region }) => region.length > 0);
      const role = layer?.role ?? '';
      const near = (of: Geom, what: string) => {
        // Corners lie on a grid of 1/10000 mm; the outline is in steps of HEIGHT / 10000 mm.
        expect(Math.abs(area(of) - meant) / meant, `${picture.name} ${what}`).toBeLessThan(1e-3);
      };
      near(geom(layer?.region ?? []), 'seen');
      near(geom(layer?.whole ?? []), 'painted');
      const plain = ofRings(drawnRings(patternOf(lettered, 'trace'), role));
      near(plain, 'traced');
      // The mirrored pattern, turned back about the middle of its board, is the traced one.
      const turned = ofRings(drawnRings(patternOf(lettered, 'mirrored'), role), (x) => SIGN.w - x);
      near(turned, 'mirrored');
      expect(area(xor(turned, plain)), picture.name).toBeLessThan(0.05);
      const sawn = iconOn(picture, 'cut-out');
      near(
        cutOuts(sawn).flatMap(({ region }) => geom(region) as [number, number][][][]),
        'sawn',
      );
      const print = printOf({
        ...{ id: 'board', name: 'Board', board: BOARD, lettered },
        printing: { ground: '#ffffff', bleed: 3, photos: [], colors: { blue: '#0000ff' }, blocks: [] },
      });
      near(ofRings(drawnRings(print.items, role)), 'printed');
    }
  });

  it('have holes to pounce all along their outlines', () => {
    for (const picture of pictures) {
      const lettered = iconOn(picture, 'pounce');
      const rings = lettered.layers.flatMap(({ region }) =>
        region.flatMap(({ outer, holes }) => [outer, ...holes]),
      );
      const role = lettered.layers.find(({ region }) => region.length > 0)?.role ?? '';
      const dots = flatten(patternOf(lettered, 'pounce'))
        .paths.filter((one) => one.layer === role)
        .map(({ path }) => boxOfPath(path))
        .map(({ x, y, w, h }) => ({ x: x + w / 2, y: y + h / 2 }));
      // Between two holes no more than the space asked for along the line: none of its corners is farther than half of it.
      const far = rings.flat().map((p) => Math.min(...dots.map(({ x, y }) => Math.hypot(x - p.x, y - p.y))));
      expect(Math.max(...far), picture.name).toBeLessThan(SPACING / 2 + 1e-6);
      const off = dots.map((dot) =>
        Math.min(
          ...rings.flatMap((ring) =>
            ring.map((from, i) => distanceToSegment(dot, from, ring[(i + 1) % ring.length] ?? from)),
          ),
        ),
      );
      expect(Math.max(...off), picture.name).toBeLessThan(1e-6);
    }
  });

  it('hold together as stencils, whose openings and bars make up the icon', () => {
    for (const picture of pictures) {
      const lettered = iconOn(picture, 'stencil');
      const options = stencilOptions({ bridgeWidth: BRIDGE, tongue: 1 });
      const { set, checks } = stencilSet(lettered, options, BOARD);
      expect(
        checks.filter(({ severity }) => severity === 'error'),
        picture.name,
      ).toEqual([]);
      const inked = lettered.layers.filter(({ whole }) => whole.length > 0);
      set.layers.forEach(({ stencil }, i) => {
        const whole = inked[i]?.whole ?? [];
        expect(faultsOf(stencil, set.sheet, whole, BRIDGE), picture.name).toEqual([]);
        const [cut, all] = [geom(stencil.cut), geom(whole)];
        const bars = area(difference(all, cut));
        expect(area(cut) + bars, picture.name).toBeCloseTo(area(all), 1);
        const sheet = set.sheet.w * set.sheet.h;
        expect(area(geom(stencil.sheet)) + area(cut), picture.name).toBeCloseTo(sheet, 1);
      });
    }
  });

  it.each(WAYS)('are planned without an error, six to a sign: %s', (make) => {
    const signs = Array.from({ length: 10 }, (_, i) => {
      const box = { x: 100 + (i % 2) * 850, y: 80 + Math.floor(i / 2) * 160, w: 800, h: 140 };
      const part = newPart('sign', { id: `sign-${i}`, name: `Sign ${i}`, box });
      const text = pictures.slice(6 * i, 6 * i + 6).map(({ id }) => characterOf(id));
      const own = { ...part.lettering, make, lines: [{ text: text.join('') }], capHeight: HEIGHT };
      return { ...part, lettering: { ...own, fit: 'none' as const, tracking: 0.2 } };
    });
    const finishes = newDesign().finishes;
    const colored = pictures.map((one) => ({
      ...one,
      colors: one.colors.map((color) => ({ ...color, finish: finishes[0]?.id ?? null })),
    }));
    const design: Design = { ...newDesign(), parts: signs, pictures: colored };
    const made = plan(design, readSupplies(design), { effort: { nodes: 200 } });
    expect(made.checks.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(made.signs.map(({ lettered }) => lettered.glyphs.length)).toEqual(Array(10).fill(6));
    expect(made.signs.flatMap(({ lettered }) => lettered.missing)).toEqual([]);
    expect(made.patterns.length).toBeGreaterThan(0);
  });
});
