import { type ReactNode, useId, useLayoutEffect, useRef } from 'react';
import { comeIntoSight } from './sight.ts';
import { Typeset } from './Typeset.tsx';

export interface FieldIds {
  readonly control: string;
  readonly described: string | undefined;
}

interface FieldProps {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly error?: ReactNode;
  /** The label is read out but not shown, where its place says it already. */
  readonly quiet?: boolean | undefined;
  readonly children: (ids: FieldIds) => ReactNode;
}

/** Label, control, hint and error of one field, tied together for screen readers. */
export function Field({ label, hint, error, quiet, children }: FieldProps) {
  const id = useId();
  const hintId = `${id}-hint`;
  const errorId = `${id}-error`;
  const whole = useRef<HTMLDivElement>(null);
  const wrong = Boolean(error);
  // What is said of the field in hand comes into sight with it.
  useLayoutEffect(() => {
    if (wrong && whole.current?.contains(document.activeElement)) comeIntoSight(document.activeElement);
  }, [wrong]);
  const described = [hint ? hintId : '', error ? errorId : ''].filter(Boolean).join(' ') || undefined;
  return (
    <div ref={whole} className={wrong ? 'field wrong' : 'field'}>
      <label htmlFor={id} className={quiet ? 'hidden-text' : 'field-label'}>
        {label}
      </label>
      {children({ control: id, described })}
      {hint ? (
        <p id={hintId} className="field-hint">
          <Typeset text={hint} />
        </p>
      ) : null}
      <div id={errorId} className="field-error" role={error ? 'alert' : undefined}>
        {error}
      </div>
    </div>
  );
}
