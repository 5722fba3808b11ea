import { useEffect, useMemo, useRef, useState } from 'react';
import type { Check } from '../../../check/check.ts';
import { Button } from '../../control/Button.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { tried } from '../../document/document.ts';
import type { Shown } from '../../document/shown.ts';
import type { Mend } from '../../edit/mend.ts';
import { mendsFor } from '../../edit/mends.ts';
import { selectionName } from '../../edit/selection.ts';
import { referenceName } from '../../edit/sentence.ts';
import { commit } from '../../state/commit.ts';
import { useSettled, useStore } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { lengthText } from '../../words/text.ts';

/** Ways to mend what was found, as buttons: each is shown on the drawing while it is pointed at, and is one step. */
export function Mends({ checks }: { checks: readonly Check[] }) {
  const t = useWords();
  const store = useStore();
  const settled = useSettled();
  const mends = useMemo(() => mendsFor(settled, checks), [settled, checks]);
  const [shown, setShown] = useState<string | null>(null);
  const waits = useRef(false);
  /** What the first press of a finger showed. */
  const [asked, setAsked] = useState<string | null>(null);
  const show = (mend: Mend | null) => {
    setShown(mend && keyOf(mend));
    store.setState(({ edit }) => ({
      provisional: mend && { shown: tried(edit, mend.edits), guides: [], live: false },
    }));
  };
  // What is shown goes with the buttons.
  useEffect(() => () => store.setState({ provisional: null }), [store]);
  if (mends.length === 0) return null;
  return (
    <div className="mends">
      {mends.map((mend) => {
        const text = wordsOf(t, settled, mend);
        return (
          <Button
            key={keyOf(mend)}
            onPointerEnter={(e) => {
              if (e.pointerType !== 'touch') show(mend);
            }}
            onPointerLeave={(e) => {
              if (e.pointerType !== 'touch') show(null);
            }}
            onPointerDown={(e) => {
              // A finger has nothing to point with: its first press shows, its second takes.
              waits.current = e.pointerType === 'touch' && shown !== keyOf(mend);
            }}
            onFocus={() => show(mend)}
            onBlur={() => show(null)}
            onClick={() => {
              if (waits.current) {
                show(mend);
                setAsked(keyOf(mend));
              } else commit(store, mend.edits, text, { held: new Set(mend.parts) });
              waits.current = false;
            }}
          >
            <Typeset as="span" text={text} />
          </Button>
        );
      })}
      {asked !== null && asked === shown ? (
        <p className="note" role="status">
          {t('mend.again')}
        </p>
      ) : null}
    </div>
  );
}

const keyOf = ({ how, parts, to }: Mend): string => `${how}|${parts.join()}|${to}`;

function wordsOf(t: ReturnType<typeof useWords>, { design, stocks }: Shown, mend: Mend): string {
  const { how, parts, to, axis, end, by } = mend;
  const names = { name: selectionName(design, parts), to: referenceName(design, to) };
  if (how === 'stock') return t('mend.stock', { ...names, to: stocks.get(to)?.name ?? to });
  if (how === 'shorten')
    return t(`mend.shorten.${end ?? 'high'}`, { ...names, by: lengthText(design, by ?? 0) });
  if (how === 'legs') return t('mend.legs', { to: lengthText(design, by ?? 0) });
  if (how !== 'move') return t(`mend.${how}`, names);
  if (!axis || by === undefined) return t('mend.out', names);
  const way = t(`moved.${axis}.${by < 0 ? 'low' : 'high'}`, { by: lengthText(design, Math.abs(by)) });
  return t('mend.move', { ...names, way });
}
