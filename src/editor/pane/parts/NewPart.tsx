import { Plus } from 'lucide-react';
import { Menu, MenuItem } from '../../control/Menu.tsx';
import { FIRST_MEASURE, focusPane } from '../../control/regions.ts';
import { placeInMiddle } from '../../gesture/draw.ts';
import { useStore } from '../../state/hooks.ts';
import { DRAWN_KINDS } from '../../state/tools.ts';
import { useWords } from '../../words/t.ts';

/** Adds a part without the drawing: in the middle of the face, to be measured in its fields, where the focus goes. */
export function NewPart() {
  const t = useWords();
  const store = useStore();
  return (
    <Menu label={t('parts.add')} icon={Plus} keys="Insert Control+I Meta+I">
      {DRAWN_KINDS.map((kind) => (
        <MenuItem
          key={kind}
          label={t(`kind.${kind}`)}
          onSelect={(byKeys) => {
            placeInMiddle(store, kind);
            store.setState({ tab: 'part' });
            // On a phone a field in focus would bring up its keyboard over the face.
            focusPane(store, byKeys ? FIRST_MEASURE : undefined);
          }}
        />
      ))}
    </Menu>
  );
}
