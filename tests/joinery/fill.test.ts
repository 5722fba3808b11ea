import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newPart } from '../../src/design/defaults.ts';
import type { Fill, PanelShape } from '../../src/design/schema.ts';
import { planJoinery } from '../../src/joinery/joinery.ts';
import { cornersToMark, openingsToMark } from '../../src/joinery/lengths.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { isOfSheet } from '../../src/layout/fill/patterns.ts';
import { layOut } from '../../src/layout/layout.ts';
import { OUTLINES, outlineOf } from '../../src/layout/place/outlines.ts';
import type { Stock } from '../../src/materials/types.ts';
import { patternRequests } from '../../src/plan/patternRequests.ts';
import { patterns } from '../../src/plan/words/en/patterns.ts';
import { design, plainFace, STOCKS } from '../layout/sample.ts';
import { runs } from '../runs.ts';
import { flat } from './make.ts';

const SAW = { miter: 50, bevel: 45 };

/** The pieces of a fill as the plan makes them. */
function piecesOf(more: Partial<Fill>, width = 100): readonly Piece[] {
  const stocks = new Map([['board', flat('board', width)]]);
  const box = { x: 100, y: 100, w: 800, h: 900 };
  const fill = { ...newPart('fill', { id: 'fill', name: 'Fill', box, stock: 'board' }), ...more };
  const made = design([fill]);
  const { parts } = layOut({ design: made, face: plainFace(), stocks, keepClears: [] });
  const { pieces } = planJoinery({
    parts,
    joints: [],
    stocks,
    shop: { saw: SAW, fitAllowance: 0 },
    measure: { ...made.measure, language: 'en', notation: 'en' } as never,
  });
  return pieces;
}

const gable = (eaves: number, rise: number, h: number): PanelShape => ({
  form: 'polygon',
  points: [
    { u: 0, v: 0 },
    { u: 1, v: 0 },
    { u: 1, v: eaves / h },
    { u: 0.5, v: (eaves + rise) / h },
    { u: 0, v: eaves / h },
  ],
});

const PATTERNS: readonly Fill['pattern'][] = [
  { form: 'planks', edge: 'square', lap: 0 },
  { form: 'planks', edge: 'lapped', lap: 12 },
  { form: 'planks', edge: 'tongued', lap: 8, length: 400 },
  { form: 'lattice' },
  { form: 'lattice', halved: true },
  { form: 'grooved', face: 60, depth: 2 },
  { form: 'louvers', lap: 10 },
  { form: 'louvers', lap: 10, tilt: 30 },
  { form: 'battened', stock: 'board' },
  { form: 'courses', length: 300, bond: 'half' },
  { form: 'basket', count: 2 },
  { form: 'herringbone', length: 400 },
  { form: 'chevron', span: 300, slope: 45 },
];

describe('boards of a fill as pieces', () => {
  // A gable of slope t: boards w wide differ by w tan t, each cut at t at its head (the common difference of studs in a
  // gable, as framing squares print it: plane geometry).
  it('upright in a gable are cut at its slope and differ by the common difference', () => {
    const pieces = piecesOf({ shape: gable(500, 400, 900), angle: 90 });
    expect(pieces).toHaveLength(8);
    const half = pieces.slice(0, 4);
    for (const piece of half) {
      expect(piece.ends.map((end) => end.cut)).toEqual(['square', 'miter']);
      expect(Math.abs(piece.ends[1].miter)).toBeCloseTo(45, 6);
    }
    expect(half.map((piece) => piece.length)).toEqual(
      [600, 700, 800, 900].map((mm) => expect.closeTo(mm, 6)),
    );
    // A board of the other slope is the same one with its back out, and is cut by the same settings.
    const told = pieces.map(({ label, ends }) => `${label} ${ends[1].miter.toFixed(6)} ${ends[1].long}`);
    expect(new Set(told).size).toBe(4);
    expect(told.slice(4).reverse()).toEqual(told.slice(0, 4));
  });

  it('with a tongue or a lap never lie with their back out', () => {
    for (const edge of ['lapped', 'tongued'] as const) {
      const pattern = { form: 'planks', edge, lap: 10 } as const;
      const pieces = piecesOf({ shape: gable(500, 400, 900), angle: 90, pattern });
      expect(new Set(pieces.map(({ label }) => label)).size).toBe(pieces.length);
      // The longer edge is the right-hand one left of the ridge, as they lie.
      const seen = pieces.map(({ ends }) => ends[1].cut === 'miter' && ends[1].long);
      expect(seen[0]).toBe('right');
      expect(seen.at(-1)).toBe('left');
    }
  });

  it('are of the outline that they are laid with, or of its image in a mirror', () => {
    // Sides in turn and the turns between them, told from the longest side on, one way or the other.
    const measures = (ring: readonly { x: number; y: number }[]) =>
      ring.map((p, i) => {
        const q = ring[(i + 1) % ring.length] as typeof p;
        return Math.hypot(q.x - p.x, q.y - p.y);
      });
    for (const angle of [0, 30, 45, 90, -60]) {
      for (const { outline, placed } of piecesOf({ shape: gable(500, 400, 900), angle })) {
        const laid = measures(placed.flatMap(({ outer }) => outer)).filter((mm) => mm > 1e-6);
        expect(laid.reduce((a, b) => a + b, 0)).toBeCloseTo(
          measures(outline).reduce((a, b) => a + b, 0),
          6,
        );
      }
    }
  });

  it('under the ridge are cut to a point', () => {
    const ridge = piecesOf({ shape: gable(500, 400, 900), angle: 90, start: 'piece' }).find(
      (piece) => piece.ends[1].cut === 'point',
    );
    expect(ridge?.ends[1]).toMatchObject({ long: 'middle' });
    expect(ridge?.ends[1].miter).toBeCloseTo(-45, 6);
    expect(ridge?.ends[1].second?.miter).toBeCloseTo(45, 6);
  });

  it('over what the saw can be set to are sawn along the outline', () => {
    const steep = piecesOf({ shape: gable(300, 600, 900), angle: 90 });
    expect(steep.every((piece) => piece.ends.every((end) => end.cut === 'sawn'))).toBe(true);
  });

  it('of one size share a label', () => {
    const pieces = piecesOf({ shape: { form: 'rectangle' }, angle: 0 });
    expect(pieces).toHaveLength(9);
    expect(new Set(pieces.map((piece) => piece.label)).size).toBe(1);
    expect(pieces[0]?.length).toBeCloseTo(800, 6);
  });

  it('on both sides of an opening are two pieces', () => {
    const pieces = piecesOf({ shape: outlineOf('ring').first({ w: 800, h: 900 }), angle: 0 });
    const byPart = new Map<string, number>();
    for (const { part } of pieces) byPart.set(part, (byPart.get(part) ?? 0) + 1);
    expect(Math.max(...byPart.values())).toBe(2);
    expect(new Set(pieces.map((piece) => piece.id)).size).toBe(pieces.length);
  });

  // Every end is one that a saw or a pattern can make, and tells the piece: the outline is the band of the board between
  // the lines of its ends, by the half-planes alone.
  it('are told whole by their ends, or are sawn along a line', () => {
    const forms = Object.keys(OUTLINES) as (keyof typeof OUTLINES)[];
    const input = fc.record({
      shape: fc.oneof(
        fc.integer({ min: 50, max: 850 }).map((rise) => gable(900 - rise, rise, 900)),
        fc.constantFrom(...forms).map((form) => outlineOf(form).first({ w: 800, h: 900 })),
      ),
      angle: fc.oneof(fc.constantFrom(0, 45, 90), fc.integer({ min: -180, max: 180 })),
      width: fc.integer({ min: 40, max: 200 }),
    });
    fc.assert(
      fc.property(input, ({ shape, angle, width }) => {
        for (const piece of piecesOf({ shape, angle }, width)) {
          const { ends, outline } = piece;
          if (ends[0].cut === 'sawn') {
            expect(ends[1].cut).toBe('sawn');
            continue;
          }
          expect(piece.holes).toHaveLength(0);
          const bands = ends.flatMap((end, i) => {
            const miters = [end.miter, ...(end.second ? [end.second.miter] : [])];
            return miters.map((miter) => ({ at: i === 0 ? ('start' as const) : ('end' as const), miter }));
          });
          for (const { miter } of bands) expect(Math.abs(miter)).toBeLessThanOrEqual(SAW.miter);
          // As many corners as two edges and the cuts make, less one where cuts meet on an edge.
          const edges = [piece.edges.left, piece.edges.right].filter((edge) => edge !== null).length;
          expect(outline).toHaveLength(bands.length + edges);
          // Each cut runs along a side of the outline, at its angle from square.
          for (const { at, miter } of bands) {
            const lean = Math.tan((miter * Math.PI) / 180) * (at === 'end' ? 1 : -1);
            const found = outline.some((p, i) => {
              const q = outline[(i + 1) % outline.length] as typeof p;
              return Math.abs(q.y - p.y) > 1e-9 && Math.abs((q.x - p.x) / (q.y - p.y) - lean) < 1e-6;
            });
            expect(found).toBe(true);
          }
        }
      }),
      { numRuns: runs(5) },
    );
  });

  // What no saw cuts is told whole by its corners, or printed full size: corners by the turn of the outline alone.
  it('that no saw cuts have all their corners told, or are printed full size, in every pattern', () => {
    const box = { x: 100, y: 100, w: 800, h: 900 };
    const named = (Object.keys(OUTLINES) as (keyof typeof OUTLINES)[]).map((form) =>
      outlineOf(form).first(box),
    );
    const shapes: PanelShape[] = [...named, { form: 'star', points: 24, waist: 0.8 }, gable(500, 400, 900)];
    const margin = { left: 250, right: 280, bottom: 300, top: 270 };
    const input = fc.record({
      pattern: fc.constantFrom(...PATTERNS),
      shape: fc.constantFrom<PanelShape>(...shapes),
      hole: fc.option(fc.constantFrom<PanelShape>({ form: 'rectangle' }, ...shapes)),
      angle: fc.oneof(fc.constantFrom(0, 45, 90), fc.integer({ min: -180, max: 180 })),
      width: fc.integer({ min: 40, max: 300 }),
    });
    const stocks = (width: number) =>
      new Map<string, Stock>([
        ['board', flat('board', width)],
        [
          'sheet',
          { ...STOCKS.get('sheet'), id: 'sheet', sizes: [{ length: 2400, width: 1200, price: 0 }] } as Stock,
        ],
      ]);
    fc.assert(
      fc.property(input, ({ pattern, shape, hole, angle, width }) => {
        const fill = {
          ...newPart('fill', {
            id: 'fill',
            name: 'Fill',
            box,
            stock: isOfSheet(pattern) ? 'sheet' : 'board',
          }),
          ...{ pattern, shape, angle, ...(hole && { openings: [{ id: 'hole', shape: hole, margin }] }) },
        };
        const made = design([fill]);
        const face = plainFace();
        const { parts } = layOut({ design: made, face, stocks: stocks(width), keepClears: [] });
        const measure = { ...made.measure, language: 'en', notation: 'en' } as never;
        const { pieces } = planJoinery({
          parts,
          joints: [],
          stocks: stocks(width),
          shop: { saw: SAW, fitAllowance: 0 },
          measure,
        });
        const name = (id: string): string => id;
        const none = { signs: [], seams: new Map(), sticks: [], fastened: [] };
        const tables = { hardware: [], screws: [] };
        const rest = { face, ...none, tables, words: patterns, measure, nameOf: name, finishOf: name };
        const requests = patternRequests({ design: made, parts, pieces, ...rest });
        const printed = requests.flatMap((one) => (one.kind === 'part' ? [one.name] : []));
        for (const piece of pieces.filter(({ ends }) => ends[0].cut === 'sawn')) {
          if (printed.some((one) => one.endsWith(`(${piece.label})`))) continue;
          const told = [...cornersToMark(piece), ...openingsToMark(piece).flat()];
          const [xs, ys] = [piece.outline.map(({ x }) => x), piece.outline.map(({ y }) => y)];
          const [low, high, foot, head] = [
            Math.min(...xs),
            Math.max(...xs),
            Math.min(...ys),
            Math.max(...ys),
          ];
          for (const ring of [piece.outline, ...piece.holes])
            for (const [i, p] of ring.entries()) {
              const before = ring.at(i - 1) ?? p;
              const after = ring[(i + 1) % ring.length] ?? p;
              const turn = Math.atan2(
                (p.x - before.x) * (after.y - p.y) - (p.y - before.y) * (after.x - p.x),
                (p.x - before.x) * (after.x - p.x) + (p.y - before.y) * (after.y - p.y),
              );
              // Nobody marks a corner at which the saw does not turn by half a degree.
              if (Math.abs(turn) < Math.PI / 360) continue;
              const at = { x: p.x - low, y: p.y - foot };
              const inBox = Math.min(at.x, high - p.x) < 0.02 && Math.min(at.y, head - p.y) < 0.02;
              const isTold = told.some((q) => Math.hypot(q.x - at.x, q.y - at.y) < 0.02);
              expect(inBox || isTold, `${pattern.form}, corner ${i} of ${piece.label}`).toBe(true);
            }
        }
      }),
      { numRuns: runs(20) },
    );
  });
});
