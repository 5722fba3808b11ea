import { useEffect } from 'react';
import { isLettered } from '../../design/made.ts';
import { openMenu, openNewPart } from '../control/regions.ts';
import { alignSelection } from '../edit/arrangeSelection.ts';
import { nudgeCorner, removeCorner } from '../edit/cornerActs.ts';
import { chosenMember, enterMembers, stepMember, toggleMember } from '../edit/members.ts';
import { chosenOpening, nudgeOpening, removeOpening } from '../edit/openings.ts';
import {
  copiedText,
  duplicateSelection,
  groupSelection,
  nudge,
  pasteText,
  removeSelection,
  selectAll,
  toggleLock,
  ungroupSelection,
} from '../edit/selection.ts';
import { placeInMiddle } from '../gesture/draw.ts';
import { cancelPath, dropLastCorner, endPath } from '../gesture/path.ts';
import { readAgain } from '../gesture/release.ts';
import { openFile, saveFile } from '../kept/file.ts';
import { redoStep, select, undoStep } from '../state/commit.ts';
import { useStore } from '../state/hooks.ts';
import { type EditorStore, releaseNow, say } from '../state/store.ts';
import { isDrawn } from '../state/tools.ts';
import { t } from '../words/t.ts';
import { zoomBy } from './ZoomTray.tsx';

type Act = (store: EditorStore, e: KeyboardEvent) => void;

/** Keys with Control (Command on a Mac). */
const WITH_CONTROL: Readonly<Record<string, Act>> = {
  z: (s, e) => (e.shiftKey ? redoStep(s) : undoStep(s)),
  y: redoStep,
  d: duplicateSelection,
  a: selectAll,
  g: (s, e) => (e.shiftKey ? ungroupSelection(s) : groupSelection(s)),
  l: toggleLock,
};

/** Keys that work from fields too; what is being typed there counts for them. */
const ALWAYS: Readonly<Record<string, Act>> = {
  s: (s) => {
    settleField();
    void saveFile(s);
  },
  o: (s) => {
    settleField();
    void openFile(s);
  },
  e: (s, e) => {
    settleField();
    alignSelection(s, e.shiftKey ? 'y' : 'x', 'mid', true);
  },
  i: openNewPart,
  p: () => openMenu('Control+P'),
};

/** Has the field in focus take what was typed into it, as it does when it is left. */
function settleField(): void {
  const field = document.activeElement;
  if (!(field instanceof HTMLElement) || !isText(field)) return;
  field.blur();
  field.focus();
}

const PLAIN: Readonly<Record<string, Act>> = {
  Delete: removeChosen,
  Backspace: removeChosen,
  Enter: enter,
  Escape: (s) => {
    if (s.getState().photoMode !== 'rest') s.setState({ photoMode: 'rest', fitted: true });
    else if (s.getState().path.length > 0) cancelPath(s);
    else if (s.getState().corner !== null) s.setState({ corner: null });
    else if (chosenOpening(s.getState())) s.setState({ opening: null });
    else if (chosenMember(s.getState())?.slot) s.setState({ member: null });
    else if (s.getState().tool !== 'select') s.setState({ tool: 'select' });
    else if (s.getState().edit.selection.length > 0) select(s, []);
  },
};

/**
 * Keys that type a character: speech input types such keys too. They count only while the drawing has the focus, and
 * can be turned off (WCAG 2.2, 2.1.4 Character Key Shortcuts).
 */
const SINGLE: Readonly<Record<string, Act>> = {
  '+': (s) => zoomBy(s, 1.25),
  '=': (s) => zoomBy(s, 1.25),
  '-': (s) => zoomBy(s, 0.8),
  '?': (s) => s.setState({ keysShown: true }),
  '0': (s) => {
    if (!readBy(s, 0)) s.setState({ fitted: true });
  },
  ...Object.fromEntries([1, 2, 3, 4].map((digit) => [digit, (s: EditorStore) => readBy(s, digit)])),
};

/** A digit takes a reading of what was put down last, while its bar is there. */
const readBy = (store: EditorStore, digit: number): boolean =>
  releaseNow(store.getState()) !== null && readAgain(store, digit);

/** Ends a path, places what is to be drawn, letters the selected sign, or goes into the members of an array. */
function enter(store: EditorStore): void {
  const { path, tool, edit } = store.getState();
  const sign = edit.design.parts.find((p) => isLettered(p) && edit.selection.join() === p.id);
  if (path.length > 0) endPath(store, false);
  else if (isDrawn(tool)) placeInMiddle(store, tool);
  else if (sign) store.setState({ field: { kind: 'lettering', part: sign.id } });
  else enterMembers(store);
}

/** The last corner of a path being placed, else the chosen corner, opening or member, else all that is selected. */
function removeChosen(store: EditorStore): void {
  const { path, corner } = store.getState();
  if (path.length > 0) dropLastCorner(store);
  else if (corner !== null && removeCorner(store, corner)) return;
  else if (!removeOpening(store) && !toggleMember(store)) removeSelection(store);
}

const ARROWS: Readonly<Record<string, readonly [-1 | 0 | 1, -1 | 0 | 1]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

const isText = (target: EventTarget | null) =>
  target instanceof Element && target.closest('input:not([type=checkbox]), textarea, select') !== null;

/** Whether undo and redo in a field are those of the bench: nothing was typed there that is not taken yet. */
const undoesHere = (target: EventTarget | null, key: string): boolean =>
  (key === 'z' || key === 'y') && target instanceof Element && target.matches('[data-settled]');

const inDialog = (target: EventTarget | null) =>
  target instanceof Element && target.closest('[role=dialog], dialog') !== null;

/** Widgets that use arrows and Escape for themselves. */
const isWidget = (target: EventTarget | null) =>
  target instanceof Element &&
  target.closest('[role=menu], [role=tablist], [role=toolbar], [role=radiogroup], [role=dialog], dialog') !==
    null;

/** Keys for the whole bench. In the part list, arrows walk the list, and with Alt they move the part. */
export function useKeys(): void {
  const store = useStore();
  useEffect(() => {
    const onKey = (e: KeyboardEvent) => {
      if (e.defaultPrevented || store.getState().designId === null) return;
      const control = e.ctrlKey || e.metaKey;
      const act = findAct(store, e, control);
      if (!act) return;
      e.preventDefault();
      act(store, e);
    };
    const onCopy = (e: ClipboardEvent) => {
      if (isText(e.target) || document.getSelection()?.toString()) return;
      const text = copiedText(store);
      if (text === null) return;
      e.clipboardData?.setData('text/plain', text);
      e.preventDefault();
      if (e.type === 'cut') removeSelection(store);
      else say(store, t('say.copied'));
    };
    const onPaste = (e: ClipboardEvent) => {
      if (isText(e.target)) return;
      const text = e.clipboardData?.getData('text/plain') ?? '';
      if (pasteText(store, text)) e.preventDefault();
    };
    window.addEventListener('keydown', onKey);
    document.addEventListener('copy', onCopy);
    document.addEventListener('cut', onCopy);
    document.addEventListener('paste', onPaste);
    return () => {
      window.removeEventListener('keydown', onKey);
      document.removeEventListener('copy', onCopy);
      document.removeEventListener('cut', onCopy);
      document.removeEventListener('paste', onPaste);
    };
  }, [store]);
}

function findAct(store: EditorStore, e: KeyboardEvent, control: boolean): Act | undefined {
  const text = isText(e.target);
  const key = e.key.length === 1 ? e.key.toLowerCase() : e.key;
  // What is asked in a dialog is answered first.
  if (inDialog(e.target) && (key === 'Insert' || (control && 'eip'.includes(key)))) return undefined;
  if (key === 'Insert' && !control && !e.shiftKey && !e.altKey) return openNewPart;
  if (control) return ALWAYS[key] ?? (text && !undoesHere(e.target, key) ? undefined : WITH_CONTROL[key]);
  if (text) return undefined;
  const single = SINGLE[key];
  if (single)
    return store.getState().singleKeys && e.target instanceof Element && e.target.matches('.canvas')
      ? single
      : undefined;
  const arrow = ARROWS[key];
  if (arrow) {
    const inTree = e.target instanceof Element && e.target.closest('[role=tree]') !== null;
    if (isWidget(e.target) || (inTree && !e.altKey)) return undefined;
    return (s) => {
      if (stepMember(s, arrow[0], arrow[1])) return;
      if (nudgeCorner(s, arrow[0], arrow[1], e.shiftKey)) return;
      if (nudgeOpening(s, arrow[0], arrow[1], e.shiftKey)) return;
      // In the list Alt is what moves; on the drawing it lets rules go, as it does while dragging.
      nudge(s, arrow[0], arrow[1], { large: e.shiftKey, free: e.altKey && !inTree });
    };
  }
  if (key === 'Enter' && !(e.target instanceof Element && e.target.closest('.canvas, body') === e.target))
    return undefined;
  return isWidget(e.target) ? undefined : PLAIN[key];
}
