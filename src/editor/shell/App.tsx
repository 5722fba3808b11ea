import { lazy, Suspense, useEffect, useRef } from 'react';
import { useAtTheSaw } from '../bench/route.ts';
import { OfflineNotice } from '../offline/OfflineNotice.tsx';
import { useEditor } from '../state/hooks.ts';
import { Announcer } from './Announcer.tsx';
import { NoticeBar } from './NoticeBar.tsx';
import { regainFocus } from './regions.ts';
import { useDrop } from './useDrop.ts';

// Who has a design at hand does not wait for the first page, nor the first page for the bench.
const FirstRun = lazy(() => import('./FirstRun.tsx'));
const Bench = lazy(() => import('./Bench.tsx'));
const KeysDialog = lazy(() => import('./KeysDialog.tsx').then((m) => ({ default: m.KeysDialog })));
const BenchView = lazy(() => import('../bench/BenchView.tsx'));

/** The drawing board, or the pieces at the saw. */
export function App() {
  const atTheSaw = useAtTheSaw();
  useDrop();
  return (
    <>
      <Announcer />
      <NoticeBar />
      <OfflineNotice />
      <Suspense fallback={null}>{atTheSaw ? <BenchView /> : <Board />}</Suspense>
    </>
  );
}

/** The bench with a design on it, or the choice of one. */
function Board() {
  const chosen = useEditor((s) => s.designId !== null);
  const keysShown = useEditor((s) => s.keysShown);
  const before = useRef(chosen);
  useEffect(() => {
    if (before.current !== chosen) regainFocus(chosen ? undefined : '.first');
    before.current = chosen;
  }, [chosen]);
  if (!chosen) return <FirstRun />;
  return (
    <>
      <Bench />
      {keysShown ? (
        <Suspense fallback={null}>
          <KeysDialog />
        </Suspense>
      ) : null}
    </>
  );
}
