import { useEffect, useRef } from 'react';

/** Whether the space bar is down outside of fields and buttons: it turns a drag into a pan. */
export function useSpaceKey() {
  const down = useRef(false);
  useEffect(() => {
    const set = (value: boolean) => (e: KeyboardEvent) => {
      if (e.code !== 'Space') return;
      const busy =
        e.target instanceof Element && e.target.closest('input, textarea, select, button, [role="tree"]');
      if (value && busy) return;
      if (value) e.preventDefault();
      down.current = value;
      document.documentElement.toggleAttribute('data-panning', value);
    };
    const press = set(true);
    const release = set(false);
    window.addEventListener('keydown', press);
    window.addEventListener('keyup', release);
    return () => {
      window.removeEventListener('keydown', press);
      window.removeEventListener('keyup', release);
    };
  }, []);
  return down;
}
