import { useLayoutEffect, useRef } from 'react';
import { lazyPart } from '../control/lazyPart.tsx';
import { regainFocus, useGoRound } from '../control/regions.ts';
import { Guard } from '../frame/Guard.tsx';
import { useEditor, useStore } from '../state/hooks.ts';
import { useAtTheSaw } from '../state/route.ts';
import { voiced } from '../words/voiced.ts';
import { useHandOn } from './handOn.ts';
import { NoticeBar } from './NoticeBar.tsx';
import { OfflineNotice } from './OfflineNotice.tsx';
import { useDrop } from './useDrop.ts';
import { useKeyboard } from './useKeyboard.ts';

// Who has a design at hand does not wait for the first page, nor the first page for the bench.
const FirstRun = lazyPart(() => import('./FirstRun.tsx').then((m) => m.default));
const Bench = lazyPart(() => import('./Bench.tsx').then((m) => m.default));
const KeysDialog = lazyPart(() => import('./KeysDialog.tsx').then((m) => m.KeysDialog));
const DoneDialog = lazyPart(() => import('./DoneDialog.tsx').then((m) => m.DoneDialog));
const BenchView = lazyPart(() => import('../saw/BenchView.tsx').then((m) => m.default));

/** The drawing board, or the pieces at the saw. */
export function App() {
  const atTheSaw = useAtTheSaw();
  const wasThere = useRef(false);
  if (atTheSaw) wasThere.current = true;
  useDrop();
  useHandOn();
  useGoRound();
  useKeyboard();
  return (
    <>
      <Announcer />
      <NoticeBar />
      <OfflineNotice />
      <Guard key={atTheSaw ? 'saw' : 'board'}>
        {atTheSaw ? <BenchView /> : <Board fromSaw={wasThere.current} />}
      </Guard>
    </>
  );
}

/** The bench with a design on it, or the choice of one. */
function Board({ fromSaw }: { fromSaw: boolean }) {
  const store = useStore();
  const chosen = useEditor((s) => s.designId !== null);
  const keysShown = useEditor((s) => s.keysShown);
  const asked = useEditor((s) => s.doneQuestion !== null);
  const before = useRef(chosen);
  useLayoutEffect(() => {
    if (before.current !== chosen) {
      regainFocus(chosen ? undefined : '.first');
      // On a phone the pane starts folded down, and a field of the title block would bring up the keyboard.
      if (chosen) regainFocus('.drawing');
    }
    before.current = chosen;
  }, [chosen]);
  if (!chosen) return <FirstRun />;
  return (
    <>
      <Bench fromSaw={fromSaw} />
      {asked ? (
        <Guard onLost={() => store.setState({ doneQuestion: null, provisional: null })}>
          <DoneDialog />
        </Guard>
      ) : null}
      {keysShown ? (
        <Guard onLost={() => store.setState({ keysShown: false })}>
          <KeysDialog />
        </Guard>
      ) : null}
    </>
  );
}

/** Tells screen readers what was done, with its measures. Two places in turn, so that repeats are read too. */
function Announcer() {
  const said = useEditor((s) => s.said);
  return (
    <>
      {[0, 1].map((n) => (
        <div key={n} className="hidden-text" aria-live="polite" role="status">
          {said.count % 2 === n ? voiced(said.text) : ''}
        </div>
      ))}
    </>
  );
}
