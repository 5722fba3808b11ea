import { readTables } from '../../../src/command/supplies.ts';
import { MM_PER_INCH } from '../../../src/measure/units.ts';
import { FROM_MEMORY, printed, type Row, type Section } from '../table.ts';

const HANDBOOK = 'Wood Handbook Table 8-9, p. 8-12';
const GAUGE = 'steel wire gauge (Washburn and Moen), wovenwire.com';

function rows(): Row[] {
  const { brads, screws } = readTables();
  const thick = (id: string) => [...brads, ...screws].find((f) => f.id === id)?.diameter ?? Number.NaN;
  const shank = ([number, expected]: readonly [number, number]): Row => ({
    check: `wood screw no. ${number} of the table: shank, mm (0.060 + 0.013 N in)`,
    source: HANDBOOK,
    expected,
    found: thick(`screw-${number}`),
    tolerance: printed(2),
  });
  const wire = ([id, gauge, expected, source]: readonly [string, number, number, string]): Row => ({
    check: `gauge ${gauge} of the table: diameter, in`,
    source,
    expected,
    found: thick(id) / MM_PER_INCH,
    tolerance: printed(4),
  });
  return [
    ...(
      [
        [6, 3.51],
        [8, 4.17],
        [10, 4.83],
      ] as const
    ).map(shank),
    ...(
      [
        ['nail-15', 15, 0.072, GAUGE],
        ['nail-16', 16, 0.0625, GAUGE],
        ['brad-18', 18, 0.0475, GAUGE],
        ['pin-23', 23, 0.0258, FROM_MEMORY],
      ] as const
    ).map(wire),
  ];
}

export const fasteners: Section = { number: 9, title: 'Fasteners', rows };
