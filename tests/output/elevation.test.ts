import { describe, expect, it } from 'vitest';
import { isBoards } from '../../src/design/made.ts';
import { flatten } from '../../src/drawing/walk.ts';
import { boxOf } from '../../src/geometry/region.ts';
import { formatReading } from '../../src/measure/format.ts';
import { packetPages } from '../../src/output/packet/packet.ts';
import { EN } from '../../src/output/packet/words/en.ts';
import { planOf, STARTERS } from '../plan/starters.ts';

describe.each(STARTERS)('the elevation of %s', (name) => {
  const plan = planOf(name);
  const pages = packetPages(plan);
  const sheets = pages.filter(({ drawing }) => /^Elevation\b/.test(drawing.title));
  const told = sheets.map(({ drawing }) => flatten(drawing.items).texts.map(({ item }) => item));

  it('tells every edge of every part from the datum, across and up, on one sheet or another', () => {
    const upright = new Set(told.flat().flatMap((item) => (item.angle === 90 ? [item.text] : [])));
    const level = new Set(told.flat().flatMap((item) => (item.angle === undefined ? [item.text] : [])));
    const shown = (mm: number) => formatReading(mm, plan.design.measure);
    for (const solid of plan.joinery.solids) {
      const box = isBoards(solid) ? null : boxOf(solid.region);
      if (!box) continue;
      for (const at of [box.x, box.x + box.w]) expect(upright, `${solid.part} ${at}`).toContain(shown(at));
      for (const at of [box.y, box.y + box.h]) expect(level, `${solid.part} ${at}`).toContain(shown(at));
    }
    const fills = new Set(plan.joinery.solids.filter(isBoards).map(({ part }) => part));
    for (const { axis, at } of plan.marks.marks.filter(({ part }) => fills.has(part))) {
      expect(axis === 'x' ? upright : level).toContain(shown(at));
    }
  });

  it('is at least half as wide or high as its sheets have room', () => {
    for (const { drawing, width_mm, height_mm } of sheets) {
      const boxes = flatten(drawing.items).paths.filter(({ clips }) => clips.length === 0);
      const points = boxes.flatMap(({ path }) => path.flatMap((c) => ('x' in c ? [c] : [])));
      const inside = points.filter(({ y }) => y > 36 && y < height_mm - 25);
      const span = (values: number[]) => Math.max(...values) - Math.min(...values);
      const filled = [
        span(inside.map(({ x }) => x)) / (width_mm - 32),
        span(inside.map(({ y }) => y)) / (height_mm - 61),
      ];
      expect(Math.max(...filled), drawing.title).toBeGreaterThan(0.7);
    }
  });

  it('has the mark of every piece of wood on the sheet of marks', () => {
    const sheet = pages.find(({ drawing }) => drawing.title === EN.titles.pieceMarks);
    const marks = flatten(sheet?.drawing.items ?? []).texts.map(({ item }) => item.text);
    expect(marks).toEqual(expect.arrayContaining(plan.joinery.pieces.map(({ label }) => label)));
  });
});
