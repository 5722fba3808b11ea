import { useState } from 'react';
import type { Design } from '../../../design/schema.ts';
import { spreadingRate } from '../../../finish/spreading.ts';
import { formatRate } from '../../../measure/format.ts';
import { styleIn } from '../../../plan/words/languages.ts';
import { Button } from '../../control/Button.tsx';
import { Fields } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { useLanguage, useWords } from '../../words/t.ts';
import { filmUnit } from '../facts/rateUnit.ts';

const FIELDS: readonly FormField<{ solids: number; film: number }>[] = [
  { is: 'number', label: 'finish.solids', field: 'solids', unit: '%', min: 5, max: 100 },
  { is: 'amount', label: 'finish.film', field: 'film', unit: filmUnit, digits: 1, min: 0.1, step: 0.1 },
];

interface DataSheetProps {
  readonly measure: Design['measure'];
  readonly onTake: (rate: number) => void;
}

/** Spreading rate by a data sheet's volume solids and film thickness, for cans that do not say it. */
export function DataSheet({ measure, onTake }: DataSheetProps) {
  const t = useWords();
  const language = useLanguage();
  const [sheet, setSheet] = useState({ solids: 40, film: 40 });
  const rate = Math.min(100, spreadingRate(sheet.solids / 100, sheet.film));
  return (
    <details className="more">
      <summary>{t('finish.sheet')}</summary>
      <div className="fields three">
        <Fields of={FIELDS} value={sheet} onChange={(fields) => setSheet({ ...sheet, ...fields })} />
        <Button look="low" onClick={() => onTake(rate)}>
          {t('finish.useRate', { rate: formatRate(rate, styleIn(language, measure)) })}
        </Button>
      </div>
    </details>
  );
}
