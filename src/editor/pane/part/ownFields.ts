import { type eachOf, isBoards, isBought } from '../../../design/made.ts';
import type { FormField } from '../../control/form/formField.ts';
import type { overrideOf } from '../../edit/members.ts';
import { t } from '../../words/t.ts';
import { BARE, finishChoices, stockChoices } from '../facts/choices.ts';

export type Override = ReturnType<typeof overrideOf>;

/** What is repeated, and what one of it has of its own. */
interface Singled {
  readonly own: Override;
  readonly member: ReturnType<typeof eachOf>;
}

const AS_OTHERS = '-as-others-';
const asOthers = () => ({ value: AS_OTHERS, label: t('array.asOthers') });

/** What a single member has of its own. */
export const MEMBER_OWN_FIELDS: readonly FormField<Singled, Override>[] = [
  {
    is: 'switch',
    label: 'array.leaveOut',
    place: 'wide',
    get: ({ own }) => own.omit === true,
    put: (omit) => ({ omit }),
  },
  {
    is: 'choice',
    label: 'array.ownFinish',
    when: ({ member }) => !isBought(member),
    get: ({ own }) => (own.finish === undefined ? AS_OTHERS : (own.finish ?? BARE)),
    put: (id) => ({ finish: id === AS_OTHERS ? undefined : id === BARE ? null : id }),
    of: (_, design) => [asOthers(), ...finishChoices(design)],
  },
  {
    is: 'choice',
    label: 'array.ownStock',
    when: ({ member }) => 'stock' in member && !isBoards(member),
    get: ({ own }) => own.stock ?? AS_OTHERS,
    put: (id) => ({ stock: id === AS_OTHERS ? undefined : id }),
    of: ({ own, member }, design) => {
      const forms = member.kind === 'panel' ? (['sheet'] as const) : (['flat', 'shaped'] as const);
      return [
        asOthers(),
        ...stockChoices(design, forms, own.stock ?? ('stock' in member ? member.stock : '')),
      ];
    },
  },
];
