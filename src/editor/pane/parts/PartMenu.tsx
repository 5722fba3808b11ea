import { MenuAt, MenuItem, MenuLine } from '../../control/Menu.tsx';
import { focusName } from '../../control/regions.ts';
import { mirrorSelection } from '../../edit/arrangeSelection.ts';
import { restingOn } from '../../edit/lay.ts';
import { itemsOf } from '../../edit/movable.ts';
import { selectionName } from '../../edit/selection.ts';
import { select } from '../../state/commit.ts';
import { useEditor, useSettledDesign, useStore } from '../../state/hooks.ts';
import type { PartMenuAt } from '../../state/store.ts';
import { useWords } from '../../words/t.ts';
import { usePartActs } from '../part/PartActs.tsx';

/** The menu of a part, where it was asked for: by the right button, a finger that rests, or the key of menus. */
export function PartMenu() {
  const at = useEditor((s) => s.partMenu);
  return at ? <Board {...at} /> : null;
}

function Board({ at, opened, too }: PartMenuAt) {
  const t = useWords();
  const store = useStore();
  const design = useSettledDesign();
  const selection = useEditor((s) => s.edit.selection);
  const acts = usePartActs();
  const ids = itemsOf(design, selection);
  const stack = [...restingOn(design, new Set(ids))];
  const carries = stack.length > ids.length;
  const parts = stack.filter((id) => design.parts.some((part) => part.id === id));
  return (
    <MenuAt
      label={selectionName(design, selection)}
      at={at}
      opened={opened}
      onClose={() => store.setState({ partMenu: null })}
    >
      {too ? (
        <MenuItem label={t('act.selectToo')} onSelect={() => select(store, [...too, ...selection])} />
      ) : null}
      {selection.length === 1 ? <MenuItem label={t('act.rename')} onSelect={() => focusName(store)} /> : null}
      {carries ? <MenuItem label={t('act.withOnIt')} onSelect={() => select(store, stack)} /> : null}
      {(['x', 'y'] as const).map((axis) => (
        <MenuItem
          key={axis}
          label={t(carries ? `act.mirrorWith.${axis}` : `mirror.${axis}`)}
          disabled={parts.length === 0}
          onSelect={() => mirrorSelection(store, axis, parts)}
        />
      ))}
      <MenuLine />
      {acts.map(({ words, act, off }) => (
        <MenuItem key={words} label={t(words)} disabled={off} onSelect={() => void act(store)} />
      ))}
    </MenuAt>
  );
}
