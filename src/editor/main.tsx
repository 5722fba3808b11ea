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
import { takeLinked } from './bench/link.ts';
import { keepOffline } from './offline/register.ts';
import { App } from './shell/App.tsx';
import { keepOfDevice } from './state/device.ts';
import { BenchContext } from './state/hooks.ts';
import { emptyDesign, startSpeaking } from './state/language.ts';
import { createPlanner } from './state/planner.ts';
import { hirePlanWorker } from './state/planWorker.ts';
import { createEditorStore } from './state/store.ts';
import { keepTheme, storedTheme } from './state/theme.ts';
import { startSession } from './storage/session.ts';
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

await startSession(store);
// What unpacks a link may not be had; the bench opens without it.
await takeLinked(store).catch(() => store.setState({ notice: { tone: 'bad', text: t('link.broken') } }));

createRoot(root).render(
  <StrictMode>
    <BenchContext value={{ store, planner }}>
      <App />
    </BenchContext>
  </StrictMode>,
);

// A newer version may have taken away a file that this page had not loaded yet.
addEventListener('vite:preloadError', () => {
  store.setState({ notice: { tone: 'bad', text: t('offline.broken') } });
});
void keepOffline();
