import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import * as fontkit from 'fontkit';
import { regionOfRings, union } from '../../src/geometry/clip.ts';
import { quadraticToCubic, ringsOfPath } from '../../src/geometry/curve.ts';
import type { Path, PathCommand, Point } from '../../src/geometry/shape.ts';
import type { Lettered, PlacedGlyph } from '../../src/lettering/result.ts';

const FILE = fileURLToPath(
  new URL(
    '../../node_modules/@fontsource/bebas-neue/files/bebas-neue-latin-400-normal.woff',
    import.meta.url,
  ),
);

/** Outline of a glyph as the second font library reads it, at a place on a drawing. */
export function pathOf(glyph: fontkit.Glyph, scale: number, at: Point): Path {
  const path: PathCommand[] = [];
  let from: Point = at;
  for (const { command, args } of glyph.path.commands) {
    const p = (i: number): Point => ({
      x: at.x + (args[i] ?? 0) * scale,
      y: at.y + (args[i + 1] ?? 0) * scale,
    });
    if (command === 'closePath') path.push({ op: 'Z' });
    else if (command === 'moveTo') path.push({ op: 'M', ...p(0) });
    else if (command === 'lineTo') path.push({ op: 'L', ...p(0) });
    else if (command === 'quadraticCurveTo') path.push(quadraticToCubic(from, p(0), p(2)));
    else path.push({ op: 'C', x1: p(0).x, y1: p(0).y, x2: p(2).x, y2: p(2).y, ...p(4) });
    if (args.length > 0) from = p(args.length - 2);
  }
  return path;
}

/** A line of real letters by the second font library, for tests of what is drawn and printed. */
export function letteredLine(text: string, capHeight: number, at: Point = { x: 0, y: 0 }): Lettered {
  const font = fontkit.create(readFileSync(FILE)) as fontkit.Font;
  const scale = capHeight / font.capHeight;
  const run = font.layout(text);
  let x = at.x;
  const glyphs: PlacedGlyph[] = run.glyphs.map((glyph, i) => {
    const path = pathOf(glyph, scale, { x, y: at.y });
    x += (run.positions[i]?.xAdvance ?? 0) * scale;
    return {
      character: text[i] ?? '',
      look: 0,
      line: 0,
      capHeight,
      baseline: at.y,
      path,
      region: regionOfRings(ringsOfPath(path, 0.005), 'nonzero'),
      colors: null,
    };
  });
  const whole = union(glyphs.map((g) => g.region));
  return {
    sign: 'sign',
    text,
    font: 'bebas-neue',
    capHeight,
    capHeights: [capHeight],
    glyphs,
    layers: [{ role: 'fill', finish: 'ink', region: whole, whole }],
    box: { x: at.x, y: at.y, w: x - at.x, h: capHeight },
    width: x - at.x,
    ink_mm2: 0,
    missing: [],
  };
}
