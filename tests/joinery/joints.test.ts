import { describe, expect, it } from 'vitest';
import { areaOf } from '../../src/geometry/region.ts';
import type { Joinery, Piece } from '../../src/joinery/piece.ts';
import {
  boxStrip,
  brace,
  joint,
  pieceOf,
  piecesOf,
  plan,
  regionOf,
  shaped,
  shorterEdge,
  strip,
} from './make.ts';

const cuts = (piece: Piece) => piece.ends.map((end) => end.cut);
const miters = (piece: Piece) => piece.ends.map((end) => end.miter);
const withs = (piece: Piece) => piece.ends.map((end) => end.with);

const notchesOf = (joinery: Joinery, part: string) =>
  pieceOf(joinery, part).notches.map((n) => [n.side, n.from, n.to, n.depth, n.miter]);

describe('a strip by itself', () => {
  it('is square and as long as it was laid', () => {
    const piece = pieceOf(plan([boxStrip('s', 100, 200, 50, 700)]), 's');
    expect(piece).toMatchObject({
      id: 's',
      label: 'A1',
      stock: 'lath',
      form: 'flat',
      length: 700,
    });
    expect(piece.ends.map((end) => [end.cut, end.miter, end.long, end.with])).toEqual([
      ['square', 0, 'both', null],
      ['square', 0, 'both', null],
    ]);
    expect(piece.outline).toEqual([
      { x: 0, y: 0 },
      { x: 700, y: 0 },
      { x: 700, y: 50 },
      { x: 0, y: 50 },
    ]);
    expect(areaOf(piece.placed)).toBeCloseTo(35000, 6);
  });

  it('takes its free miters off the laid length, long point on the side asked for', () => {
    const ends = { start: { cut: 'miter', angle: 45 }, end: { cut: 'miter', angle: 30 } } as const;
    const piece = pieceOf(plan([strip('s', { x: 0, y: 0 }, { x: 600, y: 0 }, 40, { ends })]), 's');
    expect(piece.length).toBeCloseTo(600, 9);
    expect(shorterEdge(piece)).toBeCloseTo(600 - 40 - 40 * Math.tan(Math.PI / 6), 9);
    expect(miters(piece)[0]).toBeCloseTo(45, 9);
    expect(miters(piece)[1]).toBeCloseTo(30, 9);
    expect(piece.ends.map((end) => end.long)).toEqual(['left', 'left']);
    // Both long points lie on the left edge: it is whole, and the right edge is short.
    const left = piece.outline.filter((p) => p.y > 39);
    expect(Math.max(...left.map((p) => p.x)) - Math.min(...left.map((p) => p.x))).toBeCloseTo(600, 9);
  });

  it('tells of a parallelogram its two equal edges, and its skew in the wood that it takes', () => {
    const ends = { start: { cut: 'miter', angle: 20 }, end: { cut: 'miter', angle: -20 } } as const;
    const piece = pieceOf(plan([strip('s', { x: 0, y: 0 }, { x: 500, y: 0 }, 50, { ends })]), 's');
    expect(piece.ends.map((end) => end.long)).toEqual(['left', 'right']);
    const edge = 500 - 50 * Math.tan((20 * Math.PI) / 180);
    expect(piece.length).toBeCloseTo(edge, 9);
    expect(piece.edges).toEqual({ left: expect.closeTo(edge, 9), right: expect.closeTo(edge, 9) });
    expect(piece.measured).toEqual({ edge: 'left', from: 'long-point', to: 'short-point' });
    expect(piece.overall).toBeCloseTo(500, 9);
  });
});

describe('a corner of two strips', () => {
  const stile = boxStrip('stile', 0, 0, 50, 400);
  const rail = boxStrip('rail', 0, 0, 600, 50);

  it('runs the stile through and butts the rail into it', () => {
    const joinery = plan([stile, rail]);
    expect(pieceOf(joinery, 'stile').length).toBe(400);
    expect(pieceOf(joinery, 'rail').length).toBe(550);
    expect(cuts(pieceOf(joinery, 'rail'))).toEqual(['butt', 'square']);
    expect(withs(pieceOf(joinery, 'rail'))).toEqual(['stile', null]);
    expect(joinery.joints).toEqual([
      { parts: ['stile', 'rail'], kind: 'butt', through: 'stile', at: { x: 50, y: 50 }, decided: false },
    ]);
    expect(joinery.checks).toEqual([]);
  });

  it('runs the rail through when the person says so', () => {
    const joinery = plan([stile, rail], { joints: [joint(['rail', 'stile'], 'butt', 'rail')] });
    expect(pieceOf(joinery, 'rail').length).toBe(600);
    expect(pieceOf(joinery, 'stile').length).toBe(350);
    expect(joinery.joints[0]).toMatchObject({ through: 'rail', decided: true });
  });

  it('miters where the person says so, at unequal widths too', () => {
    const wide = boxStrip('wide', 0, 0, 600, 75);
    const joinery = plan([stile, wide], { joints: [joint(['stile', 'wide'], 'miter')] });
    // On the 50 wide stile atan(75 / 50) = 56.310, on the 75 wide rail 33.690 (hand-worked).
    const onStile = pieceOf(joinery, 'stile').ends[0];
    const onRail = pieceOf(joinery, 'wide').ends[0];
    expect(Math.abs(onStile.miter)).toBeCloseTo(56.309932474, 8);
    expect(Math.abs(onRail.miter)).toBeCloseTo(33.690067526, 8);
    // The stile walks up: its long point is at the outer, left edge. The rail walks right: on its right.
    expect(onStile.long).toBe('left');
    expect(onRail.long).toBe('right');
    expect(shorterEdge(pieceOf(joinery, 'stile'))).toBeCloseTo(400 - 75, 9);
    expect(joinery.checks.map((check) => check.code)).toEqual(['joint.over-saw']);
    expect(joinery.checks[0]?.figures).toEqual({ miter_deg: onStile.miter, most_deg: 50 });
  });

  it('miters pieces that only touch, when asked to', () => {
    const stopped = boxStrip('rail', 50, 0, 550, 50);
    expect(pieceOf(plan([stile, stopped]), 'rail').ends[0]).toMatchObject({ cut: 'butt', with: 'stile' });
    const joinery = plan([stile, stopped], { joints: [joint(['rail', 'stile'], 'miter')] });
    expect(pieceOf(joinery, 'rail').length).toBeCloseTo(600, 9);
    expect(pieceOf(joinery, 'rail').ends[0].miter).toBeCloseTo(-45, 9);
    expect(pieceOf(joinery, 'stile').ends[0].miter).toBeCloseTo(45, 9);
  });

  it('halves both, and counts the wood once', () => {
    const joinery = plan([stile, rail], { joints: [joint(['stile', 'rail'], 'half-lap')] });
    expect(pieceOf(joinery, 'stile').length).toBe(400);
    expect(pieceOf(joinery, 'rail').length).toBe(600);
    expect(joinery.solids.map((solid) => Math.round(areaOf(solid.region)))).toEqual([20000, 27500]);
    expect(joinery.joints[0]?.kind).toBe('half-lap');
    // The stile runs through and keeps its face; each end is halved over the width of the other.
    expect(notchesOf(joinery, 'stile')).toEqual([['back', 0, 50, 9.5, 0]]);
    expect(notchesOf(joinery, 'rail')).toEqual([['face', 0, 50, 9.5, 0]]);
  });
});

describe('a strip that ends at the side of another', () => {
  const rail = boxStrip('rail', 0, 0, 600, 50);

  it('is cut back to that side', () => {
    const joinery = plan([rail, boxStrip('post', 200, 20, 40, 300)]);
    expect(pieceOf(joinery, 'post').length).toBeCloseTo(270, 9);
    expect(joinery.joints[0]).toMatchObject({ kind: 'butt', through: 'rail', at: { x: 220, y: 50 } });
  });

  it('is joined where it only touches', () => {
    const joinery = plan([rail, boxStrip('post', 200, 50, 40, 300)]);
    expect(pieceOf(joinery, 'post')).toMatchObject({ length: 300 });
    expect(cuts(pieceOf(joinery, 'post'))).toEqual(['butt', 'square']);
    expect(joinery.joints).toEqual([
      { parts: ['post', 'rail'], kind: 'butt', through: 'rail', at: { x: 220, y: 50 }, decided: false },
    ]);
  });

  it('is halved into it on request, up to its far side', () => {
    const parts = [rail, boxStrip('post', 200, 20, 40, 300)];
    const joinery = plan(parts, { joints: [joint(['rail', 'post'], 'half-lap')] });
    expect(pieceOf(joinery, 'post').length).toBeCloseTo(320, 9);
    expect(areaOf(pieceOf(joinery, 'post').placed)).toBeCloseTo(270 * 40, 6);
    expect(joinery.joints[0]).toMatchObject({ kind: 'half-lap', through: 'rail', decided: true });
    // The post goes up from the rail, so that its foot is halved, from the face.
    expect(notchesOf(joinery, 'post')).toEqual([['face', 0, 50, 9.5, 0]]);
    expect(notchesOf(joinery, 'rail')).toEqual([['back', 200, 240, 9.5, 0]]);
  });

  it('cuts the other in two when it runs through', () => {
    const parts = [rail, boxStrip('post', 200, 20, 40, 300)];
    const joinery = plan(parts, { joints: [joint(['rail', 'post'], 'butt', 'post')] });
    expect(pieceOf(joinery, 'post').length).toBeCloseTo(320, 9);
    const rails = piecesOf(joinery, 'rail');
    expect(rails.map((piece) => piece.id)).toEqual(['rail#1', 'rail#2']);
    expect(rails.map((piece) => piece.length)).toEqual([200, 360]);
  });

  it('takes the angle at which it comes', () => {
    // A brace at 30 degrees to a level rail stands 60 from square.
    const end = { x: 300, y: 25 };
    const start = { x: 300 + 400 * Math.cos(Math.PI / 6), y: 25 + 400 * Math.sin(Math.PI / 6) };
    const joinery = plan([rail, strip('brace', start, end, 40)]);
    const cut = pieceOf(joinery, 'brace').ends[1];
    expect(cut).toMatchObject({ cut: 'butt', with: 'rail' });
    expect(Math.abs(cut.miter)).toBeCloseTo(60, 9);
    // The whole cut lies on the rail's upper edge.
    const ring = pieceOf(joinery, 'brace').placed[0]?.outer ?? [];
    expect(ring.filter((p) => Math.abs(p.y - 50) < 1e-9).length).toBe(2);
    expect(joinery.checks.map((check) => check.code)).toEqual(['joint.over-saw']);
  });

  it('reaches over the section of molding where it is coped', () => {
    const parts = [boxStrip('rail', 0, 0, 600, 60, { stock: 'casing' }), boxStrip('post', 200, 30, 60, 300)];
    const joinery = plan(parts, { joints: [joint(['post', 'rail'], 'cope')] });
    const post = pieceOf(joinery, 'post');
    expect(post.ends[0]).toMatchObject({ cut: 'cope', with: 'rail', miter: 0 });
    // The casing rises to its full 15 mm over its first 10 mm: the post is 270 and 10 to reach over.
    expect(post.length).toBeCloseTo(280, 9);
    expect(areaOf(post.placed)).toBeCloseTo(270 * 60, 6);
  });
});

describe('strips that cross', () => {
  const up = boxStrip('up', 200, 0, 50, 600);
  const across = boxStrip('across', 0, 300, 500, 40);

  it('are halved, both whole, the wood counted once', () => {
    const joinery = plan([up, across]);
    expect(joinery.joints).toEqual([
      { parts: ['up', 'across'], kind: 'half-lap', through: 'up', at: { x: 225, y: 320 }, decided: false },
    ]);
    expect(pieceOf(joinery, 'across').length).toBe(500);
    expect(pieceOf(joinery, 'across').placed.length).toBe(2);
    const area = joinery.solids.reduce((sum, solid) => sum + areaOf(solid.region), 0);
    expect(area).toBeCloseTo(600 * 50 + 450 * 40, 6);
    expect(joinery.checks).toEqual([]);
    expect(notchesOf(joinery, 'up')).toEqual([['back', 300, 340, 9.5, 0]]);
    expect(notchesOf(joinery, 'across')).toEqual([['face', 200, 250, 9.5, 0]]);
  });

  it('at a slant are notched at that slant', () => {
    const slanted = strip('slanted', { x: 0, y: 0 }, { x: 600, y: 600 }, 40);
    const joinery = plan([boxStrip('up', 280, 0, 50, 600), slanted]);
    const [own] = pieceOf(joinery, 'up').notches;
    const [other] = pieceOf(joinery, 'slanted').notches;
    // The stile stands at x 280 to 330 and the other at y = x, 40 / cos 45 = 56.57 high there.
    expect(own).toMatchObject({
      side: 'back',
      from: expect.closeTo(251.716, 3),
      to: expect.closeTo(358.284, 3),
    });
    // Seen along the stile its left edge is at x = 280, where the other is lower down.
    expect(own?.miter).toBeCloseTo(-45, 9);
    expect(other).toMatchObject({ side: 'face', depth: 9.5 });
    expect(Math.abs(other?.miter ?? 0)).toBeCloseTo(45, 9);
    // Both notches are the one area in which the two cross.
    for (const notch of [own, other]) {
      expect(areaOf([{ outer: notch?.outline ?? [], holes: [] }])).toBeCloseTo(50 * 40 * Math.SQRT2, 6);
    }
  });

  it('fill each other through the height they share, whatever their thickness', () => {
    const thin = boxStrip('thin', 0, 300, 500, 40, { z0: 4, z1: 16 });
    const joinery = plan([up, thin], { joints: [joint(['up', 'thin'], 'half-lap')] });
    // Shared from 4 to 16, halved at 10: the stile loses 0 to 10 of its back, the other 10 to 16 of its face.
    expect(notchesOf(joinery, 'up')).toEqual([['back', 300, 340, 10, 0]]);
    expect(notchesOf(joinery, 'thin')).toEqual([['face', 200, 250, 6, 0]]);
  });

  it('do not share a mark with plain pieces of their size, but with those notched alike', () => {
    const plain = boxStrip('plain', 0, 450, 500, 40, { z0: 30, z1: 49 });
    const turned = boxStrip('turned', -50, 100, 500, 40);
    const elsewhere = boxStrip('elsewhere', -100, 500, 500, 40);
    const joinery = plan([up, across, plain, turned, elsewhere]);
    const label = (part: string) => pieceOf(joinery, part).label;
    expect(pieceOf(joinery, 'plain')).toMatchObject({ length: 500, notches: [] });
    // One is notched from 200, one from 250, which is the same turned end for end; one from 300.
    expect(label('turned')).toBe(label('across'));
    expect(new Set(['across', 'plain', 'elsewhere', 'up'].map(label)).size).toBe(4);
  });

  it('are cut in two where the other runs through', () => {
    const joinery = plan([up, across], { joints: [joint(['up', 'across'], 'butt', 'across')] });
    expect(pieceOf(joinery, 'across').length).toBe(500);
    expect(piecesOf(joinery, 'up').map((piece) => piece.length)).toEqual([300, 260]);
    expect(piecesOf(joinery, 'up').map(cuts)).toEqual([
      ['square', 'butt'],
      ['butt', 'square'],
    ]);
  });

  it('many times over are parted once a crossing', () => {
    // Parts without wood were once split again and again: sixty crossings never came to an end.
    const bars = Array.from({ length: 60 }, (_, i) => boxStrip(`b${i}`, 20 + i * 40, 0, 20, 600));
    const long = boxStrip('long', 0, 300, 2440, 40);
    const joinery = plan([long, ...bars]);
    expect(pieceOf(joinery, 'long').placed.length).toBe(61);
    expect(areaOf(pieceOf(joinery, 'long').placed)).toBeCloseTo((2440 - 60 * 20) * 40, 6);
  }, 5000);

  it('are not halved where one is molding', () => {
    const joinery = plan([boxStrip('up', 200, 0, 60, 600, { stock: 'casing' }), across]);
    expect(joinery.joints[0]).toMatchObject({ kind: 'butt', through: 'up' });
    expect(piecesOf(joinery, 'across').map((piece) => piece.length)).toEqual([200, 240]);
  });

  it('are cut in two by what stands higher', () => {
    const thick = { ...boxStrip('across', 0, 300, 500, 40), z1: 38 };
    const joinery = plan([up, thick]);
    expect(joinery.joints[0]).toMatchObject({ kind: 'butt', through: 'across' });
    expect(pieceOf(joinery, 'across').length).toBe(500);
    expect(piecesOf(joinery, 'up').map((piece) => piece.length)).toEqual([300, 260]);
  });

  it('pass each other at different heights', () => {
    const above = boxStrip('across', 0, 300, 500, 40, { z0: 19, z1: 38 });
    const joinery = plan([up, above]);
    expect(joinery.joints).toEqual([]);
    expect(joinery.checks).toEqual([]);
  });
});

describe('braces', () => {
  const sides = [
    boxStrip('left', 0, 0, 50, 700),
    boxStrip('right', 450, 0, 50, 700),
    boxStrip('sill', 50, 0, 400, 50),
    boxStrip('head', 50, 650, 400, 50),
  ];

  it('end in two cuts in the corner of stile and rail', () => {
    const joinery = plan([...sides, brace('b', 'rising', { x: 50, y: 50, w: 400, h: 600 }, 40)]);
    const piece = pieceOf(joinery, 'b');
    // The diagonal of 400 by 600 stands 56.310 degrees off level: cut that far from square for the sill's
    // edge and its complement for the stile's (hand-worked).
    for (const end of piece.ends) {
      expect(end).toMatchObject({ cut: 'point', long: 'middle', bevel: 0 });
      expect(end.with).not.toBeNull();
      expect([Math.abs(end.miter), Math.abs(end.second?.miter ?? 0)].sort()).toEqual([
        expect.closeTo(33.690067526, 8),
        expect.closeTo(56.309932474, 8),
      ]);
    }
    expect(piece.overall).toBeCloseTo(Math.hypot(400, 600), 9);
    expect(piece.measured).toEqual({ edge: 'left', from: 'shoulder', to: 'shoulder' });
    const joined = joinery.joints.filter((found) => found.parts[0] === 'b').map((found) => found.parts[1]);
    expect(joined.sort()).toEqual(['head', 'left', 'right', 'sill']);
    expect(joinery.checks.map((check) => check.code)).toEqual(['joint.over-saw']);
  });

  it('falling and rising are two hands of one piece', () => {
    const box = { x: 50, y: 50, w: 400, h: 600 };
    const rising = pieceOf(plan([brace('b', 'rising', box, 40)]), 'b');
    const falling = pieceOf(plan([brace('b', 'falling', box, 40)]), 'b');
    expect(falling.length).toBeCloseTo(rising.length, 9);
    expect(falling.ends[0].miter).toBeCloseTo(-(rising.ends[0].second?.miter ?? 0), 9);
  });

  it('of a turned strip land in a corner too, by the joints with both', () => {
    const joinery = plan([...sides, strip('t', { x: 40, y: 40 }, { x: 440, y: 440 }, 40)]);
    const piece = pieceOf(joinery, 't');
    expect(piece.ends[0].cut).toBe('point');
    expect(Math.abs(piece.ends[0].miter)).toBeCloseTo(45, 9);
    expect(Math.abs(piece.ends[0].second?.miter ?? 0)).toBeCloseTo(45, 9);
    expect(joinery.checks).toEqual([]);
  });

  it('meet what only their angled end reaches', () => {
    // Laid square, the strip ends at (450, 370) with its upper corner at (430, 392), clear of the block
    // that stands from 404 up. Cut to the stile's edge, that corner would come up to 410.
    const stile = boxStrip('right', 450, 0, 50, 700);
    const block = boxStrip('block', 440, 404, 10, 280);
    const slope = strip('t', { x: 200, y: 150 }, { x: 450, y: 370 }, 60);
    expect(plan([block, slope]).joints).toEqual([]);
    const joinery = plan([stile, block, slope]);
    expect(joinery.checks.filter((check) => check.code === 'joint.overlap')).toEqual([]);
    expect(joinery.joints.map((found) => found.parts)).toContainEqual(['block', 't']);
    const ring = pieceOf(joinery, 't').placed[0]?.outer ?? [];
    expect(ring.every((p) => p.x <= 440 + 1e-9)).toBe(true);
  });
});

describe('overlap without a joint', () => {
  it('is told with its area and place', () => {
    const joinery = plan([boxStrip('a', 0, 0, 500, 50), boxStrip('b', 300, 30, 500, 50)]);
    expect(joinery.joints).toEqual([]);
    expect(joinery.checks).toEqual([
      {
        code: 'joint.overlap',
        severity: 'error',
        parts: ['a', 'b'],
        at: { x: 400, y: 40 },
        figures: { area_m2: expect.closeTo(0.004, 9) },
      },
    ]);
  });

  it('is not told of pieces side by side or end to end', () => {
    const joinery = plan([
      boxStrip('a', 0, 0, 500, 50),
      boxStrip('b', 0, 50, 500, 50),
      boxStrip('c', 500, 0, 200, 50),
    ]);
    expect(joinery.checks).toEqual([]);
    expect(joinery.joints).toEqual([
      { parts: ['a', 'c'], kind: 'butt', through: null, at: { x: 500, y: 25 }, decided: false },
    ]);
  });
});

describe("the person's joints", () => {
  it('may name parts that are not there', () => {
    const parts = [boxStrip('a', 0, 0, 500, 50)];
    const joinery = plan(parts, { joints: [joint(['a', 'gone'], 'miter'), joint(['x', 'y'], 'cope', 'z')] });
    expect(joinery.pieces.length).toBe(1);
    expect(joinery.joints).toEqual([]);
  });

  it('name a whole array, or one member of it', () => {
    const rail = boxStrip('rail', 0, 100, 600, 50);
    const members = [100, 300].map((x, i) => boxStrip(`bars[${i},0]`, x, 0, 50, 400, { part: 'bars' }));
    const joinery = plan([rail, ...members], {
      joints: [joint(['bars', 'rail'], 'butt', 'bars'), joint(['rail', 'bars[1,0]'], 'half-lap')],
    });
    expect(joinery.joints.map((found) => [found.parts[1], found.kind])).toEqual([
      ['bars[0,0]', 'butt'],
      ['bars[1,0]', 'half-lap'],
    ]);
    expect(piecesOf(joinery, 'rail').map((piece) => piece.length)).toEqual([100, 450]);
  });

  it('that ask for a miter where nothing turns give the plain joint', () => {
    const tee = [boxStrip('rail', 0, 0, 600, 50), boxStrip('post', 200, 20, 40, 300)];
    expect(plan(tee, { joints: [joint(['rail', 'post'], 'miter')] }).joints[0]?.kind).toBe('butt');
    const cross = [boxStrip('rail', 0, 100, 600, 50), boxStrip('post', 200, 0, 40, 300)];
    expect(plan(cross, { joints: [joint(['rail', 'post'], 'miter')] }).joints[0]?.kind).toBe('half-lap');
  });
});

describe('stock that is in no table', () => {
  it('gives no piece, but still a solid', () => {
    const joinery = plan([boxStrip('a', 0, 0, 500, 50, { stock: 'gone' })]);
    expect(joinery.pieces).toEqual([]);
    expect(joinery.solids.map((solid) => areaOf(solid.region))).toEqual([25000]);
  });
});

describe('sprung molding between strips', () => {
  it('is cut compound at a miter that the person asked for', () => {
    const crown = shaped('crown', 60, { spring: 38 });
    const parts = [
      boxStrip('a', 0, 0, 60, 400, { stock: 'crown' }),
      boxStrip('b', 0, 0, 500, 60, { stock: 'crown' }),
    ];
    const joinery = plan(parts, { stocks: [crown], joints: [joint(['a', 'b'], 'miter')] });
    const end = pieceOf(joinery, 'a').ends[0];
    expect(end.miter).toBeCloseTo(38.24, 2);
    expect(end.bevel).toBeCloseTo(25.81, 2);
    expect(end.nested).toEqual({ miter: 45, bevel: 0 });
    expect(areaOf(regionOf(piecesOf(joinery, 'a')))).toBeCloseTo(60 * 400 - 1800, 6);
  });
});
