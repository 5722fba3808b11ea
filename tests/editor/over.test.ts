import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { openData } from '../../src/design/open.ts';
import type { Design } from '../../src/design/schema.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { type Dimension, dimensionOnScreen } from '../../src/editor/drawing/dimensions.ts';
import { drawDimensions } from '../../src/editor/drawing/drawDimensions.ts';
import { drawInHand } from '../../src/editor/drawing/drawInHand.ts';
import { drawKeepClears } from '../../src/editor/drawing/drawKeepClears.ts';
import { drawPhotoHandles } from '../../src/editor/drawing/drawPhotoHandles.ts';
import { sceneOf } from '../../src/editor/drawing/scene.ts';
import { THEMES, toScreen } from '../../src/editor/state/store.ts';
import type { Box } from '../../src/geometry/shape.ts';
import { chanceOf } from '../chance.ts';
import { runs } from '../runs.ts';
import { faceFor } from './laid.ts';
import { NAMED, recorder } from './recorder.ts';

const TOKENS = readFileSync(new URL('../../src/editor/style/tokens.css', import.meta.url), 'utf8');
const FOLDER = new URL('../../assets/starters/', import.meta.url);

/** Relative luminance of an sRGB color, as WCAG 2.2 defines it. */
function luminance(color: string): number {
  const share = (at: number) => {
    const c = Number.parseInt(color.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * share(1) + 0.7152 * share(3) + 0.0722 * share(5);
}

/** Contrast ratio of two colors, as WCAG 2.2 defines it. */
function contrast(a: string, b: string): number {
  const [l, m] = [luminance(a), luminance(b)];
  return (Math.max(l, m) + 0.05) / (Math.min(l, m) + 0.05);
}

/** The colors of a theme by their names in the style sheet. */
function colorsOf(theme: string): (name: string) => string {
  const [, rules] = new RegExp(`\\[data-theme="${theme}"\\] \\{([^}]*)\\}`).exec(TOKENS) ?? [];
  const found = new Map([...(rules ?? '').matchAll(/--([\w-]+): (#[0-9a-f]{6});/g)].map((m) => [m[1], m[2]]));
  return (name) => {
    const color = found.get(name);
    if (color === undefined) throw new Error(`${theme} has no color ${name}`);
    return color;
  };
}

/** Every color that a starter shows: its finishes, as they look on its parts, its woods, its fittings. */
function surfacesOf(file: string): string[] {
  const opened = openData(JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')));
  if (!opened.ok) throw new Error(`${file} does not open`);
  const { design } = opened;
  const { parts, grounds } = shownFrom(design).looks;
  return [...new Set([...parts.values(), ...grounds.values(), ...design.finishes.map((f) => f.color)])];
}

const BARE = ['rim', 'ledge', 'field', 'skin', 'desk', 'grid', 'grid-strong', 'outline', 'grain'] as const;
/** What lies over the drawing on its halo: what is in hand, what must stay clear, the face's own dimensions. */
const LINES = ['over', 'bad', 'ink'] as const;

describe('what lies over the drawing is seen on every color (WCAG 2.2, 1.4.11)', () => {
  it('reckons contrast as the standard does', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9);
    // From memory: the lightest gray that just misses 4.5 on white.
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
  });

  it.each(THEMES)(
    '%s: line or halo at least 3 to 1, on the finishes of the starters and on any other',
    (theme) => {
      const color = colorsOf(theme);
      const halo = color('halo');
      const table: string[] = [];
      for (const line of LINES) {
        const own = contrast(color(line), halo);
        // Both below 3 to 1 against one color would make them less than 9 to 1 against each other.
        expect(own, `${theme}: ${line} on its halo`).toBeGreaterThanOrEqual(9);
        for (const file of readdirSync(FOLDER)) {
          const least = [...surfacesOf(file), ...BARE.map(color)]
            .map((on) => ({ on, seen: Math.max(contrast(color(line), on), contrast(halo, on)) }))
            .reduce((a, b) => (b.seen < a.seen ? b : a));
          expect(least.seen, `${theme}: ${line} on ${least.on} of ${file}`).toBeGreaterThanOrEqual(3);
          table.push(
            `${line} on its halo ${own.toFixed(2)}, ${file}: ${least.seen.toFixed(2)} on ${least.on}`,
          );
        }
      }
      // Figures on their plates, and the labels of the tape view.
      for (const [fill, ink] of [
        ['over', 'halo'],
        ['desk', 'ink'],
        ['ink', 'paper'],
        ['tape', 'tape-ink'],
      ] as const)
        expect(contrast(color(fill), color(ink)), `${theme}: ${ink} on ${fill}`).toBeGreaterThanOrEqual(7);
      process.stdout.write(`${theme}\n  ${table.join('\n  ')}\n`);
    },
  );
});

const VIEW = { scale: 0.4, x: 100, y: 800 };

const faceWith = (kind: 'panel' | 'strip' | 'array', box: Box): Design => ({
  ...newDesign(),
  parts: [newPart(kind, { id: 'one', name: 'one', box, stock: 'pine-1x3' })],
});
const CHOSEN = { selection: ['one'], corner: null, opening: null, member: null, carrying: false };

it('every line over the drawing is drawn on a halo that stands out at both sides', () => {
  const design = faceWith('strip', { x: 100, y: 200, w: 500, h: 63.5 });
  const scene = sceneOf(shownFrom(design), { ...CHOSEN, view: VIEW });
  const { marks: drawn, pen: context } = recorder();
  drawDimensions(context, [...scene.overall, ...scene.dimensions], VIEW, NAMED);
  drawInHand(context, {
    ...scene,
    boxes: [{ x: 0, y: 0, w: 100, h: 100 }],
    around: { x: 0, y: 0, w: 300, h: 200 },
    handles: [
      ...scene.handles,
      { px: { x: 1, y: 2 }, act: { kind: 'corner', index: 0, chosen: true }, cursor: '' },
      { px: { x: 3, y: 4 }, act: { kind: 'middle', index: 0 }, cursor: '' },
      { px: { x: 9, y: 4 }, act: { kind: 'bow', index: 0 }, cursor: '' },
      { px: { x: 5, y: 9 }, act: { kind: 'bend', index: 0, which: 1, at: { x: 30, y: 9 } }, cursor: '' },
    ],
    view: VIEW,
    palette: NAMED,
    guides: [{ kind: 'line', axis: 'x', at: 10, from: 0, to: 900 }],
    path: [
      { x: 0, y: 0 },
      { x: 50, y: 80 },
    ],
    frame: { from: { x: 0, y: 0 }, to: { x: 60, y: 70 } },
  });
  drawKeepClears(
    context,
    [{ id: 'k', name: 'k', why: 'latch', box: { x: 7, y: 8, w: 90, h: 60 }, height: 20 }],
    NAMED,
    1,
  );
  const corners = [
    { x: 0, y: 0 },
    { x: 70, y: 9 },
    { x: 60, y: 80 },
  ];
  const before = drawn.length;
  for (const closed of [false, true])
    drawPhotoHandles(context, { frame: corners, points: corners.slice(1), closed }, NAMED, 1);
  // Frame, line of the points and each point, twice, each after its halo.
  expect(drawn.slice(before).filter(({ color }) => color === 'over')).toHaveLength(8);
  const lines = drawn.filter(({ color, width }) => color !== 'halo' && width > 0 && width < 100);
  expect(lines.length).toBeGreaterThan(25);
  // The hatching within a keep-clear: many lines in one path.
  expect(lines.filter(({ color, paths }) => color === 'bad' && paths.length > 5)).toHaveLength(1);
  for (const line of lines) {
    const under = drawn
      .slice(0, drawn.indexOf(line))
      .filter(({ paths, color }) => color === 'halo' && JSON.stringify(paths) === JSON.stringify(line.paths));
    expect(Math.max(0, ...under.map(({ width }) => width)), JSON.stringify(line)).toBeGreaterThanOrEqual(
      line.width + 3,
    );
  }
});

describe('plates of a part', () => {
  it('lie on no line and no figure of the overall dimensions, wherever the part stands', () => {
    const chance = chanceOf(18);
    const between = (low: number, high: number) => low + (high - low) * chance();
    let moved = 0;
    for (let i = 0; i < runs(400); i++) {
      const kind = chance() < 0.5 ? 'panel' : 'array';
      const { bed } = newDesign();
      const face = faceFor(bed);
      const w = between(20, face.width);
      const h = between(20, face.height);
      const box = { x: between(-w / 2, face.width - w / 2), y: between(-h / 2, face.height - h / 2), w, h };
      const design: Design = {
        ...faceWith(kind, box),
        rules: [
          {
            id: 'r',
            kind: 'set',
            axis: 'x',
            edge: { of: 'one', side: 'high' },
            from: { of: 'face', side: 'high' },
            distance: box.x + w - face.width,
          },
        ],
      };
      const view = { scale: between(0.2, 1.2), x: 80, y: 900 };
      const { dimensions, overall } = sceneOf(shownFrom(design), { ...CHOSEN, view });
      const screen = (d: Dimension) => dimensionOnScreen(d, (p) => toScreen(view, p));
      // Plates as large as the longest measures make them: 64 by 24 pixels; figures of the face 52 by 20.
      const taken = overall.flatMap((d) => {
        const { from, to, middle } = screen(d);
        return [
          [from.x, Math.min(from.y, to.y), to.x, Math.max(from.y, to.y)],
          [middle.x - 26, middle.y - 10, middle.x + 26, middle.y + 10],
        ] as const;
      });
      for (const d of dimensions) {
        const { middle } = screen(d);
        if (d.aside || d.off < 0 || (d.role === 'size' && d.axis === 'x' && d.off > 30)) moved++;
        for (const [left, top, right, bottom] of taken)
          expect(
            middle.x + 32 <= left ||
              middle.x - 32 >= right ||
              middle.y + 12 <= top ||
              middle.y - 12 >= bottom,
            JSON.stringify({ d, box, view, on: [left, top, right, bottom] }),
          ).toBe(true);
      }
    }
    expect(moved).toBeGreaterThan(20);
  });
});
