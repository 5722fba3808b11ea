import type { Lettering } from '../../src/design/schema.ts';

/** Plain lettering, changed as a test needs it. */
export function lettering(text: string | readonly string[], changes: Partial<Lettering> = {}): Lettering {
  const lines = (typeof text === 'string' ? [text] : text).map((line) => ({ text: line }));
  return {
    font: 'lato',
    lines,
    capHeight: 100,
    tracking: 0,
    wordSpace: 0,
    lineSpace: 1.5,
    align: 'center',
    kerning: true,
    arcRise: 0,
    fit: 'none',
    margin: 10,
    shift: { x: 0, y: 0 },
    finish: 'black',
    outline: null,
    inline: null,
    shade: null,
    make: 'stencil',
    stencil: stencilOptions(),
    ...changes,
  };
}

export function stencilOptions(changes: Partial<Lettering['stencil']> = {}): Lettering['stencil'] {
  return {
    bridgeWidth: 4,
    bridges: 2,
    direction: 'thinnest',
    tongue: 2,
    frame: 20,
    placed: [],
    ...changes,
  };
}
