import { readTables } from '../../../src/command/supplies.ts';
import { massesOf } from '../../../src/load/mass.ts';
import { totalMass } from '../../../src/load/moment.ts';
import { lookup } from '../../../src/materials/lookup.ts';
import { KG_PER_POUND, MM_PER_INCH } from '../../../src/measure/units.ts';
import { blockInInches } from '../../bed/solids.ts';
import type { Row, Section } from '../table.ts';

const SIZES =
  'American Softwood Lumber Standard PS 20, minimum dressed dry sizes, as quoted by engineeringtoolbox.com d_1270';

/** Stock of the tables: nominal name, dressed width and thickness in inches. */
const DRESSED: readonly [string, string, number, number][] = [
  ['pine-1x2', '1 x 2', 1.5, 0.75],
  ['pine-1x3', '1 x 3', 2.5, 0.75],
  ['pine-1x4', '1 x 4', 3.5, 0.75],
  ['pine-1x5', '1 x 5', 4.5, 0.75],
  ['pine-1x6', '1 x 6', 5.5, 0.75],
  ['pine-1x8', '1 x 8', 7.25, 0.75],
  ['pine-1x10', '1 x 10', 9.25, 0.75],
  ['pine-1x12', '1 x 12', 11.25, 0.75],
  ['pine-5-4x4', '1 1/4 x 4', 3.5, 1],
  ['pine-5-4x6', '1 1/4 x 6', 5.5, 1],
  ['spruce-2x2', '2 x 2', 1.5, 1.5],
  ['spruce-2x3', '2 x 3', 2.5, 1.5],
  ['spruce-2x4', '2 x 4', 3.5, 1.5],
];

/** Printed weights at 35 lb/ft3; 1x3 and 2x3 are printed off their own basis and left out. */
const POUNDS_PER_FOOT: readonly [string, number][] = [
  ['pine-1x2', 0.27],
  ['pine-1x4', 0.64],
  ['pine-1x6', 1.0],
  ['pine-1x8', 1.32],
  ['pine-1x10', 1.69],
  ['pine-1x12', 2.05],
  ['spruce-2x2', 0.55],
  ['spruce-2x4', 1.28],
];

function rows(): Row[] {
  const tables = readTables();
  const { stocks } = lookup(tables);
  const flat = (id: string) => {
    const stock = stocks.get(id);
    if (stock?.form !== 'flat') throw new Error(`${id} is not flat stock`);
    return stock;
  };
  const sizes = DRESSED.flatMap(([id, name, width, thickness]): Row[] => [
    {
      check: `${name}: dressed width, in`,
      source: SIZES,
      expected: width,
      found: flat(id).width / MM_PER_INCH,
    },
    {
      check: `${name}: dressed thickness, in`,
      source: SIZES,
      expected: thickness,
      found: flat(id).thickness / MM_PER_INCH,
    },
  ]);
  const density = 35 * (KG_PER_POUND / 0.028316846592);
  const weights = POUNDS_PER_FOOT.map(([id, expected]): Row => {
    const { width, thickness } = flat(id);
    const [w, t] = [width / MM_PER_INCH, thickness / MM_PER_INCH];
    const solids = [blockInInches('b', [0, 0, 12, w], [0, t], { stock: id })];
    const stocksHere = [{ ...flat(id), material: 'm35' }];
    const materials = [{ ...tables.materials[0]!, id: 'm35', density }];
    const { masses } = massesOf({ solids, parts: [], stocks: stocksHere, materials, coatings: [] });
    return {
      check: `a foot of ${id} at 35 lb/ft3, lb`,
      source: 'engineeringtoolbox.com d_1452',
      expected,
      found: totalMass(masses) / KG_PER_POUND,
      tolerance: 0.01,
    };
  });
  return [...sizes, ...weights];
}

export const lumber: Section = { number: 2, title: 'Softwood lumber', rows };
