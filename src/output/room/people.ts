import type { Color, DrawItem } from '../../drawing/drawing.ts';
import { circle, polyline } from '../../drawing/items.ts';
import type { Mm } from '../../measure/units.ts';

/** Someone for scale, who looks toward the bed. */
export interface Person {
  readonly id: 'child' | 'grown' | 'wheelchair';
  /** Of the bed. */
  readonly side: 'left' | 'right';
  readonly height: Mm;
  /** From the middle to either side. */
  readonly half: Mm;
}

/**
 * Heights of a child of six and of a grown person (medians, both sexes together, rounded to 10 mm; from memory) and of the
 * top of the head of a grown person who sits on a seat 480 mm high (the same person's sitting height, from memory).
 */
export const PEOPLE: readonly Person[] = [
  { id: 'child', side: 'right', height: 1160, half: 200 },
  { id: 'grown', side: 'right', height: 1690, half: 260 },
  { id: 'wheelchair', side: 'left', height: 1340, half: 420 },
];

const COLOR: Color = '#5c656e';

/** Silhouettes: a grown person is seven and a half heads high, a child of six some six (drawing books, from memory). */
export function drawnPerson({ id, height }: Person): DrawItem[] {
  const filled = { fill: COLOR } as const;
  const put = (points: readonly (readonly [number, number])[]): DrawItem =>
    polyline(
      points.map(([x, y]) => ({ x, y })),
      true,
      filled,
    );
  if (id === 'wheelchair') return seated(height, put);
  const head = height / (id === 'child' ? 6 : 7.5);
  const neck = height - head;
  const hip = height * 0.48;
  const [w, waist, foot] = [height * 0.115, height * 0.075, height * 0.06];
  return [
    circle({ x: 0, y: height - head / 2 }, head / 2.15, filled),
    put([
      [-w, neck - head * 0.25],
      [-w * 0.5, neck - head * 0.02],
      [w * 0.5, neck - head * 0.02],
      [w, neck - head * 0.25],
      [w * 1.25, hip],
      [w * 0.95, hip],
      [waist, neck - head * 1.1],
      [w * 0.85, hip * 0.98],
      [foot * 1.15, 0],
      [foot * 0.25, 0],
      [0, hip * 0.9],
      [-foot * 0.25, 0],
      [-foot * 1.15, 0],
      [-w * 0.85, hip * 0.98],
      [-waist, neck - head * 1.1],
      [-w * 0.95, hip],
      [-w * 1.25, hip],
    ]),
  ];
}

/** From the side, with a wheel of 610 mm (24 in, the usual size; from memory) before the body. */
function seated(height: Mm, put: (points: readonly (readonly [number, number])[]) => DrawItem): DrawItem[] {
  const head = 225;
  const seat = 480;
  const ring = { stroke: COLOR, width: 28 } as const;
  return [
    circle({ x: 70, y: height - head / 2 }, head / 2.15, { fill: COLOR }),
    // Back, arm on the armrest, thigh, shin and foot.
    put([
      [0, height - head - 25],
      [120, height - head - 25],
      [190, height - head - 90],
      [215, seat + 120],
      [215, seat - 60],
      [-190, seat - 60],
      [-260, 150],
      [-390, 150],
      [-390, 85],
      [-190, 85],
      [-110, seat - 190],
      [-90, seat - 60],
      [-290, seat - 30],
      [-330, seat + 110],
      [-20, seat + 115],
      [-30, seat + 190],
      [-250, seat + 175],
      [-250, seat + 245],
      [-10, seat + 270],
    ]),
    circle({ x: 110, y: 305 }, 291, ring),
    circle({ x: -250, y: 70 }, 56, ring),
  ];
}
