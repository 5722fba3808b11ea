import { lazy, Suspense } from 'react';
import { useAtTheSaw } from '../bench/route.ts';
import { OfflineNotice } from '../offline/OfflineNotice.tsx';
import { useEditor } from '../state/hooks.ts';
import { Announcer } from './Announcer.tsx';
import { Bench } from './Bench.tsx';
import { NoticeBar } from './NoticeBar.tsx';
import { useDrop } from './useDrop.ts';
import { useKeys } from './useKeys.ts';

const FirstRun = lazy(() => import('./FirstRun.tsx'));
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
  useKeys();
  return chosen ? <Bench /> : <FirstRun />;
}
