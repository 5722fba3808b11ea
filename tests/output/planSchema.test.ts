import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { planJson, planJsonSchema } from '../../src/output/json/planJson.ts';
import { planOf, STARTERS } from '../plan/starters.ts';

// An independent reader of JSON Schema, draft 2020-12 (json-schema.org).
const ajv = new Ajv2020({ keywords: ['unit'], strict: true, strictTuples: false });
const schema = planJsonSchema();
const holds = ajv.compile(schema);
const words = { check: () => 'x', step: () => 'x' };

/** Every figure by its path, as the schema describes it. */
function figures(node: unknown, path: string): { path: string; unit: unknown }[] {
  if (typeof node !== 'object' || node === null) return [];
  const { type, unit, ...more } = node as { type?: unknown; unit?: unknown };
  return [
    ...(type === 'number' && !('const' in more) ? [{ path, unit }] : []),
    ...Object.entries(node).flatMap(([key, child]) => figures(child, `${path}/${key}`)),
  ];
}

describe('the schema of plan.json', () => {
  it('is what stands in the assets', () => {
    const file = readFileSync(new URL('../../assets/plan.schema.json', import.meta.url), 'utf8');
    expect(JSON.parse(file)).toEqual(JSON.parse(JSON.stringify(schema)));
  });

  it('names the unit of every figure', () => {
    const found = figures(schema, '');
    expect(found.length).toBeGreaterThan(60);
    expect(found.filter(({ unit }) => typeof unit !== 'string')).toEqual([]);
  });

  it('has in each name the unit that it tells', () => {
    const units = { mm: 'mm', mm2: 'mm2', deg: 'deg', m2: 'm2', l: 'l', kg: 'kg', n: 'N', nm: 'N m', m: 'm' };
    for (const { path, unit } of figures(schema, '')) {
      const [, name] =
        /([a-z0-9]+)(?:\/(?:items|prefixItems|anyOf|properties|outer|holes|left|right|\d+))*$/.exec(path) ??
        [];
      if (name && name in units) expect(unit, path).toBe(units[name as keyof typeof units]);
    }
  });

  it.each(STARTERS)(
    'holds the plan of %s, and refuses it with a field more, one less or one of another type',
    (name) => {
      const plan = JSON.parse(planJson(planOf(name), words)) as Record<string, unknown>;
      expect(holds(plan), JSON.stringify(holds.errors)).toBe(true);
      for (const key of Object.keys(plan)) {
        const { [key]: _, ...less } = plan;
        expect(holds(less), key).toBe(false);
        expect(holds({ ...plan, [key]: 'x' }), key).toBe(false);
      }
      expect(holds({ ...plan, more: 1 })).toBe(false);
    },
  );
});
