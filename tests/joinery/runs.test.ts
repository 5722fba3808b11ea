import { describe, expect, it } from 'vitest';
import { areaOf } from '../../src/geometry/region.ts';
import type { Point } from '../../src/geometry/shape.ts';
import { SAME_ANGLE } from '../../src/geometry/tolerance.ts';
import { pieceChecks } from '../../src/joinery/limits.ts';
import {
  boxStrip,
  flat,
  frame,
  joint,
  pieceOf,
  piecesOf,
  plan,
  regionOf,
  run,
  shaped,
  shorterEdge,
} from './make.ts';

const box = { x: 100, y: 50, w: 400, h: 600 };
const polygon = (sides: number, radius: number): Point[] =>
  Array.from({ length: sides }, (_, i) => {
    const a = (2 * Math.PI * i) / sides;
    return { x: 1000 + radius * Math.cos(a), y: 1000 + radius * Math.sin(a) };
  });

describe('a frame', () => {
  it('is mitered at 45 degrees, its long points on the outside', () => {
    const joinery = plan([frame('f', box, 50)]);
    const pieces = piecesOf(joinery, 'f');
    expect(pieces.map((piece) => [piece.id, piece.label])).toEqual([
      ['f#1', 'A2'],
      ['f#2', 'A1'],
      ['f#3', 'A2'],
      ['f#4', 'A1'],
    ]);
    expect(pieces.map((piece) => piece.length)).toEqual(
      [400, 600, 400, 600].map((l) => expect.closeTo(l, 9)),
    );
    expect(pieces.map(shorterEdge)).toEqual([300, 500, 300, 500].map((l) => expect.closeTo(l, 9)));
    for (const end of pieces.flatMap((piece) => piece.ends)) {
      expect(end).toMatchObject({ cut: 'miter', long: 'right', with: 'f', bevel: 0, nested: null });
      expect(end.miter).toBeCloseTo(-45, 9);
    }
    expect(areaOf(regionOf(pieces))).toBeCloseTo(400 * 600 - 300 * 500, 6);
    expect(joinery.joints.map((found) => found.kind)).toEqual(['miter', 'miter', 'miter', 'miter']);
  });

  it('outside of its path has the path on its short points', () => {
    const [piece] = piecesOf(plan([frame('f', box, 50, { side: 'outside' })]), 'f');
    expect(piece?.length).toBeCloseTo(500, 9);
    expect(shorterEdge(piece)).toBeCloseTo(400, 9);
    expect(piece?.ends.map((end) => end.long)).toEqual(['right', 'right']);
  });

  it('butts with its stiles or its rails running through', () => {
    const lengths = (corner: 'butt-up' | 'butt-across') =>
      piecesOf(plan([frame('f', box, 50, { corner })]), 'f').map((piece) => piece.length);
    expect(lengths('butt-up')).toEqual([300, 600, 300, 600].map((l) => expect.closeTo(l, 9)));
    expect(lengths('butt-across')).toEqual([400, 500, 400, 500].map((l) => expect.closeTo(l, 9)));
  });

  it('is one solid with one opening', () => {
    const [solid] = plan([frame('f', box, 50)]).solids;
    expect(solid?.region.length).toBe(1);
    expect(solid?.region[0]?.holes.length).toBe(1);
    expect(areaOf(solid?.region ?? [])).toBeCloseTo(90000, 3);
  });

  it('follows what the person decides for its corners', () => {
    const decided = plan([frame('f', box, 50)], { joints: [joint(['f', 'f'], 'butt')] });
    expect(piecesOf(decided, 'f').map((piece) => Math.round(piece.length))).toEqual([300, 600, 300, 600]);
    const halved = plan([frame('f', box, 50)], { joints: [joint(['f', 'f'], 'half-lap')] });
    expect(piecesOf(halved, 'f').map((piece) => Math.round(piece.length))).toEqual([400, 600, 400, 600]);
    expect(areaOf(halved.solids[0]?.region ?? [])).toBeCloseTo(90000, 3);
  });

  it('takes a mullion as a tee at both ends', () => {
    const mullion = boxStrip('m', 290, 60, 20, 580, { stock: 'batten' });
    const joinery = plan([frame('f', box, 50), mullion]);
    expect(pieceOf(joinery, 'm').length).toBeCloseTo(500, 9);
    expect(pieceOf(joinery, 'm').ends.map((end) => end.with)).toEqual(['f', 'f']);
    expect(joinery.joints.filter((found) => found.parts.includes('m')).length).toBe(2);
  });
});

describe('any polygon', () => {
  it.each([3, 5, 6, 7, 8, 12])('of %i equal sides is mitered at 180 / n', (sides) => {
    const pieces = piecesOf(plan([run('p', polygon(sides, 400), true, 30)]), 'p');
    const side = 2 * 400 * Math.sin(Math.PI / sides);
    expect(pieces.length).toBe(sides);
    for (const piece of pieces) {
      expect(piece.length).toBeCloseTo(side, 8);
      expect(piece.length - shorterEdge(piece)).toBeCloseTo(2 * 30 * Math.tan(Math.PI / sides), 8);
      for (const end of piece.ends) expect(Math.abs(end.miter)).toBeCloseTo(180 / sides, 8);
    }
    expect(new Set(pieces.map((piece) => piece.label)).size).toBe(1);
  });

  it('turns inward too, the long point on the other edge there', () => {
    const l: Point[] = [
      { x: 0, y: 0 },
      { x: 600, y: 0 },
      { x: 600, y: 300 },
      { x: 300, y: 300 },
      { x: 300, y: 600 },
      { x: 0, y: 600 },
    ];
    const pieces = piecesOf(plan([run('l', l, true, 40)]), 'l');
    expect(pieces[2]?.ends.map((end) => end.long)).toEqual(['right', 'left']);
    expect(areaOf(regionOf(pieces))).toBeCloseTo(600 * 600 - 300 * 300 - (520 * 520 - 300 * 300), 6);
  });

  it('butted at an odd corner has its running piece cut flush with the outer edge', () => {
    // A triangle with the corner at 60 degrees at its sill: the sill runs through.
    const pieces = piecesOf(plan([run('t', polygon(3, 400), true, 40, { corner: 'butt-across' })]), 't');
    expect(areaOf(regionOf(pieces))).toBeCloseTo(
      areaOf(plan([run('t', polygon(3, 400), true, 40)]).solids[0]?.region ?? []),
      3,
    );
  });
});

describe('an open run', () => {
  const path: Point[] = [
    { x: 0, y: 0 },
    { x: 500, y: 0 },
    { x: 500, y: 300 },
  ];

  it('has its own ends at both ends and a miter between', () => {
    const pieces = piecesOf(plan([run('r', path, false, 40)]), 'r');
    expect(pieces.map((piece) => piece.ends.map((end) => end.cut))).toEqual([
      ['square', 'miter'],
      ['miter', 'square'],
    ]);
    expect(pieces.map((piece) => piece.length)).toEqual([500, 300].map((l) => expect.closeTo(l, 9)));
  });

  it('is returned to the face by short pieces as long as it is thick', () => {
    const ends = { start: { cut: 'return' }, end: { cut: 'return' } } as const;
    const joinery = plan([run('r', path, false, 60, { ends, stock: 'casing' })]);
    const pieces = piecesOf(joinery, 'r');
    expect(pieces.map((piece) => [piece.id, Math.round(piece.length)])).toEqual([
      ['r#1', 500],
      ['r#2', 300],
      ['r#3', 19],
      ['r#4', 19],
    ]);
    expect(pieces[0]?.ends[0]).toMatchObject({ cut: 'return', miter: 0, bevel: 45 });
    expect(pieces[2]).toMatchObject({ edges: { left: 19, right: 19 }, width: 60 });
    // The bevel leaves the show face long and runs out to nothing at the back.
    expect(pieces[2]?.measured).toMatchObject({ edge: 'left', to: 'long-point' });
    // Two hands: the molding cannot be turned end for end. Seen from the end with the molding's left edge
    // up, the face of the wall is on the left at the start, and on the right at the end.
    expect(pieces[2]?.ends.map((end) => end.cut)).toEqual(['square', 'return']);
    expect(pieces[3]?.ends.map((end) => end.cut)).toEqual(['return', 'square']);
    expect(pieces[2]?.label).not.toBe(pieces[3]?.label);
    const area = joinery.pieces.reduce((sum, piece) => sum + areaOf(piece.placed), 0);
    expect(area).toBeCloseTo(areaOf(joinery.solids[0]?.region ?? []), 3);
    expect(joinery.checks.map((check) => [check.code, check.severity])).toEqual([
      ['piece.too-short', 'note'],
    ]);
  });

  it('runs into another part like a strip', () => {
    const post = boxStrip('post', -40, -200, 50, 500);
    const joinery = plan([post, run('r', path, false, 40)]);
    expect(piecesOf(joinery, 'r')[0]).toMatchObject({ length: expect.closeTo(490, 9) });
    expect(piecesOf(joinery, 'r')[0]?.ends[0]).toMatchObject({ cut: 'butt', with: 'post' });
  });

  it('of one line goes straight on without an angle', () => {
    const straight: Point[] = [
      { x: 0, y: 0 },
      { x: 300, y: 0 },
      { x: 700, y: 0 },
    ];
    const pieces = piecesOf(plan([run('r', straight, false, 40)]), 'r');
    expect(pieces.map((piece) => piece.length)).toEqual([300, 400]);
    expect(pieces.flatMap((piece) => piece.ends.map((end) => end.miter))).toEqual([0, 0, 0, 0]);
  });
});

describe('an arched run', () => {
  const half = (segments: number): Point[] => {
    // Sill and stiles of a head of radius 300 that springs at 500.
    const arc = Array.from({ length: segments + 1 }, (_, i) => {
      const a = (Math.PI * i) / segments;
      return { x: 300 + 300 * Math.cos(a), y: 500 + 300 * Math.sin(a) };
    });
    return [{ x: 0, y: 0 }, { x: 600, y: 0 }, ...arc];
  };
  const arched = (corner: 'miter' | 'butt-up' | 'butt-across', segments = 6) =>
    plan([run('a', half(segments), true, 40, { corner, path: { form: 'arched', rise: 300, segments } })]);

  it('tells radius, angle, miter and the sagitta of a segment', () => {
    const [arch] = arched('miter').arches.filter((one) => 'segments' in one);
    expect(arch).toMatchObject({ part: 'a', segments: 6 });
    expect(arch?.radius).toBeCloseTo(300, 9);
    expect(arch?.angle).toBeCloseTo(30, 9);
    expect(arch?.sagitta).toBeCloseTo(10.2222, 3); // 300 (1 - cos 15), hand-worked
    const miters = piecesOf(arched('miter'), 'a')
      .slice(3, 7)
      .flatMap((piece) => piece.ends.map((end) => Math.abs(end.miter)));
    for (const miter of miters) expect(miter).toBeCloseTo(arch?.miter ?? 0, 8);
    expect(piecesOf(arched('miter'), 'a')[3]?.length).toBeCloseTo(arch?.chord ?? 0, 8);
  });

  it('keeps its head mitered when its sill corners are butted', () => {
    const cuts = piecesOf(arched('butt-up'), 'a').map((piece) => piece.ends.map((end) => end.cut));
    expect(cuts[0]).toEqual(['butt', 'butt']);
    expect(cuts[1]).toEqual(['square', 'miter']);
    expect(
      cuts
        .slice(2, 8)
        .flat()
        .every((cut) => cut === 'miter'),
    ).toBe(true);
  });
});

describe('a run of sprung molding', () => {
  const stocks = [shaped('crown', 60, { spring: 38 })];

  // Slope 38 from the plane of the corner, 4 sides: miter 38.24, bevel 25.81 (check-values section 1, where
  // it stands as the 90 degree corner of walls for the complement, spring 52).
  it('is cut at the compound setting of a corner in the plane of the face', () => {
    const [piece] = piecesOf(plan([frame('f', box, 60, { stock: 'crown' })], { stocks }), 'f');
    for (const end of piece?.ends ?? []) {
      expect(end.miter).toBeCloseTo(-38.24, 2);
      expect(end.bevel).toBeCloseTo(25.81, 2);
      expect(end.nested).toEqual({ miter: -45, bevel: 0 });
      expect(end.long).toBe('right');
    }
  });

  it('around a block has its long points off the block', () => {
    const joinery = plan([frame('f', box, 60, { stock: 'crown', side: 'outside' })], { stocks });
    for (const piece of piecesOf(joinery, 'f')) {
      expect(piece.ends.map((end) => end.long)).toEqual(['right', 'right']);
      expect(piece.ends.map((end) => end.bevel)).toEqual([
        expect.closeTo(25.81, 2),
        expect.closeTo(25.81, 2),
      ]);
      expect(piece.length - shorterEdge(piece)).toBeCloseTo(120, 9);
    }
  });

  it('returns at the setting of a square outside corner', () => {
    const ends = { start: { cut: 'square' }, end: { cut: 'return' } } as const;
    const line = [
      { x: 0, y: 0 },
      { x: 700, y: 0 },
    ];
    const crown = (far: number) => {
      const section = [
        { x: 0, y: 0 },
        { x: 60, y: 0 },
        { x: far, y: 15 },
      ];
      return shaped('crown', 60, { spring: 38, section });
    };
    const endOf = (far: number) => {
      const laid = run('r', line, false, 60, { stock: 'crown', ends });
      return piecesOf(plan([laid], { stocks: [crown(far)] }), 'r')[0]?.ends[1];
    };
    // 38 from the wall, a square corner: 31.62 and 33.86. The edge that stands off the face is the long one.
    const bevel = expect.closeTo(33.86, 2);
    expect(endOf(60)).toMatchObject({ cut: 'return', long: 'left', miter: expect.closeTo(31.62, 2), bevel });
    expect(endOf(0)).toMatchObject({ cut: 'return', long: 'right', miter: expect.closeTo(-31.62, 2), bevel });
  });

  it('is short by what its returned ends take, on its outline and on the face', () => {
    const ends = { start: { cut: 'return' }, end: { cut: 'return' } } as const;
    const section = [
      { x: 0, y: 0 },
      { x: 60, y: 0 },
      { x: 60, y: 47 },
    ];
    const crown = shaped('crown', 60, { spring: 38, section });
    const line = [
      { x: 0, y: 0 },
      { x: 700, y: 0 },
    ];
    const joinery = plan([run('r', line, false, 60, { stock: 'crown', ends })], { stocks: [crown] });
    // Plane geometry: the outer edge of a molding 60 wide stands 60 tan 38 = 46.88 off the face.
    const reach = 60 * Math.tan((38 * Math.PI) / 180);
    const [body, ...returns] = piecesOf(joinery, 'r');
    expect(body?.length).toBeCloseTo(700, 9);
    expect(shorterEdge(body)).toBeCloseTo(700 - 2 * reach, 9);
    expect(areaOf([{ outer: body?.outline ?? [], holes: [] }])).toBeCloseTo(60 * (700 - reach), 6);
    expect(areaOf(joinery.solids[0]?.region ?? [])).toBeCloseTo(60 * (700 - reach), 3);
    for (const piece of returns) {
      expect(piece).toMatchObject({
        length: expect.closeTo(reach, 9),
        edges: expect.objectContaining({ right: null }),
      });
      expect(areaOf([{ outer: piece.outline, holes: [] }])).toBeCloseTo((60 * reach) / 2, 6);
    }
  });

  it('is within reach of a saw that turns to its nested angle, give or take the angle tolerance', () => {
    const [piece] = plan([frame('f', box, 60, { stock: 'crown' })], { stocks }).pieces;
    if (!piece) throw new Error('no piece');
    const cut = (nested: number) => {
      const [end] = piece.ends;
      const turned = { ...end, miter: 60, bevel: 0, nested: { miter: nested, bevel: 0 } };
      return pieceChecks([{ ...piece, ends: [turned, turned] }], { miter: 45, bevel: 45 });
    };
    expect(cut(45 + SAME_ANGLE / 2)).toEqual([]);
    expect(cut(45 + SAME_ANGLE * 2).map(({ code }) => code)).toEqual(['joint.over-saw']);
  });

  it('is within reach of a saw that can cut it nested', () => {
    const shop = { saw: { miter: 47, bevel: 30 }, fitAllowance: 12 };
    expect(plan([frame('f', box, 60, { stock: 'crown' })], { stocks, shop }).checks).toEqual([]);
  });
});

describe('unequal widths at a corner', () => {
  it('split the angle along the line from corner to corner', () => {
    const laid = frame('f', box, 50);
    const legs = laid.legs.map((leg, i) => (i % 2 === 0 ? { ...leg, width: 80 } : leg));
    const moved = legs.map((leg, i) => ({
      ...leg,
      // Outer edges stay on the path.
      start: { x: leg.start.x, y: leg.start.y + (i === 0 ? 15 : i === 2 ? -15 : 0) },
      end: { x: leg.end.x, y: leg.end.y + (i === 0 ? 15 : i === 2 ? -15 : 0) },
    }));
    const joinery = plan([{ ...laid, legs: moved }], { stocks: [flat('wide', 80)] });
    const [rail, stile] = piecesOf(joinery, 'f');
    // atan(50 / 80) = 32.005 on the 80 wide rail, 57.995 on the 50 wide stile (hand-worked).
    expect(Math.abs(rail?.ends[0].miter ?? 0)).toBeCloseTo(32.00538321, 8);
    expect(Math.abs(stile?.ends[0].miter ?? 0)).toBeCloseTo(57.99461679, 8);
    expect(rail?.length).toBeCloseTo(400, 9);
    expect(shorterEdge(rail)).toBeCloseTo(300, 9);
    expect(shorterEdge(stile)).toBeCloseTo(440, 9);
  });
});
