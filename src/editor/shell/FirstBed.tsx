import type { Bed, Design } from '../../design/schema.ts';
import { ChoiceField } from '../control/ChoiceField.tsx';
import { MeasureField } from '../control/MeasureField.tsx';
import type { MainMeasures } from '../edit/fitBed.ts';
import { tables } from '../shipped/tables.ts';
import { useWords } from '../words/t.ts';

const SIDES = ['width', 'length', 'thickness'] as const;
const WORDS = {
  width: 'bed.mattressWidth',
  length: 'bed.mattressLength',
  thickness: 'bed.mattressThickness',
} as const;
const LEAST = { width: 100, length: 100, thickness: 1 } as const;

interface FirstBedProps {
  readonly measures: MainMeasures;
  /** Whether they are the person's own yet. */
  readonly own: boolean;
  readonly onChange: (measures: MainMeasures) => void;
  readonly onUnit: (measure: Design['measure']) => void;
  readonly onDrop: () => void;
}

/** The main measures of the bed, asked before a face is chosen for it; every other measure waits in the bed step. */
export function FirstBed({ measures, own, onChange, onUnit, onDrop }: FirstBedProps) {
  const t = useWords();
  const { mattress, pivotAlong, measure } = measures;
  const preset = tables().mattresses.find(
    (m) => Math.abs(m.width - mattress.width) < 0.5 && Math.abs(m.length - mattress.length) < 0.5,
  );
  const metric = measure.unit === 'mm' || measure.unit === 'cm';
  return (
    <section className="first-bed" aria-labelledby="first-bed">
      <h2 id="first-bed" className="tape">
        {t('first.bed')}
      </h2>
      <div className="first-measures">
        <ChoiceField
          label={t('settings.unit')}
          value={metric ? 'mm' : 'in'}
          choices={(['in', 'mm'] as const).map((value) => ({ value, label: t(`unit.${value}`) }))}
          onCommit={(unit) => onUnit({ ...measure, unit })}
        />
        <ChoiceField
          label={t('bed.preset')}
          value={preset?.id ?? 'own'}
          choices={[
            { value: 'own', label: t('first.ownSize') },
            ...tables().mattresses.map((m) => ({ value: m.id, label: m.name })),
          ]}
          onCommit={(id) => {
            const m = tables().mattresses.find((one) => one.id === id);
            if (m) onChange({ ...measures, mattress: { ...mattress, width: m.width, length: m.length } });
          }}
        />
        {SIDES.map((side) => (
          <MeasureField
            key={side}
            label={t(WORDS[side])}
            min={LEAST[side]}
            max={5000}
            value={mattress[side]}
            onCommit={(mm) => onChange({ ...measures, mattress: { ...mattress, [side]: mm } })}
          />
        ))}
        <ChoiceField
          label={t('bed.pivotAlong')}
          value={pivotAlong ?? 'own'}
          choices={[
            { value: 'own', label: t('first.ownWay') },
            ...(['end', 'side'] as const).map((value) => ({ value, label: t(`bed.along.${value}`) })),
          ]}
          onCommit={(way) =>
            onChange({ ...measures, pivotAlong: way === 'own' ? null : (way as Bed['pivotAlong']) })
          }
        />
      </div>
      <p className="note first-state" role="status">
        {t(own ? 'first.fitted' : 'first.notYet')}{' '}
        {own ? (
          <button type="button" className="btn" onClick={onDrop}>
            {t('first.drop')}
          </button>
        ) : null}
      </p>
    </section>
  );
}
