import type { PrinterCorrection } from '../../patterns/result.ts';
import type { EditorStore } from './store.ts';

const KEY = 'showface:printer';

/** Brings back what this device knows of its printer, and keeps it when it changes. */
export function keepCorrection(store: EditorStore): void {
  const stored = read();
  if (stored) store.setState({ correction: stored });
  store.subscribe((now, before) => {
    if (now.correction === before.correction) return;
    try {
      localStorage.setItem(KEY, JSON.stringify(now.correction));
    } catch {
      // Storage may be blocked; the correction then lasts as long as the page.
    }
  });
}

function read(): PrinterCorrection | null {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(KEY) ?? 'null');
    const { x, y } = value as { x: unknown; y: unknown };
    const sane = (n: unknown): n is number => typeof n === 'number' && n > 0.5 && n < 2;
    return sane(x) && sane(y) ? { x, y } : null;
  } catch {
    return null;
  }
}
