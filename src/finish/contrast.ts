import type { Check } from '../check/check.ts';
import type { Finish } from '../design/schema.ts';
import { lightOf } from '../drawing/color.ts';
import type { Color } from '../drawing/drawing.ts';
import { type LetterLayer, type OwnRole, toldOf } from '../lettering/result.ts';
import { type Looks, letterLook } from './look.ts';
import type { SignContrast } from './result.ts';

/** Large lettering is legible from here on: WCAG 2.x, success criterion 1.4.3 for large text. */
export const LEGIBLE_CONTRAST = 3;

/** Relative luminance of `#rrggbb`, 0 for black to 1 for white (WCAG 2.x definition, sRGB). */
export function luminance(color: Color): number {
  const { r, g, b } = lightOf(color);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast of two colors, 1 to 21, whichever is named first: (lighter + 0.05) / (darker + 0.05). */
export function contrastRatio(a: Color, b: Color): number {
  const [la, lb] = [luminance(a), luminance(b)];
  return (Math.max(la, lb) + 0.05) / (Math.min(la, lb) + 0.05);
}

/** The colors of one sign's lettering. */
interface SignColors {
  readonly sign: string;
  readonly layers: readonly Pick<LetterLayer, 'role' | 'finish'>[];
}

/**
 * How well a sign's lettering stands out as it looks in the end, stains mixed with their wood: of lines that look
 * differently those that stand out least, and of each the better of the
 * letters against what surrounds them and their outline against the ground, since either makes them readable.
 * Null where a color is not known.
 *
 * @param beside what letters without a board are seen on; of several that with which they stand out least counts
 */
export function letteringContrast(
  { sign, layers }: SignColors,
  looks: Looks,
  finishes: readonly Finish[],
  beside: readonly Color[] = [],
): number | null {
  const told = layers.map(({ role, finish }) => ({ finish, ...toldOf(role) }));
  const unders = beside.length > 0 ? beside : [looks.parts.get(sign) ?? null];
  const ofLook = (look: number): number[] => unders.flatMap((under) => onGround(look, under));
  const onGround = (look: number, under: Color | null): number[] => {
    const colorOf = (role: OwnRole) => {
      const finish = told.find(({ of, number }) => of === role && number === look)?.finish;
      return finish === undefined ? null : letterLook(looks, finishes, sign, finish);
    };
    const outline = colorOf('outline');
    const ground = colorOf('ribbon') ?? under;
    const ratios = [
      [colorOf('fill'), outline ?? ground],
      [outline, ground],
    ].flatMap(([a, b]) => (a && b ? [contrastRatio(a, b)] : []));
    return ratios.length === 0 ? [] : [Math.max(...ratios)];
  };
  const fills = told.filter(({ of }) => of === 'fill').map(({ number }) => number);
  const ratios = fills.flatMap(ofLook);
  return ratios.length === 0 ? null : Math.min(...ratios);
}

/** The contrast of every sign of which it is known; `besideOf` as in `letteringContrast`. */
export const contrastsOf = (
  lettering: readonly SignColors[],
  looks: Looks,
  finishes: readonly Finish[],
  besideOf: (sign: string) => readonly Color[],
): SignContrast[] =>
  lettering.flatMap(({ sign, layers }) => {
    const ratio = letteringContrast({ sign, layers }, looks, finishes, besideOf(sign));
    return ratio === null ? [] : [{ sign, ratio }];
  });

/** `lettering.low-contrast` for every sign that would be hard to read. */
export const contrastChecks = (contrasts: readonly SignContrast[]): Check[] =>
  contrasts
    .filter(({ ratio }) => ratio < LEGIBLE_CONTRAST)
    .map(({ sign, ratio }) => ({
      code: 'lettering.low-contrast',
      severity: 'warning',
      parts: [sign],
      figures: { ratio },
    }));
