import { boxIn } from '../../layout/boxIn.ts';
import { MeasureField } from '../control/MeasureField.tsx';
import type { Shown } from '../document/shown.ts';
import { editToOpening, OPENING_MEASURES, openingIn, openingTyped } from '../edit/openings.ts';
import { useCommit } from '../state/hooks.ts';
import type { OpeningMeasure } from '../state/store.ts';
import { useWords } from '../words/t.ts';
import { lengthText } from '../words/text.ts';

/** A margin or a size of an opening, typed where it is drawn. */
export function OpeningInPlace({
  shown: { design, layout },
  of: { part: id, opening, side },
  onDone,
}: {
  readonly shown: Shown;
  readonly of: OpeningMeasure;
  readonly onDone: () => void;
}) {
  const t = useWords();
  const commit = useCommit();
  const part = design.parts.find((one) => one.id === id);
  const found = part && openingIn(part, boxIn(layout.boxes, part), opening);
  if (!found) return null;
  const isSize = side === 'w' || side === 'h';
  return (
    <MeasureField
      label={t(OPENING_MEASURES[side])}
      quiet
      autoFocus
      min={isSize ? 1 : 0}
      value={isSize ? found.hole[side] : found.opening.margin[side]}
      onCommit={(mm) =>
        commit(
          [editToOpening(found, openingTyped(found, side, mm))],
          t('did.measure', { to: lengthText(design, mm) }),
        )
      }
      onDone={onDone}
    />
  );
}
