import { describe, expect, it } from 'vitest';
import type { OutlineCorner, PanelShape } from '../../../src/design/schema.ts';
import { at, design, lay, panel, run } from '../sample.ts';

/** Notes that measures have no room, of a board 200 wide and 300 high and of an opening of that size in a larger one. */
function notes(shape: PanelShape): number[] {
  const box = at(100, 100, 200, 300);
  const margin = { left: 50, right: 50, bottom: 50, top: 50 };
  const around = { ...panel('around', at(50, 50, 300, 400)), openings: [{ id: 'opening-1', shape, margin }] };
  return [{ ...panel('own', box), shape }, around].map(
    (part) => lay(design([part])).checks.filter(({ code }) => code === 'part.measures-eased').length,
  );
}

describe('measures that have no room in their box', () => {
  // A rise of at most half the span is circular, of at most the box is any; lower arcs within half the span. A four-centered
  // head of 8 in arcs joined at 70 degrees has no solution (check-values-2.md, section 16): so have these at 60.
  it.each<[PanelShape, number]>([
    [{ form: 'arched', rise: 100 }, 0],
    [{ form: 'arched', rise: 101 }, 1],
    [{ form: 'pointed', rise: 173 }, 0],
    [{ form: 'pointed', rise: 99 }, 1],
    [{ form: 'pointed', rise: 301 }, 1],
    [{ form: 'basket', rise: 60 }, 0],
    [{ form: 'basket', rise: 100 }, 1],
    [{ form: 'elliptical', rise: 300 }, 0],
    [{ form: 'four-centered', rise: 75, radius: 50 }, 0],
    [{ form: 'four-centered', rise: 150, radius: 20 }, 1],
    [{ form: 'ogee', rise: 200, radius: 100 }, 0],
    [{ form: 'ogee', rise: 60, radius: 100 }, 1],
    [{ form: 'round' }, 0],
  ])('%j: %d', (shape, count) => {
    expect(notes(shape)).toEqual([count, count]);
  });

  it('are told of drawn outlines and paths: a bow higher than the box is', () => {
    const square = (rise: number): OutlineCorner[] => [
      { u: 0, v: 0 },
      { u: 1, v: 0 },
      { u: 1, v: 1, side: { as: 'rise', rise } },
      { u: 0, v: 1 },
    ];
    expect(notes({ form: 'polygon', points: square(80) })).toEqual([0, 0]);
    expect(notes({ form: 'polygon', points: square(320) })).toEqual([1, 1]);
    const told = (rise: number) => {
      const path = { form: 'points', points: square(rise), closed: true } as const;
      const { checks } = lay(design([{ ...run('trim', at(0, 0, 200, 300)), path }]));
      return checks.filter(({ code }) => code === 'part.measures-eased').length;
    };
    expect([told(80), told(320)]).toEqual([0, 1]);
  });
});
