import type { PrinterCorrection } from '../../patterns/result.ts';
import { type EditorState, type EditorStore, PICTURE_SIZES } from '../state/store.ts';

const PRINTER = 'showface:printer';
const SINGLE_KEYS = 'showface:single-keys';
const PICTURE = 'showface:picture-pixels';

/** Brings back what this device knows of its printer and of the person's hands, and keeps it when it changes. */
export function keepOfDevice(store: EditorStore): void {
  const correction = readCorrection(read(PRINTER));
  if (correction) store.setState({ correction });
  if (read(SINGLE_KEYS) === false) store.setState({ singleKeys: false });
  const picturePixels = PICTURE_SIZES.find((pixels) => pixels === read(PICTURE));
  if (picturePixels) store.setState({ picturePixels });
  keep(store, PICTURE, (s) => s.picturePixels);
  keep(store, PRINTER, (s) => s.correction);
  keep(store, SINGLE_KEYS, (s) => s.singleKeys);
}

function keep(store: EditorStore, key: string, of: (s: EditorState) => unknown): void {
  store.subscribe((now, before) => {
    if (of(now) === of(before)) return;
    try {
      localStorage.setItem(key, JSON.stringify(of(now)));
    } catch {
      // Storage may be blocked; the choice then lasts as long as the page.
    }
  });
}

function read(key: string): unknown {
  try {
    return JSON.parse(localStorage.getItem(key) ?? 'null');
  } catch {
    return null;
  }
}

function readCorrection(value: unknown): PrinterCorrection | null {
  if (typeof value !== 'object' || value === null) return null;
  const { x, y } = value as { x?: unknown; y?: unknown };
  const sane = (n: unknown): n is number => typeof n === 'number' && n > 0.5 && n < 2;
  return sane(x) && sane(y) ? { x, y } : null;
}
