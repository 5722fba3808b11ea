import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { applyEdits } from '../../src/design/edit/edit.ts';
import type { Design, Part, Run } from '../../src/design/schema.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { mendsFor } from '../../src/editor/edit/mends.ts';
import { layoutOf } from './laid.ts';

const run = (more: Partial<Run>): Part => ({
  ...newPart('run', { id: 'frame', name: 'Frame', box: { x: 300, y: 300, w: 600, h: 800 } }),
  ...more,
});
const roundel = (x: number, y: number, size: number): Part => ({
  ...newPart('panel', {
    id: 'roundel',
    name: 'Roundel',
    box: { x: x - size / 2, y: y - size / 2, w: size, h: size },
  }),
  shape: { form: 'round' },
});
const designOf = (...parts: Part[]): Design => ({ ...newDesign(), parts });
const errorsOf = (design: Design) => layoutOf(design).checks.filter(({ severity }) => severity === 'error');
const offered = (design: Design) =>
  mendsFor(
    shownFrom(design),
    errorsOf(design).filter(({ code }) => code === 'part.overlap'),
  );

const mendedBy = (design: Design, how: string): Design => {
  const done = applyEdits(design, offered(design).find((mend) => mend.how === how)?.edits ?? []);
  if (!done.ok || done.design === design) throw new Error(`no way to ${how}`);
  return done.design;
};
const runsOf = (design: Design) => layoutOf(design).parts.filter(({ kind }) => kind === 'run');
const legsOf = (design: Design) => runsOf(design).map((laid) => ('legs' in laid ? laid.legs.length : 0));

describe('a frame with a roundel in its way', () => {
  it('is cut open where it crosses one side, or one corner', () => {
    for (const [x, y, legs] of [
      [300, 700, 5],
      [600, 300, 5],
      [300, 300, 4],
    ] as const) {
      const open = mendedBy(designOf(run({}), roundel(x, y, 200)), 'open');
      expect(errorsOf(open)).toEqual([]);
      expect(legsOf(open)).toEqual([legs]);
    }
  });

  it('is cut in two where it crosses both stiles: both sides are kept in line, or one alone', () => {
    const over = designOf(run({}), roundel(600, 700, 700));
    const two = mendedBy(over, 'cut');
    expect(errorsOf(two)).toEqual([]);
    expect(legsOf(two)).toEqual([3, 3]);
    expect(two.parts.map(({ name }) => name)).toEqual(['Frame', 'Roundel', 'Frame 2']);
    // The frame moves, and the roundel: both sides follow.
    const moved: Design = {
      ...two,
      parts: two.parts.map((part) =>
        part.id === 'run-1'
          ? part
          : { ...part, box: { ...part.box, x: part.box.x + 40, w: part.box.w + 20 } },
      ),
    };
    expect(errorsOf(moved)).toEqual([]);
    const [one, other] = runsOf(moved).map(({ box }) => box);
    expect(one).toEqual(other);
    expect(one?.x).toBe(340);
    expect(legsOf(mendedBy(over, 'stop'))).toEqual([3]);
  });

  it('is whole again once what is left of it is taken for the whole', () => {
    const design = designOf(run({}), roundel(300, 700, 200));
    const open = mendedBy(design, 'open');
    const parts = open.parts.map((part) =>
      part.kind === 'run' ? { ...part, path: { ...part.path, only: undefined } as Run['path'] } : part,
    );
    expect(runsOf({ ...open, parts }).map(({ region }) => region)).toEqual(
      runsOf(design).map(({ region }) => region),
    );
  });

  it('of a ready shape is drawn by corners first, and open at its foot stays open', () => {
    const head = { form: 'pointed', rise: 500 } as const;
    const arch = run({ path: { form: 'shape', shape: head, open: true } });
    const two = mendedBy(designOf(arch, roundel(600, 1100, 200)), 'cut');
    expect(errorsOf(two)).toEqual([]);
    expect(runsOf(two)).toHaveLength(2);
    for (const laid of runsOf(two)) expect(laid.region.length).toBe(1);
  });
});
