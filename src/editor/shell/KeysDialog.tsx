import { Dialog } from '../control/Dialog.tsx';
import { Section } from '../control/Section.tsx';
import { useStore } from '../state/hooks.ts';
import '../words/deskWords.ts';
import { useWords, type WordKey } from '../words/t.ts';

/** What is pressed, and what it does; `+` joins keys that are held together, a comma parts those that do alike. */
const KEYS: readonly (readonly [keys: WordKey, does: WordKey])[] = [
  ['keys.press.region', 'keys.region'],
  ['keys.press.steps', 'keys.steps'],
  ['keys.press.add', 'keys.add'],
  ['keys.press.center', 'keys.center'],
  ['keys.press.print', 'keys.print'],
  ['keys.press.tree', 'keys.tree'],
  ['keys.press.enter', 'keys.enter'],
  ['keys.press.arrows', 'keys.arrows'],
  ['keys.press.delete', 'keys.delete'],
  ['keys.press.undo', 'keys.undo'],
  ['keys.press.copy', 'keys.copy'],
  ['keys.press.group', 'keys.group'],
  ['keys.press.zoom', 'keys.zoom'],
  ['keys.press.readings', 'keys.readings'],
  ['keys.press.escape', 'keys.escape'],
];
const MOUSE: readonly (readonly [WordKey, WordKey])[] = [
  ['keys.press.alt', 'keys.alt'],
  ['keys.press.shift', 'keys.shift'],
  ['keys.press.frame', 'keys.frame'],
  ['keys.press.digits', 'keys.digits'],
  ['keys.press.double', 'keys.double'],
  ['keys.press.right', 'keys.rest'],
  ['keys.press.wheel', 'keys.wheel'],
];
const FINGERS: readonly (readonly [WordKey, WordKey])[] = [
  ['keys.press.drag', 'keys.drag'],
  ['keys.press.rest', 'keys.rest'],
  ['keys.press.taps', 'keys.double'],
  ['keys.press.pinch', 'keys.pinch'],
];

/** What keys, mouse and fingers do, on one board. */
export function KeysDialog() {
  const t = useWords();
  const store = useStore();
  const list = (title: WordKey, lines: typeof KEYS) => (
    <Section title={title}>
      <dl className="keys">
        {lines.map(([keys, does]) => (
          <div key={keys}>
            <dt>{t(keys)}</dt>
            <dd>{t(does)}</dd>
          </div>
        ))}
      </dl>
    </Section>
  );
  return (
    <Dialog title={t('keys.title')} onClose={() => store.setState({ keysShown: false })}>
      {list('keys.byKey', KEYS)}
      {list('keys.byMouse', MOUSE)}
      {list('keys.byFinger', FINGERS)}
    </Dialog>
  );
}
