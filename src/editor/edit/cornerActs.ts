import { leastCorners } from '../../design/limits.ts';
import type { Part } from '../../design/schema.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { boxIn } from '../../layout/boxIn.ts';
import { commit } from '../state/commit.ts';
import { type EditorState, type EditorStore, say } from '../state/store.ts';
import { t } from '../words/t.ts';
import { lengthText } from '../words/text.ts';
import { type Corners, cornersOf, editsToCorners, movedCorner, withoutCorner } from './corners.ts';
import { chosenOpening, onlyPart } from './openings.ts';
import { nudgeStep } from './selection.ts';

export interface Cornered {
  readonly part: Part;
  readonly box: Box;
  readonly corners: Corners;
  /** The opening of the part that they are corners of; null: the part's own. */
  readonly opening: string | null;
  /** What they are corners of, as people read it. */
  readonly name: string;
}

/** The one selected part, or its chosen opening, when it has corners of its own and is not locked. */
export function corneredPart(state: EditorState): Cornered | null {
  const part = onlyPart(state.edit);
  if (!part || part.locked) return null;
  const inner = chosenOpening(state);
  const box = boxIn(state.edit.shown.layout.boxes, part);
  const corners = inner ? cornersOf(inner.opening, inner.hole) : cornersOf(part, box);
  const { name } = inner ?? part;
  return corners ? { part, box, corners, opening: inner?.opening.id ?? null, name } : null;
}

/** Gives a part other corners as one step of undo. */
export function commitCorners(
  store: EditorStore,
  { part, box, opening }: Pick<Cornered, 'part' | 'box' | 'opening'>,
  corners: Corners,
  label: string,
  more: { readonly merge?: string; readonly say?: string } = {},
): boolean {
  const { design } = store.getState().edit;
  return commit(store, editsToCorners(design, part, box, corners, opening), label, {
    held: new Set([part.id]),
    ...more,
  });
}

/** What is told of a corner that was moved: where on the face it is now. */
export function cornerPlace(store: EditorStore, label: string, at: Point): string {
  const { design } = store.getState().edit;
  return t('say.at', { name: label, left: lengthText(design, at.x), bottom: lengthText(design, at.y) });
}

/** Takes the chosen corner away; true when there was one to take. */
export function removeCorner(store: EditorStore, index: number): boolean {
  const found = corneredPart(store.getState());
  if (!found || index >= found.corners.points.length) return false;
  const left = withoutCorner(found.corners, index);
  if (left) {
    commitCorners(store, found, left, t('did.dropCorner', { number: index + 1, name: found.name }));
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
  const to = { x: at.x + dx * step, y: at.y + dy * step };
  const moved = movedCorner(found.corners, corner, to);
  const label = t('did.corner', { number: corner + 1, name: found.name });
  commitCorners(store, found, moved, label, {
    merge: `corner:${found.part.id}:${found.opening}:${corner}`,
    say: cornerPlace(store, label, to),
  });
  return true;
}
