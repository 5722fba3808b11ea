import type { Finish } from '../design/schema.ts';
import { colorOfLight, type Light, lightOf } from '../drawing/color.ts';
import type { Color } from '../drawing/drawing.ts';
import { lastOf, pick } from '../list/at.ts';
import { luminance } from './contrast.ts';

/** Colors to try on a whole face: its own in another light, or others in the order of theirs. Our own choice, by eye. */
export type ColorSet = { readonly id: string; readonly sheen?: Finish['sheen'] } & (
  | {
      /** Each is mixed with this one, by a share of it. */
      readonly toward: Color;
      readonly by: number;
      /** Of what sets a color off from gray, so much is left. */
      readonly vivid: number;
      /** As dark and as light as the darkest and the lightest come to be. */
      readonly range: readonly [dark: Color, light: Color];
    }
  /** From dark to light. */
  | { readonly colors: readonly [Color, ...Color[]] }
);

/** Contrast is a ratio of these: WCAG 2.x. Their logarithms add up. */
const toneOf = (luminance: number): number => Math.log(luminance + 0.05);
const luminanceOf = (tone: number): number => Math.exp(tone) - 0.05;

/** Colors that are nearer to each other than this are not drawn apart to the ends of a set. Our own choice. */
const LEAST_SPAN = Math.log(4.5);

const mixed = (a: Light, b: Light, share: number): Light => ({
  r: a.r + (b.r - a.r) * share,
  g: a.g + (b.g - a.g) * share,
  b: a.b + (b.b - a.b) * share,
});

const BLACK = lightOf('#000000');
const WHITE = lightOf('#ffffff');

/** The light nearest to one that is as light as told: luminance is additive in it. */
function asLight(light: Light, wanted: number): Light {
  const has = luminance(colorOfLight(light));
  if (wanted <= has) return mixed(BLACK, light, has === 0 ? 0 : wanted / has);
  return mixed(light, WHITE, (wanted - has) / (1 - has));
}

/** A color of those from dark to light that is as light as told, between the two that it lies between. */
function among(colors: readonly Color[], wanted: number): Light {
  const above = colors.findIndex((color) => luminance(color) >= wanted);
  if (above <= 0) return lightOf(above < 0 ? lastOf(colors) : pick(colors, 0));
  const [a, b] = [pick(colors, above - 1), pick(colors, above)];
  return mixed(lightOf(a), lightOf(b), (wanted - luminance(a)) / (luminance(b) - luminance(a)));
}

/**
 * Finishes in the colors of a set. Paint alone changes: stains and clear coats show the wood under them. What is darker
 * stays darker: contrasts of the face are raised to one power, by which its range of lightness fills that of the set, so
 * that letters which are legible stay so where the set has the room.
 */
export function inColors(finishes: readonly Finish[], set: ColorSet): Finish[] {
  const tones = finishes.filter(isPainted).map(({ color }) => toneOf(luminance(color)));
  const [low, high] = [Math.min(...tones), Math.max(...tones)];
  const ends = 'colors' in set ? [pick(set.colors, 0), lastOf(set.colors)] : set.range;
  const [dark, light] = ends.map((color) => toneOf(luminance(color)));
  return finishes.map((finish) => {
    if (!isPainted(finish) || dark === undefined || light === undefined) return finish;
    const share =
      0.5 + (toneOf(luminance(finish.color)) - (low + high) / 2) / Math.max(high - low, LEAST_SPAN);
    const wanted = luminanceOf(dark + share * (light - dark));
    const color = colorOfLight(
      'colors' in set ? among(set.colors, wanted) : asLight(tinted(finish, set), wanted),
    );
    return { ...finish, color, ...(set.sheen ? { sheen: set.sheen } : {}) };
  });
}

/** Whether a finish hides the wood under it. */
export const isPainted = ({ kind }: Finish): boolean => kind === 'paint';

function tinted({ color }: Finish, { toward, by, vivid }: Extract<ColorSet, { toward: Color }>): Light {
  const own = lightOf(color);
  const gray = luminance(color);
  const { r, g, b } = mixed({ r: gray, g: gray, b: gray }, own, vivid);
  const within = (channel: number) => Math.min(1, Math.max(0, channel));
  return mixed({ r: within(r), g: within(g), b: within(b) }, lightOf(toward), by);
}
