import type { LucideIcon } from 'lucide-react';
import { useRef } from 'react';
import { useRoving } from './rove.ts';

interface ChoicesProps<V extends string> {
  readonly className: string;
  /** Of each button. */
  readonly itemClass: string;
  readonly nameClass?: string;
  readonly label: string;
  readonly value: V;
  readonly choices: readonly {
    readonly id: V;
    readonly icon?: LucideIcon;
    /** In full; shown where nothing shorter is given. */
    readonly name: string;
    readonly short?: string;
    readonly lang?: string;
  }[];
  /** What was pressed, the one that is chosen already too. */
  readonly onChoose: (id: V) => void;
}

/** Buttons in a row of which one is down. Arrows walk it, Enter presses. */
export function Choices<V extends string>(props: ChoicesProps<V>) {
  const { className, itemClass, nameClass, label, value, choices, onChoose } = props;
  const list = useRef<HTMLDivElement>(null);
  const roving = useRoving(list, 'both');
  return (
    <div ref={list} role="toolbar" className={className} aria-label={label} {...roving}>
      {choices.map(({ id, icon: Icon, name, short, lang }) => (
        // biome-ignore lint/a11y/useSemanticElements: a button that is down, walked by arrows without being pressed
        <button
          key={id}
          type="button"
          role="radio"
          data-stop=""
          data-state={id === value ? 'on' : 'off'}
          aria-checked={id === value}
          lang={lang}
          className={itemClass}
          aria-label={Icon ? name : undefined}
          title={Icon ? name : undefined}
          onClick={() => onChoose(id)}
        >
          {Icon ? <Icon aria-hidden="true" /> : null}
          {nameClass ? <span className={nameClass}>{short ?? name}</span> : name}
        </button>
      ))}
    </div>
  );
}
