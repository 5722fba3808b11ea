import { parseNumber } from '../../measure/parse.ts';
import { LANGUAGES } from '../../plan/words/languages.ts';
import { spoken, useWords } from '../words/t.ts';
import { numberText } from '../words/text.ts';
import { unreadWords } from '../words/unread.ts';
import { Field } from './Field.tsx';
import { type Read, type TypedProps, useDraft } from './useDraft.ts';

export interface NumberFieldProps extends TypedProps<number> {
  readonly min?: number | undefined;
  readonly max?: number | undefined;
  readonly step?: number | undefined;
  /** Whole numbers only. */
  readonly whole?: boolean | undefined;
  /** Shown after the number, such as ° or %. */
  readonly unit?: string | undefined;
}

/** The text without the field's own unit, before or behind the number. */
function withoutUnit(text: string, unit: string | undefined): string {
  const typed = text.trim();
  if (unit === undefined || unit === '') return typed;
  if (typed.startsWith(unit)) return typed.slice(unit.length).trim();
  return typed.toLowerCase().endsWith(unit.toLowerCase()) ? typed.slice(0, -unit.length).trim() : typed;
}

/** A plain number: a count, an angle, a share. */
export function NumberField(props: NumberFieldProps) {
  const { label, value, onCommit, min = 0, max = 1_000_000, step = 1, whole, unit, hint } = props;
  const t = useWords();
  const limit = (v: number) => Math.min(max, Math.max(min, v));
  const read = (text: string): Read<number, { message: string }> => {
    if (text.trim() === '') return { ok: false, message: t('field.noNumber') };
    const parsed = parseNumber(withoutUnit(text, unit), LANGUAGES[spoken()].notation.decimalMark);
    if (!parsed.ok) {
      const found = unreadWords(parsed.found);
      return { ok: false, message: t('field.unread', { found, expected: unreadWords(parsed.expected) }) };
    }
    const number = parsed.value;
    if (whole && !Number.isInteger(number)) return { ok: false, message: t('field.noWhole') };
    if (number < min || number > max)
      return {
        ok: false,
        message: t('field.range', { least: numberText(min, 3), most: numberText(max, 3) }),
      };
    return { ok: true, value: number };
  };
  const draft = useDraft<number, { message: string }>({
    shown: numberText(value, 3),
    read,
    onCommit,
    onDone: props.onDone,
    onStep: (direction, large) =>
      onCommit(limit(Math.round((value + direction * step * (large ? 10 : 1)) * 1e6) / 1e6)),
  });
  return (
    <Field label={label} hint={hint} error={draft.problem?.message}>
      {(ids) => (
        <div className="input">
          <input
            id={ids.control}
            aria-describedby={ids.described}
            aria-invalid={draft.problem ? true : undefined}
            inputMode="decimal"
            autoComplete="off"
            data-settled={draft.settled}
            disabled={props.disabled}
            // A field opened by clicking a dimension is where the person already looks.
            // biome-ignore lint/a11y/noAutofocus: see above
            autoFocus={props.autoFocus}
            {...draft.input}
            onFocus={(e) => e.currentTarget.select()}
          />
          {unit ? <span className="input-unit">{unit}</span> : null}
        </div>
      )}
    </Field>
  );
}
