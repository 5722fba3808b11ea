import type { RowDrop } from '../../edit/partList.ts';
import { strayed } from '../../gesture/gesture.ts';

interface RowDragged {
  /** What letting go here would do, to be shown; null: nothing. */
  readonly over: (drop: RowDrop | null) => void;
  readonly drop: (drop: RowDrop) => void;
}

/** The share of a row at its upper and its lower edge that means over and under it. */
const EDGE = 0.3;

/** Drags a row of the part list from its press to its release, wherever that is; Escape leaves no trace. */
export function startRowDrag(
  down: { readonly clientX: number; readonly clientY: number; readonly pointerId: number },
  tree: HTMLElement,
  { over, drop }: RowDragged,
): void {
  const ended = new AbortController();
  const { signal } = ended;
  const start = { x: down.clientX, y: down.clientY };
  let begun = false;
  const end = () => {
    ended.abort();
    if (begun) over(null);
  };
  const on = (type: 'pointermove' | 'pointerup' | 'pointercancel', act: (e: PointerEvent) => void) =>
    window.addEventListener(type, (e) => e.pointerId === down.pointerId && act(e), { signal });
  on('pointermove', (e) => {
    begun ||= strayed(start, { x: e.clientX, y: e.clientY });
    if (begun) over(dropAt(tree, e.clientX, e.clientY));
  });
  on('pointerup', (e) => {
    end();
    // It may have been let go at a place that no move told of.
    const found =
      begun || strayed(start, { x: e.clientX, y: e.clientY }) ? dropAt(tree, e.clientX, e.clientY) : null;
    if (found) drop(found);
  });
  on('pointercancel', end);
  window.addEventListener(
    'keydown',
    (e) => {
      if (e.key !== 'Escape' || !begun) return;
      e.preventDefault();
      e.stopPropagation();
      end();
    },
    { signal, capture: true },
  );
}

function dropAt(tree: HTMLElement, x: number, y: number): RowDrop | null {
  const { left, right } = tree.getBoundingClientRect();
  if (x < left || x > right) return null;
  for (const row of tree.querySelectorAll<HTMLElement>('[data-row]')) {
    const { top, bottom, height } = row.getBoundingClientRect();
    if (y < top || y >= bottom) continue;
    const share = (y - top) / height;
    const place = share < EDGE ? 'before' : share > 1 - EDGE ? 'after' : 'onto';
    return { target: row.dataset.row ?? '', place };
  }
  return null;
}
