import { Field } from './Field.tsx';
import { type Read, type TypedProps, useDraft } from './useDraft.ts';

interface TextFieldProps extends TypedProps<string> {
  /** What is wrong with the text that was taken. */
  readonly error?: string | undefined;
  readonly quiet?: boolean | undefined;
  readonly most?: number | undefined;
  /** What is selected, as places in the text without white at its beginning. */
  readonly onSelect?: ((from: number, to: number) => void) | undefined;
}

/** A line of text, taken when it is left. */
export function TextField({
  label,
  value,
  onCommit,
  hint,
  error,
  quiet,
  most = 200,
  disabled,
  ...rest
}: TextFieldProps) {
  const read = (text: string): Read<string, object> => ({ ok: true, value: text.trim() });
  const draft = useDraft<string, object>({ shown: value, read, onCommit, onDone: rest.onDone });
  return (
    <Field label={label} hint={hint} error={error} quiet={quiet}>
      {(ids) => (
        <div className="input">
          <input
            id={ids.control}
            aria-describedby={ids.described}
            aria-invalid={error ? true : undefined}
            maxLength={most}
            autoComplete="off"
            data-settled={draft.settled}
            disabled={disabled}
            // Fields opened in place on the canvas stand where the person already looks.
            // biome-ignore lint/a11y/noAutofocus: see above
            autoFocus={rest.autoFocus}
            {...draft.input}
            onSelect={({ currentTarget: { value: typed, selectionStart, selectionEnd } }) => {
              const white = typed.length - typed.trimStart().length;
              const place = (at: number | null) => Math.max(0, (at ?? 0) - white);
              rest.onSelect?.(place(selectionStart), place(selectionEnd));
            }}
          />
        </div>
      )}
    </Field>
  );
}
