import type { Check, Severity } from '../check/check.ts';
import { isBars } from '../design/made.ts';
import type { Joint } from '../design/schema.ts';
import { type LaidPart, legsOf } from '../layout/laid.ts';
import { grouped, groupOf } from '../list/grouped.ts';
import { type Bar, TOUCH } from './bar.ts';
import { type Decision, namesBoth } from './decide.ts';
import type { Meeting } from './meet.ts';
import type { JointFound } from './piece.ts';
import type { SawnBar } from './saw.ts';
import { sharedSide } from './touch.ts';

/** One place where two bars meet, what was decided there, and the joint that was cut; null for none. */
export interface Attempt {
  readonly a: Bar;
  readonly b: Bar;
  readonly shape: Meeting['shape'] | 'run';
  readonly decision: Decision | null;
  readonly joint: JointFound | null;
}

/**
 * Why a chosen joint is not in the wood.
 * - `arch`: the segments of an arch are mitered, since at their shallow turns nothing else can be sawn.
 * - `runs-on`: a miter needs two ends, and one of the two pieces runs on.
 * - `straight`: the ends meet in one straight line.
 * - `along`: the pieces lie along or within each other.
 * - `flat`: what is to be coped to has no section.
 * - `through`: neither of the two is the part that is to run through.
 * - `covered`: other cuts take the wood that it would be cut in.
 * - `apart`: the two do not meet at one height.
 * - `overruled`: another choice for the same two parts stands.
 * - `no-strip`: one of them is no strip or frame of this design.
 */
export type WhyNot =
  | 'arch'
  | 'runs-on'
  | 'straight'
  | 'along'
  | 'flat'
  | 'through'
  | 'covered'
  | 'apart'
  | 'overruled'
  | 'no-strip';

/** What only waits for its parts to come together is worth a word; an arch forbids the plan. */
const SEVERITY: Partial<Readonly<Record<WhyNot, Severity>>> = {
  arch: 'error',
  apart: 'note',
  overruled: 'note',
};

interface Chosen {
  readonly joints: readonly Joint[];
  readonly parts: readonly LaidPart[];
}

/**
 * Every chosen joint that the wood does not have, with the reason: at most one check for each reason of
 * each choice, which counts its places.
 */
export function chosenChecks(
  { joints, parts }: Chosen,
  attempts: readonly Attempt[],
  lengths: readonly SawnBar[],
): Check[] {
  const ofBar = lengthsOfBars(lengths);
  return joints.flatMap((joint) => {
    const own = attempts.filter(({ decision }) => decision?.joint === joint);
    if (own.length === 0) return [checkOf(joint, neverTried(joint, parts, attempts), [])];
    const reasons = own.map((attempt) => ({ attempt, why: whyNot(joint, attempt, ofBar) }));
    return [...new Set(reasons.map(({ why }) => why))].flatMap((why) =>
      why === null
        ? []
        : [
            checkOf(
              joint,
              why,
              reasons.filter((r) => r.why === why).map((r) => r.attempt),
            ),
          ],
    );
  });
}

function checkOf(joint: Joint, why: WhyNot, attempts: readonly Attempt[]): Check {
  const at = attempts.find((attempt) => attempt.joint)?.joint?.at;
  return {
    code: 'joint.not-made',
    severity: SEVERITY[why] ?? 'warning',
    parts: [...new Set(joint.parts)],
    ...(at ? { at } : {}),
    figures: { kind: joint.kind, why, count: attempts.length },
  };
}

function neverTried(joint: Joint, parts: readonly LaidPart[], attempts: readonly Attempt[]): WhyNot {
  if (attempts.some(({ a, b }) => namesBoth(joint, a, b))) return 'overruled';
  const isStick = (id: string): boolean =>
    parts.some((laid) => isBars(laid) && (laid.id === id || laid.part === id));
  return joint.parts.every(isStick) ? 'apart' : 'no-strip';
}

type LengthsOfBar = (bar: Bar) => readonly SawnBar[];

function lengthsOfBars(lengths: readonly SawnBar[]): LengthsOfBar {
  const ofBar = grouped(lengths, ({ bar }) => bar.index);
  return (bar) => groupOf(ofBar, bar.index);
}

function whyNot(chosen: Joint, { a, b, shape, joint }: Attempt, ofBar: LengthsOfBar): WhyNot | null {
  // The choice for a frame stands for all its corners, so a frame with a bow of segments has none but the miter.
  if (shape === 'run' && hasSegments(a) && chosen.kind !== 'miter') return 'arch';
  if (!joint) return 'along';
  if (joint.kind !== chosen.kind) {
    if (chosen.kind === 'miter') return shape === 'tee' || shape === 'cross' ? 'runs-on' : 'straight';
    return joint.kind === 'butt' && joint.through !== null ? 'flat' : 'straight';
  }
  const between = chosen.parts[0] !== chosen.parts[1] && joint.through !== null;
  if (between && chosen.through !== undefined) {
    const through = joint.through === a.laid.id ? a : b;
    if (chosen.through !== through.laid.id && chosen.through !== through.laid.part) return 'through';
  }
  return isCut(joint, a, b, ofBar) ? null : 'covered';
}

const hasSegments = ({ laid }: Bar): boolean => legsOf(laid).some(({ bowed }) => bowed);

/** Whether what was sawn bears the joint: its notch in both, or its cut, lying against the other one. */
function isCut({ kind, through }: JointFound, a: Bar, b: Bar, ofBar: LengthsOfBar): boolean {
  if (kind === 'half-lap') {
    const notched = (bar: Bar, other: Bar): boolean =>
      ofBar(bar).some(({ notches }) => notches.some((notch) => notch.with === other.laid.id));
    return notched(a, b) && notched(b, a);
  }
  const ends = (bar: Bar, other: Bar): boolean =>
    ofBar(bar).some(
      (length) =>
        length.outline.some(({ edge }) => edge?.cut.kind === kind && edge.cut.with === other.laid.id) &&
        ofBar(other).some((beside) => liesAgainst(length, beside)),
    );
  if (kind === 'miter') return ends(a, b) && ends(b, a);
  if (a.laid.id === b.laid.id || through === null) return ends(a, b) || ends(b, a);
  return through === a.laid.id ? ends(b, a) : ends(a, b);
}

const liesAgainst = (a: SawnBar, b: SawnBar): boolean =>
  a.seen.some((p) => b.seen.some((q) => sharedSide(p.outer, q.outer) > TOUCH));
