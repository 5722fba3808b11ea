import { readTables } from '../../../src/command/supplies.ts';
import { massesOf } from '../../../src/load/mass.ts';
import { totalMass } from '../../../src/load/moment.ts';
import type { Material, SheetStock } from '../../../src/materials/types.ts';
import { KG_PER_POUND } from '../../../src/measure/units.ts';
import { blockInInches } from '../../bed/solids.ts';
import { printed, type Row, type Section, WORKED } from '../table.ts';

const HANDBOOK =
  'Wood Handbook FPL-GTR-282 (2021), Table 5-3a, at 12 % moisture: 1000 x G x 1.12 kg/m3 (Eq. 4-14)';

/** Material of the tables, species, printed density. */
const SPECIES: readonly [string, string, number][] = [
  ['poplar', 'yellow-poplar, G 0.42', 470],
  ['red-oak', 'northern red oak, G 0.63', 706],
  ['white-oak', 'white oak, G 0.68', 762],
  ['maple', 'sugar maple, G 0.63', 706],
  ['ash', 'white ash, G 0.60', 672],
  ['cherry', 'black cherry, G 0.50', 560],
  ['fir', 'Douglas-fir, coast, G 0.48', 538],
  ['hemlock', 'western hemlock, G 0.45', 504],
  ['southern-pine', 'loblolly and shortleaf pine, G 0.51', 571],
  ['pine', 'ponderosa pine, G 0.40 (US Army TM 5-852-4 Table 2-2)', 448],
  ['spruce', 'Sitka spruce, G 0.40 (US Army TM 5-852-4 Table 2-2)', 448],
];

const MATERIALS = readTables().materials;

/** Kilograms of a block of one material, sizes in inches, as the load plan weighs it. */
function massOf(material: Material, [w, h, t]: readonly [number, number, number]): number {
  const stock: SheetStock = {
    form: 'sheet',
    id: 's',
    name: 's',
    material: material.id,
    thickness: t * 25.4,
    grain: false,
    sizes: [],
  };
  const solids = [blockInInches('b', [0, 0, w, h], [0, t], { stock: 's' })];
  const { masses } = massesOf({ solids, parts: [], stocks: [stock], materials: [material], coatings: [] });
  return totalMass(masses);
}

function material(id: string): Material {
  const found = MATERIALS.find((m) => m.id === id);
  if (!found) throw new Error(`no material ${id}`);
  return found;
}

/** A cubic meter weighed as a panel of 1 x 1 m and 1 m. */
const METER = 1000 / 25.4;
const perCubicMeter = (id: string): number => massOf(material(id), [METER, METER, METER]);

function rows(): Row[] {
  const species = SPECIES.map(
    ([id, name, expected]): Row => ({
      check: `a cubic meter of ${name}, kg`,
      source: HANDBOOK,
      expected,
      found: perCubicMeter(id),
      tolerance: printed(0),
    }),
  );
  const within = (id: string, what: string, source: string, least: number, most: number): Row => {
    const found = perCubicMeter(id);
    return {
      check: `a cubic meter of ${what}, kg: between ${least} and ${most}`,
      source,
      expected: 'between',
      found: found >= least && found <= most ? 'between' : `${found}`,
    };
  };
  const boards: Row[] = [
    {
      check: 'a 4 x 8 ft sheet of MDF, 1/2 in, at 700 kg/m3, kg',
      source: `hunker.com/12001592 prints 26.39; ${WORKED}: 26.43`,
      expected: 26.43,
      found: massOf({ ...material('mdf'), density: 700 }, [48, 96, 0.5]),
      tolerance: printed(2),
    },
    {
      check: 'a 4 x 8 ft sheet of MDF, 3/4 in, at 750 kg/m3, kg',
      source: WORKED,
      expected: 42.48,
      found: massOf(material('mdf'), [48, 96, 0.75]),
      tolerance: printed(2),
    },
    {
      check: 'a square foot of softwood plywood, 1 in thick, lb',
      source: 'APA figure, as quoted in several pages: about 3 lb',
      expected: 3,
      found: massOf(material('plywood'), [12, 12, 1]) / KG_PER_POUND,
      tolerance: 0.01,
    },
  ];
  return [
    ...species,
    within('mdf', 'MDF', 'FDMC magazine 2010, woodworkingnetwork.com: 600 to 800 kg/m3', 600, 800),
    within('hardboard', 'hardboard', 'encyclopedia extract: 800 to 1040 kg/m3', 800, 1040),
    within('particleboard', 'particleboard', 'ANSI A208.1 M grades, woodweb.com: 40 to 50 lb/ft3', 640, 801),
    within('steel', 'rolled steel', 'simetric.co.uk/si_metals.htm: 7850', 7850, 7850.0001),
    within('brass', 'rolled brass', 'simetric.co.uk/si_metals.htm: 8430 to 8730', 8430, 8730),
    ...boards,
  ];
}

export const densities: Section = { number: 7, title: 'Densities', rows };
