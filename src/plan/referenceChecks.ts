import type { Check } from '../check/check.ts';
import type { Design, Member, Part } from '../design/schema.ts';

/** Sizes up to which a design stays quick to work with. */
export const LIMITS = { parts: 2000, rules: 5000, letters: 500, pages: 400 } as const;

/** Names of stocks and finishes that a design uses and does not have; the plan cannot know what to buy. */
export function referenceChecks(design: Design, stocks: ReadonlyMap<string, unknown>): Check[] {
  const finishes = new Set(design.finishes.map((f) => f.id));
  const checks: Check[] = [];
  for (const part of design.parts) {
    for (const stock of stocksOf(part)) {
      if (!stocks.has(stock)) {
        checks.push({ code: 'part.unknown-stock', severity: 'error', parts: [part.id], figures: { stock } });
      }
    }
    for (const finish of finishesOf(part)) {
      if (!finishes.has(finish)) {
        checks.push({
          code: 'part.unknown-finish',
          severity: 'error',
          parts: [part.id],
          figures: { finish },
        });
      }
    }
  }
  return checks;
}

/** Notes where a design outgrows what the tool is made for. */
export function limitChecks(
  design: Design,
  counts: { parts: number; letters: number; pages: number },
): Check[] {
  const over = (
    code: 'limit.parts' | 'limit.rules' | 'limit.letters',
    count: number,
    most: number,
  ): Check[] => (count > most ? [{ code, severity: 'warning', parts: [], figures: { count, most } }] : []);
  const pages: Check[] =
    counts.pages > LIMITS.pages
      ? [
          {
            code: 'patterns.too-many-pages',
            severity: 'warning',
            parts: [],
            figures: { pages: counts.pages },
          },
        ]
      : [];
  return [
    ...over('limit.parts', counts.parts, LIMITS.parts),
    ...over('limit.rules', design.rules.length, LIMITS.rules),
    ...over('limit.letters', counts.letters, LIMITS.letters),
    ...pages,
  ];
}

function stockOf(item: Part | Member): string[] {
  return 'stock' in item ? [item.stock] : [];
}

function stocksOf(part: Part): string[] {
  if (part.kind !== 'array') return stockOf(part);
  const overrides = Object.values(part.overrides).flatMap((o) => (o.stock === undefined ? [] : [o.stock]));
  return [...new Set([...stockOf(part.member), ...overrides])];
}

function finishesOf(part: Part): string[] {
  const named: (string | null | undefined)[] = [part.finish];
  if (part.kind === 'array') {
    named.push(part.member.finish, ...Object.values(part.overrides).map((o) => o.finish));
  }
  if (part.kind === 'sign') {
    const { finish, outline, inline, shade } = part.lettering;
    named.push(finish, outline?.finish, inline?.finish, shade?.finish);
  }
  return [...new Set(named.filter((f): f is string => typeof f === 'string'))];
}
