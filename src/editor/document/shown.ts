import type { Design } from '../../design/schema.ts';
import { type Bounds, boundsOf, boundsOfPart } from '../../layout/bounds.ts';
import { FACE_STAGES, type FaceFacts, type FaceGiven } from '../../plan/stages/face.ts';
import { type Made, through } from '../../plan/stages/stage.ts';
import { tables } from '../shipped/tables.ts';

/** A design laid out, with what the hand holds of it. Immutable: the next one is made from it. */
export interface Shown extends FaceGiven, FaceFacts {
  readonly made: Partial<Made<FaceFacts>>;
}

const NOBODY: ReadonlySet<string> = new Set();

/**
 * A design laid out; quick enough to follow a drag where it is made from the last one.
 * @param held parts that the hand holds, to which others give way
 * @param last what comes out does not depend on it, only how soon
 */
export function shownFrom(design: Design, held = NOBODY, last: Shown | null = null): Shown {
  const given = { design, tables: tables(), held };
  const { facts, made } = through<FaceGiven, FaceFacts>(FACE_STAGES, given, last?.made ?? {});
  return { ...facts, made };
}

/** The edges that rules and snapping mean, of every part: its visible outside, and the inside of frames. */
export const boundsFor = (shown: Shown): readonly Bounds[] => boundsOf(shown, shown.layout);

/** Those of one part: a drag asks for few of them in each frame. */
export function boundsIn(shown: Shown, id: string): Bounds | undefined {
  const part = shown.design.parts.find((p) => p.id === id);
  return part && boundsOfPart(shown, shown.layout, part);
}
