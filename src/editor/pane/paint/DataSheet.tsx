import { useState } from 'react';
import type { Design } from '../../../design/schema.ts';
import { spreadingRate } from '../../../finish/spreading.ts';
import { formatRate } from '../../../measure/format.ts';
import { styleIn } from '../../../plan/words/languages.ts';
import { NumberField } from '../../control/NumberField.tsx';
import { useLanguage, useWords } from '../../words/t.ts';
import { filmUnit } from '../facts/rateUnit.ts';
import { UnitField } from '../facts/UnitField.tsx';

interface DataSheetProps {
  readonly measure: Design['measure'];
  readonly onTake: (rate: number) => void;
}

/** Spreading rate by a data sheet's volume solids and film thickness, for cans that do not say it. */
export function DataSheet({ measure, onTake }: DataSheetProps) {
  const t = useWords();
  const language = useLanguage();
  const [solids, setSolids] = useState(40);
  const [film, setFilm] = useState(40);
  const rate = Math.min(100, spreadingRate(solids / 100, film));
  return (
    <details className="more">
      <summary>{t('finish.sheet')}</summary>
      <div className="fields three">
        <NumberField
          label={t('finish.solids')}
          unit="%"
          min={5}
          max={100}
          value={solids}
          onCommit={setSolids}
        />
        <UnitField
          label={t('finish.film')}
          unit={filmUnit(measure)}
          digits={1}
          min={0.1}
          step={0.1}
          value={film}
          onCommit={setFilm}
        />
        <button type="button" className="btn low" onClick={() => onTake(rate)}>
          {t('finish.useRate', { rate: formatRate(rate, styleIn(language, measure)) })}
        </button>
      </div>
    </details>
  );
}
