import { useContext } from 'react';
import { replacing } from '../../../design/edit/make.ts';
import type { Design, Member, Part, PartArray } from '../../../design/schema.ts';
import type { Box } from '../../../geometry/shape.ts';
import { boxIn } from '../../../layout/boxIn.ts';
import { ruleSentence } from '../../edit/sentence.ts';
import { stopsTold } from '../../edit/stopHere.ts';
import { editsToType, made } from '../../edit/typed.ts';
import { useCommit, useShown } from '../../state/hooks.ts';
import { t } from '../../words/t.ts';
import { lengthText } from '../../words/text.ts';
import { MemberContext } from './memberContext.ts';

/** The part's box as laid out, and the ways to change the part (or the member of an array) from fields. */
export function usePart<P extends Part>(part: P) {
  const shown = useShown();
  const { design, layout } = shown;
  const commit = useCommit();
  const array = useContext(MemberContext);
  const box = array ? part.box : boxIn(layout.boxes, part);
  const held = new Set([part.id]);
  return {
    box,
    /** The part with the box that it was laid in. */
    laid: { ...part, box },
    /** Changes fields of the part. */
    change: (fields: Partial<P>) =>
      commit(
        [replacing('parts', array ? withMember(array, fields) : { ...part, ...fields })],
        t('did.change', { name: part.name }),
        { held },
      ),
    /** Places or sizes it; rules that place it follow with their measures, or let go of what was typed otherwise. */
    place: (sides: Partial<Box>) => {
      const next = { ...box, ...sides };
      const label = t('did.change', { name: part.name });
      const { edits, letGo } = editsToType(shown, part.id, box, sides);
      const lost = letGo.map((rule) => t('say.letGo', { rule: ruleSentence(design, rule, layout.rules) }));
      commit(edits, label, {
        held,
        say: [
          placedWords(design, part.name, box, sides, next),
          ...lost,
          ...stopsTold(design, made(design, edits)),
        ].join('. '),
      });
    },
  };
}

/** What is told of a part that was given a measure: where it stands now, or how large it is, and by how much it changed. */
function placedWords(design: Design, name: string, was: Box, given: Partial<Box>, now: Box): string {
  const length = (mm: number) => lengthText(design, mm);
  const by = (['w', 'h', 'x', 'y'] as const).flatMap((side) => {
    const change = (given[side] ?? was[side]) - was[side];
    if (change === 0) return [];
    const way = change < 0 ? 'low' : 'high';
    const key =
      side === 'x' || side === 'y' ? (`moved.${side}.${way}` as const) : (`sized.${side}.${way}` as const);
    return [t(key, { by: length(Math.abs(change)) })];
  });
  const place =
    given.w !== undefined || given.h !== undefined
      ? `${name}: ${t('say.size', { width: length(now.w), height: length(now.h) })}`
      : t('say.at', { name, left: length(now.x), bottom: length(now.y) });
  return [place, ...by].join(', ');
}

/** The array with fields of its member changed; a box says how large each member is. */
function withMember(array: PartArray, { box, ...fields }: Partial<Part>): PartArray {
  return {
    ...array,
    member: { ...array.member, ...fields } as Member,
    memberSize: box ? { w: box.w, h: box.h } : array.memberSize,
  };
}
