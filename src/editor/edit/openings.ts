import { replacing } from '../../design/edit/make.ts';
import { isBoards, isSheet } from '../../design/made.ts';
import type { Design, Panel, Part } from '../../design/schema.ts';
import { containsPointInRegion } from '../../geometry/region.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { boxIn } from '../../layout/boxIn.ts';
import type { LaidPart } from '../../layout/laid.ts';
import { openingBox, regionOfShape } from '../../layout/place/shape.ts';
import type { Mm } from '../../measure/units.ts';
import { commit } from '../state/commit.ts';
import type { EditorState, EditorStore, OpeningMeasure } from '../state/store.ts';
import { t, type WordKey } from '../words/t.ts';
import { lengthText } from '../words/text.ts';
import { numberedId } from './ids.ts';
import { nudgeStep } from './selection.ts';

export type Opening = Panel['openings'][number];
/** What has openings: boards of sheet, and fills. */
type Opened = Extract<Part, { readonly openings?: unknown }>;

export const takesOpenings = (part: Part): part is Opened => isSheet(part) || isBoards(part);

export const openingsOf = (part: Part): readonly Opening[] =>
  takesOpenings(part) ? (part.openings ?? []) : [];

/** A part with other openings. */
const opened = (part: Part, openings: readonly Opening[]): Part =>
  takesOpenings(part) ? { ...part, openings } : part;

/** The part with one of its openings told anew. */
export const withOpening = (part: Part, next: Opening): Part =>
  opened(
    part,
    openingsOf(part).map((one) => (one.id === next.id ? next : one)),
  );

/** One opening more, a rectangle within its margins. */
export function newOpening(openings: readonly Opening[], margin: Opening['margin']): Opening {
  const id = numberedId(new Set(openings.map((one) => one.id)), 'opening');
  return { id, shape: { form: 'rectangle' }, margin };
}

/** Margins of an opening that takes up a box, as far as that lies within the part's own. */
export const marginsOf = (hole: Box, box: Box): Opening['margin'] => ({
  left: Math.max(0, hole.x - box.x),
  right: Math.max(0, box.x + box.w - hole.x - hole.w),
  bottom: Math.max(0, hole.y - box.y),
  top: Math.max(0, box.y + box.h - hole.y - hole.h),
});

/** An opening with a measure that was typed: a margin pulls its side, a size the right or the upper one. */
export function openingTyped(
  { box, hole, opening }: ChosenOpening,
  side: OpeningMeasure['side'],
  mm: Mm,
): Opening {
  const margin =
    side === 'w' || side === 'h'
      ? marginsOf({ ...hole, [side]: mm }, box)
      : { ...opening.margin, [side]: mm };
  return { ...opening, margin };
}

/** An opening of the one selected part. */
export interface ChosenOpening {
  readonly part: Part;
  /** Of the part, and of the opening in it. */
  readonly box: Box;
  readonly hole: Box;
  readonly opening: Opening;
  readonly name: string;
}

/** What each measure of an opening is called. */
export const OPENING_MEASURES = {
  left: 'margin.left',
  right: 'margin.right',
  bottom: 'margin.bottom',
  top: 'margin.top',
  w: 'size.width',
  h: 'part.height',
} as const satisfies Readonly<Record<OpeningMeasure['side'], WordKey>>;

/** What an opening is called: its number among those of its part. */
export function openingName(design: Design, { part: id, opening }: Omit<OpeningMeasure, 'side'>): string {
  const part = design.parts.find((one) => one.id === id);
  return part
    ? nameAmong(
        part,
        openingsOf(part).findIndex((one) => one.id === opening),
      )
    : '';
}

const nameAmong = ({ name }: Part, index: number) => t('opening.of', { number: index + 1, name });

/** An opening of a part that lies in a box; null where it is gone, or its margins leave nothing of it. */
export function openingIn(part: Part, box: Box, id: string): ChosenOpening | null {
  const openings = openingsOf(part);
  const at = openings.findIndex((one) => one.id === id);
  const opening = openings[at];
  const hole = opening ? openingBox(opening, box) : null;
  if (!opening || !hole) return null;
  return { part, box, hole, opening, name: nameAmong(part, at) };
}

/** The opening that is chosen, of the one selected part. */
export function chosenOpening({
  edit,
  opening,
}: Pick<EditorState, 'edit' | 'opening'>): ChosenOpening | null {
  const part = opening === null ? undefined : onlyPart(edit);
  return part && opening !== null ? openingIn(part, boxIn(edit.shown.layout.boxes, part), opening) : null;
}

export function onlyPart({
  design,
  selection,
}: Pick<EditorState['edit'], 'design' | 'selection'>): Part | undefined {
  const [only] = selection;
  return selection.length === 1 ? design.parts.find((p) => p.id === only) : undefined;
}

/** Chooses the opening of the selected part at a point, unless something lies in or over it there; true when there is one. */
export function chooseOpeningAt(store: EditorStore, p: Point): boolean {
  const { edit } = store.getState();
  const part = onlyPart(edit);
  if (!part || part.locked) return false;
  const { parts, boxes } = edit.shown.layout;
  const own = parts.find((laid) => laid.part === part.id);
  const isHigher = (laid: LaidPart) => own !== undefined && laid.z1 > own.z0 + SAME_LENGTH;
  if (parts.some((laid) => isHigher(laid) && containsPointInRegion(laid.region, p))) return false;
  const box = boxIn(boxes, part);
  const found = openingsOf(part).findLast((opening) => {
    const hole = openingBox(opening, box);
    return hole && containsPointInRegion(regionOfShape(opening.shape, hole), p);
  });
  if (!found) return false;
  if (store.getState().opening !== found.id) store.setState({ opening: found.id, corner: null });
  return true;
}

/** The edit that tells an opening anew. */
export const editToOpening = ({ part }: Pick<ChosenOpening, 'part'>, next: Opening) =>
  replacing('parts', withOpening(part, next));

/** The edit that gives a part one opening more. */
export const editToOpen = (part: Part, next: Opening) =>
  replacing('parts', opened(part, [...openingsOf(part), next]));

/** Deletes the chosen opening; true when one is chosen. */
export function removeOpening(store: EditorStore): boolean {
  const found = chosenOpening(store.getState());
  if (!found) return false;
  const { part, opening, name } = found;
  const item = opened(
    part,
    openingsOf(part).filter((one) => one.id !== opening.id),
  );
  commit(store, [replacing('parts', item)], t('did.remove', { name }));
  store.setState({ opening: null });
  return true;
}

/** Arrow keys move the chosen opening within its part; true when one is chosen. */
export function nudgeOpening(store: EditorStore, dx: number, dy: number, large: boolean): boolean {
  const { edit } = store.getState();
  const found = chosenOpening(store.getState());
  if (!found || found.part.locked) return found !== null;
  const { box, hole, opening, name, part } = found;
  const step = nudgeStep(edit.design, large);
  const to = within({ ...hole, x: hole.x + dx * step, y: hole.y + dy * step }, box);
  commit(store, [editToOpening(found, { ...opening, margin: marginsOf(to, box) })], t('did.move', { name }), {
    merge: `opening:${part.id}:${opening.id}`,
    say: openingPlace(edit.design, name, to, box),
  });
  return true;
}

/** What is told of an opening that was moved: where in its part it is now. */
export const openingPlace = (design: Design, name: string, hole: Box, box: Box): string =>
  t('say.at', { name, left: lengthText(design, hole.x - box.x), bottom: lengthText(design, hole.y - box.y) });

/** A box moved into another one; larger than that it begins where that does. */
export function within(hole: Box, box: Box): Box {
  const x = Math.max(box.x, Math.min(hole.x, box.x + box.w - hole.w));
  const y = Math.max(box.y, Math.min(hole.y, box.y + box.h - hole.h));
  return { ...hole, x, y };
}
