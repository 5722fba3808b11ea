import { Plus } from 'lucide-react';
import { DEFAULT_SIZE } from '../../action/create.ts';
import { Menu, MenuItem } from '../../shell/Menu.tsx';
import { faceFor } from '../../state/derive.ts';
import { useStore } from '../../state/hooks.ts';
import { finishDraw } from '../../tool/draw.ts';
import { DRAWN_KINDS } from '../../tool/tools.ts';
import { useWords } from '../../words/t.ts';

/** Adds a part without the drawing: in the middle of the face, to be measured in its fields. */
export function NewPart() {
  const t = useWords();
  const store = useStore();
  return (
    <Menu label={t('parts.add')} icon={Plus}>
      {DRAWN_KINDS.map((kind) => (
        <MenuItem
          key={kind}
          label={t(`kind.${kind}`)}
          onSelect={() => {
            const face = faceFor(store.getState().edit.design.bed);
            const { w, h } = DEFAULT_SIZE[kind];
            finishDraw(store, kind, { x: (face.width - w) / 2, y: (face.height - h) / 2, w, h }, null);
            store.setState({ tab: 'part' });
          }}
        />
      ))}
    </Menu>
  );
}
