import type { Building } from './building.ts';
import type { Answers, Questions, Size } from './question.ts';

/** A kind of assembly: what is asked, with how it is answered at first in a space, and what is made of the answers. */
export interface AssemblyKind<Q extends Questions = Questions> {
  /** The size that a plain click places. */
  readonly usual: Size;
  readonly questions: Q;
  /** Makes its parts and rules. Structure follows from the answers alone; where things lie is told by rules. */
  make(in_: Building, answers: Answers<Q>): void;
}

/** A kind with its questions known by name within it, and by any name outside. */
export const kindOf = <Q extends Questions>(kind: AssemblyKind<Q>): AssemblyKind =>
  kind as unknown as AssemblyKind;
