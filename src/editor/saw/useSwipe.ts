import { type RefObject, useEffect } from 'react';

/** A swipe is at least this long, and this much longer across than down. */
const LEAST_PX = 48;
const FLAT = 1.6;

/** Calls back on a swipe of one finger across an element: to the left, on; to the right, back. */
export function useSwipe(
  ref: RefObject<HTMLElement | null>,
  onSwipe: (direction: 'on' | 'back') => void,
): void {
  useEffect(() => {
    const element = ref.current;
    if (!element) return;
    let from: { x: number; y: number } | null = null;
    const start = (e: TouchEvent) => {
      const touch = e.touches[0];
      from = touch && e.touches.length === 1 ? { x: touch.clientX, y: touch.clientY } : null;
    };
    const end = (e: TouchEvent) => {
      const touch = e.changedTouches[0];
      if (!from || !touch) return;
      const [dx, dy] = [touch.clientX - from.x, touch.clientY - from.y];
      from = null;
      if (Math.abs(dx) < LEAST_PX || Math.abs(dx) < Math.abs(dy) * FLAT) return;
      onSwipe(dx < 0 ? 'on' : 'back');
    };
    element.addEventListener('touchstart', start, { passive: true });
    element.addEventListener('touchend', end, { passive: true });
    return () => {
      element.removeEventListener('touchstart', start);
      element.removeEventListener('touchend', end);
    };
  }, [ref, onSwipe]);
}
