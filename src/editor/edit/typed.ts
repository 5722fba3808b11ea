import { applyEdits, type Edit } from '../../design/edit/edit.ts';
import type { RuleShape } from '../../design/rule/kind.ts';
import { shapeOf, slotsOf } from '../../design/rule/table.ts';
import type { Axis, Design, Rule } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { type Shown, shownFrom } from '../document/shown.ts';
import { editsToLay } from './lay.ts';
import { editsToLoosen, type Loosening } from './loosen.ts';
import { editsToPlace } from './place.ts';
import { editsToUnstop } from './stopHere.ts';

interface Way {
  readonly axis: Axis;
  readonly hand: Loosening;
  /** Rules that give way, but for those with a measure which follows what is typed, by what pulling an edge does to them. */
  readonly breaks: readonly RuleShape<Rule>['pulled'][];
}

const PLACED = ['edge', 'half', 'block', 'place'] as const;
/** What is centered or in a row stays so with another size. */
const SIZED = ['edge', 'half'] as const;

/** How typing each measure of a box goes: a place carries the part, a size pulls its right or upper side. */
const TYPED: Readonly<Record<keyof Box, Way>> = {
  x: { axis: 'x', hand: 'move', breaks: PLACED },
  y: { axis: 'y', hand: 'move', breaks: PLACED },
  w: { axis: 'x', hand: 'high', breaks: SIZED },
  h: { axis: 'y', hand: 'high', breaks: SIZED },
};

export interface Typed {
  readonly edits: readonly Edit[];
  /** The rules that no longer hold the part as they did. */
  readonly letGo: readonly Rule[];
}

/**
 * The edits by which a part that lies in a box has the measures that were typed. What is typed is the plainest word
 * there is: rules with a measure take it, the others let go of the part along that axis.
 */
export function editsToType(shown: Shown, id: string, box: Box, sides: Partial<Box>): Typed {
  const { design } = shown;
  const held = new Set([id]);
  const loosen: Edit[] = [];
  for (const side of ['x', 'y', 'w', 'h'] as const) {
    if (Math.abs((sides[side] ?? box[side]) - box[side]) <= SAME_LENGTH) continue;
    const { axis, hand, breaks } = TYPED[side];
    const isBroken = (rule: Rule) =>
      breaks.includes(shapeOf(rule).pulled) &&
      !slotsOf(rule).some((slot) => slot.is === 'measure' && slot.follows);
    loosen.push(...editsToLoosen(made(design, loosen), held, axis, hand, isBroken));
    if (hand === 'high') loosen.push(...editsToUnstop(made(design, loosen), id, axis, hand));
  }
  const after = new Map([[id, { ...box, ...sides }]]);
  const edits = [...loosen, ...editsToPlace(made(design, loosen), new Map([[id, box]]), after)];
  const broken = new Set(loosen.flatMap((edit) => ('id' in edit && edit.list === 'rules' ? edit.id : [])));
  return {
    edits: [...edits, ...editsToLay(shownFrom(made(design, edits), held, shown), held)],
    letGo: design.rules.filter((rule) => broken.has(rule.id)),
  };
}

/** A design with edits, or as it is where they do not fit. */
export function made(design: Design, edits: readonly Edit[]): Design {
  const done = applyEdits(design, edits);
  return done.ok ? done.design : design;
}
