import { Plus } from 'lucide-react';
import { useEffect, useState } from 'react';
import { ownCopy } from '../../../design/ownCopy.ts';
import { resourcesOf } from '../../../design/resources.ts';
import type { Design } from '../../../design/schema.ts';
import { inSize } from '../../../job/reading.ts';
import { Button } from '../../control/Button.tsx';
import { ChoiceField, namesOf } from '../../control/ChoiceField.tsx';
import { FieldGrid, Fields } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { Remove } from '../../control/Remove.tsx';
import { Section } from '../../control/Section.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { freeId, freeName } from '../../edit/ids.ts';
import { changesLayout, type LayoutChange, layoutChange } from '../../frame/layoutChange.ts';
import { MovedList } from '../../frame/MovedList.tsx';
import { tables } from '../../shipped/tables.ts';
import { useSettled, useSettledDesign, useStore } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { useChange } from '../facts/useChange.ts';
import { newStock, type OwnForm, type OwnStock } from './ownStock.ts';
import { PriceRows } from './PriceRows.tsx';

const FORMS = ['flat', 'shaped', 'sheet'] as const satisfies readonly OwnForm[];
const ADD = { flat: 'stock.addFlat', shaped: 'stock.addShaped', sheet: 'stock.addSheet' } as const;

type Form<F extends OwnForm> = Extract<OwnStock, { readonly form: F }>;
type Shaped = Form<'shaped'>;

const NAME_FIELDS: readonly FormField<OwnStock>[] = [
  { is: 'text', label: 'part.name', field: 'name' },
  { is: 'choice', label: 'stock.material', field: 'material', of: () => namesOf(tables().materials) },
];

const SHEET_FIELDS: readonly FormField<Form<'sheet'>>[] = [
  { is: 'length', label: 'size.thickness', field: 'thickness', min: 0.5 },
  { is: 'switch', label: 'stock.grain', field: 'grain' },
];

const FLAT_FIELDS: readonly FormField<Form<'flat'>>[] = [
  { is: 'length', label: 'size.width', field: 'width', min: 0.5 },
  { is: 'length', label: 'size.thickness', field: 'thickness', min: 0.5 },
];

const sprung = ({ spring }: Shaped) => spring !== undefined;

const SHAPED_FIELDS: readonly FormField<Shaped, Shaped>[] = [
  {
    is: 'length',
    label: 'size.width',
    min: 0.5,
    get: ({ width }) => width,
    put: (width, stock) => inSize(stock, width, stock.thickness),
  },
  {
    is: 'length',
    label: 'size.thickness',
    min: 0.5,
    get: ({ thickness }) => thickness,
    put: (thickness, stock) => inSize(stock, stock.width, thickness),
  },
  {
    is: 'length',
    label: 'stock.girth',
    hint: 'stock.girthHint',
    place: 'wide',
    min: 0.5,
    get: ({ girth }) => girth,
    put: (girth, stock) => ({ ...stock, girth }),
  },
  {
    is: 'switch',
    label: 'stock.sprung',
    place: 'wide',
    get: sprung,
    put: (on, { spring: _, boardWidth, ...flat }) =>
      on ? { ...flat, spring: 45, boardWidth: boardWidth ?? flat.width } : flat,
  },
  {
    is: 'number',
    label: 'stock.spring',
    unit: '°',
    min: 1,
    max: 89,
    when: sprung,
    get: ({ spring = 0 }) => spring,
    put: (spring, stock) => ({ ...stock, spring }),
  },
  {
    is: 'length',
    label: 'stock.boardWidth',
    min: 0.5,
    when: sprung,
    get: ({ boardWidth, width }) => boardWidth ?? width,
    put: (boardWidth, stock) => ({ ...stock, boardWidth }),
  },
];

/** Stock that the design adds to the tables, or prices anew. */
export function OwnStocks() {
  const t = useWords();
  const design = useSettledDesign();
  const { add } = useChange();
  const addNew = (form: OwnForm) => {
    const name = freeName(design.stocks, t(`stock.new.${form}`));
    add('stocks', newStock(form, freeId(design, 'stock'), name), name);
  };
  const copy = (id: string) => {
    const stock = tables().stocks.find((s) => s.id === id);
    if (stock) add('stocks', ownCopy(stock), stock.name);
  };
  const own = new Set(design.stocks.map((s) => s.id));
  return (
    <Section id="wood-own" title="stock.title">
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
          <Button key={form} icon={Plus} onClick={() => addNew(form)}>
            {t(ADD[form])}
          </Button>
        ))}
      </div>
    </Section>
  );
}

/** Names of the parts made of a stock that nothing else would stand in for. */
function usersOf(design: Design, id: string): string[] {
  if (tables().stocks.some((s) => s.id === id)) return [];
  return design.parts
    .filter((part) => resourcesOf(design, [part]).stocks.some((stock) => stock.id === id))
    .map((part) => part.name);
}

function StockItem({ stock, design }: { stock: OwnStock; design: Design }) {
  const t = useWords();
  const { replace, remove } = useChange();
  const put = (next: OwnStock) => replace('stocks', next, next.name);
  const { asked, propose, drop } = useSizeQuestion(put);
  const users = usersOf(design, stock.id);
  if (asked)
    return (
      <li>
        <MovedList
          design={design}
          change={asked.change}
          label={stock.name}
          drop="stock.drop"
          onKeep={() => {
            drop();
            put(asked.next);
          }}
          onDrop={drop}
        />
      </li>
    );
  return (
    <li>
      <div className="item-head">
        <Typeset as="h4" text={stock.name} />
        <Remove
          label={t('act.removeNamed', { name: stock.name })}
          disabled={users.length > 0}
          onClick={() => remove('stocks', stock.id, stock.name)}
        />
      </div>
      {users.length > 0 ? <p className="note">{t('stock.used', { parts: users.join(', ') })}</p> : null}
      <FieldGrid
        of={NAME_FIELDS}
        value={stock}
        onChange={(fields) => put({ ...stock, ...fields } as OwnStock)}
      />
      <SizeFields stock={stock} onChange={propose} />
      <PriceRows stock={stock} onChange={put} />
    </li>
  );
}

/** A stock in other sizes: what that moves is asked about first, while the drawing shows it; what moves nothing is taken. */
function useSizeQuestion(take: (next: OwnStock) => void) {
  const store = useStore();
  const settled = useSettled();
  const [question, setQuestion] = useState<{
    readonly next: OwnStock;
    readonly change: LayoutChange;
    readonly from: typeof settled;
  } | null>(null);
  const asked = question?.from === settled ? question : null;
  useEffect(() => {
    if (!asked) return;
    store.setState({ provisional: { shown: asked.change.shown, guides: [], live: false } });
    return () => store.setState({ provisional: null });
  }, [asked, store]);
  const propose = (next: OwnStock) => {
    const stocks = settled.design.stocks.map((one) => (one.id === next.id ? next : one));
    const change = layoutChange(settled, { stocks });
    if (changesLayout(change)) setQuestion({ next, change, from: settled });
    else take(next);
  };
  return { asked, propose, drop: () => setQuestion(null) };
}

function SizeFields({ stock, onChange }: { stock: OwnStock; onChange: (stock: OwnStock) => void }) {
  switch (stock.form) {
    case 'sheet':
      return (
        <Fields of={SHEET_FIELDS} value={stock} onChange={(fields) => onChange({ ...stock, ...fields })} />
      );
    case 'flat':
      return (
        <Fields of={FLAT_FIELDS} value={stock} onChange={(fields) => onChange({ ...stock, ...fields })} />
      );
    case 'shaped':
      return <Fields of={SHAPED_FIELDS} value={stock} onChange={onChange} />;
  }
}
