import { describe, expect, it } from 'vitest';
import { readSupplies } from '../../src/command/supplies.ts';
import type { Design } from '../../src/design/schema.ts';
import { fitToBed } from '../../src/editor/edit/fitBed.ts';
import { inches } from '../../src/measure/units.ts';
import { plan } from '../../src/plan/plan.ts';
import { chanceOf } from '../chance.ts';
import { runs } from '../runs.ts';
import { STARTERS, starter } from './starters.ts';

/** A larger face weighs more, and says so. */
const BY_SIZE = ['load.heavy', 'load.lift'];

/** What the plan warns of in a design, by code and part. */
const checksOf = (design: Design): string[] =>
  plan(design, readSupplies(design), { effort: { nodes: 200 } })
    .checks.filter(({ severity, code }) => severity !== 'note' && !BY_SIZE.includes(code))
    .map(({ severity, code, parts }) => `${severity}: ${code} ${[...parts].sort().join()}`);

describe.each(STARTERS)('%s', (name) => {
  const design = starter(name);

  it('has nothing to mend', () => {
    expect(checksOf(design)).toEqual([]);
  });

  // From a twin of 38 by 75 in to a queen of 60 by 80, the sizes that starters are drawn for. Common trade sizes. 40 beds of
  // each starter, by hand: SHOWFACE_RUNS=20 and `-t "three sizes"`, under 1 s of processor a bed, 4 to 5 min for all at rest.
  it('lies on any bed of the three sizes without a warning', () => {
    for (let seed = 0; seed < runs(2); seed++) {
      const chance = chanceOf(seed * 17 + name.length);
      const width = inches(38 + 22 * chance());
      const other = { ...design.bed.mattress, width, length: inches(75 + 5 * chance()) };
      const fitted = fitToBed(design, { mattress: other, pivotAlong: null, measure: design.measure });
      expect(checksOf(fitted), `${seed} ${JSON.stringify(other)}`).toEqual([]);
    }
  });

  // Mattresses sold by one name are up to an inch and a half apart. Common practice, no source.
  it('lies on any bed about as large without a warning', () => {
    for (let seed = 0; seed < runs(2); seed++) {
      const chance = chanceOf(seed * 11 + name.length);
      const { mattress } = design.bed;
      const by = () => inches(3 * chance() - 1.5);
      const other = { ...mattress, width: mattress.width + by(), length: mattress.length + by() };
      const fitted = fitToBed(design, { mattress: other, pivotAlong: null, measure: design.measure });
      const told = `${seed} ${JSON.stringify(other)}`;
      expect(checksOf(fitted), told).toEqual([]);
    }
  });
});
