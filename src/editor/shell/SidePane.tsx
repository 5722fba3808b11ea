import { ChevronDown, ChevronUp } from 'lucide-react';
import { useLayoutEffect, useRef } from 'react';
import { Button } from '../control/Button.tsx';
import { type Tab, Tabs } from '../control/list/Tabs.tsx';
import { regainFocus } from '../control/regions.ts';
import { nameOf } from '../edit/movable.ts';
import { Guard } from '../frame/Guard.tsx';
import { PANES } from '../pane/panes.ts';
import { Inspector } from '../pane/part/Inspector.tsx';
import { PartsTree } from '../pane/parts/PartsTree.tsx';
import { useEditor, useSelection, useSettledDesign, useStore } from '../state/hooks.ts';
import { inPanes, type SideTab } from '../state/store.ts';
import { useWords } from '../words/t.ts';

const CLASSES = ['pane-tabs', 'pane-list', 'pane-tab', 'pane-body'] as const;

/** The pane of the step, and beside it what is selected. On a small screen a sheet that comes up from below. */
export function SidePane({ withParts }: { withParts: boolean }) {
  const t = useWords();
  const store = useStore();
  const step = useEditor((s) => s.step);
  const chosenTab = useEditor((s) => inPanes(s).tab);
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
  // The drawing goes nowhere: to ask whether it is still seen would lay the page out at once and once more.
  const before = useRef(tab);
  useLayoutEffect(() => {
    if (before.current !== tab && document.activeElement !== store.getState().canvas) regainFocus();
    before.current = tab;
  }, [tab, store]);

  // The pane of another step is read from its beginning, wherever the one before was left; another tab has its own.
  const pane = useRef<HTMLElement>(null);
  const shown = useRef(step);
  useLayoutEffect(() => {
    if (shown.current !== step) pane.current?.querySelector('.pane-body')?.scrollTo({ top: 0 });
    shown.current = step;
  }, [step]);

  const selected =
    selection.length === 1 && only ? nameOf(design, only) : t('say.selected', { count: selection.length });
  const tabs: Tab<SideTab>[] = [
    {
      id: 'step',
      label: t(`step.${step}`),
      content: () => (
        <Guard key={step} meanwhile={<p className="note">{t('pane.loading')}</p>}>
          <Pane />
        </Guard>
      ),
    },
  ];
  if (selection.length > 0)
    tabs.push({
      id: 'part',
      label: selected,
      content: () => (
        <>
          <h2 className="hidden-text">{selected}</h2>
          <Guard>
            <Inspector />
          </Guard>
        </>
      ),
    });
  if (withParts)
    tabs.push({
      id: 'parts',
      label: t('parts.title'),
      content: () => (
        <>
          <h2 className="hidden-text">{t('parts.title')}</h2>
          <Guard>
            <PartsTree />
          </Guard>
        </>
      ),
    });
  return (
    <aside ref={pane} className="pane" data-open={open} aria-label={t('pane.region')}>
      <Tabs
        classes={CLASSES}
        label={t('pane.tabs')}
        value={tab}
        tabs={tabs}
        // Pressed while it is shown, a tab brings up the pane that is folded down.
        onChoose={(id) => store.setState({ tab: id, sheetOpen: true })}
        head={(list) => (
          <div className="pane-head">
            {list}
            <Button
              look="bare icon pane-fold"
              aria-expanded={open}
              label={open ? t('pane.fold') : t('pane.open')}
              onClick={() => store.setState({ sheetOpen: !open })}
            >
              {open ? <ChevronDown aria-hidden="true" /> : <ChevronUp aria-hidden="true" />}
            </Button>
          </div>
        )}
      />
    </aside>
  );
}
