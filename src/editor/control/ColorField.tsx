import { useWords } from '../words/t.ts';
import { Field } from './Field.tsx';
import { type Read, useDraft } from './useDraft.ts';

interface ColorFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onCommit: (value: string) => void;
  readonly quiet?: boolean | undefined;
}

const HEX = /^#?([0-9a-f]{6}|[0-9a-f]{3})$/i;

/** A color by swatch or by its six digits. */
export function ColorField({ label, value, onCommit, quiet }: ColorFieldProps) {
  const t = useWords();
  const read = (text: string): Read<string, { message: string }> => {
    const digits = HEX.exec(text.trim())?.[1];
    if (!digits) return { ok: false, message: t('field.noColor') };
    const six = digits.length === 3 ? [...digits].map((d) => d + d).join('') : digits;
    return { ok: true, value: `#${six.toLowerCase()}` };
  };
  const draft = useDraft<string, { message: string }>({ shown: value, read, onCommit });
  return (
    <Field label={label} quiet={quiet} error={draft.problem?.message}>
      {(ids) => (
        <div className="input color">
          <input
            type="color"
            aria-label={t('field.swatch', { label })}
            value={value}
            onChange={(e) => onCommit(e.currentTarget.value)}
          />
          <input
            id={ids.control}
            aria-describedby={ids.described}
            aria-invalid={draft.problem ? true : undefined}
            autoComplete="off"
            spellCheck={false}
            {...draft.input}
          />
        </div>
      )}
    </Field>
  );
}
