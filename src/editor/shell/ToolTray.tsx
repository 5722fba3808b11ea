import { Hand, MousePointer2, Spline } from 'lucide-react';
import { KIND_ICONS } from '../control/kindIcons.ts';
import { Choices } from '../control/list/Choices.tsx';
import { useEditor, useStore } from '../state/hooks.ts';
import { type BuiltTool, DRAWN_KINDS, type OwnTool, type ToolId } from '../state/tools.ts';
import { firstOf, useWords } from '../words/t.ts';

const TOOLS: readonly {
  id: Exclude<ToolId, BuiltTool | OwnTool | 'opening'>;
  icon: (typeof KIND_ICONS)['strip'];
}[] = [
  { id: 'select', icon: MousePointer2 },
  { id: 'hand', icon: Hand },
  { id: 'path', icon: Spline },
  ...DRAWN_KINDS.map((id) => ({ id, icon: KIND_ICONS[id] })),
];

/** What the hand does on the drawing: select, push, or draw a new part. */
export function ToolTray() {
  const t = useWords();
  const store = useStore();
  const tool = useEditor((s) => s.tool);
  return (
    <div className="tray tools">
      <Choices
        className="tray-group"
        itemClass="btn bare tool"
        nameClass="tool-name"
        label={t('tools.title')}
        value={tool}
        choices={TOOLS.map(({ id, icon }) => ({
          id,
          icon,
          name: t(`tool.${id}`),
          short: t(firstOf(`tool.short.${id}`, `kind.${id}`)),
        }))}
        // A tool that is pressed again is put down.
        onChoose={(id) => store.setState({ tool: id === tool ? 'select' : id })}
      />
    </div>
  );
}
