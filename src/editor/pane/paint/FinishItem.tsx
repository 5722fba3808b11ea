import { Trash2 } from 'lucide-react';
import type { Design, Finish } from '../../../design/schema.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { ColorField } from '../../control/ColorField.tsx';
import { NumberField } from '../../control/NumberField.tsx';
import { SwitchField } from '../../control/SwitchField.tsx';
import { TextField } from '../../control/TextField.tsx';
import { useWords } from '../../words/t.ts';
import { canUnit, rateUnit } from '../facts/rateUnit.ts';
import { UnitField } from '../facts/UnitField.tsx';
import { useChange } from '../facts/useChange.ts';
import { Cans } from './Cans.tsx';
import { DataSheet } from './DataSheet.tsx';
import { chipOf, OnWoods } from './OnWoods.tsx';

const KINDS = ['paint', 'stain', 'clear'] as const;
const SHEENS = ['flat', 'eggshell', 'satin', 'gloss'] as const;

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
        <TextField label={t('finish.name')} value={finish.name} onCommit={(name) => put({ name })} />
        {finish.kind === 'clear' ? null : (
          <ColorField
            label={t(finish.kind === 'stain' ? 'finish.overWhite' : 'finish.color')}
            value={finish.color}
            onCommit={(color) => put({ color }, `color:${finish.id}`)}
          />
        )}
        <ChoiceField
          label={t('finish.kind')}
          value={finish.kind}
          choices={KINDS.map((value) => ({ value, label: t(`finish.kind.${value}`) }))}
          // Primer would hide the wood that a stain or a clear coat is to show.
          onCommit={(kind) => put(kind === 'paint' ? { kind } : { kind, primer: null })}
        />
        <ChoiceField
          label={t('finish.sheen')}
          value={finish.sheen}
          choices={SHEENS.map((value) => ({ value, label: t(`finish.sheen.${value}`) }))}
          onCommit={(sheen) => put({ sheen })}
        />
        <NumberField
          label={t('finish.coats')}
          whole
          min={1}
          max={12}
          value={finish.coats}
          onCommit={(coats) => put({ coats })}
        />
        <UnitField
          label={t('finish.rate')}
          unit={rateUnit(measure)}
          digits={1}
          min={0.1}
          value={finish.rate_m2_l}
          onCommit={(rate_m2_l) => put({ rate_m2_l: Math.min(100, rate_m2_l) })}
        />
        <UnitField
          label={t('finish.owned')}
          unit={canUnit(measure)}
          digits={2}
          value={finish.owned_l}
          onCommit={(owned_l) => put({ owned_l: Math.min(1000, owned_l) })}
        />
        <div className="low">
          <SwitchField
            label={t('finish.primer')}
            value={finish.primer !== null}
            onCommit={(on) => put({ primer: on ? { coats: 1, rate_m2_l: 7.4 } : null })}
          />
        </div>
        {finish.primer ? (
          <>
            <NumberField
              label={t('finish.primerCoats')}
              whole
              max={6}
              value={finish.primer.coats}
              onCommit={(coats) => put({ primer: { coats, rate_m2_l: finish.primer?.rate_m2_l ?? 7.4 } })}
            />
            <UnitField
              label={t('finish.primerRate')}
              unit={rateUnit(measure)}
              digits={1}
              min={0.1}
              value={finish.primer.rate_m2_l}
              onCommit={(rate_m2_l) =>
                put({ primer: { coats: finish.primer?.coats ?? 1, rate_m2_l: Math.min(100, rate_m2_l) } })
              }
            />
          </>
        ) : null}
      </div>
      {finish.kind === 'paint' ? null : <OnWoods finish={finish} design={design} />}
      <DataSheet measure={measure} onTake={(rate_m2_l) => put({ rate_m2_l })} />
      <Cans finish={finish} design={design} onChange={(containers) => put({ containers })} />
    </li>
  );
}
