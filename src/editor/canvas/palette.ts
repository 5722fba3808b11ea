import { useMemo } from 'react';
import { useResolvedTheme } from '../state/hooks.ts';

const NAMES = [
  'paper',
  'sheet',
  'desk',
  'grid',
  'grid-strong',
  'ink',
  'ink-2',
  'ink-3',
  'line',
  'edge',
  'tape',
  'tape-edge',
  'tape-ink',
  'pencil',
  'pencil-soft',
  'bad',
  'rim',
  'ledge',
  'field',
  'skin',
  'grain',
  'outline',
  'cast',
  'floor',
] as const;

export type Palette = Readonly<Record<(typeof NAMES)[number], string>>;

/** The colors of the style sheet, for what is drawn on canvas; read anew when the theme changes. */
export function usePalette(): Palette {
  const theme = useResolvedTheme();
  return useMemo(() => {
    // The theme is on the root element before anything renders with it.
    const style = getComputedStyle(document.documentElement);
    void theme;
    return Object.fromEntries(NAMES.map((n) => [n, style.getPropertyValue(`--${n}`).trim()])) as Palette;
  }, [theme]);
}
