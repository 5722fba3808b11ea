import { FileDown } from 'lucide-react';
import { useMemo, useState } from 'react';
import type { Mm } from '../../../measure/units.ts';
import type { PrinterCorrection } from '../../../patterns/result.ts';
import { testPage } from '../../../patterns/testPage.ts';
import { pageSetup } from '../../../plan/pageSetup.ts';
import { Button } from '../../control/Button.tsx';
import { DrawingView } from '../../control/DrawingView.tsx';
import { Fields } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { Section } from '../../control/Section.tsx';
import { useSay } from '../../control/useSay.ts';
import { saveBytes } from '../../kept/file.ts';
import { tables } from '../../shipped/tables.ts';
import { useEditor, useSettledDesign, useStore } from '../../state/hooks.ts';
import { useLanguage, useWords, type WordKey } from '../../words/t.ts';

/** What the ruler reads between the marks of the test page, and what it should. */
interface Ruled {
  readonly test: Readonly<Record<'x' | 'y', Mm>>;
  readonly correction: PrinterCorrection;
  readonly should: (mm: Mm) => string;
}

const ruled = (axis: 'x' | 'y', label: WordKey): FormField<Ruled, Partial<PrinterCorrection>> => ({
  is: 'length',
  label,
  hintOf: ({ test, should }) => should(test[axis]),
  min: ({ test }) => test[axis] * 0.6,
  max: ({ test }) => test[axis] * 1.6,
  get: ({ test, correction }) => test[axis] * correction[axis],
  put: (mm, { test }) => ({ [axis]: mm / test[axis] }),
});

const RULER_FIELDS = [ruled('x', 'printer.across'), ruled('y', 'printer.up')];

/** What the ruler says about the printer at hand; kept on the device. */
export function PrinterFields() {
  const t = useWords();
  const say = useSay();
  const language = useLanguage();
  const store = useStore();
  const design = useSettledDesign();
  const correction = useEditor((s) => s.correction);
  const [saving, setSaving] = useState(false);
  const setup = useMemo(
    () => pageSetup({ ...design, papers: tables().papers, correction: { x: 1, y: 1 }, language }),
    [design, language],
  );
  const test = useMemo(() => setup && testPage(setup), [setup]);
  const save = async () => {
    if (!test) return;
    setSaving(true);
    try {
      const [{ testPageFile }, { lettersFor }] = await Promise.all([
        import('../../../output/testPageFile.ts'),
        import('../../shipped/letters.ts'),
      ]);
      const bytes = await testPageFile(setup, { date: design.date, language }, await lettersFor(''));
      if (bytes) await saveBytes('printer-test.pdf', 'application/pdf', bytes);
    } finally {
      setSaving(false);
    }
  };
  const should = (mm: Mm) => t('printer.should', { length: say.short(mm) });
  const untrue = (['x', 'y'] as const).filter((axis) => Math.abs(correction[axis] - 1) > 1e-6);
  return (
    <Section id="pages-printer" title="pages.printer">
      <p className="note">{t('printer.lead')}</p>
      {test ? (
        <>
          <div className="btn-row spaced">
            <Button icon={FileDown} disabled={saving} onClick={() => void save()}>
              {t(saving ? 'printer.saving' : 'printer.save')}
            </Button>
          </div>
          <div className="fields spaced">
            <Fields
              of={RULER_FIELDS}
              value={{ test, correction, should }}
              onChange={(change) => store.setState({ correction: { ...correction, ...change } })}
            />
          </div>
          <div className="printer-state" role="status">
            {untrue.length === 0 ? (
              <p className="good-text">{t('printer.true')}</p>
            ) : (
              <>
                <p className="note">
                  {t('printer.scale', {
                    percent: `${say.number(correction.x * 100, 1)} × ${say.number(correction.y * 100, 1)}`,
                  })}
                </p>
                <Button look="small" onClick={() => store.setState({ correction: { x: 1, y: 1 } })}>
                  {t('printer.reset')}
                </Button>
              </>
            )}
          </div>
          <DrawingView
            drawing={test.drawing}
            className="test-page"
            label={t('printer.picture', { x: say.short(test.x), y: say.short(test.y) })}
          />
        </>
      ) : (
        <p className="warn-text">{t('printer.noRoom')}</p>
      )}
    </Section>
  );
}
