import { type ChangeEvent, type KeyboardEvent, useRef, useState } from 'react';
import { flushSync } from 'react-dom';

/** What came of reading a draft: a value, or why not. */
export type Read<V, P> = { readonly ok: true; readonly value: V } | ({ readonly ok: false } & P);

/** What every field takes that is typed into. */
export interface TypedProps<V> {
  readonly label: string;
  readonly value: V;
  readonly onCommit: (value: V) => void;
  readonly hint?: string | undefined;
  readonly disabled?: boolean | undefined;
  readonly autoFocus?: boolean | undefined;
  /** Called after Enter or Escape, for fields that go away then. */
  readonly onDone?: (() => void) | undefined;
}

interface DraftOptions<V, P> {
  readonly shown: string;
  readonly read: (text: string) => Read<V, P>;
  readonly onCommit: (value: V) => void;
  readonly onStep?: ((direction: 1 | -1, large: boolean) => void) | undefined;
  readonly onDone?: (() => void) | undefined;
}

/**
 * A text field that is read when it is left or on Enter. What cannot be read stays as it was typed, with
 * its problem; Escape brings the old value back, selected.
 */
export function useDraft<V, P>({ shown, read, onCommit, onStep, onDone }: DraftOptions<V, P>) {
  const [draft, setDraft] = useState<string | null>(null);
  const [problem, setProblem] = useState<({ ok: false } & P) | null>(null);
  const reverting = useRef(false);

  const settle = (): boolean => {
    if (draft === null || draft.trim() === shown.trim()) {
      setDraft(null);
      setProblem(null);
      return true;
    }
    const result = read(draft);
    if (!result.ok) {
      setProblem(result);
      return false;
    }
    setDraft(null);
    setProblem(null);
    onCommit(result.value);
    return true;
  };

  return {
    draft,
    problem,
    /** Of an input with nothing typed that was not taken yet: undoing there undoes the last step, as elsewhere. */
    settled: draft === null ? true : undefined,
    /** What the input takes. */
    input: {
      value: draft ?? shown,
      onChange: (e: ChangeEvent<HTMLInputElement>) => {
        setDraft(e.currentTarget.value);
        setProblem(null);
      },
      onBlur: () => {
        if (reverting.current) reverting.current = false;
        else settle();
      },
      onKeyDown: (e: KeyboardEvent<HTMLInputElement>) => {
        if (e.key === 'Enter') {
          e.preventDefault();
          if (settle()) {
            e.currentTarget.select();
            onDone?.();
          }
        } else if (e.key === 'Escape') {
          e.stopPropagation();
          flushSync(() => {
            setDraft(null);
            setProblem(null);
          });
          e.currentTarget.select();
          if (onDone) {
            reverting.current = true;
            onDone();
          }
        } else if (onStep && (e.key === 'ArrowUp' || e.key === 'ArrowDown')) {
          e.preventDefault();
          if (settle()) onStep(e.key === 'ArrowUp' ? 1 : -1, e.shiftKey);
        }
      },
    },
  };
}
