import type { LucideIcon } from 'lucide-react';
import { DropdownMenu } from 'radix-ui';
import type { ReactNode } from 'react';

interface MenuProps {
  readonly label: string;
  readonly icon: LucideIcon;
  readonly children: ReactNode;
  /** Where the focus goes after a choice; to the menu's own button unless this returns true. */
  readonly onClosed?: (() => boolean) | undefined;
}

/** A menu behind a button of the title block. */
export function Menu({ label, icon: Icon, children, onClosed }: MenuProps) {
  return (
    <DropdownMenu.Root modal={false}>
      <DropdownMenu.Trigger className="btn bare" title={label} aria-label={label}>
        <Icon aria-hidden="true" />
        <span className="menu-name">{label}</span>
      </DropdownMenu.Trigger>
      <DropdownMenu.Portal>
        <DropdownMenu.Content
          className="menu"
          align="end"
          sideOffset={6}
          collisionPadding={8}
          onCloseAutoFocus={(e) => {
            if (onClosed?.()) e.preventDefault();
          }}
        >
          {children}
        </DropdownMenu.Content>
      </DropdownMenu.Portal>
    </DropdownMenu.Root>
  );
}

interface MenuItemProps {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly disabled?: boolean | undefined;
  readonly onSelect: () => void;
}

export function MenuItem({ label, hint, disabled, onSelect }: MenuItemProps) {
  return (
    <DropdownMenu.Item className="menu-item" disabled={disabled ?? false} onSelect={onSelect}>
      <span>{label}</span>
      {hint ? <span className="menu-hint">{hint}</span> : null}
    </DropdownMenu.Item>
  );
}

interface MenuChoicesProps<V extends string> {
  readonly label: string;
  readonly value: V;
  readonly choices: readonly { readonly value: V; readonly label: string }[];
  readonly onChoose: (value: V) => void;
}

export function MenuChoices<V extends string>({ label, value, choices, onChoose }: MenuChoicesProps<V>) {
  return (
    <DropdownMenu.RadioGroup value={value} onValueChange={(v) => onChoose(v as V)}>
      <DropdownMenu.Label className="menu-label">{label}</DropdownMenu.Label>
      {choices.map((c) => (
        <DropdownMenu.RadioItem key={c.value} value={c.value} className="menu-item">
          <span className="menu-dot" aria-hidden="true">
            <DropdownMenu.ItemIndicator>•</DropdownMenu.ItemIndicator>
          </span>
          <span>{c.label}</span>
        </DropdownMenu.RadioItem>
      ))}
    </DropdownMenu.RadioGroup>
  );
}

export const MenuLine = () => <DropdownMenu.Separator className="menu-line" />;
