import { lazy, Suspense } from 'react';
import { useEditor } from '../state/hooks.ts';
import { Announcer } from './Announcer.tsx';
import { Bench } from './Bench.tsx';
import { NoticeBar } from './NoticeBar.tsx';
import { useDrop } from './useDrop.ts';
import { useKeys } from './useKeys.ts';

const FirstRun = lazy(() => import('./FirstRun.tsx'));

/** The bench with a design on it, or the choice of one. */
export function App() {
  const chosen = useEditor((s) => s.designId !== null);
  useKeys();
  useDrop();
  return (
    <>
      <Announcer />
      <NoticeBar />
      {chosen ? (
        <Bench />
      ) : (
        <Suspense fallback={null}>
          <FirstRun />
        </Suspense>
      )}
    </>
  );
}
