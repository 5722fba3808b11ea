import { ChevronDown, ChevronUp } from 'lucide-react';
import { Tabs } from 'radix-ui';
import { Suspense, useEffect, useRef } from 'react';
import { nameOf } from '../action/movable.ts';
import { PANES } from '../pane/panes.ts';
import { Inspector } from '../pane/part/Inspector.tsx';
import { PartsTree } from '../pane/parts/PartsTree.tsx';
import { useEditor, useSelection, useSettledDesign, useStore } from '../state/hooks.ts';
import type { SideTab } from '../state/store.ts';
import { useWords } from '../words/t.ts';
import { regainFocus } from './regions.ts';

/** The pane of the step, and beside it what is selected. On a small screen a sheet that comes up from below. */
export function SidePane({ withParts }: { withParts: boolean }) {
  const t = useWords();
  const store = useStore();
  const step = useEditor((s) => s.step);
  const chosenTab = useEditor((s) => s.tab);
  const open = useEditor((s) => s.sheetOpen);
  const selection = useSelection();
  const design = useSettledDesign();
  const [only] = selection;
  const tab =
    (chosenTab === 'part' && selection.length === 0) || (chosenTab === 'parts' && !withParts)
      ? 'step'
      : chosenTab;
  const { Pane } = PANES[step];

  // The control that was pressed may be gone with the pane that held it: the focus goes to what came instead.
  const before = useRef(tab);
  useEffect(() => {
    if (before.current !== tab) regainFocus();
    before.current = tab;
  }, [tab]);

  const selected =
    selection.length === 1 && only ? nameOf(design, only) : t('count.selected', { count: selection.length });
  // A tab that is chosen already tells nothing when it is pressed again, though its pane may be folded down.
  const bringUp = () => store.setState({ sheetOpen: true });
  return (
    <aside className="pane" data-open={open} aria-label={t('pane.region')}>
      <Tabs.Root
        className="pane-tabs"
        value={tab}
        onValueChange={(value) => store.setState({ tab: value as SideTab, sheetOpen: true })}
      >
        <div className="pane-head">
          <Tabs.List className="pane-list" aria-label={t('pane.tabs')}>
            <Tabs.Trigger value="step" className="pane-tab" onClick={bringUp}>
              {t(`step.${step}`)}
            </Tabs.Trigger>
            {selection.length > 0 ? (
              <Tabs.Trigger value="part" className="pane-tab" onClick={bringUp}>
                {selected}
              </Tabs.Trigger>
            ) : null}
            {withParts ? (
              <Tabs.Trigger value="parts" className="pane-tab" onClick={bringUp}>
                {t('parts.title')}
              </Tabs.Trigger>
            ) : null}
          </Tabs.List>
          <button
            type="button"
            className="btn bare icon pane-fold"
            aria-expanded={open}
            aria-label={open ? t('pane.fold') : t('pane.open')}
            onClick={() => store.setState({ sheetOpen: !open })}
          >
            {open ? <ChevronDown aria-hidden="true" /> : <ChevronUp aria-hidden="true" />}
          </button>
        </div>
        <Tabs.Content value="step" className="pane-body" tabIndex={-1}>
          <Suspense fallback={<p className="note">{t('pane.loading')}</p>}>
            <Pane key={step} />
          </Suspense>
        </Tabs.Content>
        {selection.length > 0 ? (
          <Tabs.Content value="part" className="pane-body" tabIndex={-1}>
            <h2 className="hidden-text">{selected}</h2>
            <Inspector />
          </Tabs.Content>
        ) : null}
        {withParts ? (
          <Tabs.Content value="parts" className="pane-body" tabIndex={-1}>
            <h2 className="hidden-text">{t('parts.title')}</h2>
            <PartsTree />
          </Tabs.Content>
        ) : null}
      </Tabs.Root>
    </aside>
  );
}
