import type { Piece, Solid } from '../joinery/piece.ts';
import { sameItems } from '../layout/changes.ts';
import type { LaidPart } from '../layout/laid.ts';
import type { Stock } from '../materials/types.ts';
import type { Kg } from '../measure/units.ts';
import type { Shank, Shanks } from './apart.ts';
import type { Around } from './asked.ts';
import type { FasteningInput, PartFastened } from './input.ts';
import { massFelt } from './lever.ts';
import { type Stack, solidsIn } from './stack.ts';

/** How parts are fastened, each with all it follows from, in their order: the next one is made from it. */
export interface PartsFastened {
  /** What every part follows from. */
  readonly common: readonly unknown[];
  readonly byPart: ReadonlyMap<string, KeptPart>;
}

/** What is a part's own. */
export interface PartInput {
  readonly laid: LaidPart;
  readonly solids: readonly Solid[];
  readonly pieces: readonly Piece[];
  readonly stock: Stock | undefined;
  readonly mass: Kg;
}

/** A part as it was fastened, and what was found where it was looked. */
export interface KeptPart {
  readonly own: PartInput;
  readonly around: Around | null;
  readonly wood: readonly Solid[];
  readonly driven: readonly Shank[];
  readonly result: PartFastened;
}

/** All that parts follow from but their own and what lies around them. */
export const commonOf = (input: FasteningInput): readonly unknown[] => [
  input.bed,
  input.face,
  input.keepClears,
  input.settings,
  input.brad,
  input.screw,
  input.glue,
  input.screws,
];

/** How a part was fastened, where it would come out the same. */
export function known(
  kept: KeptPart | undefined,
  own: PartInput,
  stack: Stack,
  shanks: Shanks,
  { screwOver_kg: over }: FasteningInput['settings'],
): KeptPart | null {
  if (kept?.own.laid !== own.laid || kept.own.stock !== own.stock) return null;
  // A coat of paint more changes nothing, unless it makes a part too heavy for its brads.
  const felt = (mass: Kg) => massFelt(own.laid, mass, kept.result.lever, over);
  if (kept.own.mass !== own.mass && felt(kept.own.mass) !== felt(own.mass)) return null;
  if (!sameItems(kept.own.solids, own.solids) || !sameItems(kept.own.pieces, own.pieces)) return null;
  if (!kept.around) return kept;
  if (!sameItems(kept.wood, solidsIn(stack, kept.around.box))) return null;
  const driven = shanks.within(kept.around);
  const alike = driven.length === kept.driven.length && driven.every((one, i) => isSame(one, kept.driven[i]));
  return alike ? kept : null;
}

const isSame = (a: Shank, b: Shank | undefined): boolean =>
  a === b ||
  (b !== undefined &&
    a.at.x === b.at.x &&
    a.at.y === b.at.y &&
    a.top === b.top &&
    a.tip === b.tip &&
    a.apart === b.apart);
