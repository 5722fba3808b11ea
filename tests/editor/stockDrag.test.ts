import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { ASSEMBLIES } from '../../src/design/assembly/table.ts';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/schema.ts';
import { boundsFor, shownFrom } from '../../src/editor/document/shown.ts';
import { startPlacing } from '../../src/editor/gesture/place.ts';
import { undoStep } from '../../src/editor/state/commit.ts';
import { createEditorStore, toFace, toScreen } from '../../src/editor/state/store.ts';
import { builtTool, type DrawTool, isBuilt } from '../../src/editor/state/tools.ts';
import type { Box } from '../../src/geometry/shape.ts';

const AREA = { left: 100, top: 50, width: 800, height: 900 };
const VIEW = { scale: 0.4, x: 60, y: 850 };
/** How long a finger rests before it lifts a piece, in milliseconds, and a little more. */
const RESTED = 350;

interface Pointing {
  readonly clientX: number;
  readonly clientY: number;
  readonly pointerId?: number;
  readonly pointerType?: string;
  readonly button?: number;
  readonly altKey?: boolean;
}

/** An event of a pointer as browsers give it; with Alt what is dropped stays where it is let go. */
const pointer = (type: string, given: Pointing): PointerEvent =>
  Object.assign(new Event(type), {
    ...{ button: 0, pointerId: 1, pointerType: 'mouse', shiftKey: false, altKey: true },
    ...given,
  }) as unknown as PointerEvent;

function bench(design: Design = newDesign()) {
  const store = createEditorStore(design, 'light');
  const canvas = { getBoundingClientRect: () => AREA } as unknown as HTMLElement;
  store.setState({ view: VIEW, canvas });
  const page = new EventTarget();
  vi.stubGlobal('window', page);
  const press = (given: Pointing, kind: DrawTool = 'strip') =>
    startPlacing(store, kind, isBuilt(kind) ? undefined : 'pine-1x3', pointer('pointerdown', given));
  const tell = (type: string, given: Pointing) => page.dispatchEvent(pointer(type, given));
  return { store, page, press, tell, parts: () => store.getState().edit.design.parts };
}

const LIST = { clientX: 20, clientY: 300 };
const ON_FACE = { clientX: 400, clientY: 500 };

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('Element', class {});
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe('a piece of stock dragged out of its list', () => {
  it('becomes a part of that stock with its middle where it was let go', () => {
    const { store, press, tell, parts } = bench();
    press(LIST);
    tell('pointermove', { clientX: 300, clientY: 420 });
    expect(store.getState().provisional?.shown.design.parts).toHaveLength(1);
    expect(parts()).toHaveLength(0);
    tell('pointermove', ON_FACE);
    tell('pointerup', ON_FACE);
    const [part] = parts();
    const at = toFace(VIEW, { x: ON_FACE.clientX - AREA.left, y: ON_FACE.clientY - AREA.top });
    expect(part).toMatchObject({ kind: 'strip', stock: 'pine-1x3' });
    expect((part?.box.x ?? 0) + (part?.box.w ?? 0) / 2).toBeCloseTo(at.x, 6);
    expect((part?.box.y ?? 0) + (part?.box.h ?? 0) / 2).toBeCloseTo(at.y, 6);
    expect(store.getState().provisional).toBeNull();
    // The hand is empty: what moves on is no drag.
    tell('pointermove', { clientX: 500, clientY: 300 });
    expect(store.getState().provisional).toBeNull();
  });

  it.each<[string, (at: ReturnType<typeof bench>) => void]>([
    ['let go beside the drawing', ({ tell }) => tell('pointerup', { clientX: 40, clientY: 400 })],
    ['taken away by the system', ({ tell }) => tell('pointercancel', ON_FACE)],
    [
      'dropped by Escape',
      ({ page, tell }) => {
        page.dispatchEvent(Object.assign(new Event('keydown'), { key: 'Escape' }));
        tell('pointerup', ON_FACE);
      },
    ],
  ])('leaves no trace where it is %s', (_, end) => {
    const at = bench();
    at.press(LIST);
    at.tell('pointermove', ON_FACE);
    expect(at.store.getState().hud).not.toBeNull();
    if (_ === 'let go beside the drawing') at.tell('pointermove', { clientX: 40, clientY: 400 });
    end(at);
    expect(at.parts()).toHaveLength(0);
    expect(at.store.getState()).toMatchObject({ provisional: null, hud: null, lifted: false });
  });

  it('does not follow another pointer, nor a press of another button', () => {
    const { store, press, tell, parts } = bench();
    press({ ...LIST, button: 2 });
    tell('pointermove', ON_FACE);
    expect(store.getState().provisional).toBeNull();
    press(LIST);
    tell('pointermove', { ...ON_FACE, pointerId: 2 });
    tell('pointerup', { ...ON_FACE, pointerId: 2 });
    expect(store.getState().provisional).toBeNull();
    expect(parts()).toHaveLength(0);
  });

  it('is taken in hand by a press that goes nowhere, and put down by another', () => {
    const { store, press, tell } = bench();
    for (const stock of ['pine-1x3', null]) {
      press(LIST);
      tell('pointerup', LIST);
      expect(store.getState().stock).toBe(stock);
    }
  });

  it('is lifted by a finger that rests; one that sets off at once scrolls the list', () => {
    const { store, press, tell, parts } = bench();
    const finger = (at: Pointing) => ({ ...at, pointerType: 'touch' });
    press(finger(LIST));
    tell('pointermove', finger({ clientX: 20, clientY: 200 }));
    vi.advanceTimersByTime(RESTED);
    tell('pointerup', finger(ON_FACE));
    expect(store.getState().lifted).toBe(false);
    expect(parts()).toHaveLength(0);
    press(finger(LIST));
    vi.advanceTimersByTime(RESTED);
    expect(store.getState().lifted).toBe(true);
    tell('pointermove', finger(ON_FACE));
    tell('pointerup', finger(ON_FACE));
    expect(store.getState().lifted).toBe(false);
    expect(parts()).toHaveLength(1);
  });
});

describe('a building part dragged out of its list', () => {
  const frame = newPart('run', { id: 'border', name: 'Border', box: { x: 300, y: 500, w: 500, h: 700 } });
  const FREE = { altKey: false };
  /** Where a place of the face is on the page. */
  const spot = (x: number, y: number) => {
    const px = toScreen(VIEW, { x, y });
    return { clientX: px.x + AREA.left, clientY: px.y + AREA.top, ...FREE };
  };

  it('fills the room that it is let go in, held at all four sides, by one step of undo', () => {
    const { store, press, tell } = bench({ ...newDesign(), parts: [frame] });
    const window = builtTool('window');
    press({ ...LIST, ...FREE }, window);
    tell('pointermove', spot(450, 700));
    tell('pointerup', spot(450, 700));
    const { shown } = store.getState().edit;
    const inner = boundsFor(shown).find(({ id }) => id === 'border')?.inner;
    const ground = shown.design.groups[0]?.parts[0] ?? '';
    expect(inner).toBeDefined();
    for (const [key, value] of Object.entries(shown.layout.boxes.get(ground) ?? {}))
      expect(value, key).toBeCloseTo(inner?.[key as keyof Box] ?? Number.NaN, 6);
    const wider = shownFrom({
      ...shown.design,
      parts: shown.design.parts.map((part) =>
        part.id === 'border' ? { ...part, box: { ...part.box, w: 620, h: 640 } } : part,
      ),
    });
    expect(wider.layout.boxes.get(ground)?.w).toBeCloseTo((inner?.w ?? 0) + 120, 6);
    expect(wider.layout.boxes.get(ground)?.h).toBeCloseTo((inner?.h ?? 0) - 60, 6);
    undoStep(store);
    expect(store.getState().edit.design.parts).toEqual([frame]);
  });

  it('keeps its size where the room is much larger, and where Alt is held', () => {
    const { usual } = ASSEMBLIES.porthole;
    for (const [design, altKey] of [
      [newDesign(), false],
      [{ ...newDesign(), parts: [frame] }, true],
    ] as const) {
      const { store, press, tell } = bench(design);
      press({ ...LIST, altKey }, builtTool('porthole'));
      tell('pointermove', { ...spot(550, 850), altKey });
      tell('pointerup', { ...spot(550, 850), altKey });
      const { shown } = store.getState().edit;
      expect(shown.layout.boxes.get(shown.design.groups[0]?.parts[0] ?? '')).toMatchObject(usual);
    }
  });

  it('is taken in hand by a press that goes nowhere, and put down by another', () => {
    const { store, press, tell } = bench();
    for (const tool of [builtTool('window'), 'select']) {
      press(LIST, builtTool('window'));
      tell('pointerup', LIST);
      expect(store.getState().tool).toBe(tool);
    }
  });
});
