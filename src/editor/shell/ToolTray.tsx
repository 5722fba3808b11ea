import { Hand, MousePointer2, Spline } from 'lucide-react';
import { Toolbar } from 'radix-ui';
import { useEditor, useStore } from '../state/hooks.ts';
import { DRAWN_KINDS, type ToolId } from '../tool/tools.ts';
import { useWords } from '../words/t.ts';
import { KIND_ICONS } from './kindIcons.ts';

const TOOLS: readonly { id: ToolId; icon: (typeof KIND_ICONS)['strip'] }[] = [
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
    <Toolbar.Root className="tray tools" aria-label={t('tools.title')}>
      <Toolbar.ToggleGroup
        type="single"
        value={tool}
        className="tray-group"
        onValueChange={(value) => store.setState({ tool: (value || 'select') as ToolId })}
      >
        {TOOLS.map(({ id, icon: Icon }) => (
          <Toolbar.ToggleItem
            key={id}
            value={id}
            className="btn bare tool"
            aria-label={t(`tool.${id}`)}
            title={t(`tool.${id}`)}
          >
            <Icon aria-hidden="true" />
            <span className="tool-name">{t(`tool.short.${id}`)}</span>
          </Toolbar.ToggleItem>
        ))}
      </Toolbar.ToggleGroup>
    </Toolbar.Root>
  );
}
