import { cornersOf, type Measured, misreadOf } from '../../../src/bed/measured.ts';
import { inches } from '../../../src/measure/units.ts';
import { type Row, type Section, WORKED } from '../table.ts';

const FOOT = inches(12);
const HOUSE =
  'Canada Mortgage and Housing Corporation, Canadian Wood-Frame House Construction, “Placement of the house” and fig. 28';
const GUIDE = 'Carpenter’s Guide (chestofbooks.com), “How to square a foundation”, rules 1 and 2';
const GARAGE =
  'doityourself.com forum, “Squaring a foundation” (August 2000): 28 ft a side, one diagonal read as 39 ft 6 in, the other as 40 ft';

/** The angle of the lower left corner that readings come to. */
function cornerAngle(read: Measured, width: number, height: number): number {
  const found = cornersOf(read, width, height);
  if (!found) return Number.NaN;
  const [a, b, , d] = found.corners;
  const angle = Math.atan2(d.y - a.y, d.x - a.x) - Math.atan2(b.y - a.y, b.x - a.x);
  return (angle * 180) / Math.PI;
}

const sides = (width: number, height: number): Measured => ({
  ...{ bottom: width, top: width, left: height, right: height },
});

function rows(): Row[] {
  const metric = { rising: 10 * 500, falling: 10 * 500, ...sides(10 * 400, 10 * 300) };
  const guide = { rising: 10 * FOOT, falling: 10 * FOOT, ...sides(8 * FOOT, 6 * FOOT) };
  const garage = { ...sides(28 * FOOT, 28 * FOOT), falling: 39.5 * FOOT, rising: 40 * FOOT };
  const wrong = misreadOf(garage, 28 * FOOT, 28 * FOOT);
  const alone = cornersOf({ ...garage, rising: undefined }, 28 * FOOT, 28 * FOOT);
  return [
    {
      check: 'sides in multiples of 300 and 400 mm, diagonals in as many of 500: corner, degrees',
      source: HOUSE,
      expected: 90,
      found: cornerAngle(metric, 4000, 3000),
    },
    {
      check: 'the same read with one diagonal only: corner, degrees',
      source: HOUSE,
      expected: 90,
      found: cornerAngle({ ...metric, falling: undefined }, 4000, 3000),
    },
    {
      check: 'the same: by how much one diagonal is longer, mm',
      source: `${HOUSE}: equal diagonals, square corners`,
      expected: 0,
      found: cornersOf(metric, 4000, 3000)?.longer ?? Number.NaN,
      tolerance: 1e-6,
    },
    {
      check: '6 and 8 ft along the lines, 10 ft between: corner, degrees',
      source: GUIDE,
      expected: 90,
      found: cornerAngle(guide, 8 * FOOT, 6 * FOOT),
    },
    {
      check: 'a tape an inch longer from 6 to 8 ft: corner, degrees',
      source: `law of cosines on the triangle of ${GUIDE}; ${WORKED}`,
      // acos((6² + 8² - (10 + 1/12)²) / (2 · 6 · 8))
      expected: 90.9989,
      found: 180 - cornerAngle({ ...guide, rising: 121 * inches(1), falling: undefined }, 8 * FOOT, 6 * FOOT),
      tolerance: 5e-5,
    },
    {
      check: 'a garage whose readings cannot all be right: the likeliest wrong one',
      source: `${GARAGE}; the replies doubt that reading, or call it a rhombus`,
      expected: 'rising',
      found: wrong?.reading ?? 'none',
    },
    {
      check: 'the same: what that diagonal would be by the others, in',
      source: `parallelogram law, √(4 · 28² - 39.5²) ft; ${WORKED}`,
      expected: 476.3487,
      found: (wrong?.would ?? Number.NaN) / inches(1),
      tolerance: 1e-3,
    },
    {
      check: 'the same: so it is long on that diagonal by, in',
      source: `parallelogram law; ${WORKED}`,
      expected: 2.3487,
      found: (alone?.longer ?? Number.NaN) / inches(1),
      tolerance: 1e-3,
    },
  ];
}

export const squaring: Section = { number: 15, title: 'Squaring by diagonals', rows };
