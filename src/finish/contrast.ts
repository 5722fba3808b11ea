import type { Check } from '../check/check.ts';
import type { Finish } from '../design/schema.ts';
import type { Color } from '../drawing/drawing.ts';
import type { LetterPaint } from './input.ts';

/** Large lettering is legible from here on: WCAG 2.x, success criterion 1.4.3 for large text. */
export const LEGIBLE_CONTRAST = 3;

/** Relative luminance of `#rrggbb`, 0 for black to 1 for white (WCAG 2.x definition, sRGB). */
export function luminance(color: Color): number {
  const channel = (from: number) => {
    const value = Number.parseInt(color.slice(from, from + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
}

/** Contrast of two colors, 1 to 21, whichever is named first: (lighter + 0.05) / (darker + 0.05). */
export function contrastRatio(a: Color, b: Color): number {
  const [la, lb] = [luminance(a), luminance(b)];
  return (Math.max(la, lb) + 0.05) / (Math.min(la, lb) + 0.05);
}

/**
 * How well a sign's lettering stands out: the better of the letters against what surrounds them and their
 * outline against the ground, since either makes them readable. Null where a color is not known.
 */
export function letteringContrast(
  layers: LetterPaint['layers'],
  ground: string | null,
  colors: ReadonlyMap<string, Color>,
): number | null {
  const colorOf = (role: string) => colors.get(layers.find((layer) => layer.role === role)?.finish ?? '');
  const fill = colorOf('fill');
  const outline = colorOf('outline');
  const under = colors.get(ground ?? '');
  const ratios = [
    [fill, outline ?? under],
    [outline, under],
  ].flatMap(([a, b]) => (a && b ? [contrastRatio(a, b)] : []));
  return ratios.length === 0 ? null : Math.max(...ratios);
}

/** `lettering.low-contrast` for every sign that would be hard to read. */
export function contrastChecks(
  lettering: readonly LetterPaint[],
  groundOf: (sign: string) => string | null,
  finishes: readonly Finish[],
): Check[] {
  const colors = new Map(finishes.map((finish) => [finish.id, finish.color]));
  return lettering.flatMap(({ sign, layers }): Check[] => {
    const ratio = letteringContrast(layers, groundOf(sign), colors);
    if (ratio === null || ratio >= LEGIBLE_CONTRAST) return [];
    return [{ code: 'lettering.low-contrast', severity: 'warning', parts: [sign], figures: { ratio } }];
  });
}
