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
    // Rounded corners of at most half the shorter side; a ring of at most half of it; points and notches of half the length.
    [{ form: 'corners', cut: 'coved', size: 100 }, 0],
    // Rounder than there is room for is as round as it can be, and meant so.
    [{ form: 'corners', cut: 'rounded', size: 900 }, 0],
    [{ form: 'corners', cut: 'stepped', size: 101 }, 1],
    [{ form: 'ring', width: 99 }, 0],
    [{ form: 'ring', width: 120 }, 1],
    [{ form: 'shield', point: 100 }, 0],
    [{ form: 'shield', point: 130 }, 1],
    [{ form: 'ribbon', notch: 99 }, 0],
    [{ form: 'ribbon', notch: 130 }, 1],
    [{ form: 'arch-band', rise: 100, width: 30 }, 0],
    [{ form: 'arch-band', rise: 140, width: 30 }, 1],
    [{ form: 'scalloped', count: 4, depth: 25 }, 0],
    [{ form: 'scalloped', count: 4, depth: 400 }, 1],
    [{ form: 'waved', count: 4, depth: 400 }, 1],
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

  it('are told with what fits: a rise by half the span, a radius by half its side, corners by the side between them', () => {
    const told = (shape: PanelShape) => {
      const own = { ...panel('own', at(100, 100, 200, 300)), shape };
      return lay(design([own])).checks.find(({ code }) => code === 'part.measures-eased')?.figures;
    };
    expect(told({ form: 'arched', rise: 140 })).toEqual({
      why: 'most',
      asked_mm: 140,
      fits_mm: expect.closeTo(100, 2),
    });
    const square: OutlineCorner[] = [
      { u: 0, v: 0 },
      { u: 1, v: 0 },
      { u: 1, v: 1 },
      { u: 0, v: 1 },
    ];
    const [first, ...rest] = square;
    if (!first) throw new Error('no corner');
    // The foot, 200 long: no arc of a radius under 100 spans it.
    const bowed = (radius: number): PanelShape => ({
      form: 'polygon',
      points: [{ ...first, side: { as: 'radius', radius: -radius } }, ...rest],
    });
    expect(told(bowed(110))).toBeUndefined();
    expect(told(bowed(60))).toEqual({ why: 'least', asked_mm: 60, fits_mm: expect.closeTo(100, 6) });
    const clipped = (size: number): PanelShape => ({
      form: 'polygon',
      points: square.map((corner) => ({ ...corner, cut: { how: 'clipped', size } })),
    });
    expect(told(clipped(99))).toBeUndefined();
    expect(told(clipped(120))).toMatchObject({ why: 'together' });
  });
});
