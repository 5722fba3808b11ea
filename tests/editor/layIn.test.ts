import { describe, expect, it } from 'vitest';
import { placeInPhoto } from '../../src/editor/photo/layIn.ts';
import { newPlacing } from '../../src/editor/photo/placing.ts';
import { litPixels, type Pixels, warpedPixels } from '../../src/editor/photo/warp.ts';
import type { Quad } from '../../src/geometry/shape.ts';
import { chanceOf } from '../chance.ts';
import { runs } from '../runs.ts';

const FACE = { width: 300, height: 560 };
const PHOTO = { width: 900, height: 700 };

/**
 * A camera without lens errors by its own axes (Hartley and Zisserman, Multiple View Geometry, the pinhole model; from
 * memory): turned about the upright by `yaw` and about its own level by `pitch`, it takes places to pixels.
 */
function camera(yaw: number, pitch: number, focal: number) {
  const eye = { x: 150 + 900 * Math.sin(yaw), y: 280 + 900 * Math.sin(pitch), z: 900 * Math.cos(yaw) };
  return ({ x, y }: { readonly x: number; readonly y: number }) => {
    const d = { x: x - eye.x, y: y - eye.y, z: -eye.z };
    const across = d.x * Math.cos(yaw) - d.z * Math.sin(yaw);
    const deep = -(d.x * Math.sin(yaw) + d.z * Math.cos(yaw));
    const up = d.y * Math.cos(pitch) + deep * Math.sin(pitch);
    const away = deep * Math.cos(pitch) - d.y * Math.sin(pitch);
    return { x: PHOTO.width / 2 + (focal * across) / away, y: PHOTO.height / 2 - (focal * up) / away };
  };
}

/** A face with a white dot at each of some places, counted up from its lower left. */
function dotted(places: readonly { readonly x: number; readonly y: number }[]): Pixels {
  const data = new Uint8ClampedArray(FACE.width * FACE.height * 4).map((_, i) => (i % 4 === 3 ? 255 : 0));
  for (const { x, y } of places)
    for (let i = -2; i < 2; i++)
      for (let j = -2; j < 2; j++)
        data.fill(
          255,
          ((FACE.height - y + i) * FACE.width + x + j) * 4,
          ((FACE.height - y + i) * FACE.width + x + j) * 4 + 3,
        );
  return { data, ...FACE };
}

describe('a face laid into a photo', () => {
  it('lies within a pixel of where a camera would have seen it', () => {
    const chance = chanceOf(23);
    for (let run = 0; run < runs(4); run++) {
      const see = camera((chance() - 0.5) * 0.9, (chance() - 0.5) * 0.4, 700);
      const corner = (x: number, y: number) => see({ x: x * FACE.width, y: y * FACE.height });
      const quad: Quad = [corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1)];
      const dots = Array.from({ length: 6 }, () => ({
        x: 20 + Math.floor(chance() * (FACE.width - 40)),
        y: 20 + Math.floor(chance() * (FACE.height - 40)),
      }));
      const placing = { ...newPlacing(PHOTO, FACE), quad };
      for (const dot of dots) {
        const place = placeInPhoto({ placing, image: PHOTO }, PHOTO, FACE);
        if (!place) throw new Error('no place for the face');
        const { around } = place;
        const laid = warpedPixels(dotted([dot]), place.toFace, around.w, around.h, around);
        const sum = { x: 0, y: 0, all: 0 };
        for (let y = 0; y < around.h; y++)
          for (let x = 0; x < around.w; x++) {
            const light = laid.data[(y * around.w + x) * 4] ?? 0;
            sum.x += light * (around.x + x + 0.5);
            sum.y += light * (around.y + y + 0.5);
            sum.all += light;
          }
        const seen = see(dot);
        expect(sum.all).toBeGreaterThan(0);
        expect(Math.hypot(sum.x / sum.all - seen.x, sum.y / sum.all - seen.y)).toBeLessThan(1);
      }
    }
  });

  it('has no place where three corners are in line', () => {
    const quad: Quad = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 20, y: 0 },
      { x: 0, y: 30 },
    ];
    const placing = { ...newPlacing(PHOTO, FACE), quad };
    expect(placeInPhoto({ placing, image: PHOTO }, PHOTO, FACE)).toBeNull();
  });

  it('is lit by a brightness of all colors, and by red against blue', () => {
    const one: Pixels = { data: new Uint8ClampedArray([100, 100, 100, 255]), width: 1, height: 1 };
    expect([...litPixels(one, { brightness: 0.5, warmth: 0 }).data]).toEqual([50, 50, 50, 255]);
    // Seventeen and a half more of red and less of blue, rounded to the even one.
    expect([...litPixels(one, { brightness: 1, warmth: 0.5 }).data]).toEqual([118, 100, 82, 255]);
  });
});
