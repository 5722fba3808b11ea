import { EVEN_MODES } from '../../../design/limits.ts';
import type { Axis } from '../../../design/schema.ts';
import type { Choice } from '../../control/ChoiceField.tsx';
import { type FormField, named } from '../../control/form/formField.ts';
import { type Asked, NEW_RULES, type NewRuleKind, type RuleDraft } from '../../edit/newRule.ts';
import { SHARED_RULES, type SharedDraft, type SharedRuleKind } from '../../edit/sharedRule.ts';
import { t } from '../../words/t.ts';

/** What the edges of a new rule may be of. */
interface Among {
  readonly places: readonly Choice<string>[];
}
export type NewRuleForm = RuleDraft & Among;
/** A rule for so many parts together. */
export type SharedRuleForm = SharedDraft & Among & { readonly count: number };

const AXES = named('axis', ['x', 'y']);
const places = ({ places }: Among) => places;
const sides = ({ axis }: { readonly axis: Axis }) =>
  (['low', 'mid', 'high'] as const).map((value) => ({ value, label: t(`edge.${axis}.${value}`) }));

const asks = (asked: Asked) => (draft: RuleDraft) => NEW_RULES[draft.kind].asks.includes(asked);
const isBetween = asks('and');

/** Another rule of one part. */
export const NEW_RULE_FIELDS: readonly FormField<NewRuleForm>[] = [
  {
    is: 'choice',
    label: 'rules.kind',
    field: 'kind',
    of: () =>
      (Object.keys(NEW_RULES) as NewRuleKind[]).map((value) => ({ value, label: t(`rules.kind.${value}`) })),
  },
  { is: 'choice', label: 'rules.axis', field: 'axis', of: AXES, when: asks('axis') },
  { is: 'choice', label: 'rules.edge', field: 'side', of: sides, when: asks('side') },
  {
    is: 'choice',
    label: 'rules.to',
    field: 'to',
    of: places,
    when: (draft) => asks('to')(draft) && !isBetween(draft),
  },
  {
    is: 'choice',
    label: 'rules.low',
    get: ({ to }) => to,
    // Both ends are of one thing until they are told apart.
    put: (to, draft) => (draft.and === draft.to ? { to, and: to } : { to }),
    of: places,
    when: isBetween,
  },
  { is: 'choice', label: 'rules.high', field: 'and', of: places, when: isBetween },
  { is: 'choice', label: 'rules.toEdge', field: 'toSide', of: sides, when: asks('toSide') },
  { is: 'switch', label: 'rules.inner', field: 'inner', when: asks('inner') },
];

type SharedAsked = (typeof SHARED_RULES)[SharedRuleKind]['asks'][number];
const shares = (asked: SharedAsked) => (draft: SharedDraft) => SHARED_RULES[draft.kind].asks.includes(asked);

/** One rule for several parts. */
export const SHARED_RULE_FIELDS: readonly FormField<SharedRuleForm>[] = [
  {
    is: 'choice',
    label: 'rules.kind',
    field: 'kind',
    of: () =>
      (Object.keys(SHARED_RULES) as SharedRuleKind[]).map((value) => ({
        value,
        label: t(`shared.${value}`),
      })),
  },
  { is: 'choice', label: 'rules.axis', field: 'axis', of: AXES },
  { is: 'choice', label: 'rules.low', field: 'low', of: places, when: shares('ends') },
  { is: 'choice', label: 'rules.high', field: 'high', of: places, when: shares('ends') },
  {
    is: 'choice',
    label: 'array.spacing',
    field: 'mode',
    of: named('even', EVEN_MODES),
    place: 'wide',
    when: shares('mode'),
  },
  {
    is: 'text',
    label: 'shared.ratio',
    field: 'ratio',
    hintOf: ({ count }) => t('shared.ratioHint', { count }),
    place: 'wide',
    when: shares('ratio'),
  },
];
