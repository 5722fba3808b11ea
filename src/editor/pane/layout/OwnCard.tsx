import { Ellipsis } from 'lucide-react';
import { useMemo, useState } from 'react';
import { type OwnAssembly, saveOwn } from '../../../design/assembly/own.ts';
import { newDesign } from '../../../design/defaults.ts';
import { applyEdits } from '../../../design/edit/edit.ts';
import { isPaint } from '../../../design/made.ts';
import { Menu, MenuItem } from '../../control/Menu.tsx';
import { TextField } from '../../control/TextField.tsx';
import { shownFrom } from '../../document/shown.ts';
import { createOwn } from '../../edit/own.ts';
import { fileName, saveBytes } from '../../kept/file.ts';
import { dropOwn, putOwn } from '../../kept/own.ts';
import { useStore } from '../../state/hooks.ts';
import { ownTool } from '../../state/tools.ts';
import { useWords } from '../../words/t.ts';
import { BuiltCard } from './BuiltCard.tsx';
import { BuiltPicture } from './BuiltPicture.tsx';

interface OwnCardProps {
  readonly id: string;
  readonly own: OwnAssembly;
}

/** A building part of the person's own, with what can be done to it. */
export function OwnCard({ id, own }: OwnCardProps) {
  const t = useWords();
  const store = useStore();
  const [named, name] = useState(false);
  const pictured = useMemo(() => picturedOf(own), [own]);
  return (
    <div className="own">
      <BuiltCard tool={ownTool(id)} name={own.name}>
        <BuiltPicture of={pictured} />
      </BuiltCard>
      {named ? (
        <TextField
          label={t('own.name')}
          quiet
          autoFocus
          value={own.name}
          onCommit={(next) => {
            if (next !== '') void putOwn(store, { ...own, name: next }, id);
          }}
          onDone={() => name(false)}
        />
      ) : (
        <Menu label={t('own.menu', { name: own.name })} icon={Ellipsis}>
          <MenuItem label={t('act.rename')} onSelect={() => name(true)} />
          <MenuItem
            label={t('own.save')}
            onSelect={() => {
              const bytes = new TextEncoder().encode(saveOwn(own));
              void saveBytes(`${fileName(own.name)}.json`, 'application/json', bytes);
            }}
          />
          <MenuItem label={t('own.drop')} onSelect={() => void dropOwn(store, id)} />
        </Menu>
      )}
    </div>
  );
}

/** As it was made, in its own colors. */
function picturedOf(own: OwnAssembly) {
  const bare = { ...newDesign(), finishes: own.finishes, stocks: own.stocks, pictures: own.pictures };
  const size = { w: own.across.size, h: own.up.size };
  const made = applyEdits(bare, createOwn(bare, own, { x: 0, y: 0, ...size }).edits);
  const parts = made.ok ? shownFrom(made.design).layout.parts : [];
  // The space that holds it is not seen.
  return {
    size,
    parts: parts.filter((part) => !isPaint(part) || part.finish !== null),
    finishes: own.finishes,
  };
}
