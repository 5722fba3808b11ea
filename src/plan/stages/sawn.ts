import { planJoinery } from '../../joinery/joinery.ts';
import { bodiesOf } from '../bodies.ts';
import { reuse } from '../reuse.ts';
import type { FaceFacts } from './face.ts';
import type { PlanFacts, PlanGiven } from './facts.ts';
import { type Stages, stage } from './stage.ts';

export type SawnFacts = Pick<PlanFacts, 'bodies' | 'joined'>;
type Known = Pick<PlanGiven, 'design' | 'memory'> & FaceFacts & SawnFacts;

/** From parts in place to their pieces, without letters: of the plan, and of what asks which pieces a change makes anew. */
export const SAWN_STAGES: Stages<Known, SawnFacts> = {
  bodies: stage(
    ({ layout }) => ({ parts: layout.parts }),
    ({ parts }, last) => bodiesOf(parts, last),
  ),
  joined: stage(
    ({ bodies, stocks, design: { joints, shop, measure }, memory }) => ({
      ...{ parts: bodies, joints, stocks, shop, measure, results: memory.results },
    }),
    // Lists come out whole; what is in them the same stays the same, so that later stages know it again.
    ({ results, ...input }, last) => {
      const now = planJoinery(input, results);
      return { ...now, pieces: reuse(last?.pieces, now.pieces), solids: reuse(last?.solids, now.solids) };
    },
  ),
};
