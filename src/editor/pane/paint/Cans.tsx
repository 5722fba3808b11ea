import type { Design, Finish } from '../../../design/schema.ts';
import type { Container } from '../../../materials/types.ts';
import { Fields } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { tables } from '../../shipped/tables.ts';
import { t, useWords } from '../../words/t.ts';

interface CansProps {
  readonly finish: Finish;
  readonly design: Design;
  readonly onChange: (containers: Finish['containers']) => void;
}

type Sold = Pick<Finish, 'containers'>;

/** Whether a finish comes in a can, and for how much. */
function fieldsOf({ id, name }: Container): readonly FormField<Finish, Sold>[] {
  const others = ({ containers }: Sold) => containers.filter((c) => c.container !== id);
  const priceIn = ({ containers }: Sold) => containers.find((c) => c.container === id)?.price;
  return [
    {
      is: 'switch',
      label: { name },
      get: (finish) => priceIn(finish) !== undefined,
      put: (on, finish) => ({
        containers: on ? [...finish.containers, { container: id, price: 0 }] : others(finish),
      }),
    },
    {
      is: 'number',
      label: { name: t('finish.canPrice', { can: name }) },
      unit: (_, { measure }) => measure.currency,
      when: (finish) => priceIn(finish) !== undefined,
      get: (finish) => priceIn(finish) ?? 0,
      put: (price, { containers }) => ({
        containers: containers.map((c) => (c.container === id ? { ...c, price } : c)),
      }),
    },
  ];
}

/** Which can sizes it comes in, and what each costs. */
export function Cans({ finish, design, onChange }: CansProps) {
  useWords();
  const { containers: system } = design.paint;
  const sizes = tables().containers.filter((c) => c.system === system);
  return (
    <details className="more">
      <summary>{t('finish.cans')}</summary>
      <p className="note">{t('finish.cansHint')}</p>
      <ul className="cans">
        {sizes.map((can) => (
          <li key={can.id}>
            <Fields of={fieldsOf(can)} value={finish} onChange={({ containers }) => onChange(containers)} />
          </li>
        ))}
      </ul>
    </details>
  );
}
