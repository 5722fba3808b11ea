import type { Design } from '../../design/schema.ts';
import { Button } from '../control/Button.tsx';
import { Fields } from '../control/form/Fields.tsx';
import type { MainMeasures } from '../edit/fitBed.ts';
import { FIRST_FIELDS, UNIT_FIELDS } from '../pane/bed/mattressFields.ts';
import { useWords } from '../words/t.ts';

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
  return (
    <section className="first-bed" aria-labelledby="first-bed">
      <h2 id="first-bed" className="tape">
        {t('first.bed')}
      </h2>
      <div className="first-measures">
        <Fields
          of={UNIT_FIELDS}
          value={measures.measure}
          onChange={(unit) => onUnit({ ...measures.measure, ...unit })}
        />
        <Fields
          of={FIRST_FIELDS}
          value={measures}
          onChange={(change) => onChange({ ...measures, ...change })}
        />
      </div>
      <p className="note first-state" role="status">
        {t(own ? 'first.fitted' : 'first.notYet')}{' '}
        {own ? <Button onClick={onDrop}>{t('first.drop')}</Button> : null}
      </p>
    </section>
  );
}
