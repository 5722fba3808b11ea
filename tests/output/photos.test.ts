import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../src/drawing/drawing.ts';
import { image } from '../../src/drawing/items.ts';
import { flatten } from '../../src/drawing/walk.ts';
import { intersect, regionOfRings } from '../../src/geometry/clip.ts';
import { ringsOfPath } from '../../src/geometry/curve.ts';
import { boxOfPath } from '../../src/geometry/path.ts';
import { areaOf, regionOfBox } from '../../src/geometry/region.ts';
import type { Point } from '../../src/geometry/shape.ts';
import { letter } from '../../src/lettering/letter.ts';
import { placedPhoto } from '../../src/lettering/photo/placed.ts';
import { pick } from '../../src/list/at.ts';
import { pdfOf } from '../../src/output/pdf/pdf.ts';
import { itemsThrough } from '../../src/output/room/eye.ts';
import { svgOf } from '../../src/output/svg/svg.ts';
import { planPattern } from '../../src/patterns/planPatterns.ts';
import { fontOf } from '../lettering/fonts.ts';
import { lettering } from '../lettering/lettering.ts';
import { jpegPhoto, pngPhoto } from '../lettering/photos.ts';
import { setupOf } from '../patterns/setup.ts';
import { printerTools, rasterOf } from './raster.ts';
import { LETTERS } from './setWith.ts';

const INFO = { title: 'A', date: '', language: 'en' };
const [W, H] = [306, 266];
const CELL = 24;

/** An even mix without order of black, gray and white cells: no cell is like those it could be mistaken for. */
const cellOf = (column: number, row: number): number =>
  [0, 128, 255][(column * column * 7 + row * 13 + column * row * 5) % 3] ?? 0;

/** Where the picture begins on a page, by what clips its ground. */
function cornerOf({ items }: Drawing) {
  const ground = flatten(items).paths.find(({ item }) => item.fill === '#ffffff');
  return boxOfPath(pick(ground?.clips ?? [], 0));
}

/** Whether the line to trim, a hair wide, runs here: 3 mm within the print. */
const isOnTrim = (x: number, y: number): boolean =>
  [x - 3, W - 3 - x, y - 3, H - 3 - y].some((off) => Math.abs(off) < 0.3);

/** 2 pixels a millimeter: as large as the sign with its bleed, so that a pixel is half a millimeter on paper. */
const PHOTOS = {
  'PNG as it is packed': pngPhoto('a', 2 * W, 2 * H, (x, y) => [
    cellOf(Math.floor(x / CELL), Math.floor(y / CELL)),
  ]),
  'gray PNG': pngPhoto('a', 2 * W, 2 * H, (x, y) => [cellOf(Math.floor(x / CELL), Math.floor(y / CELL))], 0),
  'PNG with clear parts': pngPhoto(
    'a',
    2 * W,
    2 * H,
    // White is clear: the paper, which is white, shows through.
    (x, y) => {
      const gray = cellOf(Math.floor(x / CELL), Math.floor(y / CELL));
      return gray === 255 ? [0, 0, 0, 0] : [gray, gray, gray, 255];
    },
    6,
  ),
} as const;

const setsOf = (photo: (typeof PHOTOS)[keyof typeof PHOTOS]) => {
  const board = regionOfBox({ x: 0, y: 0, w: 300, h: 260 });
  const made = lettering('', { make: 'printed', finish: 'ink' });
  const { lettered } = letter({
    lettering: made,
    font: fontOf('bebas-neue'),
    sign: { id: 's', w: 300, h: 260 },
  });
  const lying = { photo: 'a', fit: 'cover', width: 1, shift: { x: 0, y: 0 } } as const;
  const paper = { bleed: 3, margin: 0 };
  const placed = placedPhoto(photo, lying, { x: 0, y: 0, w: 300, h: 260 }, paper);
  const printing = { ground: '#ffffff', bleed: 3, colors: { ink: '#000000' }, photos: [placed], blocks: [] };
  const sign = { kind: 'sign', id: 's', name: 's', mode: 'printed', board, lettered, printing } as const;
  const more = { spacing: 3, bent: false, stencils: [], seams: [] };
  const { sets } = planPattern({ kind: 'prints', signs: [{ ...sign, ...more }] }, setupOf({}));
  const [set] = sets;
  if (!set || sets.length > 1) throw new Error('not one set of pages');
  return set;
};

describe.runIf(printerTools)('a printed sign with a photo', () => {
  // The pages as another program (poppler) prints them, laid where their windows say, against the photo's own cells.
  it.each(Object.entries(PHOTOS))(
    '(%s) stitched from its tiles is the photo, within 0.1 mm',
    async (_, photo) => {
      const set = setsOf(photo);
      expect(set.pages.length).toBeGreaterThan(1);
      const pages = set.pages.map(({ drawing }) => ({
        ...{ width_mm: drawing.width, height_mm: drawing.height, drawing },
      }));
      const bytes = await pdfOf(pages, INFO, LETTERS);
      const DOTS = 20;
      const seen = new Set<string>();
      let wrong = 0;
      set.pages.forEach((page, i) => {
        const raster = rasterOf(bytes, DOTS * 25.4, i + 1);
        const { window, drawing } = page;
        const corner = cornerOf(drawing);
        const cell = CELL / 2;
        // Points 0.1 mm beside every border of cells, and in their middles.
        const near = [0.1, cell / 2, cell - 0.1];
        for (let column = 0; column * cell < W; column++) {
          for (let row = 0; row * cell < H; row++) {
            for (const dx of near) {
              for (const dy of near) {
                const [x, y] = [column * cell + dx, H - row * cell - dy];
                if (x < window.x || y < window.y || x >= window.x + window.w || y >= window.y + window.h)
                  continue;
                if (x >= W || y <= 0 || isOnTrim(x, y)) continue;
                seen.add(`${column} ${row}`);
                const px = Math.floor((corner.x + x - window.x) * DOTS);
                const py = Math.floor((drawing.height - (corner.y + y - window.y)) * DOTS);
                if (Math.abs(raster.at(px, py) - cellOf(column, row)) > 40) wrong += 1;
              }
            }
          }
        }
      });
      expect(wrong).toBe(0);
      expect(seen.size).toBe(Math.ceil(W / 12) * Math.ceil(H / 12));
    },
    60_000,
  );
});

describe('a photo in a drawing', () => {
  const photo = jpegPhoto('b', 12, 8, (column, row) => 20 * column + row);
  const drawing: Drawing = {
    ...{ width: 200, height: 100, title: 't' },
    items: [{ kind: 'group', move: { x: 10, y: 5 }, items: [image(photo, { x: 20, y: 30, w: 96, h: 64 })] }],
  };

  it('is printed by another program as it was packed, gray for gray, right side up', async () => {
    if (!printerTools) return;
    const page = { width_mm: 200, height_mm: 100, drawing };
    const raster = rasterOf(await pdfOf([page], INFO, LETTERS), 254);
    for (let column = 0; column < 12; column++) {
      for (let row = 0; row < 8; row++) {
        // A block of 8 pixels is 8 mm; row 0 is the uppermost, 1 mm under the page's upper edge.
        const gray = raster.at((30 + 8 * column + 4) * 10, (1 + 8 * row + 4) * 10);
        expect(Math.abs(gray - (20 * column + row))).toBeLessThanOrEqual(2);
      }
    }
  });

  it('stands in an SVG once, however often it is shown, at its place in millimeters', () => {
    const twice = { ...drawing, items: [...drawing.items, image(photo, { x: 0, y: 0, w: 12, h: 8 })] };
    const svg = svgOf(twice);
    expect(svg.split(photo.data).length).toBe(2);
    // A unit of the picture's own is 96 by 64; its upper left corner lies 30 from the left and 1 under the upper edge.
    expect(svg).toContain('transform="matrix(96 0 0 64 30 1)"');
    expect(svg).toContain('transform="matrix(12 0 0 8 0 92)"');
  });

  it('seen at a slant lies within a hundredth of its width of where each place of it is seen', () => {
    // A central projection (homogeneous coordinates), whose middle is known: where the diagonals cross.
    const seen = ({ x, y }: Point): Point => ({ x: x / (1 + y / 300), y: y / (1 + y / 300) });
    const items = itemsThrough([image(photo, { x: -60, y: 0, w: 120, h: 80 })], seen);
    let most = 0;
    for (let u = 0.02; u < 1; u += 0.06) {
      for (let v = 0.02; v < 1; v += 0.06) {
        const place = seen({ x: -60 + 120 * u, y: 80 * v });
        // The last of the cells over a place is seen there.
        const cell = items.findLast(
          (item) =>
            item.kind === 'group' &&
            areaOf(
              intersect(
                regionOfRings(ringsOfPath(item.clip ?? []), 'nonzero'),
                regionOfBox({ x: place.x - 0.01, y: place.y - 0.01, w: 0.02, h: 0.02 }),
              ),
            ) > 2e-4,
        );
        const inner = cell?.kind === 'group' ? cell.items[0] : undefined;
        if (inner?.kind !== 'image') throw new Error(`nothing is seen at ${u} ${v}`);
        const [low, right, up] = inner.corners;
        const at = {
          x: low.x + u * (right.x - low.x) + v * (up.x - low.x),
          y: low.y + u * (right.y - low.y) + v * (up.y - low.y),
        };
        most = Math.max(most, Math.hypot(at.x - place.x, at.y - place.y));
      }
    }
    expect(most).toBeLessThan(0.6);
    // Seen squarely it stays one picture.
    const flat = itemsThrough([image(photo, { x: 0, y: 0, w: 12, h: 8 })], ({ x, y }) => ({
      x: 2 * x + y,
      y: 3 * y,
    }));
    expect(flat).toEqual([
      {
        kind: 'image',
        raster: photo,
        corners: [
          { x: 0, y: 0 },
          { x: 24, y: 0 },
          { x: 8, y: 24 },
        ],
      },
    ]);
  });
});
