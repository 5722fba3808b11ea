import { chooseContainers } from '../../../src/finish/containers.ts';
import { spreadingRate } from '../../../src/finish/spreading.ts';
import { LITERS_PER_US_GALLON } from '../../../src/measure/units.ts';
import type { Row, Section } from '../table.ts';

const MIL = 25.4;
const M2_PER_SQUARE_FOOT = 0.09290304;
const MAKER = 'scribd.com/document/343849341 (a coating maker, general information)';

/** Square feet a gallon. */
const rate = (solids: number, mils: number, transfer = 1): number =>
  (spreadingRate(solids, mils * MIL, transfer) * LITERS_PER_US_GALLON) / M2_PER_SQUARE_FOOT;

const OFFERS = [
  { container: 'quart', volume: LITERS_PER_US_GALLON / 4, price: null },
  { container: 'gallon', volume: LITERS_PER_US_GALLON, price: null },
];
/** Quarts at more than half a gallon's price, as far from the shelf as makes two gallons the cheaper buy. */
const DEAR = [
  { container: 'quart', volume: LITERS_PER_US_GALLON / 4, price: 22 },
  { container: 'gallon', volume: LITERS_PER_US_GALLON, price: 42 },
];

function bought(gallons: number, offers: Parameters<typeof chooseContainers>[1]): string {
  const buys = chooseContainers(gallons * LITERS_PER_US_GALLON, offers);
  return buys.map(({ count, container }) => `${count} ${container}`).join(', ');
}

function rows(): Row[] {
  const purchase = '4houseandgarden.com painting page';
  const perGallon = (
    check: string,
    source: string,
    expected: number,
    found: number,
    tolerance: number,
  ): Row => ({
    check: `${check}, ft2 a gallon`,
    source,
    expected,
    found,
    tolerance,
  });
  return [
    perGallon('all solids, 1 mil', `${MAKER}: 231000/144`, 1604.17, rate(1, 1), 0.005),
    perGallon('65 % solids, 5 mils', MAKER, 208.52, rate(0.65, 5), 0.03),
    {
      check: '65 % solids, 125 um, m2 a liter',
      source: MAKER,
      expected: 5.2,
      found: spreadingRate(0.65, 125),
    },
    perGallon(
      '37.4 % solids, 1.5 mils',
      'data sheet 1201-2, catalog.warrenpaint.com: 400 (399.9)',
      399.9,
      rate(0.374, 1.5),
      0.1,
    ),
    perGallon(
      '52 % solids, 1.5 mils, 30 % reaches the work',
      'R. Joseph, paintcenter.org/rj/oct03e.cfm',
      167,
      rate(0.52, 1.5, 0.3),
      0.5,
    ),
    perGallon('wet film of 4.01 mils', 'convert-me.com forum: 231/57600 in', 400, rate(1, 4.0104), 0.05),
    {
      check: '500 ft2 at 400 ft2 a gallon: buy',
      source: purchase,
      expected: '1 gallon, 1 quart',
      found: bought(500 / 400, OFFERS),
    },
    {
      check: 'over 1.3 gal, quarts dear: buy',
      source: purchase,
      expected: '2 gallon',
      found: bought(1.31, DEAR),
    },
  ];
}

export const paint: Section = { number: 8, title: 'Paint', rows };
