import type { Color } from './drawing.ts';

/** Shares of red, green and blue light, 0 to 1, on a scale where half is half the light. */
export interface Light {
  readonly r: number;
  readonly g: number;
  readonly b: number;
}

/** Light of `#rrggbb` (sRGB transfer function, IEC 61966-2-1; from memory). */
export function lightOf(color: Color): Light {
  const channel = (from: number) => {
    const value = Number.parseInt(color.slice(from, from + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return { r: channel(1), g: channel(3), b: channel(5) };
}

/** The color nearest to a light. */
export function colorOfLight({ r, g, b }: Light): Color {
  const channel = (light: number) => {
    const share = Math.min(1, Math.max(0, light));
    const value = share <= 0.0031308 ? share * 12.92 : 1.055 * share ** (1 / 2.4) - 0.055;
    return Math.round(value * 255)
      .toString(16)
      .padStart(2, '0');
  };
  return `#${channel(r)}${channel(g)}${channel(b)}`;
}
