import { Trash2 } from 'lucide-react';
import type { Design, Finish } from '../../../design/schema.ts';
import { Fields } from '../../control/form/Fields.tsx';
import { type FormField, named, within } from '../../control/form/formField.ts';
import { useWords } from '../../words/t.ts';
import { canUnit, rateUnit } from '../facts/rateUnit.ts';
import { useChange } from '../facts/useChange.ts';
import { Cans } from './Cans.tsx';
import { DataSheet } from './DataSheet.tsx';
import { chipOf, OnWoods } from './OnWoods.tsx';

const ofRate = { unit: rateUnit, digits: 1, min: 0.1, most: 100 } as const;

const FIELDS: readonly FormField<Finish>[] = [
  { is: 'text', label: 'finish.name', field: 'name' },
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

interface FinishItemProps {
  readonly finish: Finish;
  readonly design: Design;
  /** How many parts wear it. */
  readonly wearers: number;
}

/** Everything about one finish. */
export function FinishItem({ finish, design, wearers }: FinishItemProps) {
  const t = useWords();
  const { replace, remove } = useChange();
  const put = (fields: Partial<Finish>, merge?: string) =>
    replace('finishes', { ...finish, ...fields }, finish.name, merge);
  const { measure } = design;
  return (
    <li>
      <div className="item-head">
        <h4>
          <span className="chip large" style={{ background: chipOf(finish, design) }} aria-hidden="true" />
          {finish.name}
        </h4>
        {wearers > 0 ? (
          <span className="note">{t('finish.used', { count: wearers })}</span>
        ) : (
          <button
            type="button"
            className="btn bare icon"
            aria-label={t('finish.remove', { name: finish.name })}
            onClick={() => remove('finishes', finish.id, finish.name)}
          >
            <Trash2 aria-hidden="true" />
          </button>
        )}
      </div>
      <div className="fields three">
        <Fields
          of={FIELDS}
          value={finish}
          onChange={(fields) => put(fields, fields.color === undefined ? undefined : `color:${finish.id}`)}
        />
      </div>
      {finish.kind === 'paint' ? null : <OnWoods finish={finish} design={design} />}
      <DataSheet measure={measure} onTake={(rate_m2_l) => put({ rate_m2_l })} />
      <Cans finish={finish} design={design} onChange={(containers) => put({ containers })} />
    </li>
  );
}
