import { describe, expect, it } from 'vitest';
import { flatten } from '../../src/drawing/walk.ts';
import { packetPages } from '../../src/output/packet/packet.ts';
import { EN } from '../../src/output/packet/words/en.ts';
import { planOf, STARTERS } from '../plan/starters.ts';

describe.each(STARTERS)('the maps of fastening of %s', (name) => {
  const plan = planOf(name);
  const maps = packetPages(plan).flatMap(({ drawing }) => {
    const words = flatten(drawing.items).texts.map(({ item }) => item.text);
    const step = words.flatMap((told) => /^Step (\d+) of the order of work/.exec(told)?.[1] ?? []);
    if (drawing.title !== EN.titles.fastening || step.length === 0) return [];
    const counts = words.flatMap((told) => /: (\d+)$/.exec(told)?.[1] ?? []).map(Number);
    return [{ step: Number(step[0]), count: counts.reduce((a, b) => a + b, 0) }];
  });

  it('show for each step that fastens what is driven then, and nothing twice', () => {
    const steps = plan.marks.steps.filter(({ act }) => act === 'fix');
    expect(maps.map(({ step }) => step)).toEqual(steps.map(({ number }) => number));
    for (const { step, count } of maps) {
      const parts = new Set(steps.find(({ number }) => number === step)?.parts);
      const driven = plan.fastening.parts.filter(({ part }) => parts.has(part));
      expect(count, `step ${step}`).toBe(driven.reduce((sum, { at }) => sum + at.length, 0));
    }
    const all = plan.fastening.parts.reduce((sum, { at }) => sum + at.length, 0);
    expect(maps.reduce((sum, { count }) => sum + count, 0)).toBe(all);
  });
});
