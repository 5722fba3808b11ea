import type { Design } from '../../../src/design/schema.ts';
import { arrangingOf, editsToArrange } from '../../../src/editor/edit/arrange.ts';
import { startDraw } from '../../../src/editor/gesture/draw.ts';
import type { Gesture as Running, Touch } from '../../../src/editor/gesture/gesture.ts';
import { startMove } from '../../../src/editor/gesture/move.ts';
import { startResize } from '../../../src/editor/gesture/resize.ts';
import { commit, select } from '../../../src/editor/state/commit.ts';
import { createEditorStore, type EditorStore, toScreen } from '../../../src/editor/state/store.ts';
import type { DrawnKind } from '../../../src/editor/state/tools.ts';
import { mirrorCopy } from '../../../src/layout/arrange/mirror.ts';
import type { Gesture } from './scene.ts';

/** Which of the editor's tools a scene means. */
const KINDS: Readonly<Record<string, DrawnKind>> = {
  strip: 'strip',
  panel: 'panel',
  frame: 'run',
  sign: 'sign',
  painted: 'painted',
  fitting: 'fitting',
  row: 'array',
};

export const kindOf = (tool: string): DrawnKind | undefined => KINDS[tool];

const PULLS: Readonly<Record<string, { readonly x: -1 | 0 | 1; readonly y: -1 | 0 | 1 }>> = {
  'resize-low-x': { x: -1, y: 0 },
  'resize-high-x': { x: 1, y: 0 },
  'resize-low-y': { x: 0, y: -1 },
  'resize-high-y': { x: 0, y: 1 },
};

export function benchOf(design: Design): EditorStore {
  const store = createEditorStore(design, 'light');
  return store;
}

/** Does a gesture with the editor's own tools, without a screen; gives the id of what it made or had in hand. */
export function perform(store: EditorStore, gesture: Gesture, ids: ReadonlyMap<string, string>): string {
  const part = gesture.part === undefined ? undefined : (ids.get(gesture.part) ?? gesture.part);
  if (gesture.tool === 'mirror-copy') {
    const { shown } = store.getState().edit;
    const about = { of: 'face', side: 'mid' } as const;
    const made = mirrorCopy(arrangingOf(shown), [part ?? ''], { axis: 'x', about });
    commit(store, editsToArrange(shown, made), 'mirror');
    return made.add[0]?.id ?? '';
  }
  const { pixels_per_mm: scale, jitter_px: miss } = gesture;
  const view = { scale, x: 0, y: 0 };
  store.setState({ view, stock: gesture.stock ?? null });
  const touch = (p: readonly [number, number], dx: number, dy: number): Touch => {
    const face = { x: p[0] + dx / scale, y: p[1] + dy / scale };
    return { px: toScreen(view, face), face, shift: false, free: gesture.modifier === 'free', touch: false };
  };
  const down = touch(gesture.from_mm, miss[0], miss[1]);
  const up = touch(gesture.to_mm, miss[2], miss[3]);
  if (part !== undefined) select(store, [part]);
  const running = start(store, gesture, down);
  if (!running) throw new Error(`${gesture.tool} does not start`);
  for (let i = 1; i <= 8; i++) {
    const at = (a: number, b: number) => a + ((b - a) * i) / 8;
    const face = { x: at(down.face.x, up.face.x), y: at(down.face.y, up.face.y) };
    running.move({ ...up, face, px: toScreen(view, face) });
  }
  running.end(up);
  return store.getState().edit.selection[0] ?? '';
}

function start(store: EditorStore, { tool }: Gesture, down: Touch): Running | null {
  const kind = kindOf(tool);
  if (kind) return startDraw(store, down, kind);
  const pull = PULLS[tool];
  return pull ? startResize(store, down, pull) : startMove(store, down);
}
