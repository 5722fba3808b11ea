import type { Axis } from '../../design/schema.ts';
import type { Mm } from '../../measure/units.ts';

/** A line or dimension that is shown while a gesture runs: what it snapped to and the measure that would hold. */
export type Guide =
  | {
      readonly kind: 'line';
      /** Axis along which the line's place is measured. */
      readonly axis: Axis;
      readonly at: Mm;
      /** Extent along the other axis. */
      readonly from: Mm;
      readonly to: Mm;
    }
  | {
      readonly kind: 'gap';
      readonly axis: Axis;
      readonly from: Mm;
      readonly to: Mm;
      /** Where the dimension line runs, on the other axis. */
      readonly cross: Mm;
      readonly label: string;
    };
