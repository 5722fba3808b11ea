import { Palette, SquareDashed, Sun } from 'lucide-react';
import { Choices } from '../control/list/Choices.tsx';
import { useEditor, useStore } from '../state/hooks.ts';
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
    <Choices
      className="switch"
      itemClass="btn"
      nameClass="switch-name"
      label={t('look.title')}
      value={look}
      choices={LOOKS.map(({ id, icon }) => ({ id, icon, name: t(`look.${id}`) }))}
      onChoose={(id) => store.setState({ look: id })}
    />
  );
}
