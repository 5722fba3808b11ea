import { useId } from 'react';

interface SwitchFieldProps {
  readonly label: string;
  readonly value: boolean;
  readonly onCommit: (value: boolean) => void;
  readonly hint?: string | undefined;
  readonly disabled?: boolean | undefined;
}

/** Yes or no. */
export function SwitchField({ label, value, onCommit, hint, disabled }: SwitchFieldProps) {
  const id = useId();
  return (
    <div className="field check">
      <input
        id={id}
        type="checkbox"
        checked={value}
        disabled={disabled}
        aria-describedby={hint ? `${id}-hint` : undefined}
        onChange={(e) => onCommit(e.currentTarget.checked)}
      />
      <label htmlFor={id}>{label}</label>
      {hint ? (
        <p id={`${id}-hint`} className="field-hint">
          {hint}
        </p>
      ) : null}
    </div>
  );
}
