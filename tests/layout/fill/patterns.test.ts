import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newPart } from '../../../src/design/defaults.ts';
import type { Fill } from '../../../src/design/schema.ts';
import { intersect } from '../../../src/geometry/clip.ts';
import { areaOf, boxOf } from '../../../src/geometry/region.ts';
import type { Box, Point, Region } from '../../../src/geometry/shape.ts';
import { reflectPart } from '../../../src/layout/arrange/reflect.ts';
import { type FillPiece, piecesOfFill } from '../../../src/layout/fill/fill.ts';
import { outlineOf } from '../../../src/layout/place/outlines.ts';
import { regionOfShape } from '../../../src/layout/place/shape.ts';
import type { FlatStock, SheetStock, Stock } from '../../../src/materials/types.ts';
import { runs } from '../../runs.ts';

const board = (id: string, width: number): FlatStock => ({
  form: 'flat',
  id,
  name: id,
  material: 'pine',
  width,
  thickness: 10,
  lengths: [],
});

function fillOf(of: Box, more: Partial<Fill>): Fill {
  return { ...newPart('fill', { id: 'fill', name: 'Fill', box: of, stock: 'board' }), angle: 0, ...more };
}

const sheet = (length: number, width: number): SheetStock => ({
  form: 'sheet',
  id: 'sheet',
  name: 'sheet',
  material: 'mdf',
  thickness: 6,
  grain: false,
  sizes: [{ length, width, price: 0 }],
});

const piecesOf = (of: Box, width: number, more: Partial<Fill>): FillPiece[] =>
  piecesOfFill(
    fillOf(of, more),
    of,
    new Map<string, Stock>([
      ['sheet', sheet(96, 48)],
      ['board', board('board', width)],
      ['batten', board('batten', 1.5)],
    ]),
  );

const at = (w: number, h: number): Box => ({ x: 0, y: 0, w, h });

const middleOf = (region: Region): Point => {
  const { x, y, w, h } = boxOf(region) ?? at(0, 0);
  return { x: x + w / 2, y: y + h / 2 };
};

const whole = (pieces: readonly FillPiece[], area: number): number =>
  pieces.filter(({ region }) => Math.abs(areaOf(region) - area) < 1e-6).length;

/** Whether a point lies within a region, by the crossings of a ray; none of the tool's own code. */
const holds = (region: Region, p: Point): boolean =>
  region
    .flatMap(({ outer, holes }) => [outer, ...holes])
    .reduce((inside, ring) => {
      const crossed = ring.filter((a, i) => {
        const b = ring[(i + 1) % ring.length] as Point;
        return a.y > p.y !== b.y > p.y && p.x < a.x + ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y);
      });
      return crossed.length % 2 === 1 ? !inside : inside;
    }, false);

const measure = (min: number, max: number) =>
  fc.integer({ min: min * 1000, max: max * 1000 }).map((n) => n / 1000);

const pattern = fc.oneof(
  fc.record({
    form: fc.constant('planks' as const),
    edge: fc.constant('square' as const),
    lap: fc.constant(0),
    length: measure(120, 700),
  }),
  fc.record({
    form: fc.constant('courses' as const),
    length: measure(40, 400),
    bond: fc.constantFrom('half' as const, 'third' as const, 'stacked' as const),
  }),
  fc.record({ form: fc.constant('basket' as const), count: fc.integer({ min: 2, max: 5 }) }),
  fc.record({ form: fc.constant('herringbone' as const), length: measure(160, 400) }),
  fc.record({
    form: fc.constant('chevron' as const),
    span: measure(60, 400),
    slope: fc.integer({ min: 10, max: 70 }),
  }),
);

const setting = fc.record({
  pattern,
  width: measure(40, 150),
  angle: fc.oneof(fc.constantFrom(0, 45, 90), fc.integer({ min: -180, max: 180 })),
  start: fc.constantFrom<Fill['start'][]>('balanced', 'piece', 'gap', 'low', 'high'),
  shape: fc.constantFrom<Fill['shape'][]>(
    { form: 'rectangle' },
    outlineOf('pointed').first({ w: 900, h: 700 }),
    outlineOf('ring').first({ w: 900, h: 700 }),
    outlineOf('scalloped').first({ w: 900, h: 700 }),
  ),
});

const BOX: Box = { x: 37, y: -50, w: 900, h: 700 };

describe('patterns of pieces', () => {
  it('without a gap cover their shape once: by area, and at points taken by chance', () => {
    const points = fc.array(fc.record({ u: measure(0, 1), v: measure(0, 1) }), {
      minLength: 20,
      maxLength: 20,
    });
    fc.assert(
      fc.property(setting, points, ({ width, ...more }, chosen) => {
        const pieces = piecesOf(BOX, width, { ...more, gap: 0 });
        const region = regionOfShape(more.shape, BOX);
        const sum = pieces.reduce((total, piece) => total + areaOf(piece.region), 0);
        expect(Math.abs(sum - areaOf(region))).toBeLessThan(1e-6);
        for (const { u, v } of chosen) {
          // Off the lines on which pieces meet.
          const p = { x: BOX.x + u * BOX.w + Math.SQRT2 / 977, y: BOX.y + v * BOX.h + Math.SQRT2 / 1013 };
          const over = pieces.filter((piece) => holds(piece.region, p)).length;
          expect(over).toBe(holds(region, p) ? 1 : 0);
        }
        const names = new Set(pieces.map(({ column, row }) => `${column},${row}`));
        expect(names.size).toBe(pieces.length);
      }),
      { numRuns: runs(6) },
    );
  });

  it('in a mirror lie where the mirror shows them', () => {
    const axis = fc.constantFrom('x' as const, 'y' as const);
    fc.assert(
      fc.property(setting, measure(0, 8), axis, ({ width, ...more }, gap, over) => {
        const fill = fillOf(BOX, { ...more, gap });
        const image = reflectPart(fill, over) as Fill;
        const middles = (of: Fill, mirrored: boolean) =>
          piecesOf(BOX, width, of)
            .filter(({ region }) => areaOf(region) > 1)
            .map(({ column, row, region }) => {
              const p = middleOf(region);
              const x = mirrored && over === 'x' ? 2 * BOX.x + BOX.w - p.x : p.x;
              const y = mirrored && over === 'y' ? 2 * BOX.y + BOX.h - p.y : p.y;
              return { name: `${column},${row}`, x, y, area: areaOf(region) };
            })
            .sort((a, b) => (a.name < b.name ? -1 : 1));
        const [own, shown] = [middles(fill, true), middles(image, false)];
        expect(shown.map(({ name }) => name)).toEqual(own.map(({ name }) => name));
        shown.forEach((piece, i) => {
          expect(piece.area).toBeCloseTo(own[i]?.area ?? 0, 4);
          // The crown of an arc may lie between two of its points.
          expect(Math.hypot(piece.x - (own[i]?.x ?? 0), piece.y - (own[i]?.y ?? 0))).toBeLessThan(0.1);
        });
        const back = reflectPart(image, over) as Fill;
        expect({ ...back, flip: back.flip }).toEqual({ ...fill, flip: undefined });
      }),
      { numRuns: runs(4) },
    );
  });
});

describe('end joints of long boards', () => {
  it('leave no board over the longest, and lie half a board from those beside', () => {
    const settings = fc.record({
      most: measure(120, 700),
      width: measure(40, 150),
      rise: measure(0, 600),
      lap: fc.oneof(fc.constant(0), measure(5, 20)),
      hanging: fc.boolean(),
    });
    fc.assert(
      fc.property(settings, ({ most, width, rise, lap, hanging }) => {
        const peak = (700 - rise) / 700;
        const gable = [
          { u: 0, v: 0 },
          { u: 1, v: 0 },
          { u: 1, v: peak },
          { u: 0.5, v: 1 },
          { u: 0, v: peak },
        ];
        const points = hanging ? gable.map(({ u, v }) => ({ u: 1 - u, v: 1 - v })) : gable;
        const shape: Fill['shape'] = { form: 'polygon', points };
        const rows = new Map<number, { from: number; to: number }[]>();
        const plank = { form: 'planks', edge: lap > 0 ? 'lapped' : 'square', lap, length: most } as const;
        // A board is as long as its wood, with what lies under the next one.
        for (const { column, wood } of piecesOf(BOX, width, { pattern: plank, shape, start: 'low' })) {
          const { x, w } = boxOf(wood) ?? at(0, 0);
          rows.set(column, [...(rows.get(column) ?? []), { from: x, to: x + w }]);
        }
        const joints = [...rows.values()].map((row) => {
          const ends = [...row].sort((a, b) => a.from - b.from);
          for (const { from, to } of ends) expect(to - from).toBeLessThanOrEqual(most + 1e-6);
          // Two boards that would do as one are one.
          for (const [i, one] of ends.slice(1).entries())
            expect(one.to - (ends[i]?.from ?? 0)).toBeGreaterThan(most - 1e-6);
          return ends.slice(1).map(({ from }) => from);
        });
        const each = BOX.w / Math.ceil(BOX.w / most);
        for (const [i, row] of joints.slice(1).entries())
          for (const x of row)
            for (const y of joints[i] ?? []) expect(Math.abs(x - y)).toBeGreaterThan(each / 2 - 1e-6);
      }),
      { numRuns: runs(20) },
    );
    const whole = { form: 'planks', edge: 'square', lap: 0, length: 0 } as const;
    expect(piecesOf(BOX, 100, { pattern: whole, start: 'low' })).toHaveLength(BOX.h / 100);
    // A length that no list of boards has room for.
    const dust = { ...whole, length: 1e-8 };
    expect(piecesOf(at(10, 100), 100, { pattern: dust, start: 'low' })).toHaveLength(10);
  });
});

describe('openings of a fill', () => {
  it('are left free, and pieces lie where they lay without them', () => {
    fc.assert(
      fc.property(setting, measure(20, 300), measure(20, 250), ({ width, ...more }, side, foot) => {
        const opening = {
          id: 'door',
          shape: { form: 'rectangle' as const },
          margin: { left: side, right: 300, bottom: foot, top: 250 },
        };
        const hole = { x: BOX.x + side, y: BOX.y + foot, w: BOX.w - side - 300, h: BOX.h - foot - 250 };
        const whole = piecesOf(BOX, width, more);
        const open = new Map(
          piecesOf(BOX, width, { ...more, openings: [opening] }).map((p) => [`${p.column},${p.row}`, p]),
        );
        const { x, y, w, h } = hole;
        const ring = [
          { x, y },
          { x: x + w, y },
          { x: x + w, y: y + h },
          { x, y: y + h },
        ];
        for (const piece of whole) {
          // By a polygon library that works on a grid of a ten-thousandth of a millimeter.
          const left = areaOf(piece.region) - areaOf(intersect(piece.region, [{ outer: ring, holes: [] }]));
          const found = open.get(`${piece.column},${piece.row}`);
          expect(Math.abs((found ? areaOf(found.region) : 0) - left)).toBeLessThan(0.5);
        }
      }),
      {
        numRuns: runs(4),
        // Under a pointed head the opening takes away where rows begin: their boards still begin there.
        examples: [
          [
            {
              pattern: { form: 'planks', edge: 'square', lap: 0, length: 120 },
              width: 40,
              angle: 0,
              start: 'balanced',
              shape: { form: 'pointed', rise: 700 },
            },
            20,
            20,
          ],
        ],
      },
    );
  });
});

describe('counts by hand', () => {
  // BIA Technical Note 10B and Masonry Magazine, October 1993: three courses of modular brick take 8 in, so that 15 take
  // 40; a module of 8 by 8/3 in counts 6.75 a square foot (check-values-2.md, section 20).
  it('modular brick: 15 courses to 40 in, 6.75 to the square foot', () => {
    const joint = 3 / 8;
    const brick = { length: 8 - joint, height: 8 / 3 - joint };
    const of = at(96 - joint, 40 - joint);
    const pieces = piecesOf(of, brick.height, {
      pattern: { form: 'courses', length: brick.length, bond: 'stacked' },
      gap: joint,
      start: 'low',
    });
    expect(new Set(pieces.map(({ row }) => row)).size).toBe(15);
    expect(whole(pieces, brick.length * brick.height)).toBe(6.75 * ((96 * 40) / 144));
    expect(pieces).toHaveLength(180);
  });

  it('running bond: every other course begins and ends with half a piece', () => {
    const pieces = piecesOf(at(96, 96), 4, {
      pattern: { form: 'courses', length: 8, bond: 'half' },
      start: 'low',
    });
    expect(whole(pieces, 32)).toBe(12 * 12 + 12 * 11);
    expect(whole(pieces, 16)).toBe(24);
    // Pavers of 4 by 8 in: 4.5 to the square foot.
    expect(12 * 12 + 12 * 11 + 24 / 2).toBe(4.5 * 64);
  });

  // A quarter of a piece in half bond, a sixth in third bond and half of one in stacked bond at the least, less half a joint:
  // what is left of a pitch is shared out over twice as many places as courses differ by (plane geometry).
  it('courses from the middle have no sliver at an end', () => {
    const wall = fc.record({
      room: measure(300, 900),
      length: measure(60, 250),
      gap: fc.oneof(fc.constant(0), measure(2, 12)),
      bond: fc.constantFrom('half' as const, 'third' as const, 'stacked' as const),
    });
    fc.assert(
      fc.property(wall, ({ room, length, gap, bond }) => {
        const shares = { stacked: 2, half: 4, third: 6 };
        const pieces = piecesOf(at(room, 300), 40, { pattern: { form: 'courses', length, bond }, gap });
        const widths = pieces.map(({ region }) => boxOf(region)?.w ?? 0);
        expect(Math.min(...widths)).toBeGreaterThan((length + gap) / shares[bond] - gap - 1e-6);
        // Left and right the same, if not of one course.
        const ends = (side: 'left' | 'right') =>
          new Set(
            pieces
              .map(({ region }) => boxOf(region) ?? at(0, 0))
              .filter(({ x, w }) => (side === 'left' ? x < 1e-6 : x + w > room - 1e-6))
              .map(({ w }) => w.toFixed(5)),
          );
        if (gap === 0) expect(ends('left')).toEqual(ends('right'));
      }),
      { numRuns: runs(20) },
    );
  });

  it('basket weave of pavers: 4.5 to the square foot', () => {
    const pieces = piecesOf(at(96, 96), 4, { pattern: { form: 'basket', count: 2 }, start: 'low' });
    expect(pieces).toHaveLength(4.5 * 64);
    expect(whole(pieces, 32)).toBe(4.5 * 64);
  });

  // Herringbone of two to one repeats after four pieces on 8 squares of their width (the same section).
  it('herringbone of two to one: eight pieces, four each way, in a window of four widths square', () => {
    const pieces = piecesOf(at(60, 60), 4, { pattern: { form: 'herringbone', length: 8 } });
    const inWindow = pieces.filter(({ region }) => {
      const p = middleOf(region);
      // The middle piece lies about the middle of the room; the window begins off every middle.
      return p.x > 21 && p.x < 37 && p.y > 21 && p.y < 37;
    });
    expect(inWindow).toHaveLength(8);
    expect(inWindow.filter(({ leg }) => leg.angle === 0)).toHaveLength(4);
    expect(whole(inWindow, 32)).toBe(8);
  });

  it('herringbone: a V, or a whole piece at a corner, where it is asked for', () => {
    const pieces = (start: Fill['start']) =>
      piecesOf(at(60, 50), 4, { pattern: { form: 'herringbone', length: 12 }, start });
    const boxes = (start: Fill['start']) => pieces(start).map(({ region }) => boxOf(region));
    const has = (start: Fill['start'], box: Box) =>
      expect(boxes(start)).toContainEqual({
        x: expect.closeTo(box.x, 9),
        y: expect.closeTo(box.y, 9),
        w: expect.closeTo(box.w, 9),
        h: expect.closeTo(box.h, 9),
      });
    // A flat piece in the middle of 60 by 50.
    has('piece', { x: 24, y: 23, w: 12, h: 4 });
    has('balanced', { x: 24, y: 23, w: 12, h: 4 });
    // The square in which the two of a V meet in the middle: the flat one ends at it, the upright one has its head in it.
    has('gap', { x: 16, y: 23, w: 12, h: 4 });
    has('gap', { x: 28, y: 15, w: 4, h: 12 });
    has('low', { x: 0, y: 0, w: 12, h: 4 });
    has('high', { x: 56, y: 38, w: 4, h: 12 });
    has('high', { x: 44, y: 46, w: 12, h: 4 });
  });

  // Laths of 1 1/2 in with openings of 2 3/4 in leave 0.4187 of the area open, of 1 in 0.1600 (section 19).
  it.each([
    [2.75, 0.4187],
    [1, 0.16],
  ])('lattice with openings of %d in: %d open', (gap, open) => {
    const side = 8 * (1.5 + gap);
    const pieces = piecesOf(at(side, side), 1.5, { pattern: { form: 'lattice' }, gap, start: 'low' });
    const [under, over] = [0, 1].map((row) => pieces.filter((one) => one.row === row));
    expect(under).toHaveLength(8);
    expect(over).toHaveLength(8);
    const hidden = (laths: readonly FillPiece[] = []) =>
      laths.reduce((sum, { region }) => sum + areaOf(region), 0) / (side * side);
    expect((1 - hidden(under)) * (1 - hidden(over))).toBeCloseTo(open, 4);
    expect(over?.every(({ lift }) => lift === 10)).toBe(true);
  });

  it('lattice let into each other: every crossing halved in both, in one layer, and seen once', () => {
    const side = 8 * (1.5 + 2);
    const pieces = piecesOf(at(side, side), 1.5, {
      pattern: { form: 'lattice', halved: true },
      gap: 2,
      start: 'low',
    });
    expect(pieces).toHaveLength(16);
    for (const { lift, relief, row, region } of pieces) {
      expect(lift).toBe(0);
      expect(relief).toMatchObject({ side: row === 0 ? 'face' : 'back', depth: 5, lacking: 0, beyond: 0 });
      expect(relief?.sunk).toHaveLength(8);
      for (const one of relief?.sunk ?? []) expect(areaOf([one])).toBeCloseTo(1.5 * 1.5, 9);
      expect(region).toHaveLength(row === 0 ? 8 : 1);
    }
    const all = pieces.reduce((sum, { region }) => sum + areaOf(region), 0);
    expect(all).toBeCloseTo(2 * 8 * 1.5 * side - 64 * 1.5 * 1.5, 6);
  });

  // A wall of 20 ft takes 26 boards of 9 1/4 in, or 22 with gaps of 2 in (section 19).
  it.each([
    [0, 26],
    [2, 22],
  ])('boards of 9 1/4 in and gaps of %d in on 20 ft: %d', (gap, count) => {
    const pieces = piecesOf(at(240, 96), 9.25, {
      pattern: { form: 'battened', stock: 'batten' },
      angle: 90,
      gap,
      start: 'low',
    });
    expect(pieces.filter(({ stock }) => stock === 'board')).toHaveLength(count);
    const battens = pieces.filter(({ stock }) => stock === 'batten');
    expect(battens).toHaveLength(count - 1);
    for (const [i, { region, lift }] of battens.entries()) {
      expect(middleOf(region).x).toBeCloseTo((i + 1) * (9.25 + gap) - gap / 2, 9);
      expect(lift).toBe(10);
    }
  });
});

describe('sheet with grooves', () => {
  const grooved = (of: Box, face: number, groove: number, start: Fill['start']) =>
    piecesOf(of, 1, {
      stock: 'sheet',
      pattern: { form: 'grooved', face, depth: 1 },
      gap: groove,
      angle: 90,
      start,
    }).sort((a, b) => a.column - b.column || a.row - b.row);

  // The rule of equal ends (US Navy, Builder, NAVEDTRA 14044, chapter 7; check-values-2.md, section 19): of faces m and
  // grooves g, n - 1 whole ones and two ends of (W - n g - (n - 1) m) / 2 each.
  it.each([
    [60, 1.5, 0.125],
    [38, 2, 0.25],
    [41.3, 1.6, 0.1],
  ])(
    '%d wide, faces of %d and grooves of %d: both end boards match, and lie in one row',
    (width, face, groove) => {
      const pieces = grooved(at(width, 40), face, groove, 'balanced');
      const grooves = pieces
        .flatMap(({ relief }) => relief?.sunk ?? [])
        .map((one) => boxOf([one]) ?? at(0, 0))
        .sort((a, b) => a.x - b.x);
      const faces = [0, ...grooves.map(({ x, w }) => x + w)].map((x, i) => (grooves[i]?.x ?? width) - x);
      expect(faces[0]).toBeCloseTo(faces.at(-1) ?? 0, 9);
      for (const one of faces.slice(1, -1)) expect(one).toBeCloseTo(face, 9);
      const whole = faces.length - 2;
      expect(faces[0]).toBeCloseTo((width - whole * face - (whole + 1) * groove) / 2, 9);
      expect(faces[0]).toBeGreaterThan((face - groove) / 2 - 1e-9);
      for (const one of grooves) expect(one.w).toBeCloseTo(groove, 9);
      // Of sheets 48 wide: none wider, and every joint is the edge of a groove.
      const boxes = pieces.map(({ region }) => boxOf(region) ?? at(0, 0));
      expect(boxes.length).toBe(width > 48 ? 2 : 1);
      for (const { w } of boxes) expect(w).toBeLessThanOrEqual(48);
      for (const { x, w } of boxes.slice(0, -1))
        expect(grooves.some((one) => Math.abs(one.x + one.w - x - w) < 1e-9)).toBe(true);
      expect(boxes.reduce((sum, { w }) => sum + w, 0)).toBeCloseTo(width, 9);
    },
  );

  it('lacks the wood of its grooves, and has their walls to paint', () => {
    const [one] = grooved(at(20, 40), 2, 0.5, 'low');
    // Eight grooves of half an inch by 40, one deep.
    expect(one?.relief?.sunk).toHaveLength(8);
    expect(one?.relief?.lacking).toBeCloseTo(8 * 0.5 * 40, 6);
    expect(one?.relief?.beyond).toBeCloseTo(8 * 2 * 40, 6);
  });

  it('longer than its sheets is pieced, each no longer than a sheet', () => {
    const lengths = grooved(at(20, 150), 2, 0.5, 'low').map(({ region }) => boxOf(region)?.h ?? 0);
    expect(lengths).toHaveLength(2);
    for (const length of lengths) expect(length).toBeLessThanOrEqual(96);
  });
});

describe('courses with painted joints', () => {
  it('lie as cut pieces do, on sheets that cover the shape once', () => {
    for (const bond of ['half', 'third', 'stacked'] as const)
      for (const start of ['balanced', 'low', 'high', 'gap'] as const) {
        const of = at(130, 90);
        const courses = { form: 'courses', length: 8, bond } as const;
        const shared = {
          stock: 'sheet',
          width: 2.25,
          gap: 0.375,
          start,
          shape: outlineOf('pointed').first(of),
        };
        const cut = piecesOf(of, 1, { ...shared, pattern: courses });
        const all = piecesOf(of, 1, { ...shared, pattern: { ...courses, joints: { finish: null } } });
        const painted = all.filter(({ on }) => on !== undefined);
        const sheets = all.filter(({ on }) => on === undefined);
        expect(painted.map(({ column, row, region }) => ({ column, row, region }))).toEqual(
          cut.map(({ column, row, region }) => ({ column, row, region })),
        );
        // What is painted is laid after what it is painted on.
        expect(all.slice(0, sheets.length)).toEqual(sheets);
        const names = sheets.map(({ column, row }) => `${column},${row}`);
        expect(new Set([...names, ...painted.map(({ column, row }) => `${column},${row}`)]).size).toBe(
          all.length,
        );
        for (const { on } of painted) expect(names).toContain(on);
        const area = sheets.reduce((sum, { region }) => sum + areaOf(region), 0);
        expect(area).toBeCloseTo(areaOf(regionOfShape(shared.shape, of)), 6);
        for (const { region } of sheets) {
          const { w, h } = boxOf(region) ?? at(0, 0);
          expect(w).toBeLessThanOrEqual(96);
          expect(h).toBeLessThanOrEqual(48);
        }
      }
  });
});

describe('pieces ripped from sheet', () => {
  it('lie as boards of their width do', () => {
    for (const form of ['courses', 'herringbone', 'planks', 'lattice'] as const) {
      const pattern = {
        courses: { form: 'courses', length: 8, bond: 'half' },
        herringbone: { form: 'herringbone', length: 12 },
        planks: { form: 'planks', edge: 'lapped', lap: 0.5 },
        lattice: { form: 'lattice' },
      }[form] as Fill['pattern'];
      const boards = piecesOf(at(60, 50), 4, { pattern });
      const ripped = piecesOf(at(60, 50), 1, { pattern, stock: 'sheet', width: 4 });
      expect(ripped.map(({ region, wood }) => [region, wood])).toEqual(
        boards.map(({ region, wood }) => [region, wood]),
      );
    }
  });
});
