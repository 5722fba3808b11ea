import { cornerMiter, endRun } from '../../../src/joinery/miter.ts';
import { compoundSetting, wallCornerSetting } from '../../../src/joinery/sprung.ts';
import { inches, MM_PER_INCH, radians } from '../../../src/measure/units.ts';
import { frame, piecesOf, plan } from '../../joinery/make.ts';
import { CHART, CORNERS, MISPRINT, rowsOf, SPRINGS } from '../charts.ts';
import { printed, type Row, type Section, WORKED } from '../table.ts';

const MANUALS = 'DeWalt miter saw manual p. 17 and Craftsman 315.21212 manual p. 24';

/** Interior angle of a frame with equal sides, and what the saw is turned to. */
const regularMiter = (sides: number): number => cornerMiter(180 - 360 / sides);

function regular(): Row[] {
  const printedAt: readonly [number, number, number][] = [
    [4, 45, 0],
    [5, 36, 0],
    [6, 30, 0],
    [7, 25.71, 2],
    [8, 22.5, 1],
    [9, 20, 0],
    [10, 18, 0],
  ];
  const rows = printedAt.map(
    ([sides, expected, decimals]): Row => ({
      check: `flat miter of a frame with ${sides} equal sides, degrees`,
      source: MANUALS,
      expected,
      found: regularMiter(sides),
      tolerance: decimals === 2 ? printed(2) : 1e-9,
    }),
  );
  const exact = ([sides, expected]: readonly [number, number]): Row => ({
    check: `flat miter of a frame with ${sides} equal sides, degrees`,
    source: `180/n; ${WORKED}`,
    expected,
    found: regularMiter(sides),
    tolerance: printed(4),
  });
  return [
    ...rows,
    ...(
      [
        [3, 60],
        [11, 16.3636],
        [12, 15],
      ] as const
    ).map(exact),
  ];
}

function steelSquare(): Row[] {
  const tongue = (sides: number) => endRun(12, regularMiter(sides));
  return (
    [
      [8, 4 + 31 / 32],
      [6, 6 + 15 / 16],
    ] as const
  ).map(([sides, expected]) => ({
    check: `steel square, 12 in on the blade: tongue for ${sides} sides, in`,
    source: 'F. T. Hodgson, ABC of the Steel Square (public domain)',
    expected,
    found: tongue(sides),
    tolerance: 1 / 32,
  }));
}

function charts(): Row[] {
  const off: string[] = [];
  let compared = 0;
  for (const { head, cells } of rowsOf(CHART)) {
    cells.forEach(({ miter, bevel }, i) => {
      const ours = compoundSetting(head, 180 - 360 / (i + 4));
      compared += 2;
      if (Math.abs(ours.miter - miter) > printed(2)) off.push(`slope ${head}, ${i + 4} sides, miter`);
      if (Math.abs(ours.bevel - bevel) > printed(2)) off.push(`slope ${head}, ${i + 4} sides, bevel`);
    });
  }
  const source = 'Craftsman 315.21212 manual p. 24 and Ryobi TSS121 manual p. 32';
  const all = 'compound chart, slope 5 to 70, 4 to 10 sides';
  return [
    { check: `${all}: printed numbers compared`, source, expected: 164, found: compared },
    {
      check: `${all}: those off by more than 0.005 degree`,
      source,
      expected: MISPRINT,
      found: off.join('; '),
    },
    {
      check: 'that misprint: printed 23.56, formula, degrees',
      source: 'tan M = cos P tan(180/n)',
      expected: 23.58,
      found: compoundSetting(25, 180 - 360 / 7).miter,
      tolerance: printed(2),
    },
  ];
}

function sprung(): Row[] {
  const flat = (spring: number, corner: number) => wallCornerSetting(spring, corner).flat;
  const at = (what: string, source: string, expected: number, found: number, decimals: number): Row => ({
    check: what,
    source,
    expected,
    found,
    tolerance: printed(decimals),
  });
  const ryobi = 'Ryobi MS-1065LZ manual';
  const makita = 'Makita LS1017 manual p. 14';
  const nomograph = 'DeWalt DCS361 manual p. 16, read off a nomograph to whole degrees';
  let worst = 0;
  for (const { head, cells } of rowsOf(CORNERS)) {
    cells.forEach(({ miter, bevel }, i) => {
      const ours = flat(SPRINGS[i] ?? 0, head);
      worst = Math.max(worst, Math.abs(ours.miter - miter), Math.abs(ours.bevel - bevel));
    });
  }
  return [
    at('crown of spring 38 in a square corner: miter', ryobi, 31.62, flat(38, 90).miter, 2),
    {
      check: 'the same: bevel (other manuals print 33.9; the formula gives 33.86)',
      source: ryobi,
      expected: 33.85,
      found: flat(38, 90).bevel,
      tolerance: 0.015,
    },
    at('crown of spring 38 in a square corner: miter', makita, 31.6, flat(38, 90).miter, 1),
    at('the same: bevel', makita, 33.9, flat(38, 90).bevel, 1),
    at('crown of spring 45 in a square corner: miter', makita, 35.3, flat(45, 90).miter, 1),
    at('the same: bevel', makita, 30, flat(45, 90).bevel, 1),
    at('four sides at a slope of 26: miter', nomograph, 42, compoundSetting(26, 90).miter, 0),
    at('the same: bevel', nomograph, 18, compoundSetting(26, 90).bevel, 0),
    {
      check: 'springs 38, 45, 52 at 18 corners from 60 to 179 degrees: largest difference, degrees',
      source: `tan M = sin s / tan(c/2), sin B = cos s cos(c/2); ${WORKED} to two decimals`,
      expected: 0,
      found: worst,
      tolerance: printed(2),
    },
  ];
}

/** Long points of the four rails around an opening, in inches. */
function railsAround(w: number, h: number, width: number): number[] {
  const box = { x: 0, y: 0, w: inches(w), h: inches(h) };
  const laid = frame('f', box, inches(width), { side: 'outside' });
  return piecesOf(plan([laid]), 'f').map((piece) => piece.length / MM_PER_INCH);
}
const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

function frames(): Row[] {
  const pictures = 'framing4yourself.com, “How to figure the right lengths”';
  const hardwoods = 'vermonthardwoods.com, “How much picture frame moulding”';
  const [W, R, A, C] = [2, 1 / 4, 1 / 8, 1 / 8];
  // The molding's inner edge, which the frame follows, stands a rabbet within the loose panel all around.
  const rails = railsAround(16 + A - 2 * R, 20 + A - 2 * R, W);
  const box = { x: 0, y: 0, w: inches(16), h: inches(20) };
  const laid = frame('f', box, inches(2), { side: 'outside' });
  const [piece] = piecesOf(plan([laid]), 'f');
  return [
    {
      check: 'frame of 16 x 20 in in 2 in molding: molding in all, in',
      source: pictures,
      expected: 88,
      found: sum(railsAround(16, 20, 2)),
    },
    {
      check: 'the same with 1/4 in of allowance, spread over the sides, in',
      source: pictures,
      expected: 88.25,
      found: sum(railsAround(16 + 1 / 16, 20 + 1 / 16, 2)),
    },
    {
      check: 'rail for a panel of 16 in: D + A + 2 (W - R) with W 2, R 1/4, A 1/8, in',
      source: hardwoods,
      expected: 19.625,
      found: rails[0] ?? 0,
    },
    {
      check:
        'whole frame of 16 x 20 in with three saw cuts of 1/8: 2 (D1 + D2) + 4 (2 (W - R) + A) + 3 C, in',
      source: hardwoods,
      expected: 86.875,
      found: sum(rails) + 3 * C,
    },
    {
      check: 'rail for a panel of 16 in: panel + 1/16 + 2 x 1 3/4 from rabbet to outside, in',
      source: 'Fine Woodworking no. 275 (2019), workshop tip',
      expected: 19.5625,
      found: railsAround(16 + 1 / 16 - 2 * R, 20, W)[0] ?? 0,
    },
    {
      check: 'long point less short point, both ends of a 2 in rail at 90 degrees: 2 x width / tan 45, in',
      source: WORKED,
      expected: (2 * 2) / Math.tan(radians(45)),
      found: ((piece?.edges.right ?? 0) - (piece?.edges.left ?? 0)) / MM_PER_INCH,
    },
  ];
}

export const miter: Section = {
  number: 1,
  title: 'Miters and frames',
  rows: () => [...regular(), ...steelSquare(), ...charts(), ...sprung(), ...frames()],
};
