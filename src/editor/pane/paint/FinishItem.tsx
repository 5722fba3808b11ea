import type { Design, Finish } from '../../../design/schema.ts';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { Remove } from '../../control/Remove.tsx';
import { useWords } from '../../words/t.ts';
import { useChange } from '../facts/useChange.ts';
import { Cans } from './Cans.tsx';
import { DataSheet } from './DataSheet.tsx';
import { FINISH_FIELDS } from './finishFields.ts';
import { chipOf, OnWoods } from './OnWoods.tsx';

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
          <Remove
            label={t('act.removeNamed', { name: finish.name })}
            onClick={() => remove('finishes', finish.id, finish.name)}
          />
        )}
      </div>
      <FieldGrid
        three
        of={FINISH_FIELDS}
        value={finish}
        onChange={(fields) => put(fields, fields.color === undefined ? undefined : `color:${finish.id}`)}
      />
      {finish.kind === 'paint' ? null : <OnWoods finish={finish} design={design} />}
      <DataSheet measure={measure} onTake={(rate_m2_l) => put({ rate_m2_l })} />
      <Cans finish={finish} design={design} onChange={(containers) => put({ containers })} />
    </li>
  );
}
