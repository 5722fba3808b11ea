import { isPaint } from '../../../design/made.ts';
import type { Design, Part } from '../../../design/schema.ts';
import type { Stock } from '../../../materials/types.ts';
import { type Choice, namesOf } from '../../control/ChoiceField.tsx';
import { stocksOf } from '../../shipped/tables.ts';
import { t } from '../../words/t.ts';

export const BARE = '-bare-';

export const finishChoices = (design: Design): Choice<string>[] => [
  { value: BARE, label: t('finish.bare') },
  ...namesOf(design.finishes),
];

/** Stocks of the forms that a kind of part is made of. */
export function stockChoices(design: Design, forms: readonly Stock['form'][], now: string): Choice<string>[] {
  const stocks = [...stocksOf(design).values()].filter((s) => forms.includes(s.form));
  const choices = stocks.map((s) => ({
    value: s.id,
    label: s.name,
    group: forms.length > 1 ? t(`form.${s.form}`) : undefined,
  }));
  return choices.some((c) => c.value === now) ? choices : [{ value: now, label: now }, ...choices];
}

/** What a part may lie on: the face, its levels, and other parts that do not lie on it. */
export function supportChoices(
  design: Design,
  part: Part,
  levels: readonly { readonly id: string }[],
): Choice<string>[] {
  const above = new Set([part.id]);
  for (let grown = true; grown; ) {
    grown = false;
    for (const p of design.parts) {
      if (above.has(p.on) && !above.has(p.id)) {
        above.add(p.id);
        grown = true;
      }
    }
  }
  const group = t('on.parts');
  return [
    { value: 'face', label: t('on.face') },
    ...levels.map((l) => ({ value: l.id, label: t(`level.${l.id as 'rim'}`), group: t('on.levels') })),
    ...design.parts
      .filter((p) => !above.has(p.id) && !isPaint(p))
      .map((p) => ({ value: p.id, label: p.name, group })),
  ];
}
