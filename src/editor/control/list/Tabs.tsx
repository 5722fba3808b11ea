import { type ReactNode, useId, useRef } from 'react';
import { useRoving } from './rove.ts';

export interface Tab<V extends string> {
  readonly id: V;
  readonly label: string;
  readonly content: () => ReactNode;
}

interface TabsProps<V extends string> {
  /** Classes of the whole, of the row of tabs, of a tab and of what it shows. */
  readonly classes: readonly [whole: string, list: string, tab: string, body: string];
  readonly label: string;
  readonly value: V;
  readonly tabs: readonly Tab<V>[];
  /** A tab was come to, by a key or by pressing it, the shown one too. */
  readonly onChoose: (id: V) => void;
  /** Puts the row of tabs among other things. */
  readonly head?: (list: ReactNode) => ReactNode;
}

/** Tabs of which one is shown; arrows go from one to the next and show it at once. */
export function Tabs<V extends string>({
  classes,
  label,
  value,
  tabs,
  onChoose,
  head = (list) => list,
}: TabsProps<V>) {
  const [whole, listClass, tabClass, body] = classes;
  const base = useId();
  const list = useRef<HTMLDivElement>(null);
  const roving = useRoving(list, 'across');
  const shown = tabs.find((tab) => tab.id === value) ?? tabs[0];
  return (
    <div className={whole}>
      {head(
        <div ref={list} role="tablist" className={listClass} aria-label={label} {...roving}>
          {tabs.map(({ id, label: name }) => (
            <button
              key={id}
              type="button"
              role="tab"
              data-stop=""
              id={`${base}${id}`}
              className={tabClass}
              data-state={id === shown?.id ? 'active' : 'inactive'}
              aria-selected={id === shown?.id}
              aria-controls={id === shown?.id ? `${base}body` : undefined}
              onClick={() => onChoose(id)}
              onFocus={() => {
                if (id !== shown?.id) onChoose(id);
              }}
            >
              {name}
            </button>
          ))}
        </div>,
      )}
      {shown ? (
        <div
          key={shown.id}
          role="tabpanel"
          id={`${base}body`}
          className={body}
          data-state="active"
          aria-labelledby={`${base}${shown.id}`}
          tabIndex={-1}
        >
          {shown.content()}
        </div>
      ) : null}
    </div>
  );
}
