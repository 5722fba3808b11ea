import { FARTHEST } from '../../design/limits.ts';
import { formatLength } from '../../measure/format.ts';
import { parseMeasure } from '../../measure/parse.ts';
import { inches, type Mm } from '../../measure/units.ts';
import { useMeasureStyle } from '../state/hooks.ts';
import { useWords } from '../words/t.ts';
import { limitText } from '../words/text.ts';
import { unreadWords } from '../words/unread.ts';
import { Field } from './Field.tsx';
import { finer } from './finer.ts';
import { Typeset } from './Typeset.tsx';
import { type Read, type TypedProps, useDraft } from './useDraft.ts';

export interface MeasureFieldProps extends TypedProps<Mm> {
  readonly min?: Mm | undefined;
  readonly max?: Mm | undefined;
  /** What is wrong with the value that was taken. */
  readonly error?: string | undefined;
  readonly quiet?: boolean | undefined;
}

interface Unread {
  readonly text: string;
  readonly at: number;
  readonly message: string;
}

/** A length typed as a person types it: fractions, feet, sums; arrows up and down nudge it. */
export function MeasureField(props: MeasureFieldProps) {
  const { label, value, onCommit, min = 0, max = FARTHEST, hint, error, quiet, disabled } = props;
  const t = useWords();
  const style = useMeasureStyle();
  const metric = style.unit === 'mm' || style.unit === 'cm';
  const shown = formatLength(value, finer(value, style));

  const read = (text: string): Read<Mm, Unread> => {
    const parsed = parseMeasure(text, style.unit);
    if (!parsed.ok) {
      const message = t('field.unread', {
        found: unreadWords(parsed.found),
        expected: unreadWords(parsed.expected),
      });
      return { ok: false, text, at: parsed.at, message };
    }
    if (parsed.value < min) {
      const key = min === 0 ? 'field.negative' : 'field.least';
      return { ok: false, text, at: -1, message: t(key, { least: limitText(min, style, 'least') }) };
    }
    if (parsed.value > max) {
      return { ok: false, text, at: -1, message: t('field.most', { most: limitText(max, style, 'most') }) };
    }
    return { ok: true, value: parsed.value };
  };

  const draft = useDraft<Mm, Unread>({
    shown,
    read,
    onCommit,
    onDone: props.onDone,
    onStep: (direction, large) => {
      const step = metric ? (large ? 10 : 1) : inches(large ? 1 : 1 / 16);
      onCommit(Math.min(max, Math.max(min, value + direction * step)));
    },
  });

  return (
    <Field
      label={label}
      hint={hint}
      quiet={quiet}
      error={draft.problem ? <UnreadText problem={draft.problem} /> : error ? <Typeset text={error} /> : null}
    >
      {(ids) => (
        <div className={draft.draft === null ? 'input measured' : 'input'}>
          <input
            id={ids.control}
            aria-describedby={ids.described}
            aria-invalid={draft.problem || error ? true : undefined}
            inputMode="text"
            autoComplete="off"
            data-settled={draft.settled}
            spellCheck={false}
            disabled={disabled}
            // A field opened by clicking a dimension is where the person already looks.
            // biome-ignore lint/a11y/noAutofocus: see above
            autoFocus={props.autoFocus}
            {...draft.input}
            onFocus={(e) => e.currentTarget.select()}
          />
          <span className="input-shown" aria-hidden="true">
            <Typeset text={shown} />
          </span>
        </div>
      )}
    </Field>
  );
}

/** The message, and the typed text with the place that could not be read marked. */
function UnreadText({ problem }: { problem: Unread }) {
  const { text, at, message } = problem;
  return (
    <>
      {message}
      {at >= 0 && text.trim() !== '' ? (
        <code className="unread">
          {text.slice(0, at)}
          <mark>{text.slice(at, at + 1) || '\u2038'}</mark>
          {text.slice(at + 1)}
        </code>
      ) : null}
    </>
  );
}
