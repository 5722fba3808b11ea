import type { Check } from '../check/check.ts';
import type { Deg, Kg, Mm, NewtonMeters, Newtons } from '../measure/units.ts';

export interface LoadPlan {
  readonly added: Kg;
  /** Center of gravity of what is added, in face coordinates; the middle of the face when nothing is. */
  readonly center: { readonly x: Mm; readonly y: Mm; readonly z: Mm };
  /** Moment of what is added about the pivot, bed lowered (its largest lever). */
  readonly moment: NewtonMeters;
  /** Added force at the far edge at the start of the lift. */
  readonly liftAdded: Newtons;
  /** The bare bed, mattress and all, by its own measures. */
  readonly bare: Kg;
  readonly liftBare: Newtons;
  /** Through the swing, 0 stowed to 90 lowered. */
  readonly curve: readonly {
    readonly angle: Deg;
    readonly added: NewtonMeters;
    readonly bare: NewtonMeters;
    readonly liftAdded: Newtons;
  }[];
  readonly byPart: readonly { readonly part: string; readonly mass: Kg }[];
  readonly checks: readonly Check[];
}
