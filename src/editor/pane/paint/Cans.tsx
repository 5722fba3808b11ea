import type { Design, Finish } from '../../../design/schema.ts';
import { NumberField } from '../../control/NumberField.tsx';
import { SwitchField } from '../../control/SwitchField.tsx';
import { tables } from '../../shipped/tables.ts';
import { useWords } from '../../words/t.ts';

interface CansProps {
  readonly finish: Finish;
  readonly design: Design;
  readonly onChange: (containers: Finish['containers']) => void;
}

/** Which can sizes it comes in, and what each costs. */
export function Cans({ finish, design, onChange }: CansProps) {
  const t = useWords();
  const { containers: system } = design.paint;
  const sizes = tables().containers.filter((c) => c.system === system);
  const chosen = new Map(finish.containers.map((c) => [c.container, c.price]));
  return (
    <details className="more">
      <summary>{t('finish.cans')}</summary>
      <p className="note">{t('finish.cansHint')}</p>
      <ul className="cans">
        {sizes.map((can) => {
          const price = chosen.get(can.id);
          return (
            <li key={can.id}>
              <SwitchField
                label={can.name}
                value={price !== undefined}
                onCommit={(on) =>
                  onChange(
                    on
                      ? [...finish.containers, { container: can.id, price: 0 }]
                      : finish.containers.filter((c) => c.container !== can.id),
                  )
                }
              />
              {price !== undefined ? (
                <NumberField
                  label={t('finish.canPrice', { can: can.name })}
                  unit={design.measure.currency}
                  value={price}
                  onCommit={(next) =>
                    onChange(
                      finish.containers.map((c) => (c.container === can.id ? { ...c, price: next } : c)),
                    )
                  }
                />
              ) : null}
            </li>
          );
        })}
      </ul>
    </details>
  );
}
