import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Panel, Part } from '../../src/design/schema.ts';
import { freshDocument } from '../../src/editor/document/document.ts';
import { dimensionsOfOpening } from '../../src/editor/drawing/dimensions.ts';
import { handlesOf } from '../../src/editor/drawing/handles.ts';
import { cornersOf } from '../../src/editor/edit/corners.ts';
import {
  chooseOpeningAt,
  chosenOpening,
  nudgeOpening,
  type Opening,
  openingsOf,
  openingTyped,
  removeOpening,
} from '../../src/editor/edit/openings.ts';
import { startBow, startCorner } from '../../src/editor/gesture/corner.ts';
import { startDrawOpening, startOpening } from '../../src/editor/gesture/opening.ts';
import { select, undoStep } from '../../src/editor/state/commit.ts';
import { createEditorStore, type EditorStore } from '../../src/editor/state/store.ts';
import { trueAreaOf } from '../../src/geometry/trueArea.ts';
import { freed } from '../../src/layout/place/drawn.ts';
import { outlineOf } from '../../src/layout/place/outlines.ts';
import { runs } from '../runs.ts';

/** A board 400 wide and 600 high with its lower left at 100 and 200, and a window in it, 200 by 300 in the middle. */
const BOX = { x: 100, y: 200, w: 400, h: 600 };
const WINDOW: Opening = {
  id: 'opening-1',
  shape: { form: 'rectangle' },
  margin: { left: 100, right: 100, bottom: 150, top: 150 },
};
const board = (openings: readonly Opening[] = [WINDOW]): Panel => ({
  ...newPart('panel', { id: 'board', name: 'Board', box: BOX }),
  openings,
});

function storeOf(parts: readonly Part[], opening: string | null = 'opening-1'): EditorStore {
  const design: Design = { ...newDesign(), parts };
  const store = createEditorStore(design, 'light');
  const edit = { ...freshDocument(design), selection: ['board'] };
  store.setState({ designId: 'd', edit, opening, view: { scale: 1, x: 0, y: 1000 } });
  return store;
}

const at = (x: number, y: number, free = true) => ({
  px: { x, y: 1000 - y },
  face: { x, y },
  shift: false,
  free,
  touch: false,
});

const openingNow = (store: EditorStore): Opening | undefined => {
  const [part] = store.getState().edit.design.parts;
  return part && openingsOf(part).at(-1);
};
/** What the plan cuts out of the board: its box less what is laid of it. */
const holeArea = (store: EditorStore): number =>
  BOX.w * BOX.h - trueAreaOf(store.getState().edit.shown.layout.parts[0]?.region ?? []);

describe('an opening by hand', () => {
  it('is carried within its board, in one step of undo', () => {
    const store = storeOf([board()]);
    const gesture = startOpening(store, at(300, 500), null);
    gesture?.move(at(320, 480));
    gesture?.move(at(340, 470));
    gesture?.end(at(340, 470));
    expect(openingNow(store)?.margin).toEqual({ left: 140, right: 60, bottom: 120, top: 180 });
    // Carried beyond the board it stops at its side, as large as it was.
    const far = startOpening(store, at(300, 500), null);
    far?.move(at(2000, 500));
    far?.end(at(2000, 500));
    expect(openingNow(store)?.margin).toEqual({ left: 200, right: 0, bottom: 120, top: 180 });
    undoStep(store);
    undoStep(store);
    expect(openingNow(store)).toEqual(WINDOW);
    expect(store.getState().edit.history.done).toEqual([]);
  });

  it('is pulled by its sides and sized by what is typed', () => {
    const store = storeOf([board()]);
    const left = startOpening(store, at(200, 500), { x: -1, y: 0 });
    left?.move(at(150, 500));
    left?.end(at(150, 500));
    expect(openingNow(store)?.margin).toEqual({ left: 50, right: 100, bottom: 150, top: 150 });
    const top = startOpening(store, at(300, 650), { x: 0, y: 1 });
    top?.move(at(300, 660));
    top?.typed?.(250);
    top?.end(at(300, 660));
    expect(openingNow(store)?.margin).toEqual({ left: 50, right: 100, bottom: 150, top: 200 });
    const given = startOpening(store, at(300, 600), { x: 0, y: 1 });
    given?.move(at(300, 900));
    given?.cancel();
    expect(openingNow(store)?.margin.top).toBe(200);
    expect(store.getState().provisional).toBeNull();
  });

  it('is drawn to lines of its board where it is near them', () => {
    const store = storeOf([board([{ ...WINDOW, margin: { left: 90, right: 110, bottom: 150, top: 150 } }])]);
    // The middle of the opening is 10 off the middle of the board; the hand brings it to 3 off.
    const gesture = startOpening(store, at(300, 500), null);
    gesture?.move(at(307, 500, false));
    gesture?.end(at(307, 500, false));
    expect(openingNow(store)?.margin).toMatchObject({ left: 100, right: 100 });
  });

  it('is drawn from corner to corner, or placed by a click, and is chosen then', () => {
    const store = storeOf([board([])], null);
    store.setState({ tool: 'opening' });
    const gesture = startDrawOpening(store, at(180, 700));
    gesture?.move(at(300, 650));
    gesture?.move(at(320, 500));
    gesture?.end(at(320, 500));
    expect(openingNow(store)).toEqual({
      id: 'opening-1',
      shape: { form: 'rectangle' },
      margin: { left: 80, right: 180, bottom: 300, top: 100 },
    });
    expect(store.getState()).toMatchObject({ tool: 'select', opening: 'opening-1' });
    expect(holeArea(store)).toBeCloseTo(140 * 200, 6);
    // Beyond the board it ends at its side.
    const second = startDrawOpening(store, at(400, 250));
    second?.move(at(900, 100));
    second?.end(at(900, 100));
    expect(openingNow(store)?.margin).toEqual({ left: 300, right: 0, bottom: 0, top: 550 });
    const click = startDrawOpening(store, at(110, 210));
    click?.end(at(110, 210));
    expect(openingNow(store)).toMatchObject({
      id: 'opening-3',
      margin: { left: 0, bottom: 0, right: 300, top: 450 },
    });
  });

  it('is chosen where nothing that lies higher is pressed, and let go with its part', () => {
    const shelf = newPart('panel', { id: 'shelf', name: 'Shelf', box: { x: 150, y: 350, w: 300, h: 40 } });
    const under = newPart('painted', { id: 'under', name: 'Under', box: { x: 210, y: 400, w: 150, h: 200 } });
    const store = storeOf([board(), { ...shelf, on: 'board' }, under], null);
    expect(chooseOpeningAt(store, { x: 300, y: 370 })).toBe(false);
    expect(chooseOpeningAt(store, { x: 120, y: 220 })).toBe(false);
    expect(chooseOpeningAt(store, { x: 300, y: 500 })).toBe(true);
    expect(chosenOpening(store.getState())?.hole).toEqual({ x: 200, y: 350, w: 200, h: 300 });
    select(store, ['shelf']);
    expect(store.getState().opening).toBeNull();
    const locked = storeOf([{ ...board(), locked: true }], null);
    expect(chooseOpeningAt(locked, { x: 300, y: 500 })).toBe(false);
  });

  it('goes by arrows and by Delete', () => {
    const store = storeOf([board()]);
    expect(nudgeOpening(store, 1, 0, true)).toBe(true);
    expect(openingNow(store)?.margin.left).toBeCloseTo(125.4, 9);
    expect(removeOpening(store)).toBe(true);
    expect(openingNow(store)).toBeUndefined();
    expect(removeOpening(store)).toBe(false);
    expect(nudgeOpening(store, 1, 0, true)).toBe(false);
  });

  it('shows handles of its own, and measures that can be typed', () => {
    const store = storeOf([board()]);
    const { edit, view } = store.getState();
    const handles = handlesOf(edit.design, 'board', BOX, view, null, 'opening-1');
    expect(handles.filter(({ act }) => act.kind === 'resize').map(({ px }) => px)).toContainEqual({
      x: 200,
      y: 500,
    });
    const found = chosenOpening(store.getState());
    if (!found) throw new Error('no opening');
    const told = dimensionsOfOpening(found).map(({ key, from, to }) => [key, to - from]);
    expect(told).toEqual([
      ['w', 200],
      ['h', 300],
      ['left', 100],
      ['right', 100],
      ['bottom', 150],
      ['top', 150],
    ]);
    expect(openingTyped(found, 'w', 250).margin).toEqual({ left: 100, right: 50, bottom: 150, top: 150 });
    expect(openingTyped(found, 'top', 20).margin).toEqual({ left: 100, right: 100, bottom: 150, top: 20 });
  });
});

describe('the outline of an opening', () => {
  it('has a corner carried alone, and its sides bowed, of every ready shape', () => {
    const inside = fc.double({ min: 0.02, max: 0.98, noNaN: true });
    const forms = [
      'arched',
      'pointed',
      'ogee',
      'basket',
      'four-centered',
      'regular',
      'star',
      'ribbon',
    ] as const;
    fc.assert(
      fc.property(fc.constantFrom(...forms), inside, inside, fc.nat(), (form, u, v, nth) => {
        const hole = { w: 200, h: 300 };
        const shape = freed(outlineOf(form).first(hole), { x: 0, y: 0, ...hole });
        if (!shape) throw new Error(`${form} has no one border`);
        const store = storeOf([board([{ ...WINDOW, shape }])]);
        const found = chosenOpening(store.getState());
        const before = found && cornersOf(found.opening, found.hole);
        if (!before) throw new Error('no corners');
        const index = nth % before.points.length;
        const from = before.points[index] ?? { x: 0, y: 0 };
        const to = { x: BOX.x + u * BOX.w, y: BOX.y + v * BOX.h };
        const gesture = startCorner(store, at(from.x, from.y), index, false);
        gesture?.move(at(to.x, to.y));
        gesture?.end(at(to.x, to.y));
        if (Math.hypot(to.x - from.x, to.y - from.y) <= 4) return;
        const now = chosenOpening(store.getState());
        const after = now && cornersOf(now.opening, now.hole);
        // Where a bow would reach out of the board all is drawn into it; else the other corners stay.
        const margins = Object.values(now?.opening.margin ?? { none: -1 });
        expect(Math.min(...margins)).toBeGreaterThanOrEqual(0);
        if (Math.min(...margins) === 0) return;
        before.points.forEach((was, i) => {
          const { x, y } = after?.points[i] ?? { x: Number.NaN, y: Number.NaN };
          const there = i === index ? to : was;
          expect(Math.hypot(x - there.x, y - there.y)).toBeLessThan(1e-6);
        });
        undoStep(store);
        expect(openingNow(store)?.shape).toEqual(shape);
      }),
      { numRuns: runs(40) },
    );
  });

  it('is a segment where its upper side is bowed: area and rise by the handbook', () => {
    const corners = [
      { u: 0, v: 0 },
      { u: 1, v: 0 },
      { u: 1, v: 1 },
      { u: 0, v: 1 },
    ];
    const store = storeOf([board([{ ...WINDOW, shape: { form: 'polygon', points: corners } }])]);
    // Half of the span is 100; through a place 25 over the middle of the upper side.
    const gesture = startBow(store, at(300, 650), 2);
    gesture?.move(at(300, 675));
    gesture?.end(at(300, 675));
    expect(openingNow(store)?.margin).toMatchObject({ left: 100, right: 100, bottom: 150 });
    expect(openingNow(store)?.margin.top).toBeCloseTo(125, 9);
    // Radius (c² + 4 r²) / 8 r (Building Trades Pocketbook), and the area of a segment R² (a - sin a) / 2 by its angle.
    const radius = (200 ** 2 + 4 * 25 ** 2) / (8 * 25);
    const angle = 2 * Math.asin(100 / radius);
    const segment = (radius ** 2 * (angle - Math.sin(angle))) / 2;
    expect(Math.abs(holeArea(store) - 200 * 300 - segment)).toBeLessThan(1e-6);
  });
});
