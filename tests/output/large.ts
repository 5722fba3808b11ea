import type { Design } from '../../src/design/schema.ts';
import { starter } from '../plan/starters.ts';

/** Two hundred laths of 41 lengths in rows on a skin: as many names, marks, brads and checks as one face may have. */
export function manyParts(): Design {
  const design = starter('bread-shop');
  const part = design.parts.find(({ kind }) => kind === 'strip');
  if (part?.kind !== 'strip') throw new Error('no strip');
  const parts = Array.from({ length: 200 }, (_, i) => ({
    ...part,
    id: `lath-${i}`,
    name: `Lath ${i + 1}`,
    stock: 'pine-1x2',
    box: { x: 20 + (i % 10) * 140, y: 30 + Math.floor(i / 10) * 95, w: 90 + ((i * 37) % 41), h: 38.1 },
  }));
  return { ...design, name: 'Two hundred laths', parts, rules: [], joints: [], groups: [] };
}

/** The kiosk without its sign on a bed as wide as three meters. */
export function threeMeters(): Design {
  const design = starter('harbor-ticket-kiosk');
  const isSign = (value: unknown) => /"sign(-molding)?"/.test(JSON.stringify(value));
  return {
    ...design,
    name: 'Three meters',
    bed: { ...design.bed, mattress: { ...design.bed.mattress, width: 2900 } },
    parts: design.parts.filter((part) => !isSign(part.id)),
    rules: design.rules.filter((rule) => !isSign(rule)),
  };
}
