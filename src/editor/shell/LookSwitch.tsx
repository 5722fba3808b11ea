import { Palette, SquareDashed, Sun } from 'lucide-react';
import { ToggleGroup } from 'radix-ui';
import { useEditor, useStore } from '../state/hooks.ts';
import type { Look } from '../state/store.ts';
import { useWords } from '../words/t.ts';

const LOOKS = [
  { id: 'color', icon: Palette },
  { id: 'tape', icon: SquareDashed },
  { id: 'shadow', icon: Sun },
] as const;

/** How the face is drawn: in color, as masking tape, or with the shadows of a light. */
export function LookSwitch() {
  const t = useWords();
  const store = useStore();
  const look = useEditor((s) => s.look);
  return (
    <ToggleGroup.Root
      type="single"
      className="switch"
      value={look}
      aria-label={t('look.title')}
      onValueChange={(value) => {
        if (value) store.setState({ look: value as Look });
      }}
    >
      {LOOKS.map(({ id, icon: Icon }) => (
        <ToggleGroup.Item
          key={id}
          value={id}
          className="btn"
          title={t(`look.${id}`)}
          aria-label={t(`look.${id}`)}
        >
          <Icon aria-hidden="true" />
          <span className="switch-name">{t(`look.${id}`)}</span>
        </ToggleGroup.Item>
      ))}
    </ToggleGroup.Root>
  );
}
