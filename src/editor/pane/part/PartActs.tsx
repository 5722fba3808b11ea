import { BookmarkPlus, Copy, Group, Lock, LockOpen, Trash2, Ungroup } from 'lucide-react';
import { memo } from 'react';
import { Button } from '../../control/Button.tsx';
import { itemsOf } from '../../edit/movable.ts';
import {
  duplicateSelection,
  groupSelection,
  removeSelection,
  toggleLock,
  ungroupSelection,
} from '../../edit/selection.ts';
import { useSelection, useSettledDesign, useStore } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { keepOwn } from '../facts/keepOwn.ts';

/** What can be done to the selection as a whole: its words, its sign, and whether it cannot be done just now. */
export function usePartActs() {
  const design = useSettledDesign();
  const selection = useSelection();
  const parts = itemsOf(design, selection).flatMap((id) => design.parts.find((p) => p.id === id) ?? []);
  const locked = parts.length > 0 && parts.every((p) => p.locked);
  const group = design.groups.some((g) => selection.includes(g.id));
  return [
    { words: 'act.duplicate', icon: Copy, act: duplicateSelection, off: false },
    {
      words: locked ? 'act.unlock' : 'act.lock',
      icon: locked ? LockOpen : Lock,
      act: toggleLock,
      off: parts.length === 0,
    },
    group
      ? ({ words: 'act.ungroup', icon: Ungroup, act: ungroupSelection, off: false } as const)
      : ({ words: 'act.group', icon: Group, act: groupSelection, off: parts.length < 2 } as const),
    { words: 'act.keepOwn', icon: BookmarkPlus, act: keepOwn, off: parts.length === 0 },
    { words: 'act.remove', icon: Trash2, act: removeSelection, off: parts.some((p) => p.locked) },
  ] as const;
}

/** What can be done to the selection as a whole. */
export const PartActs = memo(function PartActs() {
  const t = useWords();
  const store = useStore();
  const acts = usePartActs();
  return (
    <fieldset className="part-acts" aria-label={t('parts.acts')}>
      {acts.map(({ words, icon: Icon, act, off }) => (
        <Button
          key={words}
          icon={Icon}
          look="icon"
          disabled={off}
          tip={t(words)}
          onClick={() => void act(store)}
        />
      ))}
    </fieldset>
  );
});
