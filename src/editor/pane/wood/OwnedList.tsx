import { Plus, Trash2 } from 'lucide-react';
import type { Owned } from '../../../design/schema.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { NumberField } from '../../control/NumberField.tsx';
import { freeId } from '../../edit/ids.ts';
import { stocksOf } from '../../shipped/tables.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { stockChoices } from '../facts/choices.ts';
import { useChange } from '../facts/useChange.ts';

/** Offcuts on the shelf. */
export function OwnedList() {
  const t = useWords();
  const design = useSettledDesign();
  const { add } = useChange();
  const [anyStock] = [...stocksOf(design).keys()];
  const put = () => {
    const stock = design.parts.flatMap((p) => ('stock' in p ? [p.stock] : []))[0] ?? anyStock;
    if (stock === undefined) return;
    const sheet = stocksOf(design).get(stock)?.form === 'sheet';
    add(
      'owned',
      {
        id: freeId(design, 'owned'),
        stock,
        length: 600,
        ...(sheet ? { width: 300 } : {}),
        count: 1,
        defects: [],
      },
      t('owned.number', { number: design.owned.length + 1 }),
    );
  };
  return (
    <section aria-labelledby="wood-owned">
      <h3 id="wood-owned" className="section-title">
        {t('owned.title')}
      </h3>
      <p className="note">{t('owned.lead')}</p>
      <ul className="item-list">
        {design.owned.map((owned, i) => (
          <OwnedItem key={owned.id} owned={owned} number={i + 1} />
        ))}
      </ul>
      <button type="button" className="btn" onClick={put}>
        <Plus aria-hidden="true" />
        {t('owned.add')}
      </button>
    </section>
  );
}

function OwnedItem({ owned, number }: { owned: Owned; number: number }) {
  const t = useWords();
  const design = useSettledDesign();
  const { replace, remove } = useChange();
  const name = t('owned.number', { number });
  const put = (fields: Partial<Owned>) => replace('owned', { ...owned, ...fields }, name);
  const isSheet = (id: string) => stocksOf(design).get(id)?.form === 'sheet';
  const restock = (stock: string) => {
    const { width, ...rest } = owned;
    replace(
      'owned',
      isSheet(stock) ? { ...rest, stock, width: width ?? 300, defects: [] } : { ...rest, stock },
      name,
    );
  };
  const setDefect = (i: number, fields: Partial<Owned['defects'][number]>) =>
    put({ defects: owned.defects.map((d, k) => (k === i ? { ...d, ...fields } : d)) });
  return (
    <li>
      <div className="item-head">
        <h4>{name}</h4>
        <button
          type="button"
          className="btn bare icon"
          aria-label={t('owned.remove', { number })}
          onClick={() => remove('owned', owned.id, name)}
        >
          <Trash2 aria-hidden="true" />
        </button>
      </div>
      <div className="fields">
        <div className="wide">
          <ChoiceField
            label={t('owned.stock')}
            value={owned.stock}
            choices={stockChoices(design, ['flat', 'shaped', 'sheet'], owned.stock)}
            onCommit={restock}
          />
        </div>
        <MeasureField
          label={t('owned.length')}
          min={1}
          value={owned.length}
          onCommit={(length) => put({ length })}
        />
        {isSheet(owned.stock) ? (
          <MeasureField
            label={t('owned.width')}
            min={1}
            value={owned.width ?? 0}
            onCommit={(width) => put({ width })}
          />
        ) : null}
        <NumberField
          label={t('owned.count')}
          whole
          min={1}
          max={500}
          value={owned.count}
          onCommit={(count) => put({ count })}
        />
      </div>
      {isSheet(owned.stock) ? null : (
        <details className="more">
          <summary>{t('owned.defects')}</summary>
          {owned.defects.map((defect, i) => (
            <div className="row-fields" key={`${defect.from}-${defect.to}`}>
              <MeasureField
                label={t('owned.defectFrom')}
                value={defect.from}
                onCommit={(from) => setDefect(i, { from })}
              />
              <MeasureField
                label={t('owned.defectTo')}
                value={defect.to}
                onCommit={(to) => setDefect(i, { to })}
              />
              <button
                type="button"
                className="btn bare icon"
                aria-label={t('owned.removeDefect', { number: i + 1 })}
                onClick={() => put({ defects: owned.defects.filter((_, k) => k !== i) })}
              >
                <Trash2 aria-hidden="true" />
              </button>
            </div>
          ))}
          <button
            type="button"
            className="btn small"
            onClick={() => {
              const from = owned.defects.at(-1)?.to ?? 0;
              put({ defects: [...owned.defects, { from, to: from + 50 }] });
            }}
          >
            <Plus aria-hidden="true" />
            {t('owned.addDefect')}
          </button>
        </details>
      )}
    </li>
  );
}
