import type { Joinery } from '../joinery/piece.ts';
import type { FaceFacts, FaceGiven } from './stages/face.ts';
import { createPlanMemory } from './stages/memory.ts';
import { SAWN_STAGES, type SawnFacts } from './stages/sawn.ts';
import { type Made, through } from './stages/stage.ts';

/** Tells the pieces and joints of a design that is laid out, letters apart. */
export type Sawing = (laid: FaceGiven & FaceFacts) => Joinery;

/**
 * The pieces alone, without boards, paint and what else a plan holds: soon enough to be asked of every edit. What was
 * asked before is remembered while somebody has it.
 */
export function createSawing(): Sawing {
  const memory = createPlanMemory();
  const asked = new WeakMap<object, Joinery>();
  let made: Partial<Made<SawnFacts>> = {};
  return (laid) => {
    const known = asked.get(laid);
    if (known) return known;
    const next = through<FaceGiven & FaceFacts & { memory: typeof memory }, SawnFacts>(
      SAWN_STAGES,
      { ...laid, memory },
      made,
    );
    made = next.made;
    const { joined } = next.facts;
    asked.set(laid, joined);
    return joined;
  };
}
