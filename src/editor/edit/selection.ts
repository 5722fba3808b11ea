import type { Edit } from '../../design/edit/edit.ts';
import { inserting, removing, replacing } from '../../design/edit/make.ts';
import { editsToRemove } from '../../design/removal.ts';
import type { Axis, Design } from '../../design/schema.ts';
import { preview } from '../../design/state.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { pick } from '../../list/at.ts';
import { inches, type Mm } from '../../measure/units.ts';
import { tried } from '../document/document.ts';
import { commit, select } from '../state/commit.ts';
import { type EditorStore, say } from '../state/store.ts';
import { t } from '../words/t.ts';
import { lengthText } from '../words/text.ts';
import { clipText, copyOf, editsToPaste, readClip } from './copy.ts';
import { freeId, freeName } from './ids.ts';
import { editsToLay } from './lay.ts';
import { editsToLoosen } from './loosen.ts';
import { itemsOf, movableBoxes, nameOf, partsIn } from './movable.ts';
import { editsToPlace } from './place.ts';
import { ruleSentence } from './sentence.ts';
import { stopsTold } from './stopHere.ts';

/** What the keyboard, the menus and the part list do with the selection. */

/** “Left stile”, or “3 parts”. */
export function selectionName(design: Design, selection: readonly string[]): string {
  const [only] = selection;
  return selection.length === 1 && only !== undefined
    ? nameOf(design, only)
    : t('count.parts', { count: selection.length });
}

/** Arrow keys: a sixteenth of an inch or a millimeter; large steps an inch or a centimeter. */
export function nudgeStep(design: Design, large: boolean): Mm {
  const metric = design.measure.unit === 'mm' || design.measure.unit === 'cm';
  return metric ? (large ? 10 : 1) : inches(large ? 1 : 1 / 16);
}

interface Nudge {
  readonly large: boolean;
  /** Rules that hold the parts that way let go, as they do in a drag with Alt. */
  readonly free: boolean;
}

/** Moves the selection by a step. Where rules hold all of it, nothing is done: they are named, and offered to let go. */
export function nudge(store: EditorStore, dx: -1 | 0 | 1, dy: -1 | 0 | 1, { large, free }: Nudge): void {
  const { edit } = store.getState();
  const { design, selection } = edit;
  const before = movableBoxes(design, edit.shown.layout.boxes, selection);
  if (before.size === 0) {
    if (selection.length > 0) say(store, t('say.locked'));
    return;
  }
  const step = nudgeStep(design, large);
  const after = new Map([...before].map(([id, b]) => [id, { ...b, x: b.x + dx * step, y: b.y + dy * step }]));
  const held = new Set(before.keys());
  const loosen = free ? editsToLoosen(design, held, dx === 0 ? 'y' : 'x') : [];
  const loose = loosen.length > 0 ? preview(edit, loosen) : design;
  const placed = [...loosen, ...editsToPlace(loose, before, after)];
  const there = tried(edit, placed, held);
  const edits = [...placed, ...editsToLay(there, held)];
  const moved = there.layout.boxes;
  const stays = [...before].every(([id, b]) => {
    const box = moved.get(id);
    return box !== undefined && Math.hypot(box.x - b.x, box.y - b.y) < SAME_LENGTH;
  });
  if (stays) {
    tellWhatHolds(store, held, dx === 0 ? 'y' : 'x', () => nudge(store, dx, dy, { large, free: true }));
    return;
  }
  const name = selectionName(design, selection);
  const done = commit(store, edits, t('did.move', { name }), { held, merge: `nudge:${selection.join(',')}` });
  if (!done) return;
  const { design: now, shown } = store.getState().edit;
  const [id] = before.keys();
  const box = id === undefined ? undefined : (shown.layout.boxes.get(id) ?? after.get(id));
  if (box) say(store, t('say.at', { name, left: lengthText(now, box.x), bottom: lengthText(now, box.y) }));
}

/** Names the rules by which parts stay where they are along an axis; `free` lets them go and moves the parts. */
function tellWhatHolds(store: EditorStore, held: ReadonlySet<string>, axis: Axis, free: () => void): void {
  const { design, selection, shown } = store.getState().edit;
  const { rules: states } = shown.layout;
  const holding = new Set(editsToLoosen(design, held, axis).map((edit) => 'id' in edit && edit.id));
  const lines = design.rules
    .filter((rule) => holding.has(rule.id))
    .map((rule) => ruleSentence(design, rule, states));
  const text = t(lines.length > 0 ? 'say.held' : 'say.heldByOthers', {
    name: selectionName(design, selection),
  });
  // What stands there already is not spoken again by itself.
  if (store.getState().notice?.text === text) say(store, [text, ...lines].join(' '));
  const take = () => {
    select(store, selection);
    free();
  };
  const offer = { label: t('act.letGoAndMove'), take };
  store.setState({ notice: { tone: 'warn', text, lines, ...(lines.length > 0 ? { offer } : {}) } });
}

export function removeSelection(store: EditorStore): void {
  const { design, selection } = store.getState().edit;
  if (selection.length === 0) return;
  const items = itemsOf(design, selection);
  const locked = items.filter((id) => design.parts.find((p) => p.id === id)?.locked);
  if (locked.length > 0) {
    say(store, t('say.locked'));
    return;
  }
  const edits = editsToRemove(design, items);
  const label = t('did.remove', { name: selectionName(design, selection) });
  if (!commit(store, edits, label, { selection: [] })) return;
  const lines = stopsTold(design, store.getState().edit.design);
  if (lines.length > 0) store.setState({ notice: { tone: 'warn', text: label, lines } });
}

export function duplicateSelection(store: EditorStore): void {
  const { design, selection, shown } = store.getState().edit;
  const id = store.getState().designId ?? '';
  const clip = copyOf(design, shown.layout.boxes, selection, id);
  const step = inches(1);
  const { edits, ids } = editsToPaste(design, clip, step, -step, { shown, id });
  if (ids.length > 0) {
    commit(store, edits, t('did.duplicate', { name: selectionName(design, selection) }), { selection: ids });
  }
}

/** The text for the clipboard; null when nothing is selected. */
export function copiedText(store: EditorStore): string | null {
  const { design, selection, shown } = store.getState().edit;
  if (selection.length === 0) return null;
  return clipText(copyOf(design, shown.layout.boxes, selection, store.getState().designId));
}

/** Puts in what was copied here or in another window; false when the text is something else. */
export function pasteText(store: EditorStore, text: string): boolean {
  const clip = readClip(text);
  if (!clip) return false;
  const { design, shown } = store.getState().edit;
  const taken = clip.parts.some((p) => design.parts.some((q) => q.id === p.id));
  const step = taken ? inches(1) : 0;
  const { edits, ids } = editsToPaste(design, clip, step, -step, { shown, id: store.getState().designId });
  return commit(store, edits, t('did.paste', { name: t('count.parts', { count: ids.length }) }), {
    selection: ids,
  });
}

export function toggleLock(store: EditorStore): void {
  const { design, selection } = store.getState().edit;
  const ids = new Set(itemsOf(design, selection));
  const parts = design.parts.filter((p) => ids.has(p.id));
  if (parts.length === 0) return;
  const locked = !parts.every((p) => p.locked);
  const edits: Edit[] = parts.map((p) => replacing('parts', { ...p, locked }));
  commit(store, edits, t(locked ? 'did.lock' : 'did.unlock', { name: selectionName(design, selection) }));
}

export function groupSelection(store: EditorStore): void {
  const { design, selection } = store.getState().edit;
  const parts = partsIn(design, selection);
  if (parts.length < 2) {
    say(store, t('say.groupNeedsTwo'));
    return;
  }
  const edits: Edit[] = design.groups
    .filter((g) => g.parts.some((id) => parts.includes(id)))
    .map((g) => removing('groups', g.id));
  const id = freeId(design, 'group');
  const name = freeName(design.groups, t('kind.group'));
  edits.push(inserting('groups', { id, name, parts }));
  commit(store, edits, t('did.group', { name }), { selection: [id] });
}

export function ungroupSelection(store: EditorStore): void {
  const { design, selection } = store.getState().edit;
  const groups = design.groups.filter((g) => selection.includes(g.id));
  if (groups.length === 0) return;
  const edits: Edit[] = groups.map((g) => removing('groups', g.id));
  commit(store, edits, t('did.ungroup', { name: pick(groups, 0).name }), {
    selection: groups.flatMap((g) => g.parts),
  });
}

export function selectAll(store: EditorStore): void {
  const { design } = store.getState().edit;
  const grouped = new Set(design.groups.flatMap((g) => g.parts));
  const ids = [
    ...design.groups.map((g) => g.id),
    ...design.parts.filter((p) => !grouped.has(p.id)).map((p) => p.id),
  ];
  select(store, ids);
  say(store, t('say.selected', { count: ids.length }));
}
