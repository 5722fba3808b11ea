import { Plus, Trash2 } from 'lucide-react';
import { Button } from '../../control/Button.tsx';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { useWords } from '../../words/t.ts';
import { MOST_BRIDGES, wrapped } from './bridges.ts';
import { takesAway } from './takesAway.ts';
import type { BridgeSetting } from './useBridges.ts';

/** The bridges of one island, to add and take away without a pointer. */
export function BridgeList({ set }: { readonly set: BridgeSetting }) {
  const t = useWords();
  const { islands, chosen, movable } = set;
  if (chosen === undefined) return null;
  const own = movable.filter((m) => m.island === chosen);
  return (
    <fieldset className="sub bridge-list" ref={set.list} tabIndex={-1} onKeyDown={takesAway}>
      <legend>{t('stencil.setBridges')}</legend>
      <div className="bridge-island">
        <ChoiceField
          label={t('stencil.island')}
          value={String(chosen)}
          choices={islands.map(({ island }) => ({
            value: String(island),
            label: t('stencil.islandHas', {
              island: island + 1,
              count: movable.filter((m) => m.island === island).length,
            }),
          }))}
          onCommit={(island) => set.choose(Number(island))}
        />
        <Button icon={Plus} disabled={own.length >= MOST_BRIDGES} onClick={() => set.add(chosen)}>
          {t('stencil.addBridge')}
        </Button>
      </div>
      {own.length === 0 ? <p className="note">{t('stencil.noBridges')}</p> : null}
      <ul className="bridges">
        {own.map((m) => (
          <li key={m.index}>
            <span>{t('stencil.bridgeAt', { number: m.index + 1, angle: Math.round(wrapped(m.angle)) })}</span>
            {m.needed ? (
              <span className="note">{t('stencil.needed')}</span>
            ) : (
              <Button
                icon={Trash2}
                look="bare icon"
                tip={t('stencil.removeBridge', { number: m.index + 1, island: chosen + 1 })}
                onKeyDown={(e) => {
                  if (takesAway(e)) set.takeAway(m);
                }}
                onClick={() => set.takeAway(m)}
              />
            )}
          </li>
        ))}
      </ul>
    </fieldset>
  );
}
