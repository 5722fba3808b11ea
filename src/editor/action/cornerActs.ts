import type { Part } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import { commit } from '../state/commit.ts';
import { layoutOf } from '../state/derive.ts';
import { type EditorState, type EditorStore, say } from '../state/store.ts';
import { t } from '../words/t.ts';
import {
  type Corners,
  cornersOf,
  editsToCorners,
  leastCorners,
  movedCorner,
  withoutCorner,
} from './corners.ts';
import { nudgeStep } from './selection.ts';

export interface Cornered {
  readonly part: Part;
  readonly box: Box;
  readonly corners: Corners;
}

/** The one selected part, when it has corners of its own and is not locked. */
export function corneredPart({ edit: { design, selection } }: EditorState): Cornered | null {
  const [only] = selection;
  if (selection.length !== 1) return null;
  const part = design.parts.find((p) => p.id === only);
  if (!part || part.locked) return null;
  const box = layoutOf(design).boxes.get(part.id) ?? part.box;
  const corners = cornersOf(part, box);
  return corners ? { part, box, corners } : null;
}

/** Gives a part other corners as one step of undo. */
export function commitCorners(
  store: EditorStore,
  { part, box }: Cornered,
  corners: Corners,
  label: string,
  merge?: string,
): boolean {
  const { design } = store.getState().edit;
  const options = { held: new Set([part.id]), ...(merge ? { merge } : {}) };
  return commit(store, editsToCorners(design, part, box, corners), label, options);
}

/** Takes the chosen corner away; true when there was one to take. */
export function removeCorner(store: EditorStore, index: number): boolean {
  const found = corneredPart(store.getState());
  if (!found || index >= found.corners.points.length) return false;
  const left = withoutCorner(found.corners, index);
  if (left) {
    commitCorners(store, found, left, t('did.dropCorner', { number: index + 1, name: found.part.name }));
    store.setState({ corner: null });
  } else say(store, t('say.leastCorners', { count: leastCorners(found.corners.closed) }));
  return true;
}

/** Arrow keys move the chosen corner; true when there is one. */
export function nudgeCorner(store: EditorStore, dx: number, dy: number, large: boolean): boolean {
  const { corner, edit } = store.getState();
  const found = corner === null ? null : corneredPart(store.getState());
  const at = corner === null ? undefined : found?.corners.points[corner];
  if (corner === null || !found || !at) return false;
  const step = nudgeStep(edit.design, large);
  const moved = movedCorner(found.corners, corner, { x: at.x + dx * step, y: at.y + dy * step });
  const label = t('did.corner', { number: corner + 1, name: found.part.name });
  commitCorners(store, found, moved, label, `corner:${found.part.id}:${corner}`);
  return true;
}
