import { Plus } from 'lucide-react';
import { useRef } from 'react';
import { Menu, MenuItem } from '../../shell/Menu.tsx';
import { focusPane } from '../../shell/regions.ts';
import { useStore } from '../../state/hooks.ts';
import { placeInMiddle } from '../../tool/draw.ts';
import { DRAWN_KINDS } from '../../tool/tools.ts';
import { useWords } from '../../words/t.ts';

/** Adds a part without the drawing: in the middle of the face, to be measured in its fields, where the focus goes. */
export function NewPart() {
  const t = useWords();
  const store = useStore();
  const added = useRef(false);
  return (
    <Menu
      label={t('parts.add')}
      icon={Plus}
      onClosed={() => {
        const leads = added.current;
        added.current = false;
        if (leads) focusPane(store);
        return leads;
      }}
    >
      {DRAWN_KINDS.map((kind) => (
        <MenuItem
          key={kind}
          label={t(`kind.${kind}`)}
          onSelect={() => {
            added.current = true;
            placeInMiddle(store, kind);
            store.setState({ tab: 'part' });
          }}
        />
      ))}
    </Menu>
  );
}
