import { DUST } from '../../geometry/tolerance.ts';
import { type Deg, degrees, type Mm, radians } from '../../measure/units.ts';

/** Slats from one edge to the other. */
export interface Louvers {
  readonly tilt: Deg;
  readonly count: number;
  /** From one slat to the next. */
  readonly pitch: Mm;
  /** What one covers of the face, and how far it stands out. */
  readonly height: Mm;
  readonly depth: Mm;
}

/** A bar `width` by `thickness` that leans by `tilt`: w cos a + t sin a over the face, w sin a + t cos a out of it. */
const leaning = (width: Mm, thickness: Mm, tilt: Deg): Pick<Louvers, 'height' | 'depth'> => {
  const [cos, sin] = [Math.cos(radians(tilt)), Math.sin(radians(tilt))];
  return { height: width * cos + thickness * sin, depth: width * sin + thickness * cos };
};

/** Halvings after which a pitch is found as near as numbers tell. */
const HALVINGS = 60;

/**
 * Slats that fill `room` whole, as few as lap by at least `lap`.
 *
 * With a tilt the lap is what is seen of it from the front (figures of shutter makers: check-values-2.md, section 18).
 * Without one each lies flat on the face of the one below, so that their planes lie a thickness apart: of slats `p` apart
 * the sine of the tilt is t / p, and the lap is measured along the slat.
 */
export function louversOf(room: Mm, width: Mm, thickness: Mm, lap: Mm, tilt?: Deg): Louvers {
  const cover = Math.max(width - lap, thickness);
  if (tilt !== undefined) {
    const own = leaning(width, thickness, tilt);
    const most = Math.max(own.height - lap, thickness);
    const count = 1 + Math.max(0, Math.ceil((room - own.height) / most - DUST));
    return { ...own, tilt, count, pitch: count > 1 ? (room - own.height) / (count - 1) : own.height };
  }
  const lying = (pitch: Mm): Omit<Louvers, 'count'> => {
    const tilt = degrees(Math.asin(thickness / pitch));
    return { tilt, pitch, ...leaning(width, thickness, tilt) };
  };
  const most = Math.hypot(cover, thickness);
  const count = 1 + Math.max(0, Math.ceil((room - lying(most).height) / most - DUST));
  let [low, high] = [thickness, most];
  for (let i = 0; count > 1 && i < HALVINGS; i++) {
    const pitch = (low + high) / 2;
    if ((count - 1) * pitch + lying(pitch).height < room) low = pitch;
    else high = pitch;
  }
  return { count, ...lying(high) };
}
