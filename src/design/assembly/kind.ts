import type { Mm } from '../../measure/units.ts';
import type { Building } from './building.ts';
import type { Answers, Questions, Supplies } from './question.ts';

/** How large an assembly is. */
export interface Size {
  readonly w: Mm;
  readonly h: Mm;
}

/** A kind of assembly: what is asked, how it is answered at first in a space, and what is made of the answers. */
export interface AssemblyKind<Q extends Questions = Questions> {
  /** The size that a plain click places. */
  readonly usual: Size;
  readonly questions: Q;
  /** The answers by rule for a space of this size. */
  first(size: Size, has: Supplies): Answers<Q>;
  /** Makes its parts and rules. Structure follows from the answers alone; where things lie is told by rules. */
  make(in_: Building, answers: Answers<Q>): void;
}

/** A kind with its questions known by name within it, and by any name outside. */
export const kindOf = <Q extends Questions>(kind: AssemblyKind<Q>): AssemblyKind =>
  kind as unknown as AssemblyKind;
