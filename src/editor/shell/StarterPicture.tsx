import { useEffect, useMemo, useRef } from 'react';
import type { Design } from '../../design/schema.ts';
import { usePalette } from '../canvas/usePalette.ts';
import { shownFrom } from '../document/shown.ts';
import type { Letters } from './useLetterPictures.ts';

interface StarterPictureProps {
  readonly design: Design;
  /** The lettering of its signs, once it is drawn. */
  readonly letters: Letters | undefined;
}

/** The face of a design as a small picture, drawn from its own layout; its painters come once the page stands. */
export function StarterPicture({ design, letters }: StarterPictureProps) {
  const shown = useMemo(() => shownFrom(design), [design]);
  const palette = usePalette();
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const on = canvas.current;
    if (!on) return;
    let watch: ResizeObserver | null = null;
    let gone = false;
    const begin = async () => {
      const { paintStarter } = await import('./paintStarter.ts');
      if (gone) return;
      watch = new ResizeObserver(() => paintStarter(on, { shown, design, palette, letters }));
      watch.observe(on);
    };
    // Without its painters a card has its name and size all the same.
    void begin().catch(() => undefined);
    return () => {
      gone = true;
      watch?.disconnect();
    };
  }, [shown, design, palette, letters]);
  return (
    <span className="first-picture" data-lettered={letters !== undefined} aria-hidden="true">
      <canvas ref={canvas} />
    </span>
  );
}
