import { useEffect, useRef } from 'react';
import type { RuleOf } from '../../design/schema.ts';
import type { Mm } from '../../measure/units.ts';
import { Button } from '../control/Button.tsx';
import { MeasureField } from '../control/MeasureField.tsx';
import type { Shown } from '../document/shown.ts';
import { editsToGap, type GapFixed, gapFixedBy, roomOf } from '../edit/centerGap.ts';
import { useCommit } from '../state/hooks.ts';
import { useWords, type WordKey } from '../words/t.ts';
import { lengthText } from '../words/text.ts';
import { closesOnEscape } from './closesOnEscape.ts';

interface CenterGapInPlaceProps {
  readonly shown: Shown;
  readonly rule: RuleOf<'center'>;
  /** The gap that comes out now. */
  readonly gap: Mm;
  readonly onDone: () => void;
}

/** The gap beside something centered: what is typed sizes the part, or one sentence says what decides it. */
export function CenterGapInPlace({ shown, rule, gap, onDone }: CenterGapInPlaceProps) {
  const t = useWords();
  const { design } = shown;
  const commit = useCommit();
  const fixed = gapFixedBy(design, rule);
  const room = roomOf(rule, shown);
  if (fixed !== null) return <Decided by={fixed} onDone={onDone} />;
  if (room === null) return null;
  return (
    <MeasureField
      label={t('centerGap.each')}
      hint={t('centerGap.sizes')}
      autoFocus
      // A millimeter of the part is left.
      max={Math.max(0, (room.high - room.low - 1) / 2)}
      value={gap}
      onCommit={(mm) =>
        commit(editsToGap(shown, rule, room, mm), t('did.measure', { to: lengthText(design, mm) }))
      }
      onDone={onDone}
    />
  );
}

const WHY: { readonly [K in GapFixed]: WordKey } = {
  block: 'centerGap.block',
  locked: 'centerGap.locked',
  stock: 'centerGap.stock',
};

function Decided({ by, onDone }: { readonly by: GapFixed; readonly onDone: () => void }) {
  const t = useWords();
  const close = useRef<HTMLButtonElement>(null);
  useEffect(() => close.current?.focus(), []);
  return (
    <div className="gap-offers" onKeyDownCapture={closesOnEscape(onDone)}>
      <p className="note" role="status">
        {t(WHY[by])}
      </p>
      <Button ref={close} onClick={onDone}>
        {t('act.close')}
      </Button>
    </div>
  );
}
