import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { archedLoop } from '../../src/geometry/figures.ts';
import { ringOfLoop } from '../../src/geometry/loop.ts';
import { regionOfBox, regionOfRing } from '../../src/geometry/region.ts';
import { boxOfPoints } from '../../src/geometry/ring.ts';
import { holesOff, registrationHoles, sheetAround } from '../../src/lettering/stencil/sheet.ts';
import { runs } from '../runs.ts';
import { stencilOptions } from './lettering.ts';

const whole = (min: number, max: number) => fc.integer({ min, max });

describe('registration holes of several colors', () => {
  it('lie on an arched board with wood around them, off the letters and apart; else their number is told', () => {
    let slid = 0;
    fc.assert(
      fc.property(
        whole(400, 1500),
        whole(200, 600),
        whole(5, 45),
        whole(0, 60),
        whole(10, 60),
        (w, h, share, side, frame) => {
          const rise = (h * share) / 100;
          const board = regionOfRing(ringOfLoop(archedLoop({ x: 0, y: 0, w, h }, rise)));
          const letters = { x: frame + side, y: frame, w: w - 2 * (frame + side), h: h - 2 * frame };
          const options = stencilOptions({ frame });
          const sheet = sheetAround(letters, options);
          const holes = registrationHoles(sheet, options, board).map(({ outer }) => boxOfPoints(outer));
          expect(holes).toHaveLength(4);
          // The circle of the head, by r = c2 / 8h + h / 2.
          const r = w ** 2 / (8 * rise) + rise / 2;
          const onBoard = (x: number, y: number) =>
            x >= 0 && x <= w && y >= 0 && (y <= h - rise || Math.hypot(x - w / 2, y - (h - r)) <= r + 0.1);
          const centers = holes.map((hole) => ({
            x: hole.x + hole.w / 2,
            y: hole.y + hole.h / 2,
            r: hole.w / 2,
          }));
          const off = centers.filter(
            (c) =>
              ![-1, 1].every((sx) =>
                [-1, 1].every((sy) => onBoard(c.x + sx * c.r * 0.7, c.y + sy * c.r * 0.7)),
              ),
          );
          const told = holesOff(registrationHoles(sheet, options, board), board);
          expect(told).toBeGreaterThanOrEqual(off.length);
          for (const [i, c] of centers.entries()) {
            const inLetters =
              c.x > letters.x &&
              c.x < letters.x + letters.w &&
              c.y > letters.y &&
              c.y < letters.y + letters.h;
            expect(inLetters).toBe(false);
            for (const d of centers.slice(i + 1))
              expect(Math.hypot(c.x - d.x, c.y - d.y)).toBeGreaterThan(8 * c.r);
          }
          const corner = (c: { x: number; y: number }) =>
            Math.abs(c.x - sheet.x - sheet.w / 2) > sheet.w / 2 - frame &&
            Math.abs(c.y - sheet.y - sheet.h / 2) > sheet.h / 2 - frame;
          if (told === 0 && !centers.every(corner)) slid += 1;
        },
      ),
      { numRuns: runs(150) },
    );
    expect(slid).toBeGreaterThan(0);
  });

  it('stand in the corners of a sheet that lies on its board', () => {
    const options = stencilOptions({ frame: 20 });
    const sheet = sheetAround({ x: 30, y: 30, w: 300, h: 100 }, options);
    const board = regionOfBox({ x: 0, y: 0, w: 400, h: 200 });
    const holes = registrationHoles(sheet, options, board);
    expect(
      holes
        .map(({ outer }) => boxOfPoints(outer))
        .map(({ x, y, w, h }) => [x + w / 2, y + h / 2].map(Math.round)),
    ).toEqual([
      [20, 20],
      [340, 20],
      [20, 140],
      [340, 140],
    ]);
    expect(holesOff(holes, board)).toBe(0);
  });
});
