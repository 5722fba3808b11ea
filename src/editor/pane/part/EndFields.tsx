import type { FreeEnd, Strip } from '../../../design/schema.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { NumberField } from '../../control/NumberField.tsx';
import { useWords } from '../../words/t.ts';

const CUTS = ['square', 'miter', 'return'] as const;

/** How the two free ends are cut. */
export function EndFields({
  ends,
  onCommit,
}: {
  ends: Strip['ends'];
  onCommit: (ends: Strip['ends']) => void;
}) {
  const t = useWords();
  return (['start', 'end'] as const).map((which) => {
    const end: FreeEnd = ends[which];
    const take = (next: FreeEnd) => onCommit({ ...ends, [which]: next });
    return (
      <div key={which} className="field-pair">
        <ChoiceField
          label={t(`end.${which}`)}
          value={end.cut}
          choices={CUTS.map((value) => ({ value, label: t(`cut.${value}`) }))}
          onCommit={(cut) => take(cut === 'miter' ? { cut, angle: 45 } : { cut })}
        />
        {end.cut === 'miter' ? (
          <NumberField
            label={t('end.angle')}
            unit="°"
            min={-79}
            max={79}
            value={end.angle}
            onCommit={(angle) => take({ cut: 'miter', angle })}
          />
        ) : null}
      </div>
    );
  });
}
