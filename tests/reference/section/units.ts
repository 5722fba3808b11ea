import { readTables } from '../../../src/command/supplies.ts';
import { spreadingRate } from '../../../src/finish/spreading.ts';
import {
  formatArea,
  formatForce,
  formatMass,
  formatRate,
  formatVolume,
} from '../../../src/measure/format.ts';
import { parseMeasure } from '../../../src/measure/parse.ts';
import { FROM_MEMORY, type Row, type Section } from '../table.ts';

const CFR = '16 CFR 500.19(a)';
const NIST = 'NIST Handbook 44 App. C; SP 811 App. B';
const INCH = { unit: 'in', fraction: '16' } as const;

/** Millimeters of a length as the tool reads it. */
function read(text: string): number {
  const parsed = parseMeasure(text, 'mm');
  return parsed.ok ? parsed.value : Number.NaN;
}

function rows(): Row[] {
  const volume = (id: string) => readTables().containers.find((c) => c.id === id)?.volume ?? 0;
  const gallons = 'definitions quoted in an open-source units library: 231 in3';
  const text = (check: string, source: string, expected: string, found: string): Row => ({
    check,
    source,
    expected,
    found,
  });
  return [
    { check: '1 in as read, mm', source: CFR, expected: 25.4, found: read('1 in') },
    { check: '1 ft as read, mm', source: CFR, expected: 304.8, found: read('1 ft') },
    { check: '1 ft 1 in less 13 in as read, mm', source: CFR, expected: 0, found: read(`1' 1" - 13"`) },
    text('929.0304 cm2 as shown', CFR, '1 sq ft', formatArea(0.09290304, INCH)),
    text('0.45359237 kg as shown', NIST, '1 lb', formatMass(0.45359237, INCH)),
    text('28.349523125 g sixteen times as shown', NIST, '1 lb', formatMass(16 * 0.028349523125, INCH)),
    text('3.785411784 L as shown', gallons, '1 gal', formatVolume(3.785411784, INCH)),
    text('0.946352946 L as shown', gallons, '1 qt', formatVolume(0.946352946, INCH)),
    text('29.5735295625 mL as shown', gallons, '1 fl oz', formatVolume(0.0295735295625, INCH)),
    text(
      '4 qt in a gallon: 3.785411784 L less one quart as shown',
      `NIST Handbook 44 App. C, ${FROM_MEMORY}`,
      '3 qt',
      formatVolume(3.785411784 - 0.946352946, INCH),
    ),
    text(
      '4.4482216152605 N as shown',
      `pound times standard gravity, exact; ${FROM_MEMORY}`,
      '1 lb',
      formatForce(4.4482216152605, INCH),
    ),
    {
      check: 'gallon can of the table, L',
      source: CFR,
      expected: 3.78541,
      found: volume('us-gallon'),
      tolerance: 5e-6,
    },
    {
      check: 'quart can of the table, L',
      source: CFR,
      expected: 0.946353,
      found: volume('us-quart'),
      tolerance: 5e-7,
    },
    {
      check: 'half-pint can of the table, mL',
      source: `${CFR}: liquid pint 473.177 mL`,
      expected: 473.177 / 2,
      found: 1000 * volume('us-half-pint'),
      tolerance: 5e-4,
    },
    text(
      'a gallon spread one mil (25.4 um) thick, as shown',
      `${CFR}; 231000/144 ft2`,
      '1604 sq ft/gal',
      formatRate(spreadingRate(1, 25.4), INCH),
    ),
  ];
}

export const units: Section = { number: 4, title: 'Units', rows };
