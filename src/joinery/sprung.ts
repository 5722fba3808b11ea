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
  /** Upside down at its spring angle between fence and table: a plain miter cut. */
  readonly nested: SawSetting;
}

/**
 * Settings for a sprung molding with spring angle `spring`, measured from the upright that its back leans on
 * (the wall in a room; on the face, the side of what the run follows), where two uprights meet at `corner`:
 * miter = atan(sin s / tan(c / 2)), bevel = asin(cos s * cos(c / 2)) flat, and (180 - c) / 2 with no bevel
 * nested. Inside corners are under 180; outside corners over 180 come out negative.
 */
export function sprungSetting(spring: Deg, corner: Deg): SprungSetting {
  return {
    flat: compoundSetting(90 - spring, corner),
    nested: { miter: cornerMiter(corner), bevel: 0 },
  };
}
