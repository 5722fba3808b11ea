import { beforeAll, describe, expect, it } from 'vitest';
import { outlinesOf } from '../../src/drawing/outline.ts';
import { INK } from '../../src/drawing/style.ts';
import { flatten, textCorners } from '../../src/drawing/walk.ts';
import { chordsInside } from '../../src/geometry/chord.ts';
import { boxOfPath } from '../../src/geometry/path.ts';
import { regionOfBox } from '../../src/geometry/region.ts';
import { boxOfPoints } from '../../src/geometry/ring.ts';
import type { Box, Point } from '../../src/geometry/shape.ts';
import type { PatternPage, PatternSet } from '../../src/patterns/result.ts';
import { plan } from '../../src/plan/plan.ts';
import { planOf, STARTERS, SUPPLIES, starter } from '../plan/starters.ts';

interface Written {
  readonly words: string;
  readonly box: Box;
}

const textsOn = ({ drawing }: PatternPage): Written[] =>
  flatten(drawing.items)
    .texts.filter((t) => t.item.text.trim() !== '')
    .map((t) => ({ words: t.item.text, box: boxOfPoints(textCorners(t)) }));

const isOn = (box: Box, { drawing }: PatternPage) =>
  box.x >= 0 && box.y >= 0 && box.x + box.w <= drawing.width && box.y + box.h <= drawing.height;

/** Common to both, by more than a hair. */
function meet(a: Box, b: Box): boolean {
  const hair = 0.1;
  const w = Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x);
  const h = Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y);
  return w > hair && h > hair;
}

const isIn = (a: Box, b: Box): boolean =>
  a.x >= b.x && a.y >= b.y && a.x + a.w <= b.x + b.w && a.y + a.h <= b.y + b.h;

const sidesOf = (points: readonly Point[], closed: boolean): [Point, Point][] =>
  points.flatMap((p, i) => {
    const next = points[i + 1] ?? (closed ? points[0] : undefined);
    return next ? [[p, next] as [Point, Point]] : [];
  });

/** Rings of registration marks: five millimeters across, with a cross of ten about the same middle. */
function marksOn({ drawing }: PatternPage): Box[] {
  return flatten(drawing.items)
    .paths.filter((p) => p.layer === 'page')
    .map((p) => boxOfPath(p.path))
    .filter((b) => Math.abs(b.w - 10) < 0.15 && Math.abs(b.h - 10) < 0.15);
}

describe.each(STARTERS)('pages of %s', (name) => {
  let sets: readonly PatternSet[];
  beforeAll(() => {
    const design = starter(name);
    const pages = { ...design.pages, also: ['story-sticks' as const] };
    sets = plan({ ...design, pages }, SUPPLIES, { effort: { nodes: 200 } }).patterns;
  });
  const each = (look: (page: PatternPage, set: PatternSet) => void) => {
    for (const set of sets) for (const page of set.pages) look(page, set);
  };

  it('have no text over another', () => {
    each((page, { title }) => {
      const texts = textsOn(page).filter(({ box }) => isOn(box, page));
      const over = texts.flatMap((a, i) =>
        texts.slice(i + 1).flatMap((b) => (meet(a.box, b.box) ? [`${a.words} / ${b.words}`] : [])),
      );
      expect(over, `${title} ${page.name}`).toEqual([]);
    });
  });

  it('have no registration mark over a text', () => {
    let marks = 0;
    each((page, { title }) => {
      const crosses = marksOn(page);
      marks += crosses.length;
      const hit = textsOn(page).filter(({ box }) => crosses.some((mark) => meet(mark, box)));
      expect(
        hit.map((t) => t.words),
        `${title} ${page.name}`,
      ).toEqual([]);
    });
    // Letters of small signs are on one page, which joins nothing.
    if (name === 'harbor-ticket-kiosk') expect(marks).toBeGreaterThan(10);
  });

  it('hold the story sticks on few sheets: with the measuring square, two more than strips without white would fill', () => {
    const sticks = sets.filter((set) => set.for.startsWith('story-stick'));
    const { face, design } = planOf(name);
    const { left, right, top, bottom } = design.pages.margin;
    // Strips of 46 mm side by side over all that a printer reaches of a Letter sheet.
    const held = Math.floor((215.9 - left - right) / 46) * (279.4 - top - bottom);
    expect(sticks.flatMap((set) => set.pages).length).toBeLessThanOrEqual(8);
    expect(sticks.length).toBeLessThanOrEqual(Math.ceil((face.width + face.height) / held) + 2);
    expect(sticks.flatMap((set) => set.pages.map((page) => page.name))).toEqual(
      sticks.map((_, i) => `${i + 1}`),
    );
  });

  it('cut no label short, and give no id where a person looks for a name', () => {
    const ids = starter(name).finishes.filter((f) => f.id !== f.name);
    each((page) => {
      for (const { words } of textsOn(page)) {
        expect(words).not.toContain('…');
        for (const { id } of ids) expect(words).not.toContain(`: ${id}`);
      }
    });
  });

  it('have their square and ruler off the letters', () => {
    // A printed sign has a line of a known length at the foot of its page in place of the square.
    const printed = new Set(planOf(name).signs.flatMap((sign) => (sign.printed ? [sign.id] : [])));
    each((page, { title, for: what }) => {
      if (what.startsWith('story-stick') || what === 'prints' || printed.has(what)) return;
      const { paths } = flatten(page.drawing.items);
      const square = paths
        .filter((p) => p.layer === 'page')
        .map((p) => boxOfPath(p.path))
        .find((b) => Math.abs(b.w - b.h) < 0.01 && b.w > 49);
      expect(square).toBeDefined();
      if (!square) return;
      for (const path of paths.filter((p) => p.layer === 'cut')) {
        const inside = path.path.filter(
          (c) =>
            c.op !== 'Z' &&
            c.x > square.x &&
            c.x < square.x + square.w &&
            c.y > square.y &&
            c.y < square.y + square.h,
        );
        expect(inside, `${title} ${page.name}`).toEqual([]);
      }
    });
  });

  it('have no line through the words of square and ruler, and no corner of board or sheet under them', () => {
    let cleared = 0;
    each((page, { title }) => {
      const { paths, texts } = flatten(page.drawing.items);
      const grounds = paths
        .filter((p) => p.layer === 'page' && p.item.fill === INK.paper)
        .map((p) => boxOfPath(p.path));
      const words = texts
        .filter((t) => t.layer === 'page' && !t.item.text.startsWith('joins'))
        .map((t) => boxOfPoints(textCorners(t)));
      for (const flat of paths.filter((p) => p.layer !== 'page' && p.item.stroke !== undefined)) {
        for (const { points, closed } of outlinesOf(flat, 0.1)) {
          for (const [a, b] of sidesOf(points, closed)) {
            const hit = words.filter((box) => chordsInside(a, b, regionOfBox(box)).length > 0);
            const under = hit.filter((box) => grounds.some((g) => isIn(box, g)));
            cleared += under.length;
            expect(hit.length, `${title} ${page.name}: a line through a text`).toBe(under.length);
          }
          const isBoard = closed && points.length === 4 && ['guides', 'sheet'].includes(flat.layer ?? '');
          const corners = points.filter((p) => grounds.some((g) => isIn({ ...p, w: 0, h: 0 }, g)));
          if (isBoard) expect(corners, `${title} ${page.name}`).toEqual([]);
        }
      }
    });
    // There is a page without a free place for the square: what is tested comes up.
    if (name === 'harbor-ticket-kiosk') expect(cleared).toBeGreaterThan(0);
  });
});
