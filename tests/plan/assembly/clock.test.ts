import * as polyclip from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import { designSchema } from '../../../src/design/schema.ts';
import { intersect, offset } from '../../../src/geometry/clip.ts';
import { distance } from '../../../src/geometry/point.ts';
import { areaOf, boxOf } from '../../../src/geometry/region.ts';
import type { Box, Point, Region } from '../../../src/geometry/shape.ts';
import type { LaidPart } from '../../../src/layout/laid.ts';
import { chanceOf, pick } from '../../chance.ts';
import { runs } from '../../runs.ts';
import { madeOn, SKINNED } from './made.ts';

const corners = (region: Region): Point[] => region.flatMap(({ outer }) => [...outer]);

/** The laid parts of a clock by their roles, and its middle. */
function clockOf(box: Box, given: Record<string, string | number>) {
  const { design, group, shown } = madeOn(SKINNED, 'clock-face', box, given);
  expect(designSchema.safeParse(design).success).toBe(true);
  const roles = Object.entries(group.assembly?.parts ?? {});
  const laid = new Map<string, LaidPart>();
  for (const [role, id] of roles) {
    const found = shown.layout.parts.find((part) => part.id === id);
    if (found) laid.set(role, found);
  }
  return { laid, middle: { x: box.x + box.w / 2, y: box.y + box.h / 2 } };
}

const regionOf = (laid: ReadonlyMap<string, LaidPart>, role: string): Region => laid.get(role)?.region ?? [];

describe('a clock face', () => {
  it('is round with twelve hours that meet neither each other nor the ring, in any space', () => {
    for (let seed = 0; seed < runs(4); seed++) {
      const chance = chanceOf(seed);
      const [w, h] = [100 + 700 * chance(), 100 + 700 * chance()];
      const marks = pick(['bars', 'roman', 'arabic'] as const, chance);
      const { laid, middle } = clockOf({ x: 40, y: 60, w, h }, { marks });
      const radius = Math.min(w, h) / 2;
      expect(laid.get('ring')?.box).toEqual({
        ...{ x: middle.x - radius, y: middle.y - radius, w: 2 * radius, h: 2 * radius },
        ...{ x: expect.closeTo(middle.x - radius, 6), y: expect.closeTo(middle.y - radius, 6) },
        ...{ w: expect.closeTo(2 * radius, 6), h: expect.closeTo(2 * radius, 6) },
      });
      const hours = [...laid].filter(([role]) => role.startsWith('hour-'));
      const rim = radius - (laid.get('ring')?.region[0] ? 0.055 * 2 * radius : 0);
      for (const [role, part] of hours) {
        for (const corner of corners(part.region)) {
          expect(distance(corner, middle), `${role} ${marks}`).toBeLessThan(rim);
        }
      }
      const numerals = Array.from({ length: 12 }, (_, i) =>
        hours.filter(([role]) => role.startsWith(`hour-${i + 1}-`)).flatMap(([, part]) => [...part.region]),
      );
      numerals.forEach((one, i) => {
        expect(areaOf(one)).toBeGreaterThan(0);
        const next = numerals[(i + 1) % 12] ?? [];
        expect(areaOf(intersect(one, next)), `${i + 1} ${marks}`).toBe(0);
      });
    }
  });

  it('has each hour where a clock has it: a twelfth of a round from the one before, twelve above', () => {
    const { laid, middle } = clockOf({ x: 40, y: 60, w: 300, h: 300 }, { marks: 'bars' });
    for (let hour = 1; hour <= 12; hour++) {
      const all = corners(regionOf(laid, `hour-${hour}-1`));
      const x = all.reduce((sum, p) => sum + p.x - middle.x, 0);
      const y = all.reduce((sum, p) => sum + p.y - middle.y, 0);
      const clockwise = ((Math.atan2(x, y) * 180) / Math.PI + 360) % 360;
      expect(clockwise).toBeCloseTo((hour * 30) % 360, 5);
    }
  });

  it.each([
    // At 3:00 the hands are square to each other; at 6:00 they lie in line; at 9:30 the hour hand is half way to 10.
    [3, 0, 90, 0],
    [6, 0, 180, 0],
    [9, 30, 285, 180],
    [12, 15, 7.5, 90],
  ])('shows %i:%i', (hour, minute, atHour, atMinute) => {
    const { laid, middle } = clockOf({ x: 40, y: 60, w: 300, h: 300 }, { marks: 'none', hour, minute });
    for (const [role, angle] of [
      ['hand-hour', atHour],
      ['hand-minute', atMinute],
    ] as const) {
      const all = corners(regionOf(laid, role)).map((p) => ({ x: p.x - middle.x, y: p.y - middle.y }));
      // The tip is the narrow end, farther out.
      const tips = [...all].sort((a, b) => Math.hypot(b.x, b.y) - Math.hypot(a.x, a.y)).slice(0, 2);
      const [x, y] = [tips.reduce((s, p) => s + p.x, 0), tips.reduce((s, p) => s + p.y, 0)];
      const off = (((Math.atan2(x, y) * 180) / Math.PI - angle + 540) % 360) - 180;
      expect(off).toBeCloseTo(0, 5);
    }
  });

  // The numerals of dials, as they are read: IIII for four. Common practice, no source.
  it('has the strokes of Roman numerals', () => {
    const { laid } = clockOf({ x: 40, y: 60, w: 300, h: 300 }, { marks: 'roman' });
    const strokes = Array.from({ length: 12 }, (_, i) => {
      const own = [...laid].filter(([role]) => role.startsWith(`hour-${i + 1}-`));
      return own
        .map(([, part]) => ({ 4: 'I', 7: 'V', 12: 'X' })[corners(part.region).length] ?? '?')
        .join('');
    });
    expect(strokes).toEqual('I II III IIII V VI VII VIII IX X XI XII'.split(' '));
  });

  // What figures have in common in any letter style: their counters (a four may be open), twelve above and six below,
  // upright. Counted by a second polygon library on all parts of an hour together.
  it('has the counters of Arabic figures, each part of them by itself, upright at its place', () => {
    const { laid, middle } = clockOf({ x: 40, y: 60, w: 300, h: 300 }, { marks: 'arabic' });
    const hours = Array.from({ length: 12 }, (_, i) =>
      [...laid].filter(([role]) => role.startsWith(`hour-${i + 1}-`)).map(([, part]) => part.region),
    );
    const counters = hours.map((parts) => {
      const [first, ...more] = parts.map((region): polyclip.Geom => {
        // A hair thicker, so that parts that meet are one.
        return offset(region, 1e-4, 'miter').map(({ outer }) => [
          outer.map(({ x, y }): [number, number] => [x, y]),
        ]);
      });
      return polyclip.union(first ?? [], ...more).reduce((sum, rings) => sum + rings.length - 1, 0);
    });
    expect(counters).toEqual([0, 0, 0, 0, 0, 1, 0, 2, 1, 1, 0, 0]);
    hours.forEach((parts, i) => {
      const around = boxOf(parts.flat());
      if (!around) throw new Error('no figures');
      const [x, y] = [around.x + around.w / 2 - middle.x, around.y + around.h / 2 - middle.y];
      expect((((Math.atan2(x, y) * 180) / Math.PI + 360) % 360) / 30).toBeCloseTo((i + 1) % 12, 0);
      expect(around.h).toBeCloseTo(30, 6);
      parts.forEach((one, k) => {
        for (const other of parts.slice(k + 1))
          expect(areaOf(intersect(one, other)), `${i + 1}`).toBeLessThan(1e-3);
      });
    });
  });
});
