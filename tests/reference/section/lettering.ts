import {
  fontProportions,
  gapProportion,
  leastHeight,
  lineSpaceProportion,
  readingDistance,
} from '../../../src/lettering/legibility.ts';
import { inches, MM_PER_INCH } from '../../../src/measure/units.ts';
import { fontOf } from '../../lettering/fonts.ts';
import { type Row, type Section, WORKED } from '../table.ts';

const ADA = '2010 ADA / ABA standards';
const TABLE = `${ADA}, table 703.5.5 (up.codes/s/signs)`;

/** Baseline over the floor and reading distance, least height, in inches. */
const HEIGHTS: readonly [number, number, number, string][] = [
  [60, 21 * 12, 2.5, 'thebuildingcodeforum.com'],
  [60, 12 * 12, 1.375, `${TABLE}; ${WORKED}`],
  [60, 6 * 12, 0.625, `${TABLE}; ${WORKED}`],
  [80, 20 * 12, 2.625, `${TABLE}; ${WORKED}`],
  [130, 30 * 12, 4.125, `${TABLE}; ${WORKED}`],
  [40, 72, 0.625, TABLE],
  [120, 180, 2, TABLE],
  [121, 252, 3, TABLE],
];

function rows(): Row[] {
  const [width, stroke] = fontProportions(fontOf('lato'));
  const limits = [
    ['width of O over height of I', '703.5.4', width, 55, 110],
    ['stroke of I over its height', '703.5.7', stroke, 10, 30],
    ['gap over height', '703.5.8', gapProportion(20, 100), 10, 35],
    ['baseline to baseline over height', '703.5.9', lineSpaceProportion(1.5), 135, 170],
  ] as const;
  const proportions = limits.map(
    ([what, clause, found, least, most]): Row => ({
      check: `${what}: limits told, %`,
      source: `${ADA} ${clause}`,
      expected: `${least} to ${most}`,
      found: found ? `${Math.round(100 * found.least)} to ${Math.round(100 * found.most)}` : 'none',
    }),
  );
  const judged = (
    [
      ['gap of 9.9 % of the height', gapProportion(9.9, 100).within, 'outside'],
      ['gap of 10 % of the height', gapProportion(10, 100).within, 'inside'],
      ['gap of 35.1 % of the height', gapProportion(35.1, 100).within, 'outside'],
      ['lines 135 % apart', lineSpaceProportion(1.35).within, 'inside'],
      ['lines 171 % apart', lineSpaceProportion(1.71).within, 'outside'],
    ] as const
  ).map(
    ([check, within, expected]): Row => ({
      check,
      source: `${ADA} 703.5.8, 703.5.9`,
      expected,
      found: within ? 'inside' : 'outside',
    }),
  );
  const heights = HEIGHTS.map(
    ([high, far, expected, source]): Row => ({
      check: `least letter height, ${high} in up, read from ${far / 12} ft, in`,
      source,
      expected,
      found: (leastHeight(inches(high), inches(far)) ?? Number.NaN) / MM_PER_INCH,
    }),
  );
  const lowest: Row = {
    check: 'visual characters lower than 40 in',
    source: `${ADA} 703.5.6`,
    expected: 'none',
    found: leastHeight(inches(39.9), inches(60)) === null ? 'none' : 'some',
  };
  const { near, far } = readingDistance(inches(1));
  const roads: Row[] = [
    {
      check: 'road signs: ft an inch of letter',
      source: '2009 MUTCD 2A.13 (clause number from memory)',
      expected: 30,
      found: near / inches(12),
    },
    {
      check: 'road signs, older rule: ft an inch of letter',
      source: 'older MUTCD 2A.14, safetysystemshawaii.com',
      expected: 40,
      found: far / inches(12),
    },
  ];
  return [...proportions, ...judged, ...heights, lowest, ...roads];
}

export const lettering: Section = { number: 6, title: 'Lettering', rows };
