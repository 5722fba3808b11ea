import { Plus } from 'lucide-react';
import type { Design, Owned } from '../../../design/schema.ts';
import { Button } from '../../control/Button.tsx';
import { Fields } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { Remove } from '../../control/Remove.tsx';
import { Section } from '../../control/Section.tsx';
import { freeId } from '../../edit/ids.ts';
import { stocksOf } from '../../shipped/tables.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { stockChoices } from '../facts/choices.ts';
import { useChange } from '../facts/useChange.ts';

const isSheet = (design: Design, stock: string) => stocksOf(design).get(stock)?.form === 'sheet';

const FIELDS: readonly FormField<Owned>[] = [
  { is: 'length', label: 'size.length', field: 'length', min: 1 },
  {
    is: 'length',
    label: 'size.width',
    min: 1,
    when: ({ stock }, design) => isSheet(design, stock),
    get: ({ width = 0 }) => width,
    put: (width) => ({ width }),
  },
  { is: 'number', label: 'shop.count', field: 'count', whole: true, min: 1, max: 500 },
];

const STOCK_FIELDS: readonly FormField<Owned, Pick<Owned, 'stock'>>[] = [
  {
    is: 'choice',
    label: 'part.stock',
    place: 'wide',
    field: 'stock',
    of: ({ stock }, design) => stockChoices(design, ['flat', 'shaped', 'sheet'], stock),
  },
];

const DEFECT_FIELDS: readonly FormField<Owned['defects'][number]>[] = [
  { is: 'length', label: 'owned.defectFrom', field: 'from' },
  { is: 'length', label: 'owned.defectTo', field: 'to' },
];

/** Offcuts on the shelf. */
export function OwnedList() {
  const t = useWords();
  const design = useSettledDesign();
  const { add } = useChange();
  const [anyStock] = [...stocksOf(design).keys()];
  const put = () => {
    const stock = design.parts.flatMap((p) => ('stock' in p ? [p.stock] : []))[0] ?? anyStock;
    if (stock === undefined) return;
    add(
      'owned',
      {
        id: freeId(design, 'owned'),
        stock,
        length: 600,
        ...(isSheet(design, stock) ? { width: 300 } : {}),
        count: 1,
        defects: [],
      },
      t('owned.number', { number: design.owned.length + 1 }),
    );
  };
  return (
    <Section id="wood-owned" title="owned.title">
      <p className="note">{t('owned.lead')}</p>
      <ul className="item-list">
        {design.owned.map((owned, i) => (
          <OwnedItem key={owned.id} owned={owned} number={i + 1} />
        ))}
      </ul>
      <Button icon={Plus} onClick={put}>
        {t('owned.add')}
      </Button>
    </Section>
  );
}

function OwnedItem({ owned, number }: { owned: Owned; number: number }) {
  const t = useWords();
  const design = useSettledDesign();
  const { replace, remove } = useChange();
  const name = t('owned.number', { number });
  const put = (fields: Partial<Owned>) => replace('owned', { ...owned, ...fields }, name);
  const restock = (stock: string) => {
    const { width, ...rest } = owned;
    replace(
      'owned',
      isSheet(design, stock) ? { ...rest, stock, width: width ?? 300, defects: [] } : { ...rest, stock },
      name,
    );
  };
  const setDefect = (i: number, fields: Partial<Owned['defects'][number]>) =>
    put({ defects: owned.defects.map((d, k) => (k === i ? { ...d, ...fields } : d)) });
  return (
    <li>
      <div className="item-head">
        <h4>{name}</h4>
        <Remove label={t('owned.remove', { number })} onClick={() => remove('owned', owned.id, name)} />
      </div>
      <div className="fields">
        <Fields of={STOCK_FIELDS} value={owned} onChange={({ stock }) => restock(stock)} />
        <Fields of={FIELDS} value={owned} onChange={put} />
      </div>
      {isSheet(design, owned.stock) ? null : (
        <details className="more">
          <summary>{t('owned.defects')}</summary>
          {owned.defects.map((defect, i) => (
            <div className="row-fields" key={`${defect.from}-${defect.to}`}>
              <Fields of={DEFECT_FIELDS} value={defect} onChange={(fields) => setDefect(i, fields)} />
              <Remove
                label={t('owned.removeDefect', { number: i + 1 })}
                onClick={() => put({ defects: owned.defects.filter((_, k) => k !== i) })}
              />
            </div>
          ))}
          <Button
            icon={Plus}
            look="small"
            onClick={() => {
              const from = owned.defects.at(-1)?.to ?? 0;
              put({ defects: [...owned.defects, { from, to: from + 50 }] });
            }}
          >
            {t('owned.addDefect')}
          </Button>
        </details>
      )}
    </li>
  );
}
