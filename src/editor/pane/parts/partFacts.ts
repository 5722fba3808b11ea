import { eachOf, isBought } from '../../../design/made.ts';
import type { Design, Part } from '../../../design/schema.ts';
import type { Box } from '../../../geometry/shape.ts';
import { boxIn } from '../../../layout/boxIn.ts';
import type { Layout } from '../../../layout/laid.ts';
import { designPart } from '../../../layout/reference.ts';
import { addTo, type Groups, groupOf } from '../../../list/grouped.ts';
import { addUp } from '../../../list/totals.ts';
import { t } from '../../words/t.ts';
import { lengthText } from '../../words/text.ts';

/** What the lists tell of a part beside its name. */
export interface PartFacts {
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  readonly box: Box;
  readonly finish: string;
  readonly checks: number;
}

/** How many checks there are on some parts together, by their ids; members of a row count for the row. */
export function checksOn(layout: Layout): (ids: readonly string[]) => number {
  const on: Groups<string, object> = new Map();
  for (const check of layout.checks) {
    for (const id of check.parts.map(designPart)) addTo(on, id, check);
  }
  return (ids) => new Set(ids.flatMap((id) => groupOf(on, id))).size;
}

/** Facts of all parts in the order of the design, as they are laid. */
export function partFacts(design: Design, layout: Layout): PartFacts[] {
  const finishes = new Map(design.finishes.map(({ id, name }) => [id, name]));
  const checks = checksOn(layout);
  return design.parts.map((part) => ({
    id: part.id,
    name: part.name,
    kind: t(`kind.${part.kind}`),
    box: boxIn(layout.boxes, part),
    finish: finishOf(part, finishes),
    checks: checks([part.id]),
  }));
}

/** It is the members of a row that are seen; what is bought looks as it comes. */
function finishOf(part: Part, finishes: ReadonlyMap<string, string>): string {
  const each = eachOf(part);
  return isBought(each) ? t('parts.ownLook') : (finishes.get(each.finish ?? '') ?? t('finish.bare'));
}

/** What a part is, its size, place and finish, in one sentence. */
export function factsInWords(design: Design, { kind, box, finish }: PartFacts): string {
  const length = (mm: number): string => lengthText(design, mm);
  const facts = { kind, w: length(box.w), h: length(box.h), x: length(box.x), y: length(box.y), finish };
  return t('parts.facts', facts);
}

export const checksInWords = (count: number): string =>
  t(count === 1 ? 'parts.oneCheck' : 'parts.checks', { count });

/** The face as a whole: its size, how many parts of each kind, and how many checks there are. */
export function faceInWords(
  design: Design,
  face: { readonly width: number; readonly height: number },
  facts: readonly PartFacts[],
  checks: number,
): string {
  const counts = new Map<string, number>();
  for (const { kind } of facts) addUp(counts, kind);
  const kinds = [...counts].map(([kind, count]) => `${kind} ${count}`).join(', ');
  const size = { w: lengthText(design, face.width), h: lengthText(design, face.height) };
  const parts = facts.length === 0 ? t('parts.empty') : t('parts.counted', { count: facts.length, kinds });
  return `${t('parts.face', size)} ${parts} ${checks === 0 ? t('parts.noChecks') : t('parts.allChecks', { count: checks })}`;
}
