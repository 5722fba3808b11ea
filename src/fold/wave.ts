import { LOWERED } from '../bed/swing.ts';
import { type Deg, degrees, type Mm } from '../measure/units.ts';

/**
 * Distance of a turning point from a plane of the room: `base + c cos a + s sin a`. Every such distance is
 * one cosine wave, `base + R cos(a - peak)`, so its least and its zeros over the swing come in closed form.
 */
export interface Wave {
  readonly base: Mm;
  readonly c: Mm;
  readonly s: Mm;
}

export interface Extreme {
  readonly value: Mm;
  readonly angle: Deg;
}

/** The angle in [0, 360). */
const turn = (angle: Deg): Deg => {
  const within = angle % 360;
  return within < 0 ? within + 360 : within;
};

/** Least value over the swing: at an end of it, or at the trough where that lies within. */
export function least(w: Wave): Extreme {
  const ends: Extreme[] = [
    { value: w.base + w.c, angle: 0 },
    { value: w.base + w.s, angle: LOWERED },
  ];
  const trough = turn(degrees(Math.atan2(w.s, w.c)) + 180);
  if (trough <= LOWERED) ends.push({ value: w.base - Math.hypot(w.c, w.s), angle: trough });
  return ends.reduce((a, b) => (b.value < a.value ? b : a));
}

export function most(w: Wave): Extreme {
  const { value, angle } = least({ base: -w.base, c: -w.c, s: -w.s });
  return { value: -value, angle };
}

/** Angles of the whole turn, in [0, 360), at which the wave is zero: none, or the way up and the way down. */
export function zeros(w: Wave): Deg[] {
  const radius = Math.hypot(w.c, w.s);
  if (radius === 0 || Math.abs(w.base) > radius) return [];
  const peak = degrees(Math.atan2(w.s, w.c));
  const half = degrees(Math.acos(-w.base / radius));
  return [turn(peak - half), turn(peak + half)];
}

/** First angle of the swing at which the value goes below zero; null when it never does. */
export function firstBelow(w: Wave): Deg | null {
  if (w.base + w.c < 0) return 0;
  const [, down] = zeros(w);
  return down !== undefined && down <= LOWERED ? down : null;
}
