import type { Strip } from '../../design/schema.ts';
import { type Deg, degrees } from '../../measure/units.ts';

/** How far a strip is turned from lying across, as it lies in its box. */
export function angleOfStrip(strip: Strip, box: Strip['box']): Deg {
  switch (strip.lie) {
    case 'across':
      return 0;
    case 'up':
      return 90;
    case 'turned':
      return strip.angle;
    case 'rising':
      return degrees(Math.atan2(box.h, box.w));
    case 'falling':
      return degrees(Math.atan2(-box.h, box.w));
  }
}
