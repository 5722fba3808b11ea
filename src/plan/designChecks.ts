import type { Check } from '../check/check.ts';
import { finishesIn } from '../design/look.ts';
import { isLettered } from '../design/made.ts';
import { picturesIn } from '../design/picture.ts';
import type { Design } from '../design/schema.ts';

/** Sizes up to which a design stays quick to work with. */
const LIMITS = { rules: 5000, letters: 500, pages: 400 } as const;

/** Finishes that lettering asks for and the design does not have; the layout names those of the parts. */
export function letteringFinishChecks(design: Design): Check[] {
  const known = new Set(design.finishes.map((f) => f.id));
  return design.parts.flatMap((part) => {
    if (!isLettered(part)) return [];
    const inPictures = picturesIn(part.lettering, design.pictures).flatMap(({ colors }) =>
      colors.flatMap((color) => color.finish ?? []),
    );
    const asked = [...finishesIn(part.lettering), ...inPictures];
    const unknown = new Set(asked.filter((id) => !known.has(id)));
    return [...unknown].map(
      (id): Check => ({
        code: 'part.unknown-finish',
        severity: 'error',
        parts: [part.id],
        figures: { finish: id },
      }),
    );
  });
}

/** Warnings where a design outgrows what the tool is made for. */
export function limitChecks(
  design: Design,
  counts: { readonly letters: number; readonly pages: number },
): Check[] {
  const over = (code: 'limit.rules' | 'limit.letters', count: number, most: number): Check[] =>
    count > most ? [{ code, severity: 'warning', parts: [], figures: { count, most } }] : [];
  const pages: Check[] =
    counts.pages > LIMITS.pages
      ? [
          {
            code: 'patterns.too-many-pages',
            severity: 'warning',
            parts: [],
            figures: { pages: counts.pages, most: LIMITS.pages },
          },
        ]
      : [];
  return [
    ...over('limit.rules', design.rules.length, LIMITS.rules),
    ...over('limit.letters', counts.letters, LIMITS.letters),
    ...pages,
  ];
}
