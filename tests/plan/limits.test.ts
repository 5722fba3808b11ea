import { describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/schema.ts';
import { plan } from '../../src/plan/plan.ts';
import { kiosk, SUPPLIES } from './starters.ts';

/** The kiosk with its sign's text replaced. */
function lettered(lines: readonly { readonly text: string }[]): Design {
  const design = kiosk();
  return {
    ...design,
    parts: design.parts.map((part) =>
      part.kind === 'sign' ? { ...part, lettering: { ...part.lettering, lines: [...lines] } } : part,
    ),
  };
}

describe('more letters than can be set', () => {
  it('a sign of twenty thousand is left out and named', () => {
    const lines = Array.from({ length: 40 }, () => ({ text: 'B'.repeat(500) }));
    const { signs, checks } = plan(lettered(lines), SUPPLIES, { effort: { nodes: 200 } });
    expect(signs).toEqual([]);
    expect(checks.filter((c) => c.code === 'limit.letters')).toEqual([
      { code: 'limit.letters', severity: 'error', parts: ['sign'], figures: { count: 20_000, most: 2000 } },
    ]);
  });
});
