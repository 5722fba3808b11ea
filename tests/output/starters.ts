import { readFileSync } from 'node:fs';
import { readSupplies } from '../../src/command/supplies.ts';
import { openDesign } from '../../src/design/open.ts';
import type { Design } from '../../src/design/schema.ts';
import { plan } from '../../src/plan/plan.ts';
import type { Plan } from '../../src/plan/types.ts';

export const STARTERS = ['harbor-ticket-kiosk', 'orchard-barn-door', 'corner-bakery'] as const;

export function starter(name: (typeof STARTERS)[number]): Design {
  const text = readFileSync(new URL(`../../assets/starters/${name}.json`, import.meta.url), 'utf8');
  const opened = openDesign(text);
  if (!opened.ok) throw new Error(`${name} cannot be opened`);
  return opened.design;
}

/** A plan with little search: pages are drawn the same whichever boards it finds. */
export const planned = (design: Design): Plan =>
  plan(design, readSupplies(design), { effort: { nodes: 2000 } });
