import type { Bed } from '../bed/bed.ts';
import type { Face } from '../bed/face.ts';
import { LOWERED, STOWED } from '../bed/swing.ts';
import { type Check, orderChecks } from '../check/check.ts';
import type { Design } from '../design/schema.ts';
import { KeptResults } from '../layout/kept.ts';
import { addUp } from '../list/totals.ts';
import type { Kg, Mm, NewtonMeters, Newtons } from '../measure/units.ts';
import { bareBed } from './bare.ts';
import { type MassInput, massesOf, type PointMass } from './mass.ts';
import { centerOf, momentAt, totalMass } from './moment.ts';
import type { LoadPlan } from './result.ts';

/** Angles of the curve, as steps of the whole swing. */
const CURVE_STEPS = 18;
/** Parts named in a check: the heaviest. */
const NAMED = 3;

export interface LoadInput extends MassInput {
  readonly bed: Bed;
  readonly face: Face;
  /** Levels at which the person wants to be warned. */
  readonly limits: Design['load'];
}

/** Force at the far edge, upright to the leaf, that balances a moment: F x lever = moment. */
function atFarEdge(bed: Bed, face: Face, moment: NewtonMeters): Newtons {
  const lever: Mm = face.height - bed.pivot.aboveEdge;
  return lever > 0 ? (moment * 1000) / lever : 0;
}

function byPart(masses: readonly PointMass[]): { part: string; mass: Kg }[] {
  const sums = new Map<string, Kg>();
  for (const { part, mass } of masses) addUp(sums, part, mass);
  return [...sums].map(([part, mass]) => ({ part, mass }));
}

function limitChecks(
  added: Kg,
  lift: Newtons,
  limits: Design['load'],
  parts: readonly { readonly part: string; readonly mass: Kg }[],
): Check[] {
  const heaviest = [...parts]
    .sort((a, b) => b.mass - a.mass || (a.part < b.part ? -1 : 1))
    .slice(0, NAMED)
    .map(({ part }) => part);
  const checks: Check[] = [];
  if (added > limits.warnAdded_kg) {
    const figures = { added_kg: added, limit_kg: limits.warnAdded_kg };
    checks.push({ code: 'load.heavy', severity: 'warning', parts: heaviest, figures });
  }
  if (lift > limits.warnLift_n) {
    const figures = { lift_n: lift, limit_n: limits.warnLift_n };
    checks.push({ code: 'load.lift', severity: 'warning', parts: heaviest, figures });
  }
  return checks;
}

/**
 * What the face adds to the bed: mass, center of gravity, moment about the pivot, and the force at the far
 * edge that lifts it, through the whole swing and beside the bare bed's own estimate.
 *
 * Static: no springs, no friction, no speed. Lifting hardware is chosen by its maker's word.
 *
 * Checks: `load.heavy` and `load.lift` (warnings) above the person's own levels, `load.no-density`
 * (warning) for a stock that cannot be weighed.
 */
export function planLoad(input: LoadInput, results = new KeptResults()): LoadPlan {
  const { bed, face, limits } = input;
  const { masses, checks } = massesOf(input, results);
  const bare = bareBed(bed, face, input.materials);
  const added = totalMass(masses);
  const moment = momentAt(bed, masses, LOWERED);
  const liftAdded = atFarEdge(bed, face, moment);
  const curve = Array.from({ length: CURVE_STEPS + 1 }, (_, step) => {
    const angle = STOWED + ((LOWERED - STOWED) * step) / CURVE_STEPS;
    const addedMoment = momentAt(bed, masses, angle);
    return {
      angle,
      added: addedMoment,
      bare: momentAt(bed, bare, angle),
      liftAdded: atFarEdge(bed, face, addedMoment),
    };
  });
  const parts = byPart(masses);
  return {
    added,
    center: centerOf(masses) ?? { x: face.width / 2, y: face.height / 2, z: 0 },
    moment,
    liftAdded,
    bare: totalMass(bare),
    liftBare: atFarEdge(bed, face, momentAt(bed, bare, LOWERED)),
    curve,
    byPart: parts,
    checks: orderChecks([...checks, ...limitChecks(added, liftAdded, limits, parts)]),
  };
}
