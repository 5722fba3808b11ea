import { lazy, Suspense } from 'react';
import { PartsTree } from '../pane/parts/PartsTree.tsx';
import { useWords } from '../words/t.ts';
import { SidePane } from './SidePane.tsx';
import { StepRail } from './StepRail.tsx';
import { TabBanner } from './TabBanner.tsx';
import { TitleBlock } from './TitleBlock.tsx';
import { ToolTray } from './ToolTray.tsx';
import { useKeys } from './useKeys.ts';
import { useWidth } from './useWidth.ts';
import { ZoomTray } from './ZoomTray.tsx';

// The drawing brings the canvas library with it: the frame stands before it has come.
const FaceCanvas = lazy(() => import('../canvas/FaceCanvas.tsx').then((m) => ({ default: m.FaceCanvas })));

/** The bench: title block above, steps at the left, the drawing in the middle, the pane of the step beside it. */
export default function Bench() {
  const t = useWords();
  useKeys();
  const width = useWidth();
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
            <PartsTree />
          </aside>
        ) : null}
        <main className="drawing" aria-label={t('canvas.region')}>
          <Suspense fallback={<div className="canvas" />}>
            <FaceCanvas />
          </Suspense>
          <ToolTray />
          <ZoomTray />
        </main>
        <SidePane withParts={width !== 'wide'} />
      </div>
    </div>
  );
}
