import type { LucideIcon } from 'lucide-react';
import {
  createContext,
  type KeyboardEvent,
  type ReactNode,
  type RefObject,
  useCallback,
  useContext,
  useEffect,
  useId,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import { createPortal } from 'react-dom';
import { Button } from './Button.tsx';
import { Caution, type Hazard } from './Caution.tsx';
import { rove, stopsOf } from './list/rove.ts';
import { placeByName, Typed } from './list/typed.ts';

interface MenuProps {
  readonly label: string;
  readonly icon: LucideIcon;
  /** Keys that open it from anywhere on the bench, as ARIA writes them. */
  readonly keys?: string;
  /** What can go wrong with what it offers, told above its entries. */
  readonly caution?: Hazard;
  readonly children: ReactNode;
}

/** By what it was opened: keys begin at its first entry. */
type Opened = 'keys' | 'pointer';

/** Closes the menu and does what was chosen. */
const Choosing = createContext<(act: () => void) => void>(() => {});

const OPENING: readonly string[] = ['Enter', ' ', 'ArrowDown'];

/** A menu behind a button. Every key counts where the one before it led, however fast they come. */
export function Menu({ label, icon: Icon, keys, caution, children }: MenuProps) {
  const id = useId();
  const button = useRef<HTMLButtonElement>(null);
  const [opened, open] = useState<Opened | null>(null);
  const goBack = () => {
    open(null);
    button.current?.focus({ preventScroll: true });
  };
  const stand = useCallback((board: HTMLElement) => {
    if (button.current) standBelow(board, button.current);
  }, []);
  return (
    <>
      <Button
        icon={Icon}
        look="bare"
        ref={button}
        tip={label}
        aria-haspopup="menu"
        aria-keyshortcuts={keys}
        aria-expanded={opened !== null}
        aria-controls={opened ? id : undefined}
        onClick={(e) => open(opened ? null : e.detail === 0 ? 'keys' : 'pointer')}
        onKeyDown={(e) => {
          if (!OPENING.includes(e.key) || e.altKey || e.ctrlKey || e.metaKey) return;
          e.preventDefault();
          open('keys');
        }}
      >
        <span className="menu-name">{label}</span>
      </Button>
      {opened
        ? createPortal(
            <Choosing
              value={(act) => {
                goBack();
                act();
              }}
            >
              <Board
                id={id}
                label={label}
                opened={opened}
                owner={button}
                caution={caution}
                stand={stand}
                onBack={goBack}
                onLeave={open}
              >
                {children}
              </Board>
            </Choosing>,
            document.body,
          )
        : null}
    </>
  );
}

interface MenuAtProps {
  readonly label: string;
  /** Where on the window it was asked for. */
  readonly at: { readonly x: number; readonly y: number };
  readonly opened: Opened;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/** A menu at a place, of what stands there; closed, the focus goes back to where it was. */
export function MenuAt({ label, at, opened, onClose, children }: MenuAtProps) {
  const [before] = useState(() => document.activeElement);
  const { x, y } = at;
  const stand = useCallback((board: HTMLElement) => standAt(board, x, y), [x, y]);
  const goBack = () => {
    onClose();
    if (before instanceof HTMLElement) before.focus({ preventScroll: true });
  };
  return createPortal(
    <Choosing
      value={(act) => {
        goBack();
        act();
      }}
    >
      <Board label={label} opened={opened} stand={stand} onBack={goBack} onLeave={onClose}>
        <div className="menu-label" aria-hidden="true">
          {label}
        </div>
        {children}
      </Board>
    </Choosing>,
    document.body,
  );
}

interface BoardProps {
  readonly id?: string;
  readonly label: string;
  readonly opened: Opened;
  /** The button that it belongs to, if it has one: what is done there is not done elsewhere. */
  readonly owner?: RefObject<HTMLButtonElement | null>;
  readonly caution?: Hazard | undefined;
  /** Puts it where it stands; the same function while it stands there. */
  readonly stand: (board: HTMLElement) => void;
  /** Closed by a key: what had the focus has it again. */
  readonly onBack: () => void;
  /** Closed because something else was turned to. */
  readonly onLeave: (opened: null) => void;
  readonly children: ReactNode;
}

function Board({ id, label, opened, owner, caution, stand, onBack, onLeave, children }: BoardProps) {
  const board = useRef<HTMLDivElement>(null);
  const told = useId();
  const [typed] = useState(() => new Typed());

  useLayoutEffect(() => {
    const put = () => {
      if (board.current) stand(board.current);
    };
    put();
    window.addEventListener('resize', put);
    return () => window.removeEventListener('resize', put);
  }, [stand]);

  useLayoutEffect(() => {
    const first = opened === 'keys' && board.current ? stopsOf(board.current)[0] : null;
    (first ?? board.current)?.focus({ preventScroll: true });
  }, [opened]);

  useEffect(() => {
    const away = (e: PointerEvent) => {
      const on = e.target as Node;
      if (!board.current?.contains(on) && !owner?.current?.contains(on)) onLeave(null);
    };
    document.addEventListener('pointerdown', away, true);
    return () => document.removeEventListener('pointerdown', away, true);
  }, [owner, onLeave]);

  const onKeyDown = (e: KeyboardEvent<HTMLDivElement>) => {
    // The menu has these keys for itself; those with Control belong to the bench.
    if (e.altKey || e.ctrlKey || e.metaKey) return;
    e.stopPropagation();
    const list = e.currentTarget;
    // The Tab key goes on from the button.
    if (e.key === 'Tab') return onBack();
    if (rove(e, list, 'down')) return;
    const spaceInName = e.key === ' ' && typed.runsAt(e.timeStamp);
    if (e.key === 'Escape') onBack();
    else if (e.key === 'Enter' || (e.key === ' ' && !spaceInName)) {
      // A key that is held down opens the menu, but chooses nothing from it.
      if (!e.repeat)
        stopsOf(list)
          .find((stop) => stop === document.activeElement)
          ?.click();
    } else if (e.key.length === 1) {
      const stops = stopsOf(list);
      const now = stops.findIndex((stop) => stop === document.activeElement);
      const names = stops.map((stop) => stop.dataset.stop ?? '');
      const at = placeByName(typed.add(e.key, e.timeStamp), names, now);
      if (at !== null) stops[at]?.focus();
    } else return;
    e.preventDefault();
  };

  return (
    <div
      ref={board}
      id={id}
      role="menu"
      className="menu"
      aria-label={label}
      aria-describedby={caution ? told : undefined}
      tabIndex={-1}
      onKeyDown={onKeyDown}
      // A button is pressed when the space bar is let go; here it was when it went down.
      onKeyUp={(e) => {
        if (e.key === ' ') e.preventDefault();
      }}
      onBlur={(e) => {
        const to = e.relatedTarget;
        if (to && !e.currentTarget.contains(to) && to !== owner?.current) onLeave(null);
      }}
      onPointerMove={(e) => {
        if (e.pointerType !== 'mouse') return;
        const on = stopsOf(e.currentTarget).find((stop) => stop.contains(e.target as Node));
        (on ?? e.currentTarget).focus({ preventScroll: true });
      }}
    >
      {caution ? <Caution of={caution} id={told} /> : null}
      {children}
    </div>
  );
}

/** Pixels between a menu and its button, and between it and the edges of the window. */
const GAP = 6;
const EDGE = 8;

/** Below the button, ending where it ends; above it where there is more room; within the window in any case. */
function standBelow(board: HTMLElement, button: HTMLElement): void {
  const at = button.getBoundingClientRect();
  const below = window.innerHeight - at.bottom - GAP - EDGE;
  const above = at.top - GAP - EDGE;
  const up = board.scrollHeight > below && above > below;
  const left = Math.min(at.right, window.innerWidth - EDGE) - board.offsetWidth;
  Object.assign(board.style, {
    left: `${Math.max(EDGE, left)}px`,
    top: up ? 'auto' : `${at.bottom + GAP}px`,
    bottom: up ? `${window.innerHeight - at.top + GAP}px` : 'auto',
    maxHeight: `${up ? above : below}px`,
  });
}

/** With its corner at a place, within the window. */
function standAt(board: HTMLElement, x: number, y: number): void {
  const left = Math.min(x, window.innerWidth - EDGE - board.offsetWidth);
  const top = Math.min(y, window.innerHeight - EDGE - board.scrollHeight);
  Object.assign(board.style, {
    left: `${Math.max(EDGE, left)}px`,
    top: `${Math.max(EDGE, top)}px`,
    maxHeight: `${window.innerHeight - 2 * EDGE}px`,
  });
}

interface EntryProps {
  readonly role: 'menuitem' | 'menuitemradio' | 'menuitemcheckbox';
  readonly label: string;
  /** Of an entry that can be on: whether it is, and the sign of it. */
  readonly checked?: boolean;
  readonly mark?: string;
  readonly hint?: string | undefined;
  readonly disabled?: boolean;
  readonly onChoose: (byKeys: boolean) => void;
}

/** One entry of a menu; the menu is closed before what it does is done. */
function Entry({ role, label, checked, mark, hint, disabled, onChoose }: EntryProps) {
  const choose = useContext(Choosing);
  return (
    // biome-ignore lint/a11y/useAriaPropsSupportedByRole: only entries whose role can be checked are
    <button
      type="button"
      role={role}
      className="menu-item"
      data-stop={label}
      tabIndex={-1}
      aria-checked={checked}
      aria-disabled={disabled}
      onClick={(e) => {
        if (!disabled) choose(() => onChoose(e.detail === 0));
      }}
    >
      {checked === undefined ? null : (
        <span className="menu-dot" aria-hidden="true">
          {checked ? mark : null}
        </span>
      )}
      <span>{label}</span>
      {hint ? <span className="menu-hint">{hint}</span> : null}
    </button>
  );
}

interface MenuItemProps {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly disabled?: boolean | undefined;
  /** What it does, and whether it was chosen by keys. */
  readonly onSelect: (byKeys: boolean) => void;
}

export const MenuItem = ({ label, hint, disabled = false, onSelect }: MenuItemProps) => (
  <Entry role="menuitem" label={label} hint={hint} disabled={disabled} onChoose={onSelect} />
);

interface MenuChoicesProps<V extends string> {
  readonly label: string;
  readonly value: V;
  readonly choices: readonly { readonly value: V; readonly label: string }[];
  readonly onChoose: (value: V) => void;
}

export function MenuChoices<V extends string>({ label, value, choices, onChoose }: MenuChoicesProps<V>) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a group of a menu
    <div role="group" aria-label={label}>
      <div className="menu-label" aria-hidden="true">
        {label}
      </div>
      {choices.map((c) => (
        <Entry
          key={c.value}
          role="menuitemradio"
          label={c.label}
          checked={c.value === value}
          mark="•"
          onChoose={() => onChoose(c.value)}
        />
      ))}
    </div>
  );
}

interface MenuSwitchProps {
  readonly label: string;
  readonly on: boolean;
  readonly onTurn: (on: boolean) => void;
}

export const MenuSwitch = ({ label, on, onTurn }: MenuSwitchProps) => (
  <Entry role="menuitemcheckbox" label={label} checked={on} mark="✓" onChoose={() => onTurn(!on)} />
);

export const MenuLine = () => <hr className="menu-line" />;
