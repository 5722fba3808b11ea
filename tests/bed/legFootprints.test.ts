import { describe, expect, it } from 'vitest';
import { faceOf } from '../../src/bed/faceOf.ts';
import { allKeepClears, legFootprints } from '../../src/bed/legFootprints.ts';
import { sampleBed } from './sample.ts';

/*
 * The sample's legs, in inches: 2 square and 11 long, 6 from the far end and 3 from the sides. Its face is
 * 41 1/2 wide and 78 high standing up, 78 wide and 41 1/2 high lying along the wall.
 */
const onFace = (more: object = {}) => {
  const bed = sampleBed(more);
  return { ...bed, legs: { ...bed.legs, where: 'on-face' as const } };
};
const footprints = (bed: ReturnType<typeof sampleBed>) =>
  legFootprints(faceOf(bed).face, bed).map(({ id, box, height }) => [
    id,
    ...[box.x, box.y, box.w, box.h, height].map((mm) => +(mm / 25.4).toFixed(9)),
  ]);

describe('the places of the legs on the face, by hand', () => {
  it('of a bed that stands up: near its top, where it comes down', () => {
    expect(footprints(onFace())).toEqual([
      ['bed:leg-left', 3, 70, 2, 2, 11],
      ['bed:leg-right', 36.5, 70, 2, 2, 11],
    ]);
  });

  it('of a bed that lies along the wall', () => {
    expect(footprints(onFace({ pivotAlong: 'side' }))).toEqual([
      ['bed:leg-left', 3, 33.5, 2, 2, 11],
      ['bed:leg-right', 73, 33.5, 2, 2, 11],
    ]);
  });

  it('are none where the legs stand beside what is seen', () => {
    const bed = sampleBed();
    expect(footprints(bed)).toEqual([]);
    const own = [
      { id: 'k', name: 'Latch', why: 'latch', box: { x: 0, y: 0, w: 9, h: 9 }, height: 5 },
    ] as const;
    expect(allKeepClears(own, faceOf(bed).face, bed)).toBe(own);
    const legs = onFace();
    expect(allKeepClears(own, faceOf(legs).face, legs).map(({ id, why }) => [id, why])).toEqual([
      ['k', 'latch'],
      ['bed:leg-left', 'leg'],
      ['bed:leg-right', 'leg'],
    ]);
  });

  it('that do not fit beside each other are told by the bed, and not drawn', () => {
    const bed = onFace();
    // 41 1/2 less twice 20 and twice 2: two and a half too much.
    const wide = { ...bed, legs: { ...bed.legs, fromSide: 20 * 25.4 } };
    expect(footprints(wide)).toEqual([]);
    const told = faceOf(wide).checks.map(({ code, figures }) => [code, figures.what, figures.size_mm]);
    expect(told).toEqual([['bed.no-room', 'legs', expect.closeTo(-2.5 * 25.4, 6)]]);
    const beside = { ...wide, legs: { ...wide.legs, where: 'beside' as const } };
    expect(faceOf(beside).checks).toEqual([]);
  });
});
