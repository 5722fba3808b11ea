import { useEffect, useMemo, useState } from 'react';
import { COLORS, type Palette } from '../drawing/palette.ts';
import { useResolvedTheme } from '../state/hooks.ts';

/** The colors of the style sheet, for what is drawn on canvas; read anew when the theme changes. */
export function usePalette(): Palette {
  const theme = useResolvedTheme();
  const [fonts, setFonts] = useState(document.fonts.status === 'loaded');
  useEffect(() => {
    // What is written on canvas does not change by itself when its font comes.
    void document.fonts.ready.then(() => setFonts(true));
  }, []);
  return useMemo(() => {
    // The theme is on the root element before anything renders with it.
    const style = getComputedStyle(document.documentElement);
    void [theme, fonts];
    return Object.fromEntries(COLORS.map((n) => [n, style.getPropertyValue(`--${n}`).trim()])) as Palette;
  }, [theme, fonts]);
}
