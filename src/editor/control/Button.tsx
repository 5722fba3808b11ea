import type { LucideIcon } from 'lucide-react';
import type { ComponentProps } from 'react';

export interface ButtonProps extends Omit<ComponentProps<'button'>, 'type' | 'className' | 'aria-label'> {
  readonly icon?: LucideIcon;
  /** Classes beside that of every button. */
  readonly look?: string;
  /** What it is called where it shows no words, or too few. */
  readonly label?: string | undefined;
  /** The same, shown too while the mouse rests on it. */
  readonly tip?: string;
}

/** A button that does something at once: an icon, words or both. */
export function Button({ icon: Icon, look, tip, label = tip, children, ...rest }: ButtonProps) {
  return (
    <button type="button" className={look ? `btn ${look}` : 'btn'} aria-label={label} title={tip} {...rest}>
      {Icon ? <Icon aria-hidden="true" /> : null}
      {children}
    </button>
  );
}
