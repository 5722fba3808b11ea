import { describe, expect, it } from 'vitest';
import { flatten } from '../../src/drawing/walk.ts';
import { boxOfPath } from '../../src/geometry/path.ts';
import { packetPages } from '../../src/output/packet/packet.ts';
import { EN } from '../../src/output/packet/words/en.ts';
import type { Plan } from '../../src/plan/types.ts';
import { planned, planOf, STARTERS, starter } from '../plan/starters.ts';

/** The barn with a rail that is cut to fit in place. */
function fitted(): Plan {
  const design = starter('orchard-barn-door');
  const parts = design.parts.map((part) =>
    part.kind === 'strip' && part.id === 'left-top' ? { ...part, fit: true } : part,
  );
  return planned({ ...design, parts });
}

const PLANS = [
  ...STARTERS.map((name) => [name, () => planOf(name)] as const),
  ['a rail cut to fit in place', fitted] as const,
];

describe.each(PLANS)('the maps of fastening of %s', (_, made) => {
  const plan = made();
  const pages = packetPages(plan).filter(({ drawing }) => drawing.title === EN.titles.fastening);
  const words = pages.flatMap(({ drawing }) => flatten(drawing.items).texts.map(({ item }) => item.text));
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
    const steps = plan.marks.steps.filter(({ act }) =>
      ['fix', 'measure-in-place', 'assemble', 'fit-hardware'].includes(act),
    );
    expect(maps.map(({ step }) => step)).toEqual(steps.map(({ number }) => number));
    for (const { step, count } of maps) {
      const parts = new Set(steps.find(({ number }) => number === step)?.parts);
      const driven = plan.fastening.parts.filter(({ part }) => parts.has(part));
      expect(count, `step ${step}`).toBe(driven.reduce((sum, { at }) => sum + at.length, 0));
    }
    const all = plan.fastening.parts.reduce((sum, { at }) => sum + at.length, 0);
    expect(maps.reduce((sum, { count }) => sum + count, 0)).toBe(all);
  });

  it('stand at one height where several share a page', () => {
    for (const { drawing } of pages) {
      const faces = flatten(drawing.items).paths.flatMap(({ path }) => {
        const box = boxOfPath(path);
        const ratio = (box.w / box.h) * (plan.face.height / plan.face.width);
        return Math.abs(ratio - 1) < 1e-6 && box.h > 50 ? [`${box.y.toFixed(3)} ${box.h.toFixed(3)}`] : [];
      });
      // Upright faces stand beside each other.
      if (plan.face.height > plan.face.width) expect(new Set(faces).size).toBeLessThanOrEqual(1);
    }
  });
});
