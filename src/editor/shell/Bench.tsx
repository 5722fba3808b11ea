import { useEffect, useLayoutEffect, useSyncExternalStore } from 'react';
import { Button } from '../control/Button.tsx';
import { lazyPart } from '../control/lazyPart.tsx';
import { regainFocus } from '../control/regions.ts';
import { usePageTitle } from '../control/usePageTitle.ts';
import { Guard } from '../frame/Guard.tsx';
import { openingDone } from '../kept/opening.ts';
import { takeOver } from '../kept/tabs.ts';
import { PartMenu } from '../pane/parts/PartMenu.tsx';
import { PartsTree } from '../pane/parts/PartsTree.tsx';
import { useEditor } from '../state/hooks.ts';
import { useWords } from '../words/t.ts';
import { SidePane } from './SidePane.tsx';
import { StepRail } from './StepRail.tsx';
import { TitleBlock } from './TitleBlock.tsx';
import { ToolTray } from './ToolTray.tsx';
import { useKeys } from './useKeys.ts';
import { useTellChecks } from './useOpenChecks.ts';
import { ZoomTray } from './ZoomTray.tsx';
import '../words/deskWords.ts';

// The drawing brings the canvas library with it: the frame stands before it has come.
const FaceCanvas = lazyPart(() => import('../canvas/FaceCanvas.tsx').then((m) => m.FaceCanvas));

/** The bench: title block above, steps at the left, the drawing in the middle, the pane of the step beside it. */
export default function Bench({ fromSaw }: { fromSaw: boolean }) {
  const t = useWords();
  useKeys();
  useTellChecks();
  const width = useWidth();
  const id = useEditor((s) => s.designId);
  const step = useEditor((s) => s.step);
  const name = useEditor((s) => s.edit.design.name);
  usePageTitle(t(`step.${step}`), name);
  useEffect(() => {
    if (id) openingDone(id);
  }, [id]);
  useLayoutEffect(() => {
    if (!fromSaw) return;
    // Back to what led there, else to the pane of the step.
    regainFocus('.to-saw');
    regainFocus();
  }, [fromSaw]);
  return (
    <div className="bench">
      <TitleBlock />
      <TabBanner />
      <div className="bench-body">
        <StepRail />
        {width === 'wide' ? (
          <aside className="parts-side" aria-labelledby="parts-title">
            <h2 id="parts-title" className="side-title">
              {t('parts.title')}
            </h2>
            <Guard>
              <PartsTree />
            </Guard>
          </aside>
        ) : null}
        <main className="drawing" tabIndex={-1} aria-label={t('canvas.region')}>
          <Guard meanwhile={<div className="canvas" />}>
            <FaceCanvas />
          </Guard>
          <ToolTray />
          <ZoomTray />
        </main>
        <SidePane withParts={width !== 'wide'} />
        <PartMenu />
      </div>
    </div>
  );
}

type Width = 'narrow' | 'middle' | 'wide';

const WIDE = '(min-width: 1200px)';
const NARROW = '(max-width: 759px)';

/** How much room there is: a part list of its own only where the drawing keeps enough. */
function useWidth(): Width {
  return useSyncExternalStore(
    (listener) => {
      const queries = [matchMedia(WIDE), matchMedia(NARROW)];
      for (const q of queries) q.addEventListener('change', listener);
      return () => {
        for (const q of queries) q.removeEventListener('change', listener);
      };
    },
    () => (matchMedia(WIDE).matches ? 'wide' : matchMedia(NARROW).matches ? 'narrow' : 'middle'),
  );
}

/** Told when another tab writes this design, or when the device keeps nothing. */
function TabBanner() {
  const t = useWords();
  const writes = useEditor((s) => s.writes);
  const saved = useEditor((s) => s.saved);
  if (saved === 'blocked' || saved === 'full') {
    return (
      <div className="banner bad" role="alert">
        {t(`banner.${saved}`)}
      </div>
    );
  }
  if (writes) return null;
  return (
    <div className="banner" role="alert">
      <span>{t('banner.otherTab')}</span>
      <Button onClick={() => void takeOver()}>{t('banner.takeOver')}</Button>
    </div>
  );
}
