import { readdirSync, readFileSync } from 'node:fs';
import { readSupplies } from '../../src/command/supplies.ts';
import { openDesign } from '../../src/design/open.ts';
import { problemMessage } from '../../src/design/problem.ts';
import type { Design } from '../../src/design/schema.ts';
import { plan } from '../../src/plan/plan.ts';
import type { Plan, Supplies } from '../../src/plan/types.ts';

const FOLDER = new URL('../../assets/starters/', import.meta.url);

export const STARTERS = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.json'))
  .map((name) => name.replace('.json', ''));

const once = <A, R>(work: (of: A) => R): ((of: A) => R) => {
  const known = new Map<A, R>();
  return (of) => {
    const found = known.get(of) ?? work(of);
    known.set(of, found);
    return found;
  };
};

export const starter = once((name: string): Design => {
  const opened = openDesign(readFileSync(new URL(`${name}.json`, FOLDER), 'utf8'));
  if (!opened.ok) throw new Error(opened.problems.map((p) => problemMessage(p)).join('\n'));
  return opened.design;
});

/** The same design for a shop that measures in millimeters and prints on A4. */
export const inMetric = (design: Design): Design => ({
  ...design,
  measure: { ...design.measure, unit: 'mm' },
  pages: { ...design.pages, paper: 'a4' },
});

export const kiosk = (): Design => starter('harbor-ticket-kiosk');

/** Supplies with the fonts of every starter, read once. */
export const SUPPLIES: Supplies = (() => {
  const all = STARTERS.map((name) => readSupplies(starter(name)));
  const fonts = new Map(all.flatMap((s) => [...s.fonts]));
  return { ...(all[0] as Supplies), fonts };
})();

/** The plan of a starter as people get it, made once for all the tests that a worker runs. */
export const planOf = once((name: string): Plan => plan(starter(name), SUPPLIES));

/** A plan with little search, for what is the same whichever boards are found. */
export const planned = (design: Design): Plan => plan(design, SUPPLIES, { effort: { nodes: 2000 } });
