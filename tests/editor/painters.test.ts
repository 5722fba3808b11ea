import { afterAll, describe, expect, it, vi } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { drawSurroundings } from '../../src/editor/canvas/drawSurroundings.ts';
import { groundPainter } from '../../src/editor/canvas/ground.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { dimensionsAbove, drawDimensions, drawFigures } from '../../src/editor/drawing/drawDimensions.ts';
import { drawFaceLevels } from '../../src/editor/drawing/drawFaceLevels.ts';
import { drawInHand } from '../../src/editor/drawing/drawInHand.ts';
import { drawKeepClears } from '../../src/editor/drawing/drawKeepClears.ts';
import { drawPhotoHandles } from '../../src/editor/drawing/drawPhotoHandles.ts';
import { drawReal } from '../../src/editor/drawing/drawReal.ts';
import { fromBelow } from '../../src/editor/drawing/order.ts';
import { type Painted, type PartsLook, paintParts } from '../../src/editor/drawing/paintParts.ts';
import { type Pen, pictureOf } from '../../src/editor/drawing/pen.ts';
import { pickAt } from '../../src/editor/drawing/pick.ts';
import { rulerPainter } from '../../src/editor/drawing/rulers.ts';
import { sceneOf } from '../../src/editor/drawing/scene.ts';
import { drawTicks, RULER } from '../../src/editor/drawing/ticks.ts';
import { boxesMeet, containsPointInRegion, regionOfBox } from '../../src/geometry/region.ts';
import { boxOfPoints } from '../../src/geometry/ring.ts';
import type { Box, Point } from '../../src/geometry/shape.ts';
import type { ShapedStock } from '../../src/materials/types.ts';
import { chanceOf } from '../chance.ts';
import { planned } from '../plan/starters.ts';
import { runs } from '../runs.ts';
import { faceFor } from './laid.ts';
import { insideOf, type Mark, NAMED, recorder } from './recorder.ts';

afterAll(() => vi.unstubAllGlobals());

/** An inch is 25.4 mm exactly (international yard and pound agreement of 1959). */
const INCH = 25.4;
/** A dressed 1x3 is 3/4 by 2 1/2 in (American Softwood Lumber Standard, PS 20, table of minimum dressed sizes). */
const ONE_BY_THREE = 2.5 * INCH;
const VIEW = { scale: 0.5, x: 60, y: 1000 };
const PAGE = { width: 1200, height: 1100 };

/** Where a place of the face is seen: right and up from the place of its lower left corner. */
const seen = ({ x, y }: Point, { scale, x: left, y: base }: typeof VIEW = VIEW): Point => ({
  x: left + x * scale,
  y: base - y * scale,
});
const seenBox = ({ x, y, w, h }: Box, view = VIEW): Box => ({
  ...seen({ x, y: y + h }, view),
  w: w * view.scale,
  h: h * view.scale,
});
const reach = (mark: Mark | undefined): Box => boxOfPoints(mark?.paths.flat() ?? []);
const near = (a: Box, b: Box, within = 1e-6) =>
  (['x', 'y', 'w', 'h'] as const).every((side) => Math.abs(a[side] - b[side]) <= within);
const expectBox = (found: Box, wanted: Box) => {
  expect(near(found, wanted), `${JSON.stringify(found)} for ${JSON.stringify(wanted)}`).toBe(true);
};

const strip = (id: string, box: Box) => newPart('strip', { id, name: id, box, stock: 'pine-1x3' });
const shownWith = (...boxes: readonly Box[]) =>
  shownFrom({ ...newDesign(), parts: boxes.map((box, i) => strip(`s${i}`, box)) });

const lookAt = (view = VIEW): PartsLook => ({
  ...PAGE,
  view,
  scale: view.scale,
  look: 'color',
  palette: NAMED,
  light: { x: 0.5, y: -0.5 },
  lamp: { azimuth: 120, altitude: 40 },
  appearance: ({ id }) => ({
    fill: `#c${id.slice(1).padStart(5, '0')}`,
    sheen: null,
    grained: true,
    molding: null,
  }),
  gleamsOn: () => () => null,
  signOf: () => undefined,
  imageOf: () => undefined,
  letterOf: () => ({ fill: 'ink', sheen: null }),
  shadows: null,
});

const paintedOf = (shown: ReturnType<typeof shownWith>, look = lookAt()): Painted => ({
  look,
  parts: shown.layout.parts,
  keepClears: [],
  carried: [],
  ground: pictureOf(PAGE, 1, () => {}),
  above: [],
});

describe('parts', () => {
  it('a strip of 1x3 is its four corners at scale, filled, outlined and shaded by its grain', () => {
    const sheet = recorder();
    paintParts(sheet.pen, paintedOf(shownWith({ x: 100, y: 200, w: 600, h: ONE_BY_THREE })), null);
    const body = sheet.marks.find(({ color }) => color === '#c00000');
    const corners = body?.paths[0]?.slice(0, 4).map(({ x, y }) => `${x.toFixed(6)} ${y.toFixed(6)}`);
    const wanted = [
      { x: 100, y: 200 },
      { x: 700, y: 200 },
      { x: 700, y: 200 + ONE_BY_THREE },
      { x: 100, y: 200 + ONE_BY_THREE },
    ].map((p) => `${seen(p).x.toFixed(6)} ${seen(p).y.toFixed(6)}`);
    expect(new Set(corners)).toEqual(new Set(wanted));
    const box = seenBox({ x: 100, y: 200, w: 600, h: ONE_BY_THREE });
    const line = sheet.marks.find(({ does, color }) => does === 'stroke' && color === 'outline');
    expectBox(reach(line), box);
    expect(line?.width).toBeCloseTo(1.1, 9);
    expect(line?.dash).toEqual([]);
    // Its grain runs along it, and nowhere but on it.
    const grain = sheet.marks.find(({ does, within }) => does === 'stroke' && within !== null);
    expectBox(boxOfPoints(grain?.within?.flat() ?? []), box);
    for (const [first, ...rest] of grain?.paths ?? []) {
      const last = rest.at(-1);
      expect(Math.abs((last?.x ?? 0) - (first?.x ?? 0))).toBeGreaterThan(
        Math.abs((last?.y ?? 0) - (first?.y ?? 0)),
      );
    }
    // Its shadow falls away from the light, beneath it.
    const shadow = sheet.marks[0];
    expect(shadow?.alpha).toBeLessThan(1);
    expect(reach(shadow).x).toBeGreaterThan(box.x);
    expect(reach(shadow).y).toBeGreaterThan(box.y);
  });

  it('what lies later in the list lies over what is before it', () => {
    const sheet = recorder();
    const shown = shownWith(
      { x: 0, y: 0, w: 600, h: ONE_BY_THREE },
      { x: 100, y: 20, w: 600, h: ONE_BY_THREE },
    );
    paintParts(sheet.pen, paintedOf(shown), null);
    const order = sheet.marks.map(({ color }) => color).filter((color) => String(color).startsWith('#c0'));
    expect(order).toEqual(shown.layout.parts.map(({ id }) => `#c0000${id.slice(1)}`));
  });

  it('letters without a board lie on wood and under a bought knob, one that stands out farther over one that does not', () => {
    const at = (x: number): Box => ({ x, y: 300, w: 300, h: 200 });
    const sheetOf = (id: string, box: Box, on: string) => ({
      ...newPart('panel', { id, name: id, box, finish: 'ground' }),
      on,
    });
    const design = {
      ...newDesign(),
      parts: [
        // A knob before all in the list, and lettering before a board that it lies on too.
        {
          ...newPart('fitting', { id: 'p0', name: 'Knob', box: { x: 310, y: 360, w: 50, h: 50 } }),
          on: 'p3',
        },
        newPart('lettering', { id: 'p1', name: 'Words', box: at(300) }),
        // Reaches over the edge of the board that it lies on, over one that lies lower and comes later.
        sheetOf('p2', at(450), 'p3'),
        sheetOf('p3', at(200), 'face'),
        sheetOf('p4', at(650), 'face'),
      ],
    };
    const shown = shownFrom(design);
    const signs = new Map([
      [
        'p1',
        { lettered: { layers: [{ finish: 'trim', region: regionOfBox({ x: 0, y: 0, w: 300, h: 200 }) }] } },
      ],
    ]);
    const signOf = ((id: string) => signs.get(id)) as unknown as PartsLook['signOf'];
    const sheet = recorder();
    const painted = paintedOf(shown, { ...lookAt(), signOf });
    paintParts(sheet.pen, { ...painted, parts: fromBelow(shown.layout) }, null);
    const order = sheet.marks
      .filter(({ width }) => width === Number.POSITIVE_INFINITY)
      .map(({ color }) => color);
    expect(order).toEqual(['#c00003', '#c00004', '#c00002', 'ink', '#c00000']);
    // Who presses on the knob takes the knob; beside it, the letters.
    expect(pickAt(design, shown.layout, { x: 335, y: 385 }, 1)).toBe('p0');
    expect(pickAt(design, shown.layout, { x: 420, y: 385 }, 1)).toBe('p1');
    // The plan has it so: of each what nothing above it covers.
    const { finish } = planned(design);
    const seenAt = (p: Point) =>
      finish.shown.filter(({ region }) => containsPointInRegion(region, p)).map(({ part }) => part);
    expect(seenAt({ x: 335, y: 385 })).toEqual(['p0']);
    expect(seenAt({ x: 700, y: 385 })).toEqual(['p2']);
  });

  it('the order in which parts are drawn is, after any change, that of these parts alone', () => {
    const chance = chanceOf(12);
    const kinds = ['panel', 'fitting', 'lettering'] as const;
    const some = (i: number) => {
      const kind = kinds[Math.floor(kinds.length * chance())] ?? 'panel';
      const box = { x: chance() * 900, y: chance() * 900, w: 200, h: 100 };
      const on = chance() < 0.5 ? 'face' : `q${Math.floor(chance() * 8)}`;
      return { ...newPart(kind, { id: `q${i}`, name: 'Part', box }), on };
    };
    const partsOf = (parts: readonly ReturnType<typeof some>[]) =>
      shownFrom({ ...newDesign(), parts }).layout.parts;
    const ids = (parts: Painted['parts']) => parts.map(({ id }) => id);
    const orders = new Set<string>();
    for (let life = 0; life < runs(6); life++) {
      let made = Array.from({ length: 8 }, (_, i) => some(i));
      for (let step = 0; step < 12; step++) {
        // One is another thing now, or the same at another place.
        made = made.map((part, i) =>
          i !== step % 8
            ? part
            : chance() < 0.5
              ? some(i)
              : { ...part, box: { ...part.box, x: chance() * 900 } },
        );
        const parts = partsOf(made);
        const order = ids(fromBelow({ parts }));
        expect(fromBelow({ parts: [] })).toEqual([]);
        // Nothing is known of an order before that of nothing.
        expect(order, `life ${life}, step ${step}`).toEqual(ids(fromBelow({ parts })));
        fromBelow({ parts });
        orders.add(order.join());
      }
    }
    expect(orders.size).toBeGreaterThan(runs(6));
  });

  it('where one is moved, what was and what is are wiped and drawn anew, and nothing that is clear of both', () => {
    const chance = chanceOf(4);
    const some = (): Box => ({
      x: Math.round(chance() * 1400),
      y: Math.round(chance() * 1700),
      w: 200,
      h: ONE_BY_THREE,
    });
    for (let i = 0; i < runs(12); i++) {
      const still = [some(), some(), some()];
      const [from, to] = [some(), some()];
      const look = lookAt();
      const before = paintedOf(shownWith(...still, from), look);
      const after = shownWith(...still, to);
      // What did not move is the same object, as a step of a drag leaves it.
      const parts = after.layout.parts.map((part) =>
        part.id === 's3' ? part : (before.parts.find(({ id }) => id === part.id) ?? part),
      );
      const sheet = recorder();
      paintParts(sheet.pen, { ...before, parts }, before);
      const wiped = sheet.wiped.map(boxOfPoints);
      const holds = (outer: Box, inner: Box) =>
        outer.x <= inner.x &&
        outer.y <= inner.y &&
        outer.x + outer.w >= inner.x + inner.w &&
        outer.y + outer.h >= inner.y + inner.h;
      for (const box of [from, to]) expect(wiped.some((area) => holds(area, seenBox(box)))).toBe(true);
      for (const { color, paths } of sheet.marks.filter(({ color }) => String(color).startsWith('#c0'))) {
        const drawn = boxOfPoints(paths.flat());
        const touched = wiped.some(
          (area) =>
            drawn.x - 40 <= area.x + area.w &&
            area.x <= drawn.x + drawn.w + 40 &&
            drawn.y - 40 <= area.y + area.h &&
            area.y <= drawn.y + drawn.h + 40,
        );
        expect(touched, String(color)).toBe(true);
      }
      expect(sheet.marks.some(({ color }) => color === '#c00003')).toBe(true);
    }
  });

  it('where parts move, come, go or change their order, all that is seen is as if everything had been drawn', () => {
    // The twin is a canvas of points: each has the colors that lie on it, from below; one that is wiped has none.
    const chance = chanceOf(11);
    const look = lookAt();
    const [ground, keepClears]: [Painted['ground'], Painted['keepClears']] = [
      pictureOf(PAGE, 1, () => {}),
      [],
    ];
    // What lies over the parts: one band across all of them, and one beside.
    const above = [seenBox({ x: 0, y: 300, w: 1200, h: 80 }), seenBox({ x: 0, y: 0, w: 90, h: 900 })].map(
      (box, i) => ({
        box,
        draw: (pen: Pen) => {
          pen.fillStyle = `#c0a${i}`;
          pen.fillRect(box.x, box.y, box.w, box.h);
        },
      }),
    );
    const withParts = (parts: Painted['parts']): Painted => ({
      look,
      parts,
      keepClears,
      carried: [],
      ground,
      above,
    });
    const [wide, high] = [1200, 900];
    const some = (): Box => ({ x: chance() * wide, y: chance() * high, w: 300, h: ONE_BY_THREE });
    const lies = (p: Point, path: readonly Point[]): boolean => {
      const { x, y, w, h } = boxOfPoints(path);
      return x <= p.x && p.x <= x + w && y <= p.y && p.y <= y + h;
    };
    const bodies = ({ color, width }: Mark) =>
      width === Number.POSITIVE_INFINITY && String(color).startsWith('#c0');
    const colorsAt = (p: Point, marks: readonly Mark[]) =>
      marks
        .filter((mark) => bodies(mark) && mark.paths.some((path) => lies(p, path)))
        .map(({ color }) => color);
    const points = Array.from({ length: 150 }, () => seen({ x: chance() * wide, y: chance() * high }));
    let partly = 0;
    for (let life = 0; life < runs(6); life++) {
      let fresh = 0;
      const one = () => shownFrom({ ...newDesign(), parts: [strip(`s${fresh++}`, some())] }).layout.parts;
      let before: Painted | null = null;
      let parts = Array.from({ length: 14 }, one).flat();
      let stacks: unknown[][] = points.map(() => []);
      for (let step = 0; step < 30; step++) {
        const now = withParts(parts);
        const sheet = recorder();
        paintParts(sheet.pen, now, before);
        const all = recorder();
        paintParts(all.pen, now, null);
        stacks = points.map((p, i) => {
          if (before === null) return colorsAt(p, sheet.marks);
          const area = sheet.wiped.findLast((wiped) => lies(p, wiped));
          if (!area) return stacks[i] ?? [];
          const within = JSON.stringify(boxOfPoints(area));
          return colorsAt(
            p,
            sheet.marks.filter((mark) =>
              mark.within ? JSON.stringify(boxOfPoints(mark.within.flat())) === within : true,
            ),
          );
        });
        expect(stacks, `life ${life}, step ${step}`).toEqual(points.map((p) => colorsAt(p, all.marks)));
        const whole = sheet.wiped.map(boxOfPoints).some(({ w }) => w === PAGE.width);
        if (before !== null && !whole) partly++;
        before = now;
        parts = [...parts];
        for (let change = 0; change < 1 + 3 * chance(); change++) {
          const from = Math.floor(chance() * parts.length);
          const [taken] = parts.splice(from, 1);
          const to = Math.floor(chance() * (parts.length + 1));
          if (!taken) continue;
          const [x, y] = [200 * (chance() - 0.5), 200 * (chance() - 0.5)];
          const box = { ...taken.box, x: taken.box.x + x, y: taken.box.y + y };
          const shifted = { ...taken, box, region: regionOfBox(box) };
          const what = Math.floor(5 * chance());
          // Moved where it lies, raised or lowered, both, gone, or joined by another.
          if (what === 0) parts.splice(from, 0, shifted);
          else if (what === 1) parts.splice(to, 0, taken);
          else if (what === 2) parts.splice(to, 0, shifted);
          else if (what === 4) parts.splice(from, 0, taken, ...one());
        }
      }
    }
    // Most steps change few parts, and leave the rest as it stands on the canvas.
    expect(partly).toBeGreaterThan(runs(6) * 29 * 0.8);
  });
});

describe('looks of parts', () => {
  const box = { x: 100, y: 200, w: 600, h: ONE_BY_THREE };
  const on = seenBox(box);
  const drawn = (look: Partial<PartsLook>) => {
    const sheet = recorder();
    paintParts(sheet.pen, paintedOf(shownWith(box), { ...lookAt(), ...look }), null);
    return sheet;
  };

  it('as tape a part is its outline alone, in tape on a darker edge', () => {
    const { marks } = drawn({ look: 'tape' });
    expect(marks.map(({ does, color }) => `${does} ${color}`)).toEqual(['stroke outline', 'stroke tape']);
    for (const mark of marks) expectBox(reach(mark), on);
    // Tape of 19 mm, as painters' tape is sold (common practice, no source), with 3/4 px beside it.
    expect(marks[1]?.width).toBeCloseTo(19 * VIEW.scale, 6);
    expect(marks[0]?.width).toBeCloseTo(19 * VIEW.scale + 1.5, 6);
  });

  it('a molding shows lines along it, within its width, before it is known how it is cut', () => {
    const look = lookAt();
    const shaped = drawn({
      appearance: (part) => ({ ...look.appearance(part), grained: false, molding: {} as ShapedStock }),
    });
    const profile = shaped.marks.at(-1);
    expect(profile?.paths).toHaveLength(3);
    for (const [from, to] of profile?.paths ?? []) {
      expect(Math.abs((to?.x ?? 0) - (from?.x ?? 0))).toBeCloseTo(on.w, 6);
      expect(from?.y).toBeGreaterThan(on.y);
      expect(from?.y).toBeLessThan(on.y + on.h);
    }
  });

  it('lettering lies on its sign in its color, with a gleam where it has one', () => {
    const ink = regionOfBox({ x: 20, y: 10, w: 50, h: 30 });
    const sign = {
      lettered: { layers: [{ finish: 'gold', region: ink }] },
    } as unknown as PartsLook['signOf'];
    const sheet = drawn({
      signOf: () => sign as unknown as ReturnType<PartsLook['signOf']>,
      letterOf: (_, finish) => ({ fill: finish, sheen: 'gloss' }),
      gleamsOn: () => (sheen) => (sheen ? (`gleam of ${sheen}` as unknown as CanvasGradient) : null),
    });
    const [letters, gleam] = sheet.marks.slice(-2);
    expect(letters?.color).toBe('gold');
    expect(gleam?.color).toBe('gleam of gloss');
    for (const mark of [letters, gleam]) expectBox(reach(mark), seenBox({ x: 120, y: 210, w: 50, h: 30 }));
  });

  it('exact shadows take the place of those that each part casts', () => {
    const dark = regionOfBox({ x: 0, y: 0, w: 80, h: 60 });
    const sheet = drawn({ look: 'shadow', shadows: [{ z: 0, region: dark }] });
    const shades = sheet.marks.filter(({ does, alpha }) => does === 'fill' && alpha < 1);
    expect(shades).toHaveLength(1);
    expectBox(reach(shades[0]), seenBox({ x: 0, y: 0, w: 80, h: 60 }));
    // Without them each part casts one, as long as it is high: 3/4 in for a dressed 1x3.
    const cast = drawn({ look: 'shadow' }).marks[0];
    expect(reach(cast).x + reach(cast).w).toBeCloseTo(on.x + on.w + 0.5 * 0.75 * INCH * VIEW.scale, 6);
  });
});

describe('rulers', () => {
  const rulerAt = (view: typeof VIEW, unit: 'in' | 'ft-in' | 'mm') => {
    const sheet = recorder();
    drawTicks(sheet.pen, { view, ...PAGE, unit, palette: NAMED });
    return sheet;
  };

  it('every figure stands where a tape from the lower left corner reads it, at any scale', () => {
    const chance = chanceOf(9);
    for (let i = 0; i < runs(15); i++) {
      const view = { scale: 0.1 + chance() * 3, x: chance() * 900, y: chance() * 1000 };
      for (const [unit, mm] of [
        ['in', INCH],
        ['mm', 1],
      ] as const) {
        const { texts, marks } = rulerAt(view, unit);
        const ticks = marks[0]?.paths ?? [];
        expect(texts.length).toBeGreaterThan(0);
        for (const { text, at, turned } of texts) {
          const place = Number(text) * mm;
          const upward = turned !== 0;
          const wanted = upward ? view.y - place * view.scale : view.x + place * view.scale;
          // Beside its tick, which lies on a pixel.
          const tick = upward ? at.y + 3 : at.x - 3;
          expect(Math.abs(tick - wanted), `${unit} ${text} at ${view.scale}`).toBeLessThanOrEqual(1);
          expect(ticks.some(([a]) => a && Math.abs((upward ? a.y : a.x) - tick) < 1e-6)).toBe(true);
          if (upward) expect(turned).toBeCloseTo(90, 9);
        }
      }
    }
  });

  it('tells feet where the design is measured in feet and inches', () => {
    const texts = rulerAt(VIEW, 'ft-in').texts.filter(({ turned }) => turned === 0);
    const foot = texts.find(({ text }) => text === '1\u2032');
    expect(Math.abs((foot?.at.x ?? 0) - 3 - seen({ x: 12 * INCH, y: 0 }).x)).toBeLessThanOrEqual(1);
  });

  it('shows how far the selection reaches on both, beneath the ticks', () => {
    const sheet = recorder();
    const box = { x: 100, y: 200, w: 300, h: 90 };
    const rulers = rulerPainter();
    const look = { view: VIEW, ...PAGE, unit: 'in', palette: NAMED } as const;
    rulers.mark(sheet.pen, look, box, 2);
    const [side, top] = sheet.marks.filter(({ color }) => color === 'pencil-soft').map(reach);
    const on = seenBox(box);
    expect(top).toEqual({ x: on.x, y: 0, w: on.w, h: RULER });
    expect(side).toEqual({ x: 0, y: on.y, w: RULER, h: on.h });
    expect(sheet.pictures).toHaveLength(2);
    for (const { image } of sheet.pictures) expect(insideOf(image).texts.length).toBeGreaterThan(0);
    // The ticks are those of the bands, cut to pixels of the screen around what is marked.
    const bands = recorder();
    for (const { draw } of rulers.bands(look)) draw(bands.pen, 2);
    expect(bands.pictures.map(({ image }) => image)).toEqual(sheet.pictures.map(({ image }) => image));
    for (const [cut, mark] of [
      [sheet.pictures[0], side],
      [sheet.pictures[1], top],
    ] as const) {
      const { x, y, w, h } = boxOfPoints(cut?.corners ?? []);
      for (const at of [x, y, x + w, y + h]) expect(2 * at).toBeCloseTo(Math.round(2 * at), 9);
      expect(boxesMeet({ x, y, w, h }, mark ?? { x: 0, y: 0, w: 0, h: 0 })).toBe(true);
      expect(w).toBeLessThan((mark?.w ?? 0) + 2);
      expect(h).toBeLessThan((mark?.h ?? 0) + 2);
    }
  });
});

describe('the paper and the bed', () => {
  const design = newDesign();
  const face = faceFor(design.bed);
  const paper = (unit: 'in' | 'mm', scale: number) => {
    const sheet = recorder();
    drawSurroundings(sheet.pen, {
      view: { ...VIEW, scale },
      ...PAGE,
      face,
      bed: design.bed,
      unit,
      palette: NAMED,
    });
    return sheet;
  };

  it.each([
    ['in', INCH, 6 * INCH],
    ['mm', 10, 100],
  ] as const)('squares of %s are as far apart as they are on the bed', (unit, fine, coarse) => {
    const scale = 0.9;
    const { marks } = paper(unit, scale);
    for (const [color, step] of [
      ['grid', fine],
      ['grid-strong', coarse],
    ] as const) {
      const lines = marks.find((mark) => mark.color === color)?.paths ?? [];
      const upright = lines.flatMap(([a, b]) => (a && a.x === b?.x ? [a.x] : []));
      expect(upright.length).toBeGreaterThan(5);
      for (const x of upright) {
        const squares = (x - 0.5 - VIEW.x) / (step * scale);
        expect(Math.abs(squares - Math.round(squares)) * step * scale).toBeLessThanOrEqual(0.5 + 1e-9);
      }
    }
  });

  it('squares too small to tell apart are left out', () => {
    expect(paper('in', 0.2).marks.some(({ color }) => color === 'grid')).toBe(false);
    expect(paper('in', 0.2).marks.some(({ color }) => color === 'grid-strong')).toBe(true);
  });

  it('the floor lies as far below the pivot as the pivot is high', () => {
    const floor = paper('in', VIEW.scale).marks.find(({ color }) => color === 'floor');
    const { aboveEdge, height } = design.bed.pivot;
    expect(Math.abs(reach(floor).y - seen({ x: 0, y: aboveEdge - height }).y)).toBeLessThanOrEqual(1);
  });

  it('every level is filled and outlined at scale, the rim with the joints of its boards', () => {
    const sheet = recorder();
    sheet.pen.translate(VIEW.x, VIEW.y);
    sheet.pen.scale(VIEW.scale, -VIEW.scale);
    drawFaceLevels(sheet.pen, face, NAMED, VIEW.scale);
    for (const { id, box } of face.levels) {
      expectBox(reach(sheet.marks.find(({ does, color }) => does === 'fill' && color === id)), seenBox(box));
      expect(
        sheet.marks.some(
          (mark) => mark.does === 'stroke' && mark.color === 'outline' && near(reach(mark), seenBox(box)),
        ),
      ).toBe(true);
    }
    const joints = sheet.marks.at(-1);
    const rim = face.levels.find(({ id }) => id === 'rim');
    expect(joints?.paths).toHaveLength(4);
    for (const [from, to] of joints?.paths ?? []) {
      const ends = [from, to].map((p) => p && `${p.x.toFixed(3)} ${p.y.toFixed(3)}`);
      const corners = [rim?.box, rim?.inner].flatMap((box) => {
        const { x, y, w, h } = seenBox(box as Box);
        return [x, x + w].flatMap((px) => [y, y + h].map((py) => ({ x: px, y: py })));
      });
      // Each runs along the line of an inner edge, between the inner and the outer one.
      const inner = corners.slice(4).map((p) => `${p.x.toFixed(3)} ${p.y.toFixed(3)}`);
      expect(ends.filter((end) => inner.includes(String(end)))).toHaveLength(1);
    }
  });

  it('the photo lies upright on its place, as clear as it is set', () => {
    recorder();
    const image = { width: 400, height: 300 } as ImageBitmap;
    const photo = {
      image,
      placing: { at: { x: 50, y: 70 }, scale: 2 },
      opacity: 0.4,
      shown: true,
    } as unknown as NonNullable<Parameters<ReturnType<typeof groundPainter>>[0]['photo']>;
    const look = {
      view: VIEW,
      ...PAGE,
      face,
      bed: design.bed,
      unit: 'in',
      palette: NAMED,
      photo,
      photoMode: 'rest',
      straightened: null,
    } as const;
    const paint = groundPainter();
    const { canvas } = paint(look, 1);
    expect(paint(look, 1).canvas).toBe(canvas);
    const [pasted] = insideOf(canvas).pictures;
    expect(pasted?.image).toBe(image);
    expect(pasted?.alpha).toBe(0.4);
    // The picture's left upper corner is seen at the left and above: it stands on its feet.
    const box = seenBox({ x: 50, y: 70, w: 800, h: 600 });
    const [leftUpper, , rightLower] = pasted?.corners ?? [];
    expect(leftUpper?.x).toBeCloseTo(box.x, 6);
    expect(leftUpper?.y).toBeCloseTo(box.y, 6);
    expect(rightLower?.x).toBeCloseTo(box.x + box.w, 6);
    expect(rightLower?.y).toBeCloseTo(box.y + box.h, 6);
  });
});

describe('a bed out of square', () => {
  const bed = newDesign().bed;
  const { width, height } = faceFor(bed);
  const rim = { top: width + INCH / 4, rising: Math.hypot(width, height) + INCH / 8 };
  const face = faceFor({ ...bed, measured: { rim, field: {}, keep: 'bottom', rise: 0, border: 'square' } });
  const ROOM = { x: -1e4, y: -1e4, w: 2e4, h: 2e4 };

  it('is drawn dashed, every corner as many times out of true as its plate says', () => {
    const sheet = recorder();
    const said: { longer: number; times: number }[] = [];
    drawReal(
      sheet.pen,
      face,
      VIEW,
      NAMED,
      ({ by: longer }, times) => {
        said.push({ longer, times });
        return 'long';
      },
      ROOM,
    );
    const dashed = sheet.marks.filter(({ does, dash }) => does === 'stroke' && dash.length > 0);
    const [outer] = face.real ?? [];
    const [told] = said;
    if (!outer || !told) throw new Error('it is true');
    const [a, b, c, d] = outer.corners;
    const diagonals = Math.hypot(c.x - a.x, c.y - a.y) - Math.hypot(d.x - b.x, d.y - b.y);
    expect(told.longer).toBeCloseTo(Math.abs(diagonals), 6);
    expect(told.times).toBeGreaterThan(1);
    // The upper right corner should be at the width and the height of the face.
    const want = seen({
      x: width + (c.x - width) * told.times,
      y: height + (c.y - height) * told.times,
    });
    const points = dashed[0]?.paths.flat() ?? [];
    const off = points.map((p) => Math.hypot(p.x - want.x, p.y - want.y));
    expect(Math.min(...off)).toBeLessThan(1e-6);
    expect(sheet.texts.map(({ text }) => text)).toEqual(['long']);
  });

  it('has its plate wholly within what is seen, below a ruler and beside the edge', () => {
    const small = { x: RULER, y: RULER, w: 240, h: 160 };
    const sheet = recorder();
    // The corner lies off what is seen, to the right and above.
    const view = { ...VIEW, x: 200 - width * VIEW.scale, y: 10 + height * VIEW.scale };
    drawReal(sheet.pen, face, view, NAMED, () => 'long', small);
    const plates = sheet.marks
      .filter(({ does }) => does === 'fill')
      .map(({ paths }) => boxOfPoints(paths.flat()));
    expect(plates.length).toBeGreaterThan(0);
    for (const { x, y, w, h } of plates) {
      expect(Math.min(x - small.x, y - small.y)).toBeGreaterThanOrEqual(-1e-9);
      expect(Math.max(x + w - small.x - small.w, y + h - small.y - small.h)).toBeLessThanOrEqual(1e-9);
    }
  });

  it('is not drawn where nothing is off', () => {
    const sheet = recorder();
    drawReal(sheet.pen, faceFor(bed), VIEW, NAMED, () => '', ROOM);
    expect(sheet.marks).toEqual([]);
  });
});

describe('what lies over the drawing', () => {
  const box = { x: 100, y: 200, w: 600, h: ONE_BY_THREE };
  const shown = shownWith(box);
  const scene = sceneOf(shown, {
    selection: ['s0'],
    corner: null,
    opening: null,
    member: null,
    carrying: false,
    view: VIEW,
  });
  const lines = (marks: readonly Mark[]) =>
    marks.filter(({ does, color }) => does === 'stroke' && color !== 'halo');

  it('what stays over the parts lies within the box that it is drawn anew by, with its lines and halos', () => {
    const chance = chanceOf(21);
    const measured = { edits: null, role: 'face', key: 'd' } as const;
    for (let i = 0; i < runs(20); i++) {
      const view = { scale: 0.05 + chance() * 3, x: chance() * 900, y: chance() * 1000 };
      const [from, cross] = [chance() * 900, chance() * 900];
      const d = { ...measured, from, to: from + chance() * 900, cross, off: 60 * (chance() - 0.5) };
      for (const axis of ['x', 'y'] as const) {
        const [above] = dimensionsAbove([{ ...d, axis }], view, NAMED);
        const sheet = recorder();
        above?.draw(sheet.pen, 1);
        expect(sheet.marks.length).toBeGreaterThan(0);
        const { x, y, w, h } = above?.box ?? { x: 0, y: 0, w: 0, h: 0 };
        for (const { paths, width } of sheet.marks) {
          for (const p of paths.flat()) {
            // A line reaches out from its path by half of its width, at its ends by a corner of that.
            const out = (width / 2) * Math.SQRT2;
            expect(p.x - out).toBeGreaterThanOrEqual(x);
            expect(p.x + out).toBeLessThanOrEqual(x + w);
            expect(p.y - out).toBeGreaterThanOrEqual(y);
            expect(p.y + out).toBeLessThanOrEqual(y + h);
          }
        }
      }
    }
  });

  it('a width is told by a line from edge to edge of its part, a gap by a dashed one', () => {
    const sheet = recorder();
    drawDimensions(sheet.pen, scene.dimensions, VIEW, NAMED);
    const width = scene.dimensions.find(({ key }) => key === 'w');
    const on = seenBox(box);
    const told = lines(sheet.marks).find(({ paths }) =>
      paths.some(([a, b]) => a && b && near(boxOfPoints([a, b]), { ...on, y: a.y, h: 0 })),
    );
    expect(width).toBeDefined();
    expect(told?.dash).toEqual([]);
    const gapped = recorder();
    drawDimensions(
      gapped.pen,
      [{ key: 'g', axis: 'x', from: 700, to: 900, cross: 200, off: 0, edits: null, role: 'gap' }],
      VIEW,
      NAMED,
    );
    const [gap] = lines(gapped.marks);
    expect(gap?.dash.length).toBeGreaterThan(0);
    expect(reach(gap).x).toBeCloseTo(seen({ x: 700, y: 0 }).x, 6);
    expect(reach(gap).w).toBeCloseTo(200 * VIEW.scale, 6);
  });

  it('its figure stands on a plate in the middle of the line, the numerals of a fraction small and apart', () => {
    const sheet = recorder();
    const width = scene.dimensions.filter(({ key }) => key === 'w');
    drawFigures(sheet.pen, width, VIEW, NAMED, () => '23 5/8\u2033');
    const plate = reach(sheet.marks.find(({ color }) => color === 'over'));
    const on = seenBox(box);
    expect(Math.abs(plate.x + plate.w / 2 - (on.x + on.w / 2))).toBeLessThanOrEqual(1);
    const texts = [...sheet.texts].sort((a, b) => a.at.x - b.at.x);
    expect(texts.map(({ text }) => text).join('')).toBe('235\u20448\u2033');
    const [whole, over, , under] = texts;
    expect(over?.at.y).toBeLessThan(whole?.at.y ?? 0);
    expect(under?.at.y).toBe(whole?.at.y);
    for (const { at } of texts) expect(at.x > plate.x && at.x < plate.x + plate.w).toBe(true);
  });

  const hand = { ...scene, view: VIEW, palette: NAMED, guides: [], path: [], frame: null };

  it('the selected part is outlined at scale and held by its handles', () => {
    const sheet = recorder();
    drawInHand(sheet.pen, { ...hand, boxes: [] });
    expect(lines(sheet.marks).some((mark) => near(reach(mark), seenBox(box)))).toBe(true);
    const squares = sheet.marks.filter(
      (mark) => mark.does === 'fill' && near({ ...reach(mark), x: 0, y: 0 }, { x: 0, y: 0, w: 9, h: 9 }),
    );
    const pulled = scene.handles.filter(({ act }) => act.kind === 'resize');
    expect(squares).toHaveLength(pulled.length);
    for (const { px } of pulled)
      expect(squares.some((mark) => near(reach(mark), { x: px.x - 4.5, y: px.y - 4.5, w: 9, h: 9 }))).toBe(
        true,
      );
  });

  it('a fill is outlined by its border, not board by board', () => {
    const fill = { ...newPart('fill', { name: 'S', id: 'f', box, stock: 'pine-1x2' }), angle: 0 };
    const shown = shownFrom({ ...newDesign(), parts: [fill] });
    expect(shown.layout.parts.length).toBeGreaterThan(1);
    const chosen = {
      selection: ['f'],
      corner: null,
      opening: null,
      member: null,
      carrying: false,
      view: VIEW,
    };
    const { outlined } = sceneOf(shown, chosen);
    const sheet = recorder();
    drawInHand(sheet.pen, { ...hand, outlined, boxes: [], handles: [] });
    const [line] = lines(sheet.marks);
    expect(line?.paths.map((path) => new Set(path.map(({ x, y }) => `${x} ${y}`)).size)).toEqual([4]);
    expect(near(reach(line), seenBox(box))).toBe(true);
  });

  it('a frame pulled to the right is whole, one to the left dashed; both show what they span', () => {
    for (const [from, to] of [
      [100, 400],
      [400, 100],
    ] as const) {
      const sheet = recorder();
      const frame = { from: { x: from, y: 50 }, to: { x: to, y: 150 } };
      drawInHand(sheet.pen, { ...hand, outlined: [], boxes: [], handles: [], frame });
      const [line] = lines(sheet.marks);
      expectBox(reach(line), seenBox({ x: 100, y: 50, w: 300, h: 100 }));
      expect((line?.dash.length ?? 0) > 0).toBe(to < from);
    }
  });

  it('a keep-clear is hatched within its edge and no farther, its edge dashed', () => {
    const sheet = recorder();
    sheet.pen.translate(VIEW.x, VIEW.y);
    sheet.pen.scale(VIEW.scale, -VIEW.scale);
    const keep = { x: 300, y: 400, w: 200, h: 120 };
    drawKeepClears(
      sheet.pen,
      [{ id: 'k', name: 'k', why: 'latch', box: keep, height: 20 }],
      NAMED,
      VIEW.scale,
    );
    const [hatching, edge] = lines(sheet.marks);
    for (const [a, b] of hatching?.paths ?? [])
      expect(Math.abs((a?.x ?? 0) - (b?.x ?? 0))).toBeCloseTo(Math.abs((a?.y ?? 0) - (b?.y ?? 0)), 6);
    expectBox(boxOfPoints(hatching?.within?.flat() ?? []), seenBox(keep));
    expectBox(reach(edge), seenBox(keep));
    expect(edge?.dash.map((length) => Number(length.toFixed(6)))).toEqual([6, 4]);
  });

  it('marks of a photo stand on their points, as large on the screen at every scale', () => {
    for (const scale of [0.1, 0.5, 3]) {
      const view = { ...VIEW, scale };
      const sheet = recorder();
      sheet.pen.translate(view.x, view.y);
      sheet.pen.scale(scale, -scale);
      const point = { x: 220, y: 90 };
      drawPhotoHandles(sheet.pen, { frame: [], points: [point], closed: false }, NAMED, scale);
      const mark = lines(sheet.marks).at(-1);
      const at = seen(point, view);
      expectBox(reach(mark), { x: at.x - 13, y: at.y - 13, w: 26, h: 26 });
      expect(mark?.width).toBeCloseTo(1.5, 9);
    }
  });
});
