import { describe, expect, it } from 'vitest';
import { planFinish } from '../../src/finish/planFinish.ts';
import type { PaintJob } from '../../src/finish/result.ts';
import { inches } from '../../src/measure/units.ts';
import { box, finish, input, NO_WASTE, solid } from './build.ts';

/** What is painted, by hand: act, part, face in mm2, coats. */
const told = (jobs: readonly PaintJob[]) =>
  jobs.map(({ act, part, face, coats }) => [act, part, Math.round(face * 1e6), coats]);

describe('what the steps paint', () => {
  it('a part of another color: whole on the bench, its last coat where it is still open', () => {
    const solids = [
      solid('panel', box(0, 0, 500, 400), 0, 10),
      solid('block', box(0, 0, 100, 100), 10, 20, { finish: 'blue', on: 'panel' }),
    ];
    const { jobs, uses } = planFinish(input(solids));
    expect(told(jobs)).toEqual([
      ['paint-before', 'panel', 200_000, 1],
      ['last-coat', 'panel', 190_000, 1],
      ['paint-before', 'block', 10_000, 1],
      ['last-coat', 'block', 10_000, 1],
    ]);
    const [red] = uses;
    // Edges 1800 x 10 mm, all free, in both coats; 10 m2 a liter.
    expect((red?.volume ?? 0) * 10).toBeCloseTo(0.2 + 0.19 + 2 * 0.018, 9);
    expect((red?.face ?? 0) * 1e6).toBeCloseTo(190_000, 3);
    expect((red?.painted.face ?? 0) * 1e6).toBeCloseTo(200_000, 3);
  });

  it('where a part is glued on, all but 1/16 in stays bare, and is taped around', () => {
    const solids = [
      solid('panel', box(0, 0, 500, 400), 0, 10),
      solid('block', box(100, 100, 100, 80), 10, 20, { finish: 'blue', on: 'panel' }),
    ];
    const { jobs, bare, uses } = planFinish(input(solids, { glued: new Set(['block']) }));
    const by = 2 * inches(1 / 16);
    const area = (100 - by) * (80 - by);
    expect(bare.map(({ part, on, finish: kept }) => [part, on, kept])).toEqual([['block', 'panel', 'red']]);
    expect((jobs[0]?.face ?? 0) * 1e6).toBeCloseTo(200_000 - area, 1);
    expect(uses[0]?.tape).toBeCloseTo(2 * (100 - by) + 2 * (80 - by), 2);
  });

  it('edges that a glued joint takes up stay bare on the bench, others are painted there', () => {
    const solids = [
      solid('rail', box(0, 0, 400, 50), 0, 20),
      solid('post', box(100, 50, 60, 500), 0, 20, { finish: 'blue' }),
    ];
    const edge = (joined: ReadonlyMap<string, ReadonlySet<string>>) =>
      (planFinish(input(solids, { joined })).jobs[0]?.edge ?? 0) * 1e6;
    expect(edge(new Map())).toBeCloseTo(900 * 20, 3);
    expect(edge(new Map([['rail', new Set(['post'])]]))).toBeCloseTo((900 - 60) * 20, 3);
  });

  it('paint on the bed itself goes under what covers it; later shapes go over earlier ones', () => {
    const shape = { kind: 'painted' as const };
    const solids = [
      solid('ground', box(0, 0, 500, 400), 0, 0, shape),
      solid('pane', box(0, 0, 100, 100), 0, 0, { ...shape, finish: 'blue' }),
      solid('board', box(0, 0, 500, 60), 0, 10, { finish: null }),
    ];
    const open = planFinish(input(solids)).jobs;
    expect(told(open)).toEqual([
      ['paint-ground', 'ground', 200_000, 2],
      ['paint-ground', 'pane', 10_000, 2],
    ]);
    const glued = planFinish(input(solids, { glued: new Set(['board']) }));
    const inset = inches(1 / 16);
    const bareUnder = (500 - 2 * inset) * (60 - 2 * inset);
    expect((glued.jobs[0]?.face ?? 0) * 1e6).toBeCloseTo(200_000 - bareUnder, 1);
    // The strip of tape inside the pane lies on that of the ground: bought once.
    expect(glued.uses.map(({ tape }) => tape).reduce((a, b) => a + b, 0)).toBeCloseTo(
      planFinish(input(solids)).uses.reduce((sum, { tape }) => sum + tape, 0) +
        2 * (500 - 2 * inset) +
        2 * (60 - 2 * inset),
      2,
    );
  });

  it('what has the color of its support is painted in place, where it is open by then', () => {
    const solids = [
      solid('panel', box(0, 0, 500, 400), 0, 10, { finish: null }),
      solid('rail', box(0, 0, 500, 60), 10, 20, { finish: 'red', on: 'panel' }),
      solid('cap', box(0, 0, 100, 60), 20, 30, { finish: 'red', on: 'rail' }),
    ];
    const { jobs } = planFinish(input(solids));
    expect(told(jobs).filter(([, part]) => part === 'cap')).toEqual([['paint-after', 'cap', 6000, 2]]);
  });

  it('all coats on the bench: signs, what carries painted shapes with them, and what takes one coat', () => {
    const solids = [
      solid('sign', box(0, 0, 500, 200), 0, 12, { kind: 'sign' }),
      solid('door', box(0, 300, 500, 200), 0, 12),
      solid('dot', box(0, 300, 100, 100), 12, 12, { kind: 'painted', finish: 'blue', on: 'door' }),
      solid('line', box(0, 300, 50, 50), 12, 12, { kind: 'painted', finish: 'red', on: 'dot' }),
      solid('once', box(0, 600, 100, 100), 0, 12, { finish: 'thin' }),
    ];
    const { jobs } = planFinish(
      input(solids, { finishes: [finish('red'), finish('blue'), finish('thin', { coats: 1 })] }),
    );
    expect(told(jobs).sort()).toEqual([
      ['paint-before', 'door', 100_000, 2],
      ['paint-before', 'dot', 10_000, 2],
      ['paint-before', 'line', 2500, 2],
      ['paint-before', 'once', 10_000, 1],
      ['paint-before', 'sign', 100_000, 2],
    ]);
  });

  it('letters: all that their way of making paints, on the board', () => {
    const sign = solid('sign', box(100, 0, 500, 200), 0, 12, { kind: 'sign' });
    const layer = { role: 'shade' as const, finish: 'blue', region: box(0, 0, 10, 10) };
    const lettering = [
      { sign: 'sign', at: { x: 100, y: 0 }, layers: [{ ...layer, painted: box(-20, 0, 60, 50) }] },
    ];
    const { jobs } = planFinish(input([sign], { lettering, paint: NO_WASTE }));
    expect(told(jobs)).toEqual([
      ['paint-before', 'sign', 100_000, 2],
      ['letter', 'sign', 40 * 50, 2],
    ]);
  });
});
