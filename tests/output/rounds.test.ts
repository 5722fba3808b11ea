import { describe, expect, it } from 'vitest';
import { flatten } from '../../src/drawing/walk.ts';
import { packetPages } from '../../src/output/packet/packet.ts';
import { EN } from '../../src/output/packet/words/en.ts';
import { planOf, STARTERS } from '../plan/starters.ts';

describe.each(STARTERS)('the maps of fastening of %s', (name) => {
  const plan = planOf(name);
  const words = packetPages(plan)
    .filter(({ drawing }) => drawing.title === EN.titles.fastening)
    .flatMap(({ drawing }) => flatten(drawing.items).texts.map(({ item }) => item.text));
  // Several may stand on a page, each with its note before its legend.
  const maps: { step: number; count: number }[] = [];
  for (const told of words) {
    const step = /^Step (\d+) of the order of work/.exec(told)?.[1];
    if (step !== undefined) maps.push({ step: Number(step), count: 0 });
    const count = /: (\d+)$/.exec(told)?.[1];
    const map = maps.at(-1);
    if (count !== undefined && map) map.count += Number(count);
  }

  it('show for each step that fastens what is driven then, and nothing twice', () => {
    // Of hardware only its place is told: it comes with screws of its own.
    const steps = plan.marks.steps.filter(({ act }) => act === 'fix' || act === 'fit-hardware');
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
