import type { Finish } from '../../../design/schema.ts';
import { type FormField, named, within } from '../../control/form/formField.ts';
import { canUnit, rateUnit } from '../facts/rateUnit.ts';

const ofRate = { unit: rateUnit, digits: 1, min: 0.1, most: 100 } as const;

/** What is said of a finish. */
export const FINISH_FIELDS: readonly FormField<Finish>[] = [
  { is: 'text', label: 'part.name', field: 'name' },
  { is: 'color', label: 'finish.overWhite', field: 'color', when: ({ kind }) => kind === 'stain' },
  { is: 'color', label: 'finish.color', field: 'color', when: ({ kind }) => kind === 'paint' },
  {
    is: 'choice',
    label: 'finish.kind',
    of: named('finish.kind', ['paint', 'stain', 'clear']),
    get: ({ kind }) => kind,
    // Primer would hide the wood that a stain or a clear coat is to show.
    put: (kind: Finish['kind']) => (kind === 'paint' ? { kind } : { kind, primer: null }),
  },
  {
    is: 'choice',
    label: 'finish.sheen',
    field: 'sheen',
    of: named('finish.sheen', ['flat', 'eggshell', 'satin', 'gloss']),
  },
  { is: 'number', label: 'finish.coats', field: 'coats', whole: true, min: 1, max: 12 },
  { is: 'amount', label: 'finish.rate', field: 'rate_m2_l', ...ofRate },
  { is: 'amount', label: 'finish.owned', field: 'owned_l', unit: canUnit, digits: 2, most: 1000 },
  {
    is: 'switch',
    label: 'finish.primer',
    place: 'low',
    get: ({ primer }) => primer !== null,
    put: (on) => ({ primer: on ? { coats: 1, rate_m2_l: 7.4 } : null }),
  },
  ...within<Finish, 'primer'>('primer', [
    { is: 'number', label: 'finish.primerCoats', field: 'coats', whole: true, max: 6 },
    { is: 'amount', label: 'finish.primerRate', field: 'rate_m2_l', ...ofRate },
  ]),
];
