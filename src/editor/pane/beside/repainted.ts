import type { Finish } from '../../../design/schema.ts';
import { type ColorSet, inColors, isPainted } from '../../../finish/colorSet.ts';
import { luminance } from '../../../finish/contrast.ts';

const fromDark = (a: Finish, b: Finish): number => luminance(a.color) - luminance(b.color);

/**
 * Finishes in the colors of a set, paints named after it and numbered from dark to light: cans are bought by these names,
 * and a green one would not do for what is blue now.
 */
export function repainted(finishes: readonly Finish[], set: ColorSet, name: string): Finish[] {
  const other = inColors(finishes, set);
  const painted = other.filter(isPainted).sort(fromDark);
  return other.map((finish) =>
    isPainted(finish) ? { ...finish, name: `${name} ${painted.indexOf(finish) + 1}` } : finish,
  );
}
