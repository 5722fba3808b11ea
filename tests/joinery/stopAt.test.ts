import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openDesign } from '../../src/design/open.ts';
import { editsToRemove } from '../../src/design/removal.ts';
import type { PanelShape, Part, Strip } from '../../src/design/schema.ts';
import type { Point, Region } from '../../src/geometry/shape.ts';
import { endCurve } from '../../src/joinery/lengths.ts';
import { outlineOf } from '../../src/layout/place/outlines.ts';
import { at, design, lay, panel, run, strip } from '../layout/sample.ts';
import { runs } from '../runs.ts';
import { shoelace } from '../shoelace.ts';
import { joineryOf } from './joined.ts';
import { pieceOf, piecesOf } from './make.ts';

const sawn = (...parts: Part[]) => {
  const layout = lay(design(parts));
  const joinery = joineryOf(layout, 50);
  return { layout, joinery };
};

const STOP = { cut: 'stop', at: 'p' } as const;
const ending = (start: boolean, end: boolean): Strip['ends'] => ({
  start: start ? STOP : { cut: 'square' },
  end: end ? STOP : { cut: 'square' },
});

const areaOf = (rings: readonly (readonly Point[])[]): number =>
  Math.abs(rings.reduce((sum, ring) => sum + shoelace(ring), 0));
const areaOfRegion = (region: Region): number => areaOf(region.map(({ outer }) => outer));

describe('the end of a piece that stops at something', () => {
  it('at an arch is told by its length at both edges, and by the depth of the curve', () => {
    // Rise 150 over 600: R = 600² / (8 · 150) + 150 / 2 = 375, its middle 225 below the springing (handbooks of
    // masonry arches). The strip's edges stand 30 and 70 right of the middle: heights by Pythagoras.
    const arch = { ...panel('p', at(200, 300, 600, 900)), shape: { form: 'arched', rise: 150 } as const };
    const foot = (right: number) => 1050 - 225 + Math.sqrt(375 ** 2 - right ** 2);
    const { joinery, layout } = sawn(arch, {
      ...strip('s', at(530, 1300, 40, 400)),
      ends: ending(true, false),
    });
    const piece = pieceOf(joinery, 's');
    expect(joinery.checks).toEqual([]);
    expect(piece.ends.map(({ cut }) => cut)).toEqual(['sawn', 'square']);
    expect(piece.ends[0].with).toBe('p');
    // From left to right up the strip its left edge is the left one of the face.
    expect(piece.edges.left).toBeCloseTo(1700 - foot(30), 1);
    expect(piece.edges.right).toBeCloseTo(1700 - foot(70), 1);
    expect(piece.overall).toBeCloseTo(1700 - foot(70), 1);
    const curve = endCurve(piece, 'start');
    const chord = Math.hypot(40, foot(30) - foot(70));
    expect(curve?.chord).toBeCloseTo(chord, 1);
    // Sagitta of the chord: R − √(R² − (c/2)²), of chords that stray by 0.05 mm.
    expect(Math.abs((curve?.depth ?? 0) - (375 - Math.sqrt(375 ** 2 - (chord / 2) ** 2)))).toBeLessThan(0.06);
    expect(endCurve(piece, 'end')).toBeNull();
    expect(layout.checks.filter(({ code }) => code === 'part.overlap')).toEqual([]);
  });

  it('is one cut at a straight border, two where they meet in a point, and a line to saw along in a hollow', () => {
    const gable: PanelShape = {
      form: 'polygon',
      points: [
        { u: 0, v: 0 },
        { u: 1, v: 0 },
        { u: 0.5, v: 1 },
      ],
    };
    const p = { ...panel('p', at(300, 600, 400, 200)), shape: gable };
    // Slopes of 200 over 200: a saw set to 45 degrees.
    const under = (x: number) =>
      pieceOf(
        sawn(p, { ...strip('s', at(x, 600, 40, 50)), on: 'p', ends: ending(false, true) }).joinery,
        's',
      );
    expect(under(380).ends[1]).toMatchObject({ cut: 'miter', miter: expect.closeTo(-45, 9), with: null });
    expect(under(380).edges).toEqual({ left: expect.closeTo(80, 9), right: expect.closeTo(120, 9) });
    const top = under(480).ends[1];
    expect(top).toMatchObject({ cut: 'point', miter: expect.closeTo(-45, 9), long: 'middle' });
    expect(top.second?.miter).toBeCloseTo(45, 9);
    const over = (x: number) =>
      pieceOf(sawn(p, { ...strip('s', at(x, 900, 40, 300)), ends: ending(true, false) }).joinery, 's');
    expect(over(380).ends[0]).toMatchObject({ cut: 'butt', miter: expect.closeTo(45, 9), with: 'p' });
    expect(over(480).ends[0].cut).toBe('sawn');
    expect(endCurve(over(480), 'start')?.depth).toBeCloseTo(20, 9);
    expect(over(480).edges).toEqual({ left: expect.closeTo(420, 9), right: expect.closeTo(420, 9) });
  });

  it('makes pieces of the very area that was laid, joints at the other end and other kinds of part besides', () => {
    const shapes: readonly PanelShape[] = [
      { form: 'round' },
      ...(['arched', 'star', 'scalloped', 'quatrefoil', 'ogee'] as const).map((form) =>
        outlineOf(form).first(at(300, 700, 400, 300)),
      ),
    ];
    const hundredths = (min: number, max: number) =>
      fc.integer({ min: min * 100, max: max * 100 }).map((n) => n / 100);
    fc.assert(
      fc.property(
        fc.constantFrom(...shapes),
        hundredths(310, 650),
        hundredths(-35, 35),
        fc.boolean(),
        fc.boolean(),
        (shape, x, angle, both, within) => {
          const p = { ...panel('p', at(300, 700, 400, 300)), shape };
          const post: Strip = {
            ...strip('s', at(x, within ? 820 : 1180, 40, 60)),
            lie: 'turned',
            angle: 90 + angle,
            length: 60,
            on: within ? 'p' : 'face',
            ends: ending(true, both && within),
          };
          const { layout, joinery } = sawn(p, post);
          const laid = layout.parts.find(({ id }) => id === 's');
          const pieces = piecesOf(joinery, 's');
          expect(pieces).toHaveLength(1);
          const own = areaOf(pieces.map(({ outline }) => outline));
          // Sides shorter than two millionths of a millimeter are left out of what is sawn.
          expect(Math.abs(own - areaOfRegion(laid?.region ?? []))).toBeLessThan(1e-4);
          const solid = joinery.solids.find(({ part }) => part === 's');
          expect(Math.abs(own - areaOfRegion(solid?.region ?? []))).toBeLessThan(1e-6);
          // Cut this long, and nothing of the line lies beyond.
          const xs = (pieces[0]?.outline ?? []).map((q) => q.x);
          expect(Math.max(...xs)).toBeCloseTo(pieces[0]?.overall ?? 0, 9);
        },
      ),
      { numRuns: runs(30) },
    );
  });

  it('meets no frame that it stops at a second time, and stays square when that is removed', () => {
    const frame = run('p', at(300, 600, 400, 600));
    const batten = { ...strip('s', at(450, 700, 40, 700)), ends: ending(false, true) };
    const { joinery } = sawn(frame, batten);
    expect(pieceOf(joinery, 's').length).toBeCloseTo(460, 9);
    expect(pieceOf(joinery, 's').ends[1]).toMatchObject({ cut: 'butt', with: 'p' });
    expect(joinery.joints.filter(({ parts }) => parts.includes('s'))).toEqual([]);
    const edits = editsToRemove(design([frame, batten]), ['p']);
    expect(edits).toContainEqual({
      kind: 'replace',
      list: 'parts',
      id: 's',
      item: { ...batten, ends: ending(false, false) },
    });
  });

  it('opens and saves as it was written', () => {
    const file = JSON.stringify(
      design([
        panel('p', at(0, 0, 100, 100)),
        { ...strip('s', at(0, 200, 40, 700)), ends: ending(true, false) },
      ]),
    );
    const opened = openDesign(file);
    expect(opened.ok && JSON.parse(JSON.stringify(opened.design))).toEqual(JSON.parse(file));
  });
});
