import { useEffect, useRef, useState } from 'react';
import type { Edit } from '../../design/edit/edit.ts';
import { replacing } from '../../design/edit/make.ts';
import type { RuleOf } from '../../design/schema.ts';
import { countFor, pitchFor } from '../../layout/arrange/recount.ts';
import type { Mm } from '../../measure/units.ts';
import { Button } from '../control/Button.tsx';
import { MeasureField } from '../control/MeasureField.tsx';
import { Typeset } from '../control/Typeset.tsx';
import { arrangingOf } from '../edit/arrange.ts';
import { editsToRecount } from '../edit/evenCount.ts';
import { useCommit, useSettled } from '../state/hooks.ts';
import { useWords } from '../words/t.ts';
import { lengthText } from '../words/text.ts';
import { closesOnEscape } from './closesOnEscape.ts';

interface GapInPlaceProps {
  readonly rule: RuleOf<'even'>;
  /** The gap that comes out now. */
  readonly gap: Mm;
  readonly onDone: () => void;
}

/**
 * A gap that follows from how many parts there are: what is typed is told what it takes (another number of parts,
 * or the row held by its centers), and one click does it.
 */
export function GapInPlace({ rule, gap, onDone }: GapInPlaceProps) {
  const t = useWords();
  const shown = useSettled();
  const { design } = shown;
  const commit = useCommit();
  const [wanted, setWanted] = useState<Mm | null>(null);
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    // The answer to what was typed is where the next Enter goes.
    if (wanted !== null) first.current?.focus();
  }, [wanted]);

  const on = arrangingOf(shown);
  const text = (mm: Mm) => lengthText(design, mm);
  const count = wanted === null ? null : countFor(on, rule, wanted);
  const pitch = wanted === null ? null : pitchFor(on, rule, wanted);
  const take = (edits: readonly Edit[], label: string) => {
    commit(edits, label);
    onDone();
  };
  return (
    <div onKeyDownCapture={closesOnEscape(onDone)}>
      <MeasureField label={t('even.gap')} autoFocus value={wanted ?? gap} onCommit={setWanted} />
      {wanted === null ? null : (
        <div className="gap-offers" role="status">
          {count ? (
            <Button
              ref={first}
              onClick={() =>
                take(editsToRecount(shown, rule, count.count), t('did.count', { count: count.count }))
              }
            >
              <Typeset text={t('even.offerCount', { count: count.count, gap: text(count.gap) })} />
            </Button>
          ) : null}
          {pitch !== null ? (
            <Button
              ref={count ? undefined : first}
              onClick={() => {
                const { most: _most, ...rest } = rule;
                const item = { ...rest, mode: 'centers' as const, pitch };
                take([replacing('rules', item)], t('did.measure', { to: text(wanted) }));
              }}
            >
              <Typeset text={t('even.offerExact', { gap: text(wanted) })} />
            </Button>
          ) : null}
          {count || pitch !== null ? null : (
            <Typeset as="p" className="note" text={t('even.noCount', { most: text(wanted) })} />
          )}
        </div>
      )}
    </div>
  );
}
