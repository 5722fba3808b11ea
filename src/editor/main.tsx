import './style/fonts.css';
import './style/tokens.css';
import './style/base.css';
import './style/field.css';
import './style/shell.css';
import './style/canvas.css';
import './style/pane.css';
import './style/first.css';
import './style/small.css';
import './style/forced.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { keepOfDevice } from './kept/device.ts';
import { keepOffline } from './kept/offline/register.ts';
import { startSession } from './kept/session.ts';
import { createPlanner } from './planning/planner.ts';
import { hirePlanWorker } from './planning/planWorker.ts';
import { takeLinked } from './saw/link.ts';
import { App } from './shell/App.tsx';
import { createFollower } from './state/follower.ts';
import { BenchContext } from './state/hooks.ts';
import { emptyDesign, startSpeaking } from './state/language.ts';
import { createEditorStore } from './state/store.ts';
import { keepTheme, storedTheme } from './state/theme.ts';
import { t } from './words/t.ts';

const root = document.getElementById('app');
if (!root) throw new Error('index.html has no #app');

await startSpeaking();
const store = createEditorStore(emptyDesign(), storedTheme());
keepTheme(store);
keepOfDevice(store);
const planner = createPlanner(store, hirePlanWorker, () =>
  store.setState({ notice: { tone: 'warn', text: t('plan.restarted') } }),
);

const follower = createFollower(store);

await startSession(store);
// What unpacks a link may not be had; the bench opens without it.
await takeLinked(store).catch(() => store.setState({ notice: { tone: 'bad', text: t('link.broken') } }));

createRoot(root).render(
  <StrictMode>
    <BenchContext value={{ store, planner, follower }}>
      <App />
    </BenchContext>
  </StrictMode>,
);

// A newer version may have taken away a file that this page had not loaded yet.
addEventListener('vite:preloadError', () => {
  store.setState({ notice: { tone: 'bad', text: t('offline.broken') } });
});
void keepOffline();
