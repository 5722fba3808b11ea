import { replacing } from '../../design/edit/make.ts';
import type { PartArray } from '../../design/schema.ts';
import type { Point } from '../../geometry/shape.ts';
import { boxIn } from '../../layout/boxIn.ts';
import { commit } from '../state/commit.ts';
import { type EditorState, type EditorStore, say } from '../state/store.ts';
import { t } from '../words/t.ts';
import { isMany, type Many, type MemberPlace, type Places, placesOf } from './places.ts';

/** What one member of an array has of its own. */
export type Override = PartArray['overrides'][string];
type Place = Pick<MemberPlace, 'column' | 'row'>;

const keyOf = ({ column, row }: Place) => `${column},${row}`;

export const overrideOf = (of: Many, at: Place): Override => of.overrides[keyOf(at)] ?? {};

/** The array or fill with one member as given; one that has nothing of its own is not listed. */
export function withOverride<M extends Many>(array: M, at: Place, own: Override): M {
  const { [keyOf(at)]: _, ...others } = array.overrides;
  const whole = array.kind === 'array' ? array.member : array;
  const kept: Override = {
    ...(own.omit ? { omit: true } : {}),
    ...(own.finish !== undefined && own.finish !== whole.finish ? { finish: own.finish } : {}),
    ...(own.stock !== undefined && array.kind === 'array' && 'stock' in whole && own.stock !== whole.stock
      ? { stock: own.stock }
      : {}),
    ...('read' in own && own.read ? { read: own.read } : {}),
  };
  const overrides = Object.keys(kept).length > 0 ? { ...others, [keyOf(at)]: kept } : others;
  return { ...array, overrides };
}

export interface ChosenMember {
  readonly array: Many;
  readonly grid: Places;
  /** The member that is chosen; null: the array as a whole. */
  readonly slot: MemberPlace | null;
}

/** The one selected array or fill with its places, and its member that is chosen. */
export function chosenMember({
  edit: { design, selection, shown },
  member,
}: EditorState): ChosenMember | null {
  const [only] = selection;
  const array = selection.length === 1 ? design.parts.find((p) => p.id === only) : undefined;
  if (!isMany(array)) return null;
  const grid = placesOf(array, boxIn(shown.layout.boxes, array), shown.stocks);
  const slot = grid.slots.find((s) => s.id === member) ?? null;
  return { array, grid, slot };
}

/** Gives one member something of its own, as one step of undo. */
export function commitOverride(
  store: EditorStore,
  { array }: ChosenMember,
  slot: MemberPlace,
  own: Override,
): boolean {
  const item = withOverride(array, slot, own);
  const was = overrideOf(array, slot).omit === true;
  const now = own.omit === true;
  const label = t(was === now ? 'did.change' : now ? 'did.leaveOut' : 'did.putBack', { name: slot.name });
  return commit(store, [replacing('parts', item)], label);
}

/** Chooses a member and says which; null: the array as a whole again. */
export function chooseMember(store: EditorStore, slot: MemberPlace | null): void {
  store.setState({ member: slot?.id ?? null });
  if (!slot) return;
  const found = chosenMember(store.getState());
  const out = found !== null && overrideOf(found.array, slot).omit === true;
  say(store, out ? t('array.saidOut', { name: slot.name }) : slot.name);
}

/** Goes from the selected array to its first member; true when there is one. */
export function enterMembers(store: EditorStore): boolean {
  const [first] = chosenMember(store.getState())?.grid.slots ?? [];
  if (first) chooseMember(store, first);
  return first !== undefined;
}

/** Chooses the member of the selected array at a point, its empty places too; true when there is one. */
export function chooseMemberAt(store: EditorStore, p: Point): boolean {
  const slot = chosenMember(store.getState())?.grid.slots.findLast((slot) => slot.holds(p));
  if (slot) chooseMember(store, slot);
  return slot !== undefined;
}

/** Arrow keys go to the neighbor of the chosen member, of a fill to the next one; true when one is chosen. */
export function stepMember(store: EditorStore, dx: number, dy: number): boolean {
  const found = chosenMember(store.getState());
  const at = found?.slot;
  if (!at) return false;
  const { slots } = found.grid;
  const next =
    found.array.kind === 'fill'
      ? slots[slots.indexOf(at) + Math.sign(dx + dy)]
      : slots.find((s) => s.column === at.column + dx && s.row === at.row + dy);
  if (next) chooseMember(store, next);
  return true;
}

/** Leaves the chosen member out, or puts it back; true when one is chosen. */
export function toggleMember(store: EditorStore): boolean {
  const found = chosenMember(store.getState());
  if (!found?.slot) return false;
  const own = overrideOf(found.array, found.slot);
  commitOverride(store, found, found.slot, { ...own, omit: !own.omit });
  return true;
}
