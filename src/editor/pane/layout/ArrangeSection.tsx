import {
  AlignCenterHorizontal,
  AlignCenterVertical,
  AlignEndHorizontal,
  AlignEndVertical,
  AlignHorizontalDistributeCenter,
  AlignStartHorizontal,
  AlignStartVertical,
  AlignVerticalDistributeCenter,
  FlipHorizontal2,
  FlipVertical2,
} from 'lucide-react';
import { useState } from 'react';
import type { Axis, Edge } from '../../../design/schema.ts';
import { align } from '../../../layout/arrange/align.ts';
import type { Arranged, Arranging } from '../../../layout/arrange/arranged.ts';
import { distribute } from '../../../layout/arrange/distribute.ts';
import { mirrorCopy } from '../../../layout/arrange/mirror.ts';
import { arrangingOf, editsToArrange } from '../../action/arrange.ts';
import { itemsOf } from '../../action/movable.ts';
import { selectionName } from '../../action/selection.ts';
import { SwitchField } from '../../field/SwitchField.tsx';
import { useCommit, useSelection, useSettledDesign } from '../../state/hooks.ts';
import { useWords, type WordKey } from '../../words/t.ts';
import { CopyRow } from './CopyRow.tsx';
import { SharedRuleSection } from './SharedRuleSection.tsx';

const ALIGNS: readonly { axis: Axis; side: Edge['side']; words: WordKey; icon: typeof FlipVertical2 }[] = [
  { axis: 'x', side: 'low', words: 'align.left', icon: AlignStartVertical },
  { axis: 'x', side: 'mid', words: 'align.middle', icon: AlignCenterVertical },
  { axis: 'x', side: 'high', words: 'align.right', icon: AlignEndVertical },
  { axis: 'y', side: 'high', words: 'align.top', icon: AlignStartHorizontal },
  { axis: 'y', side: 'mid', words: 'align.center', icon: AlignCenterHorizontal },
  { axis: 'y', side: 'low', words: 'align.bottom', icon: AlignEndHorizontal },
];

/** Brings what is selected into line, spreads it, copies it: by rules that go on holding, or once only. */
export function ArrangeSection() {
  const t = useWords();
  const design = useSettledDesign();
  const selection = useSelection();
  const commit = useCommit();
  const [hold, setHold] = useState(true);
  const ids = itemsOf(design, selection).filter((id) => design.parts.some((p) => p.id === id));
  if (ids.length === 0) return null;
  const one = ids.length === 1;

  const apply = (make: (on: Arranging) => Arranged) => {
    const arranged = make(arrangingOf(design));
    const edits = editsToArrange(design, arranged);
    const options = arranged.add.length > 0 ? { selection: arranged.add.map((p) => p.id) } : {};
    if (edits.length > 0)
      commit(edits, t('did.arrange', { name: selectionName(design, selection) }), options);
  };
  const button = (
    words: WordKey,
    Icon: typeof FlipVertical2,
    make: (on: Arranging) => Arranged,
    off = false,
  ) => (
    <button
      key={words}
      type="button"
      className="btn icon"
      disabled={off}
      title={t(words)}
      aria-label={t(words)}
      onClick={() => apply(make)}
    >
      <Icon aria-hidden="true" />
    </button>
  );

  return (
    <section className="arrange">
      <h3 className="section-title">{t('arrange.title')}</h3>
      <p className="note">{t(one ? 'arrange.one' : 'arrange.many')}</p>
      <div className="btn-row tight">
        {ALIGNS.map(({ axis, side, words, icon }) =>
          button(words, icon, (on) =>
            align(on, ids, { axis, side, hold, ...(one ? { to: { of: 'face', side } as const } : {}) }),
          ),
        )}
        {button(
          'distribute.x',
          AlignHorizontalDistributeCenter,
          (on) => distribute(on, ids, { axis: 'x', hold }),
          ids.length < 3,
        )}
        {button(
          'distribute.y',
          AlignVerticalDistributeCenter,
          (on) => distribute(on, ids, { axis: 'y', hold }),
          ids.length < 3,
        )}
        {button('mirror.x', FlipHorizontal2, (on) =>
          mirrorCopy(on, ids, { axis: 'x', about: { of: 'face', side: 'mid' } }),
        )}
        {button('mirror.y', FlipVertical2, (on) =>
          mirrorCopy(on, ids, { axis: 'y', about: { of: 'face', side: 'mid' } }),
        )}
      </div>
      <SwitchField label={t('arrange.hold')} hint={t('arrange.holdHint')} value={hold} onCommit={setHold} />
      {one ? null : <SharedRuleSection key={ids.join()} ids={ids} />}
      <CopyRow ids={ids} onApply={apply} />
    </section>
  );
}
