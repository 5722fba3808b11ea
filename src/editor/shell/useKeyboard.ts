import { useEffect } from 'react';
import { comeIntoSight } from '../control/sight.ts';

/** What is taken from the height of the page by less than this is no keyboard, in pixels. */
const LEAST = 100;

const TEXT = 'input:not([type=checkbox], [type=radio]), textarea';

/**
 * While the keyboard of a phone lies over the page, tells the style sheet how much is seen above it, and keeps the
 * field in focus in sight with what is said of it. A browser leaves the page as high as it was.
 */
export function useKeyboard(): void {
  useEffect(() => {
    const seen = window.visualViewport;
    if (!seen) return;
    const root = document.documentElement;
    const look = () => {
      const field = document.activeElement?.matches(TEXT) ? document.activeElement : null;
      // Drawn larger by two fingers less of the page is seen, too.
      const height = seen.height * seen.scale;
      const up = field !== null && height < root.clientHeight - LEAST;
      root.toggleAttribute('data-keyboard', up);
      if (!up) return;
      root.style.setProperty('--seen', `${height}px`);
      root.style.setProperty('--seen-top', `${seen.offsetTop}px`);
      comeIntoSight(field);
    };
    seen.addEventListener('resize', look);
    seen.addEventListener('scroll', look);
    document.addEventListener('focusin', look);
    return () => {
      seen.removeEventListener('resize', look);
      seen.removeEventListener('scroll', look);
      document.removeEventListener('focusin', look);
    };
  }, []);
}
