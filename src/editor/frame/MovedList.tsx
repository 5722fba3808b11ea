import type { Design } from '../../design/schema.ts';
import { Button } from '../control/Button.tsx';
import { Typeset } from '../control/Typeset.tsx';
import { nameOf } from '../edit/movable.ts';
import { useWords, type WordKey } from '../words/t.ts';
import { lengthText } from '../words/text.ts';
import type { LayoutChange } from './layoutChange.ts';

interface MovedListProps {
  readonly design: Design;
  readonly change: LayoutChange;
  readonly label: string;
  /** What the button says that takes none of it. */
  readonly drop: WordKey;
  /** Where there is no drawing that shows it. */
  readonly unseen?: boolean;
  readonly onKeep: () => void;
  readonly onDrop: () => void;
}

/** What a new measure moves; the drawing already shows it. */
export function MovedList({ design, change, label, drop, unseen, onKeep, onDrop }: MovedListProps) {
  const t = useWords();
  const by = (axis: 'x' | 'y', mm: number) =>
    Math.abs(mm) < 0.05
      ? ''
      : t(`moved.${axis}.${mm < 0 ? 'low' : 'high'}`, { by: lengthText(design, Math.abs(mm)) });
  const grown = (side: 'w' | 'h', mm: number) =>
    Math.abs(mm) < 0.05
      ? ''
      : t(`grown.${side}.${mm < 0 ? 'less' : 'more'}`, { by: lengthText(design, Math.abs(mm)) });
  return (
    <section className="pane-stack" aria-labelledby="moved-title">
      <h3 id="moved-title" className="tape">
        {t('moved.title', { what: label })}
      </h3>
      <p className="note" role="status">
        {t(unseen ? 'moved.unseen' : 'moved.lead', { count: change.moved.length + change.fitted.length })}
      </p>
      <ul className="moved">
        {change.moved.map((m) => (
          <li key={m.part}>
            <strong>{nameOf(design, m.part)}</strong>
            <Typeset
              as="span"
              text={[by('x', m.by.x), by('y', m.by.y), grown('w', m.grown.w), grown('h', m.grown.h)]
                .filter(Boolean)
                .join(', ')}
            />
          </li>
        ))}
        {change.fitted.map((part) => (
          <li key={part}>
            <strong>{nameOf(design, part)}</strong>
            <span>{t('moved.fitted')}</span>
          </li>
        ))}
      </ul>
      {change.newChecks > 0 ? (
        <p className="warn-text">{t('moved.checks', { count: change.newChecks })}</p>
      ) : null}
      <div className="btn-row sticky">
        {/* The question follows from what was just typed: the focus goes with it. */}
        <Button look="main" autoFocus onClick={onKeep}>
          {t('moved.keep')}
        </Button>
        <Button onClick={onDrop}>{t(drop)}</Button>
      </div>
    </section>
  );
}
