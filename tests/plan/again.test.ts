import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Part } from '../../src/design/schema.ts';
import { createPlanner } from '../../src/plan/plan.ts';
import type { Plan } from '../../src/plan/types.ts';
import { chanceOf, pick } from '../chance.ts';
import { SUPPLIES } from './starters.ts';

/** Edits of one sequence; more by hand. */
const EDITS = Number(process.env.SHOWFACE_RUNS ?? 6);
const EFFORT = { nodes: 300 };

const changed = (design: Design, id: string, change: (part: Part) => Part): Design => ({
  ...design,
  parts: design.parts.map((part) => (part.id === id ? change(part) : part)),
});

/** What is told of cutting while it is planned: once that it begins, then as it goes on. */
function watched(planner: ReturnType<typeof createPlanner>, design: Design): { plan: Plan; told: number } {
  let told = 0;
  const onStage = (stage: string) => {
    if (stage === 'cutting') told += 1;
  };
  return { plan: planner(design, SUPPLIES, { effort: EFFORT, onStage }), told };
}

/** Strips, panels, and a lettered sign, each free. */
function sample(): Design {
  const at = (i: number) => ({ x: 100 + 60 * i, y: 100 + 90 * i });
  const strips = Array.from({ length: 5 }, (_, i) => {
    const box = { ...at(i), w: 300 + 40 * i, h: 38.1 };
    return newPart('strip', { id: `strip-${i}`, name: '', box, stock: 'lath-quarter' });
  });
  const panels = Array.from({ length: 3 }, (_, i) =>
    newPart('panel', { id: `panel-${i}`, name: '', box: { ...at(i + 6), w: 200 + 30 * i, h: 80 } }),
  );
  const sign = newPart('sign', { id: 'sign', name: 'Sign', box: { x: 100, y: 1300, w: 700, h: 200 } });
  // In a font that the supplies hold: those are of the starters.
  const lettered = { ...sign, lettering: { ...sign.lettering, font: 'alfa-slab-one' } };
  return { ...newDesign(), parts: [...strips, ...panels, lettered] };
}

describe('planning again', () => {
  const design = sample();

  it('cuts nothing again where only a color, a name or a place changes, and one stock where one piece does', () => {
    const planner = createPlanner();
    const first = watched(planner, design);
    expect(first.told).toBeGreaterThan(2);
    const finishes = design.finishes.map((finish) => ({ ...finish, color: '#123456' }));
    expect(watched(planner, { ...design, finishes }).told).toBe(1);
    expect(watched(planner, { ...design, name: 'Another' }).told).toBe(1);
    const moved = changed(design, 'strip-1', (part) => ({ ...part, box: { ...part.box, x: 171 } }));
    expect(watched(planner, moved).told).toBe(1);
    const longer = changed(design, 'strip-1', (part) => ({ ...part, box: { ...part.box, w: 512 } }));
    const again = watched(planner, longer);
    expect(again.told).toBeGreaterThan(1);
    expect(again.plan.cutting.sheets[0]).toBe(first.plan.cutting.sheets[0]);
    expect(again.plan.cutting.boards).not.toEqual(first.plan.cutting.boards);
  });

  it('joins, sweeps and fastens nothing again for a letter that is typed', () => {
    const planner = createPlanner();
    const typed = (text: string) =>
      planner(
        changed(design, 'sign', (part) =>
          part.kind === 'sign' ? { ...part, lettering: { ...part.lettering, lines: [{ text }] } } : part,
        ),
        SUPPLIES,
        { effort: EFFORT },
      );
    const [first, again] = [typed('OAK'), typed('OAKS')];
    expect(again.signs).not.toEqual(first.signs);
    expect(again.joinery.pieces).toBe(first.joinery.pieces);
    expect(again.fold).toBe(first.fold);
    const before = new Map(first.fastening.parts.map((one) => [one.part, one]));
    for (const one of again.fastening.parts) expect(one).toBe(before.get(one.part));
  });

  it('comes to what a plan from nothing comes to, all of it, after any edits', () => {
    const chance = chanceOf(77);
    const planner = createPlanner();
    let now = design;
    for (let edit = 0; edit < EDITS; edit += 1) {
      const part = pick(now.parts, chance);
      const kind = pick(['move', 'grow', 'paint', 'letter', 'make'] as const, chance);
      const by = Math.round(200 * chance()) / 10;
      now = changed(now, part.id, (one) => {
        if (kind === 'paint') return { ...one, finish: pick(now.finishes, chance).id };
        if (kind === 'letter' && one.kind === 'sign') {
          const lines = [{ text: pick(['BARN', 'OAK & ROD', '808'], chance) }];
          return { ...one, lettering: { ...one.lettering, lines } };
        }
        if (kind === 'make' && one.kind === 'sign') {
          const make = pick(['trace', 'stencil', 'cut-out'] as const, chance);
          const outline = pick([null, { width: 3, finish: pick(now.finishes, chance).id }], chance);
          return { ...one, lettering: { ...one.lettering, make, outline } };
        }
        const box = kind === 'move' ? { x: one.box.x + by } : { w: one.box.w + by };
        return { ...one, box: { ...one.box, ...box } };
      });
      const again = planner(now, SUPPLIES, { effort: EFFORT });
      expect(again).toEqual(createPlanner()(now, SUPPLIES, { effort: EFFORT }));
    }
  });
});
