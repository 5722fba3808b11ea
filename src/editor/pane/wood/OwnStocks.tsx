import { Plus, Trash2 } from 'lucide-react';
import { eachOf } from '../../../design/made.ts';
import type { Design } from '../../../design/schema.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { NumberField } from '../../control/NumberField.tsx';
import { SwitchField } from '../../control/SwitchField.tsx';
import { TextField } from '../../control/TextField.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { freeId, freeName } from '../../edit/ids.ts';
import { tables } from '../../shipped/tables.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { useChange } from '../facts/useChange.ts';
import { newStock, type OwnForm, type OwnStock, ownCopy, resized } from './ownStock.ts';
import { PriceRows } from './PriceRows.tsx';

const FORMS = ['flat', 'shaped', 'sheet'] as const satisfies readonly OwnForm[];
const ADD = { flat: 'stock.addFlat', shaped: 'stock.addShaped', sheet: 'stock.addSheet' } as const;

/** Stock that the design adds to the tables, or prices anew. */
export function OwnStocks() {
  const t = useWords();
  const design = useSettledDesign();
  const { add } = useChange();
  const addNew = (form: OwnForm) => {
    const name = freeName(
      design.stocks.map((s) => s.name),
      t(`stock.new.${form}`),
    );
    add('stocks', newStock(form, freeId(design, 'stock'), name), name);
  };
  const copy = (id: string) => {
    const stock = tables().stocks.find((s) => s.id === id);
    if (stock) add('stocks', ownCopy(stock), stock.name);
  };
  const own = new Set(design.stocks.map((s) => s.id));
  return (
    <section aria-labelledby="wood-own">
      <h3 id="wood-own" className="section-title">
        {t('stock.title')}
      </h3>
      <p className="note">{t('stock.lead')}</p>
      <ul className="item-list">
        {design.stocks.map((stock) => (
          <StockItem key={stock.id} stock={stock} design={design} />
        ))}
      </ul>
      <ChoiceField
        label={t('stock.copy')}
        value=""
        choices={[
          { value: '', label: t('stock.choose') },
          ...tables()
            .stocks.filter((s) => !own.has(s.id))
            .map((s) => ({ value: s.id, label: s.name, group: t(`form.${s.form}`) })),
        ]}
        onCommit={copy}
      />
      <div className="btn-row spaced">
        {FORMS.map((form) => (
          <button key={form} type="button" className="btn" onClick={() => addNew(form)}>
            <Plus aria-hidden="true" />
            {t(ADD[form])}
          </button>
        ))}
      </div>
    </section>
  );
}

/** Names of the parts made of a stock that nothing else would stand in for. */
function usersOf(design: Design, id: string): string[] {
  if (tables().stocks.some((s) => s.id === id)) return [];
  return design.parts.flatMap((p) => {
    const made = eachOf(p);
    return 'stock' in made && made.stock === id ? [p.name] : [];
  });
}

function StockItem({ stock, design }: { stock: OwnStock; design: Design }) {
  const t = useWords();
  const { replace, remove } = useChange();
  const put = (next: OwnStock) => replace('stocks', next, next.name);
  const users = usersOf(design, stock.id);
  return (
    <li>
      <div className="item-head">
        <h4>
          <Typeset text={stock.name} />
        </h4>
        <button
          type="button"
          className="btn bare icon"
          aria-label={t('stock.remove', { name: stock.name })}
          disabled={users.length > 0}
          onClick={() => remove('stocks', stock.id, stock.name)}
        >
          <Trash2 aria-hidden="true" />
        </button>
      </div>
      {users.length > 0 ? <p className="note">{t('stock.used', { parts: users.join(', ') })}</p> : null}
      <div className="fields">
        <TextField label={t('stock.name')} value={stock.name} onCommit={(name) => put({ ...stock, name })} />
        <ChoiceField
          label={t('stock.material')}
          value={stock.material}
          choices={tables().materials.map((m) => ({ value: m.id, label: m.name }))}
          onCommit={(material) => put({ ...stock, material })}
        />
        <SizeFields stock={stock} onChange={put} />
      </div>
      <PriceRows stock={stock} onChange={put} />
    </li>
  );
}

function SizeFields({ stock, onChange }: { stock: OwnStock; onChange: (stock: OwnStock) => void }) {
  const t = useWords();
  const thickness = (put: (mm: number) => OwnStock) => (
    <MeasureField
      label={t('stock.thickness')}
      min={0.5}
      value={stock.thickness}
      onCommit={(mm) => onChange(put(mm))}
    />
  );
  if (stock.form === 'sheet') {
    return (
      <>
        {thickness((mm) => ({ ...stock, thickness: mm }))}
        <SwitchField
          label={t('stock.grain')}
          value={stock.grain}
          onCommit={(grain) => onChange({ ...stock, grain })}
        />
      </>
    );
  }
  const width = (put: (mm: number) => OwnStock) => (
    <MeasureField
      label={t('stock.width')}
      min={0.5}
      value={stock.width}
      onCommit={(mm) => onChange(put(mm))}
    />
  );
  if (stock.form === 'flat') {
    return (
      <>
        {width((mm) => ({ ...stock, width: mm }))}
        {thickness((mm) => ({ ...stock, thickness: mm }))}
      </>
    );
  }
  const { spring, boardWidth, ...flat } = stock;
  return (
    <>
      {width((mm) => resized(stock, mm, stock.thickness))}
      {thickness((mm) => resized(stock, stock.width, mm))}
      <div className="wide">
        <MeasureField
          label={t('stock.girth')}
          hint={t('stock.girthHint')}
          min={0.5}
          value={stock.girth}
          onCommit={(girth) => onChange({ ...stock, girth })}
        />
      </div>
      <div className="wide">
        <SwitchField
          label={t('stock.sprung')}
          value={spring !== undefined}
          onCommit={(on) =>
            onChange(on ? { ...stock, spring: 45, boardWidth: boardWidth ?? stock.width } : flat)
          }
        />
      </div>
      {spring !== undefined ? (
        <>
          <NumberField
            label={t('stock.spring')}
            unit="°"
            min={1}
            max={89}
            value={spring}
            onCommit={(angle) => onChange({ ...stock, spring: angle })}
          />
          <MeasureField
            label={t('stock.boardWidth')}
            min={0.5}
            value={boardWidth ?? stock.width}
            onCommit={(mm) => onChange({ ...stock, boardWidth: mm })}
          />
        </>
      ) : null}
    </>
  );
}
