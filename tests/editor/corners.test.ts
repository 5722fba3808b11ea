import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Part } from '../../src/design/schema.ts';
import { preview, startState } from '../../src/design/state.ts';
import { freshDocument } from '../../src/editor/document/document.ts';
import { removeCorner } from '../../src/editor/edit/cornerActs.ts';
import {
  addedCorner,
  bentSide,
  bowedSide,
  boxedCorners,
  cornersOf,
  editsToCorners,
  madeCorner,
  middlesOf,
  movedCorner,
  sidesOfCorners,
  withoutCorner,
} from '../../src/editor/edit/corners.ts';
import { startBow, startCorner } from '../../src/editor/gesture/corner.ts';
import { endPath, startPathCorner } from '../../src/editor/gesture/path.ts';
import { undoStep } from '../../src/editor/state/commit.ts';
import { createEditorStore } from '../../src/editor/state/store.ts';
import { lengthOf, pointAt } from '../../src/geometry/stretch.ts';
import { runs } from '../runs.ts';

const BOX = { x: 100, y: 200, w: 300, h: 400 };
const triangle = [
  { u: 0, v: 0 },
  { u: 1, v: 0 },
  { u: 0.5, v: 1 },
];

function designWith(): { design: Design; part: Part } {
  const part: Part = {
    ...newPart('panel', { id: 'gable', name: 'Gable', box: BOX }),
    shape: { form: 'polygon', points: triangle },
  };
  const low = {
    id: 'low',
    kind: 'set',
    axis: 'x',
    edge: { of: 'gable', side: 'low' },
    from: { of: 'face', side: 'low' },
    distance: 100,
  } as const;
  return { design: { ...newDesign(), parts: [part], rules: [low] }, part };
}

const touch = (x: number, y: number, more: object = {}) => ({
  px: { x, y: 1000 - y },
  face: { x, y },
  shift: false,
  free: true,
  touch: false,
  ...more,
});

function storeOf(design: Design) {
  const store = createEditorStore(design, 'light');
  store.setState({
    designId: 'd',
    edit: { ...freshDocument(design), selection: ['gable'] },
    view: { scale: 1, x: 0, y: 1000 },
  });
  return store;
}

describe('corners', () => {
  it('stand where the box puts them, and the box goes around them', () => {
    const { design, part } = designWith();
    const corners = cornersOf(part, BOX);
    expect(corners?.points[2]).toEqual({ x: 250, y: 600 });
    if (!corners) throw new Error('no corners');
    // The lower left corner goes 50 mm out: the box grows, the rule that holds its left edge follows.
    const after = preview(
      startState(design),
      editsToCorners(design, part, BOX, movedCorner(corners, 0, { x: 50, y: 200 })),
    );
    expect(after.parts[0]?.box).toEqual({ x: 50, y: 200, w: 350, h: 400 });
    expect(after.rules[0]).toMatchObject({ distance: 50 });
    const moved = after.parts[0];
    const now = moved ? cornersOf(moved, moved.box) : null;
    expect(now?.points[1]?.x).toBeCloseTo(400, 9);
    expect(now?.points[2]?.x).toBeCloseTo(250, 9);
  });

  it('come back from shares of their box', () => {
    const mm = fc.double({ min: -2000, max: 2000, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.record({ x: mm, y: mm }), { minLength: 3, maxLength: 12 }), (points) => {
        const { box, points: shares } = boxedCorners(points);
        shares.forEach(({ u, v }, i) => {
          expect(u).toBeGreaterThanOrEqual(0);
          expect(u).toBeLessThanOrEqual(1);
          expect(Math.abs(box.x + u * box.w - (points[i]?.x ?? Number.NaN))).toBeLessThan(1e-6);
          expect(Math.abs(box.y + v * box.h - (points[i]?.y ?? Number.NaN))).toBeLessThan(1e-6);
        });
      }),
    );
  });

  it('are added halfway and taken away down to the least', () => {
    const closed = { points: [0, 1, 2].map((x) => ({ x, y: x % 2 })), closed: true };
    expect(middlesOf(closed)).toHaveLength(3);
    expect(middlesOf({ ...closed, closed: false })).toHaveLength(2);
    const more = addedCorner(closed, 2, { x: 1, y: 5 });
    expect(more.points[3]).toEqual({ x: 1, y: 5 });
    expect(withoutCorner(more, 3)).toEqual(closed);
    expect(withoutCorner(closed, 0)).toBeNull();
  });
});

describe('a corner by hand', () => {
  it('is one step of undo for one drag', () => {
    const { design } = designWith();
    const store = storeOf(design);
    const gesture = startCorner(store, touch(400, 200), 1, false);
    gesture?.move(touch(420, 210));
    gesture?.move(touch(460, 230));
    gesture?.end(touch(460, 230));
    const [gable] = store.getState().edit.design.parts;
    expect(gable ? cornersOf(gable, gable.box)?.points[1] : null).toEqual({ x: 460, y: 230 });
    undoStep(store);
    expect(store.getState().edit.design).toEqual(design);
    expect(store.getState().edit.history.done).toEqual([]);
  });

  it('leaves no trace when it is given up', () => {
    const { design } = designWith();
    const store = storeOf(design);
    const gesture = startCorner(store, touch(400, 400), 1, true);
    gesture?.move(touch(450, 450));
    expect(store.getState().provisional?.shown.design).not.toEqual(design);
    gesture?.cancel();
    expect(store.getState().edit.design).toBe(design);
    expect(store.getState()).toMatchObject({ provisional: null, hud: null, corner: null });
  });

  it('is taken away, but never the last three', () => {
    const { design } = designWith();
    const store = storeOf(design);
    const gesture = startCorner(store, touch(250, 200), 0, true);
    gesture?.move(touch(250, 150));
    gesture?.end(touch(250, 150));
    const count = () => {
      const [gable] = store.getState().edit.design.parts;
      return gable ? cornersOf(gable, gable.box)?.points.length : 0;
    };
    expect(count()).toBe(4);
    expect(removeCorner(store, 1)).toBe(true);
    expect(count()).toBe(3);
    expect(removeCorner(store, 1)).toBe(true);
    expect(count()).toBe(3);
  });
});

describe('a side by hand', () => {
  const outline = (store: ReturnType<typeof storeOf>) => {
    const part = store.getState().edit.design.parts[0];
    if (part?.kind !== 'panel' || part.shape.form !== 'polygon') throw new Error('the gable expected');
    return { part, corners: cornersOf(part, part.box) };
  };

  it('is bowed through where its middle is carried, in one step of undo, and its corners stay', () => {
    const { design } = designWith();
    const store = storeOf(design);
    const gesture = startBow(store, touch(250, 200), 0);
    gesture?.move(touch(250, 180));
    gesture?.move(touch(250, 150));
    gesture?.end(touch(250, 150));
    const { part, corners } = outline(store);
    // The foot hangs 50 mm down: the box goes around it, and the corners are where they were.
    expect(part.box).toEqual({ x: 100, y: 150, w: 300, h: 450 });
    expect(corners?.points[0]).toMatchObject({ side: { as: 'rise', rise: 50 } });
    expect(corners?.points[0]?.y).toBeCloseTo(200, 6);
    expect(corners?.points[2]?.y).toBeCloseTo(600, 6);
    expect(store.getState().corner).toBe(0);
    undoStep(store);
    expect(store.getState().edit.design).toEqual(design);
  });

  it('passes through any place, and is straight again on its line', () => {
    const { design } = designWith();
    const store = storeOf(design);
    const bow = (from: readonly [number, number], to: readonly [number, number], free: boolean) => {
      const gesture = startBow(store, touch(...from), 0);
      gesture?.move(touch(...to, { free }));
      gesture?.end(touch(...to, { free }));
    };
    bow([250, 200], [330, 240], true);
    const side = outline(store).corners?.points[0]?.side;
    // Circle through three points by its formula: center (250, y0) with equal distances.
    const y0 = (80 ** 2 + 240 ** 2 - 150 ** 2 - 200 ** 2) / (2 * 40);
    const radius = Math.hypot(150, 200 - y0);
    expect(side?.as === 'rise' ? side.rise : 0).toBeCloseTo(-(radius - Math.abs(200 - y0)), 6);
    const middle = middlesOf(outline(store).corners ?? { points: [], closed: true })[0];
    bow([250, middle?.y ?? 0], [250, 200 + 3], false);
    expect(outline(store).corners?.points[0]?.side).toBeUndefined();
  });

  it('keeps its bow where a corner parts it, and what is smooth is bent by its handles', () => {
    const { design, part } = designWith();
    const start = cornersOf(part, BOX);
    if (!start) throw new Error('no corners');
    const bowed = bowedSide(start, 0, { x: 250, y: 150 });
    const parted = addedCorner(bowed, 0, { x: 250, y: 150 });
    const [whole, left, right] = [sidesOfCorners(bowed)[0], ...sidesOfCorners(parted)];
    if (whole?.kind !== 'arc' || left?.kind !== 'arc' || right?.kind !== 'arc') throw new Error('arcs');
    for (const half of [left, right]) {
      expect(half.rx).toBeCloseTo(whole.rx, 6);
      expect(half.sweep).toBeCloseTo(whole.sweep / 2, 6);
    }
    const smooth = madeCorner(start, 0, { side: { as: 'smooth' } });
    const bent = bentSide(smooth, 0, 1, { x: 380, y: 120 });
    expect(sidesOfCorners(bent)[0]).toMatchObject({ kind: 'cubic', h2: { x: 380, y: 120 } });
    // The handle goes along with its corner.
    const moved = sidesOfCorners(movedCorner(bent, 1, { x: 410, y: 200 }))[0];
    expect(moved).toMatchObject({ h2: { x: 390, y: 120 } });
    expect(preview(startState(design), editsToCorners(design, part, BOX, bent)).parts[0]?.box.y).toBeLessThan(
      200,
    );
  });
});

describe('the way of words in their board', () => {
  const WAVE = [
    { u: 0, v: 0.5 },
    { u: 0.5, v: 0.75 },
    { u: 1, v: 0.5 },
  ];
  const signOf = (shape: 'rectangle' | 'polygon'): Design => {
    const sign = newPart('sign', { id: 'gable', name: 'Gable', box: BOX });
    const drawn = shape === 'polygon' ? ({ form: 'polygon', points: triangle } as const) : sign.shape;
    const lettering = { ...sign.lettering, along: 'path' as const, path: WAVE };
    return { ...newDesign(), parts: [{ ...sign, shape: drawn, lettering }] };
  };
  const wayOf = (store: ReturnType<typeof storeOf>) => {
    const [part] = store.getState().edit.design.parts;
    return part && 'lettering' in part ? part.lettering.path : undefined;
  };

  it('is carried by its corners, stays in the board, whose box it leaves alone, and is undone in one step', () => {
    const store = storeOf(signOf('rectangle'));
    // Its middle corner stands at 100 + 300 / 2, 200 + 400 * 3 / 4.
    const hand = startCorner(store, touch(250, 500), 1, false);
    hand?.move(touch(240, 450));
    hand?.move(touch(220, 400));
    hand?.end(touch(220, 400));
    expect(wayOf(store)?.[1]).toEqual({ u: 120 / 300, v: 0.5 });
    expect(store.getState().edit.design.parts[0]?.box).toEqual(BOX);
    // Carried far out, it stops at the border.
    const out = startCorner(store, touch(220, 400), 1, false);
    out?.move(touch(900, 2000));
    out?.end(touch(900, 2000));
    expect(wayOf(store)?.[1]).toEqual({ u: 1, v: 1 });
    undoStep(store);
    undoStep(store);
    expect(wayOf(store)).toEqual(WAVE);
  });

  it('takes a corner more, bows, and keeps the two that it needs', () => {
    const store = storeOf(signOf('rectangle'));
    const more = startCorner(store, touch(175, 450), 0, true);
    more?.move(touch(175, 480));
    more?.end(touch(175, 480));
    expect(wayOf(store)?.length).toBe(4);
    // The first leg from 100, 400 to its new corner: bowed 40 mm to one side of its middle.
    const bow = startBow(store, touch(137.5, 440), 0);
    bow?.move(touch(120, 470));
    bow?.end(touch(120, 470));
    expect(wayOf(store)?.[0]?.side?.as).toBe('rise');
    for (let i = 0; i < 2; i += 1) removeCorner(store, 1);
    expect(wayOf(store)?.length).toBe(2);
    removeCorner(store, 0);
    expect(wayOf(store)?.length).toBe(2);
  });

  it('leaves the handles to an outline that is drawn', () => {
    const [part] = signOf('polygon').parts;
    expect(part && cornersOf(part, BOX)).toMatchObject({ closed: true });
    const [plain] = signOf('rectangle').parts;
    expect(plain && cornersOf(plain, BOX)).toMatchObject({ closed: false });
  });
});

describe('a corner more on a curved side', () => {
  const foot = [
    { x: 0, y: 0 },
    { x: 300, y: 0 },
    { x: 150, y: 400 },
  ];
  const mm = fc.double({ min: -400, max: 400, noNaN: true });
  const at = fc.record({ x: mm, y: mm });
  const side = fc.oneof(
    // Of more than half a circle too.
    fc.record({ as: fc.constant('rise' as const), rise: mm.filter((rise) => Math.abs(rise) > 1) }),
    fc.record({ as: fc.constant('smooth' as const), handles: fc.tuple(at, at) }),
  );

  it('leaves the outline as it is, wherever on the side or beside it the hand is', () => {
    const length = (outline: Parameters<typeof sidesOfCorners>[0]) =>
      sidesOfCorners(outline).reduce((sum, stretch) => sum + lengthOf(stretch), 0);
    fc.assert(
      fc.property(side, fc.double({ min: 0, max: 1, noNaN: true }), at, (side, share, beside) => {
        const corners = { points: foot.map((p, i) => (i === 0 ? { ...p, side } : p)), closed: true };
        const [was] = sidesOfCorners(corners);
        if (!was) throw new Error('no side');
        const on = pointAt(was, share);
        for (const hand of [on, { x: on.x + beside.x / 100, y: on.y + beside.y / 100 }]) {
          const parted = addedCorner(corners, 0, hand);
          expect(parted.points).toHaveLength(4);
          expect(Math.abs(length(parted) / length(corners) - 1)).toBeLessThan(1e-6);
        }
      }),
      { numRuns: runs(60) },
    );
  });
});

describe('a path corner by corner', () => {
  const click = (store: ReturnType<typeof storeOf>, x: number, y: number) =>
    startPathCorner(store).end(touch(x, y));

  it('closes on its first corner', () => {
    const store = storeOf({ ...newDesign(), parts: [] });
    store.setState({ tool: 'path' });
    for (const [x, y] of [
      [200, 300],
      [600, 300],
      [600, 700],
      [202, 301],
    ] as const)
      click(store, x, y);
    const [run] = store.getState().edit.design.parts;
    expect(run).toMatchObject({
      kind: 'run',
      box: { x: 200, y: 300, w: 400, h: 400 },
      path: { form: 'points', closed: true },
    });
    expect(store.getState()).toMatchObject({ tool: 'select', path: [], provisional: null });
  });

  it('ends open where it was ended, and a double click sets one corner', () => {
    const store = storeOf({ ...newDesign(), parts: [] });
    store.setState({ tool: 'path' });
    click(store, 200, 300);
    click(store, 600, 300);
    click(store, 600, 300);
    endPath(store, false);
    const [run] = store.getState().edit.design.parts;
    expect(run).toMatchObject({ box: { x: 200, y: 300, w: 400, h: 0 }, path: { closed: false } });
    expect(run?.kind === 'run' && run.path.form === 'points' ? run.path.points : []).toHaveLength(2);
  });

  it('makes nothing of one corner', () => {
    const store = storeOf({ ...newDesign(), parts: [] });
    store.setState({ tool: 'path' });
    click(store, 200, 300);
    endPath(store, false);
    expect(store.getState().edit.design.parts).toEqual([]);
    expect(store.getState().path).toEqual([]);
  });
});
