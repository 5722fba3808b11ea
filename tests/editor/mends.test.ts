import { describe, expect, it } from 'vitest';
import type { Check } from '../../src/check/check.ts';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { applyEdits } from '../../src/design/edit/edit.ts';
import type { Design, Part } from '../../src/design/schema.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { mendsFor } from '../../src/editor/edit/mends.ts';
import { alike } from '../../src/editor/pane/facts/alike.ts';
import type { LaidPart } from '../../src/layout/laid.ts';
import { chanceOf } from '../chance.ts';
import { layoutOf } from './laid.ts';

const panel = (id: string, x: number, y: number, w: number, h: number, on = 'face'): Part => ({
  ...newPart('panel', { id, name: id, box: { x, y, w, h } }),
  on,
});
const designOf = (parts: readonly Part[]): Design => ({ ...newDesign(), parts: [...parts] });
const errorsIn = (design: Design) => layoutOf(design).checks.filter(({ severity }) => severity === 'error');

/** Whether two bodies are in one place, from their boxes and heights alone. */
const clash = (a: LaidPart, b: LaidPart) =>
  Math.min(a.box.x + a.box.w, b.box.x + b.box.w) - Math.max(a.box.x, b.box.x) > 1e-6 &&
  Math.min(a.box.y + a.box.h, b.box.y + b.box.h) - Math.max(a.box.y, b.box.y) > 1e-6 &&
  Math.min(a.z1, b.z1) - Math.max(a.z0, b.z0) > 1e-6;

describe('checks that say the same of one thing', () => {
  const check = (code: Check['code'], ...parts: string[]): Check => ({
    code,
    severity: 'error',
    parts,
    figures: {},
  });

  it('are one message: twelve battens against one sign', () => {
    const battens = Array.from({ length: 12 }, (_, i) => check('part.overlap', `batten-${i}`, 'sign'));
    const other = check('part.overlap', 'door', 'knob');
    const groups = alike([...battens, other, check('part.unsupported', 'sign')]);
    expect(groups.map((group) => group.length)).toEqual([12, 1, 1]);
  });

  it('are one for the members of a row, and lose none', () => {
    const members = [0, 1, 2].map((i) => check('part.off-face', `row[${i},0]`));
    expect(alike(members)).toEqual([members]);
  });
});

describe('the mends of a check', () => {
  const design = designOf([panel('board', 200, 300, 400, 500), panel('sign', 560, 400, 300, 120)]);

  it('are to move either out and to let either end at the other; each leaves nothing of it', () => {
    const mends = mendsFor(shownFrom(design), errorsIn(design));
    expect(mends.map(({ how }) => how).sort()).toEqual(['move', 'move', 'stop', 'stop']);
    for (const { edits } of mends) {
      const done = applyEdits(design, edits);
      expect(done.ok && errorsIn(done.design)).toEqual([]);
    }
  });

  it('show the likelier of two ways first: the narrower part gives way, of two as wide the level one', () => {
    const gives = (
      a: readonly [number, number, number, number],
      b: readonly [number, number, number, number],
    ) => {
      const both = designOf([panel('a', ...a), panel('b', ...b)]);
      const mends = mendsFor(shownFrom(both), errorsIn(both));
      return (['move', 'stop'] as const).map((way) => mends.find(({ how }) => how === way)?.parts[0]);
    };
    // A slat of 50 beside a board of 200, whichever comes first in the design.
    expect(gives([200, 300, 200, 500], [380, 400, 300, 50])).toEqual(['b', 'b']);
    expect(gives([380, 400, 300, 50], [200, 300, 200, 500])).toEqual(['a', 'a']);
    // A rail and a stile of 60: the rail gives way.
    expect(gives([200, 300, 60, 500], [240, 400, 300, 60])).toEqual(['b', 'b']);
    expect(gives([240, 400, 300, 60], [200, 300, 60, 500])).toEqual(['a', 'a']);
  });

  it('mend all that is one message at once', () => {
    const plates = [0, 1, 2].map((i) => panel(`plate-${i}`, 260 + 100 * i, 700, 50, 250));
    const many = designOf([...plates, panel('door', 200, 300, 400, 500)]);
    const [group, ...more] = alike(errorsIn(many));
    expect([group?.length, more.length]).toEqual([3, 0]);
    const mends = mendsFor(shownFrom(many), group ?? []);
    expect(mends[0]).toMatchObject({ how: 'lay', parts: ['plate-0', 'plate-1', 'plate-2'], to: 'door' });
    for (const { edits, parts } of mends) {
      const done = applyEdits(many, edits);
      if (!done.ok) throw new Error('a mend does not apply');
      const laid = layoutOf(done.design, new Set(parts)).parts;
      expect(laid.some((a, i) => laid.slice(i + 1).some((b) => clash(a, b)))).toBe(false);
    }
  });

  it('move no locked part', () => {
    const parts = design.parts.map((part) => (part.id === 'sign' ? { ...part, locked: true } : part));
    const mends = mendsFor(shownFrom({ ...design, parts }), errorsIn({ ...design, parts }));
    expect(mends.length).toBeGreaterThan(0);
    expect(mends.every(({ parts }) => parts.join() === 'board')).toBe(true);
  });

  it('bring back what is past the edge, and lay what hangs in the air on what is under it', () => {
    const off = designOf([panel('board', -60, 300, 400, 500)]);
    const found = layoutOf(off).checks.filter(({ code }) => code === 'part.off-face');
    expect(mendsFor(shownFrom(off), found)).toMatchObject([{ how: 'move', axis: 'x', by: 60 }]);
    const air = designOf([panel('board', 100, 200, 300, 300), panel('plate', 500, 900, 90, 90, 'board')]);
    const held = layoutOf(air).checks.filter(({ code }) => code === 'part.unsupported');
    expect(mendsFor(shownFrom(air), held)).toMatchObject([{ how: 'lay', parts: ['plate'] }]);
  });

  it('leave no two bodies in one place, of random pairs', () => {
    const chance = chanceOf(17);
    const some = (from: number, to: number) => Math.round(from + chance() * (to - from));
    let offered = 0;
    for (let i = 0; i < Number(process.env.SHOWFACE_MENDS ?? 60); i++) {
      const one = panel('a', some(150, 500), some(150, 900), some(60, 400), some(60, 700));
      const two = panel('b', some(150, 500), some(150, 900), some(60, 400), some(60, 700));
      const pair = designOf([one, two]);
      const found = errorsIn(pair).filter(({ code }) => code === 'part.overlap');
      const [a, b] = layoutOf(pair).parts;
      expect(found.length).toBe(a && b && clash(a, b) ? 1 : 0);
      for (const { edits, parts } of mendsFor(shownFrom(pair), found)) {
        offered++;
        const done = applyEdits(pair, edits);
        if (!done.ok) throw new Error('a mend does not apply');
        const [p, q] = layoutOf(done.design, new Set(parts)).parts;
        expect(p && q && clash(p, q)).toBe(false);
      }
    }
    expect(offered).toBeGreaterThan(20);
  });

  describe('of strips over a roundel', () => {
    const roundel = (x: number, y: number, w: number): Part => ({
      ...newPart('panel', { id: 'roundel', name: 'Roundel', box: { x, y, w, h: w } }),
      shape: { form: 'round' },
    });
    const batten = (y: number, h: number): Part => ({
      ...newPart('strip', { id: 'batten', name: 'Batten', box: { x: 480, y, w: 63.5, h } }),
      lie: 'up',
    });
    const offered = (of: Design) =>
      mendsFor(
        shownFrom(of),
        errorsIn(of).filter(({ code }) => code === 'part.overlap'),
      );
    const laidAfter = (of: Design, how: string) => {
      const done = applyEdits(of, offered(of).find((mend) => mend.how === how)?.edits ?? []);
      if (!done.ok) throw new Error('a mend does not apply');
      return layoutOf(done.design);
    };

    it('cut the end that was drawn into it to its curve: the lengths of both edges by Pythagoras', () => {
      // From below up into a circle of radius 200 about (500, 900): its edges 20 to the left and 43.5 to the right.
      const into = designOf([roundel(300, 700, 400), batten(300, 500)]);
      const { checks, parts } = laidAfter(into, 'stop');
      expect(checks.filter(({ severity }) => severity === 'error')).toEqual([]);
      const cut = parts.find(({ id }) => id === 'batten');
      const tops = (cut?.region ?? []).flatMap(({ outer }) => outer).filter(({ y }) => y > 400);
      const at = (x: number) => Math.max(...tops.filter((p) => Math.abs(p.x - x) < 1e-6).map(({ y }) => y));
      expect(at(480)).toBeCloseTo(900 - Math.sqrt(200 ** 2 - 20 ** 2), 1);
      expect(at(543.5)).toBeCloseTo(900 - Math.sqrt(200 ** 2 - 43.5 ** 2), 1);
    });

    it('leave out what is beyond it, or keep that as a strip of its own, which stays in line', () => {
      const over = designOf([roundel(300, 700, 400), batten(300, 1200)]);
      expect(offered(over).map(({ how }) => how)).toContain('cut');
      const { checks, parts } = laidAfter(over, 'cut');
      expect(checks.filter(({ severity }) => severity === 'error')).toEqual([]);
      const [below, above] = parts.filter(({ kind }) => kind === 'strip');
      expect([below?.box.y, (above?.box.y ?? 0) + (above?.box.h ?? 0)]).toEqual([300, 1500]);
      expect(above?.name).toBe('Batten 2');
      // The roundel moves: both follow. The lower one moves: the upper one stays in line.
      const done = applyEdits(over, offered(over).find(({ how }) => how === 'cut')?.edits ?? []);
      if (!done.ok) throw new Error('a mend does not apply');
      const parts2 = done.design.parts.map((part) =>
        part.id === 'batten'
          ? { ...part, box: { ...part.box, x: 450 } }
          : part.id === 'roundel'
            ? { ...part, box: { ...part.box, y: 800 } }
            : part,
      );
      const moved = layoutOf({ ...done.design, parts: parts2 });
      expect(moved.checks.filter(({ severity }) => severity === 'error')).toEqual([]);
      const [lower, upper] = moved.parts.filter(({ kind }) => kind === 'strip');
      expect([lower?.box.x, upper?.box.x]).toEqual([450, 450]);
      const high = ({ box: { y, h } }: LaidPart) => y + h;
      expect(lower && below && high(lower) - high(below)).toBeGreaterThan(90);
    });

    it('cut a whole row to an arch that it was spread under, once for all', () => {
      const row: Part = {
        ...newPart('array', { id: 'battens', name: 'Battens', box: { x: 220, y: 300, w: 560, h: 520 } }),
        across: { mode: 'gaps', count: 5 },
      };
      const under = designOf([roundel(200, 700, 600), row]);
      const [group = []] = alike(errorsIn(under).filter(({ code }) => code === 'part.overlap'));
      expect(group.length).toBeGreaterThan(1);
      const stop = mendsFor(shownFrom(under), group).find(({ how }) => how === 'stop');
      const done = applyEdits(under, stop?.edits ?? []);
      if (!stop || !done.ok) throw new Error('no row ends at it');
      const { checks, parts } = layoutOf(done.design);
      expect(checks.filter(({ severity }) => severity === 'error')).toEqual([]);
      const lengths = parts
        .filter(({ kind }) => kind === 'strip')
        .map(({ box: { h } }) => Math.round(h * 10));
      expect(new Set(lengths).size).toBe(3);
    });
  });
});
