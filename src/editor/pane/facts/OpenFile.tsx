import { FolderOpen } from 'lucide-react';
import { type ReactNode, useRef, useState } from 'react';
import { Button } from '../../control/Button.tsx';
import { useWords, type WordKey } from '../../words/t.ts';

interface OpenFileProps {
  readonly words: WordKey;
  readonly hint: WordKey;
  /** As an input of files takes it. */
  readonly accept: string;
  /** Takes what is in a file; in words, why it cannot be used when it cannot. */
  readonly onOpen: (file: File) => Promise<string | null>;
  /** A button before it. */
  readonly children?: ReactNode;
}

/** A button that opens a file of the person's own, and what is wrong with it. */
export function OpenFile({ words, hint, accept, onOpen, children }: OpenFileProps) {
  const t = useWords();
  const file = useRef<HTMLInputElement>(null);
  const [reading, setReading] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const open = async (chosen: File) => {
    setReading(true);
    setProblem(null);
    const found = await onOpen(chosen);
    setReading(false);
    setProblem(found);
  };
  return (
    <>
      <div className="btn-row spaced">
        {children}
        <Button icon={FolderOpen} disabled={reading} onClick={() => file.current?.click()}>
          {t(reading ? 'file.reading' : words)}
        </Button>
        <input
          ref={file}
          className="hidden-text"
          type="file"
          accept={accept}
          tabIndex={-1}
          aria-label={t(words)}
          onChange={(e) => {
            const chosen = e.currentTarget.files?.[0];
            e.currentTarget.value = '';
            if (chosen) void open(chosen);
          }}
        />
      </div>
      <p className="field-hint">{t(hint)}</p>
      {problem ? (
        <p className="field-error" role="alert">
          {problem}
        </p>
      ) : null}
    </>
  );
}
