import { type Deg, degrees, radians } from '../measure/units.ts';
import { cornerMiter } from './miter.ts';

/** A saw setting: what the saw is turned to and what it is tilted to. */
export interface SawSetting {
  readonly miter: Deg;
  readonly bevel: Deg;
}

/**
 * Compound setting, board flat on the table, for sides that slope by `slope` from the plane in which the
 * joint turns, meeting at the angle `corner` in that plane:
 * tan(miter) = cos(slope) / tan(corner / 2), sin(bevel) = sin(slope) * cos(corner / 2).
 * A corner over 180 is an outside corner: both come out negative, the saw is turned and tilted the other way.
 */
export function compoundSetting(slope: Deg, corner: Deg): SawSetting {
  const half = radians(corner / 2);
  const tilt = radians(slope);
  return {
    miter: degrees(Math.atan(Math.cos(tilt) / Math.tan(half))),
    bevel: degrees(Math.asin(Math.sin(tilt) * Math.cos(half))),
  };
}

/** Sprung molding: both ways to saw one corner. */
export interface SprungSetting {
  readonly flat: SawSetting;
  /** Held at its spring angle between fence and table: a plain miter cut. */
  readonly nested: SawSetting;
}

/**
 * Settings at a corner of two walls, for a molding that leans on them at its spring angle: miter =
 * atan(sin s / tan(c / 2)), bevel = asin(cos s * cos(c / 2)) flat, (180 - c) / 2 without bevel nested.
 * Inside corners are under 180; outside corners over 180 come out negative. On the face, which is the wall
 * of what is fixed to it, only a return turns such a corner: around the end of the molding, back to the face.
 */
export const wallCornerSetting = (spring: Deg, corner: Deg): SprungSetting => settingAt(90 - spring, corner);

/**
 * Settings at a corner that turns within the one wall that the molding leans on, as a frame on the face
 * does: the sides slope by the spring angle itself from the plane of the corner. The board's own width times
 * tan(miter) is then what the corner takes of the width seen from the front, which wall corner settings
 * would miss.
 */
export const frameCornerSetting = (spring: Deg, corner: Deg): SprungSetting => settingAt(spring, corner);

/** Nested, the plane of the corner is the saw's table, and the cut a plain miter. */
const settingAt = (slope: Deg, corner: Deg): SprungSetting => ({
  flat: compoundSetting(slope, corner),
  nested: { miter: cornerMiter(corner), bevel: 0 },
});
