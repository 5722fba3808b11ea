import { useLayoutEffect, useRef } from 'react';
import { useWords } from '../../words/t.ts';
import type { TreeRow } from './rows.ts';

/** The name of a row while it is typed: Enter or leaving it takes it, Escape leaves it as it was. */
export function NameInput({ row, onDone }: { row: TreeRow; onDone: (name: string | null) => void }) {
  const t = useWords();
  const input = useRef<HTMLInputElement>(null);
  useLayoutEffect(() => input.current?.select(), []);
  const ended = useRef(false);
  const end = (name: string | null) => {
    if (ended.current) return;
    ended.current = true;
    onDone(name);
  };
  const endByKey = (name: string | null) => {
    end(name);
    input.current?.closest<HTMLElement>('[role=treeitem]')?.focus();
  };
  return (
    <input
      ref={input}
      className="tree-input"
      aria-label={t('part.name')}
      defaultValue={row.name}
      maxLength={200}
      // Asked for by a double click on the very name.
      // biome-ignore lint/a11y/noAutofocus: see above
      autoFocus
      onClick={(e) => e.stopPropagation()}
      onDoubleClick={(e) => e.stopPropagation()}
      onBlur={(e) => end(e.currentTarget.value)}
      onKeyDown={(e) => {
        // The tree has keys of its own for letters and arrows.
        e.stopPropagation();
        if (e.key === 'Enter') endByKey(e.currentTarget.value);
        if (e.key === 'Escape') endByKey(null);
      }}
    />
  );
}
