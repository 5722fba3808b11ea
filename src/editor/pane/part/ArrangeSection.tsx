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
import { memo, useRef, useState } from 'react';
import type { Axis, Edge } from '../../../design/schema.ts';
import type { Arranged, Arranging } from '../../../layout/arrange/arranged.ts';
import { distribute } from '../../../layout/arrange/distribute.ts';
import { Button } from '../../control/Button.tsx';
import { useRoving } from '../../control/list/rove.ts';
import { Section } from '../../control/Section.tsx';
import { SwitchField } from '../../control/SwitchField.tsx';
import { alignSelection, arrangeSelection, mirrorSelection } from '../../edit/arrangeSelection.ts';
import { partsIn } from '../../edit/movable.ts';
import { useSelection, useSettledDesign, useStore } from '../../state/hooks.ts';
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

const SPREADS: readonly { axis: Axis; words: WordKey; icon: typeof FlipVertical2 }[] = [
  { axis: 'x', words: 'distribute.x', icon: AlignHorizontalDistributeCenter },
  { axis: 'y', words: 'distribute.y', icon: AlignVerticalDistributeCenter },
];
const MIRRORS: typeof SPREADS = [
  { axis: 'x', words: 'mirror.x', icon: FlipHorizontal2 },
  { axis: 'y', words: 'mirror.y', icon: FlipVertical2 },
];

/** Brings what is selected into line, spreads it, copies it: by rules that go on holding, or once only. */
export const ArrangeSection = memo(function ArrangeSection() {
  const t = useWords();
  const design = useSettledDesign();
  const selection = useSelection();
  const store = useStore();
  const row = useRef<HTMLDivElement>(null);
  const roving = useRoving(row, 'both');
  const [hold, setHold] = useState(true);
  const ids = partsIn(design, selection);
  if (ids.length === 0) return null;
  const one = ids.length === 1;

  const apply = (make: (on: Arranging) => Arranged) => arrangeSelection(store, make);
  const button = (words: WordKey, Icon: typeof FlipVertical2, act: () => void, off = false) => (
    <Button key={words} icon={Icon} look="icon" data-stop="" disabled={off} tip={t(words)} onClick={act} />
  );

  return (
    <Section className="arrange" title="arrange.title">
      <p className="note">{t(one ? 'arrange.one' : 'arrange.many')}</p>
      <div ref={row} role="toolbar" className="btn-row tight" aria-label={t('arrange.title')} {...roving}>
        {ALIGNS.map(({ axis, side, words, icon }) =>
          button(words, icon, () => alignSelection(store, axis, side, hold)),
        )}
        {SPREADS.map(({ axis, words, icon }) =>
          button(words, icon, () => apply((on) => distribute(on, ids, { axis, hold })), ids.length < 3),
        )}
        {MIRRORS.map(({ axis, words, icon }) => button(words, icon, () => mirrorSelection(store, axis)))}
      </div>
      <SwitchField label={t('arrange.hold')} hint={t('arrange.holdHint')} value={hold} onCommit={setHold} />
      {one ? null : <SharedRuleSection key={ids.join()} ids={ids} />}
      <CopyRow ids={ids} onApply={apply} />
    </Section>
  );
});
