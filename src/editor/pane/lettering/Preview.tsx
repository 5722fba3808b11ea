import { Minus, Plus } from 'lucide-react';
import { useState } from 'react';
import type { LetteredPart } from '../../../design/schema.ts';
import { pick } from '../../../list/at.ts';
import type { Plan, SignPlan } from '../../../plan/types.ts';
import { Button } from '../../control/Button.tsx';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { useSay } from '../../control/useSay.ts';
import { useWords } from '../../words/t.ts';
import { ScrollBox } from '../facts/ScrollBox.tsx';
import { BridgeList } from './BridgeList.tsx';
import { LetterView } from './LetterView.tsx';
import { StencilView } from './StencilView.tsx';
import { type PlaceBridges, useBridges } from './useBridges.ts';

const ZOOMS = [1, 1.5, 2, 3, 4] as const;

interface PreviewProps {
  readonly plan: Plan;
  readonly part: LetteredPart;
  readonly sign: SignPlan;
  readonly onPlace: PlaceBridges;
}

/** The lettering large: as painted, or as the stencils of its colors. */
export function Preview({ plan, part, sign, onPlace }: PreviewProps) {
  const t = useWords();
  const say = useSay();
  const [shown, show] = useState('letters');
  const [zoom, setZoom] = useState(0);
  const layers = sign.stencils?.layers ?? [];
  const made = layers.find((l) => l.role === shown);
  const names = new Map(plan.design.finishes.map((f) => [f.id, f.name]));
  const choices = [
    { value: 'letters', label: t('letters.showLetters') },
    ...layers.map((l, i) => ({
      value: l.role as string,
      label:
        layers.length === 1
          ? t('make.stencil')
          : `${t('make.stencil')}: ${t('letters.color', {
              number: i + 1,
              of: layers.length,
              name: names.get(l.finish) ?? l.finish,
            })}`,
    })),
  ];
  const bridges = useBridges(made, part.lettering.stencil, onPlace);
  const { lettered } = sign;
  return (
    <section className="lettering-preview" aria-label={t('letters.preview')}>
      <div className="preview-bar">
        {layers.length > 0 ? (
          <ChoiceField
            quiet
            label={t('letters.show')}
            value={made ? shown : 'letters'}
            choices={choices}
            onCommit={show}
          />
        ) : null}
        <Button
          icon={Minus}
          look="icon"
          label={t('letters.smaller')}
          disabled={zoom === 0}
          onClick={() => setZoom(zoom - 1)}
        />
        <Button
          icon={Plus}
          look="icon"
          label={t('letters.larger')}
          disabled={zoom === ZOOMS.length - 1}
          onClick={() => setZoom(zoom + 1)}
        />
      </div>
      <ScrollBox label={t('letters.preview')}>
        <div style={{ width: `${pick(ZOOMS, zoom) * 100}%` }}>
          {made ? (
            <StencilView sign={sign} made={made} options={part.lettering.stencil} set={bridges} />
          ) : (
            <LetterView plan={plan} sign={sign} />
          )}
        </div>
      </ScrollBox>
      {bridges.islands.length > 0 ? (
        <>
          <p className="note">{t('stencil.drag')}</p>
          <BridgeList set={bridges} />
        </>
      ) : null}
      {lettered.missing.length > 0 ? (
        <p className="warn-text">{t('letters.missing', { characters: lettered.missing.join(' ') })}</p>
      ) : null}
      <p className="note">
        <Typeset
          text={t('letters.capNow', {
            cap: say.short(lettered.capHeight),
            width: say.short(lettered.width),
          })}
        />
      </p>
    </section>
  );
}
