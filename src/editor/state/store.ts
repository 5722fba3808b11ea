import { createStore } from 'zustand/vanilla';
import type { OwnAssembly } from '../../design/assembly/own.ts';
import type { Edit } from '../../design/edit/edit.ts';
import type { Axis, Design } from '../../design/schema.ts';
import type { Point } from '../../geometry/shape.ts';
import type { Touched } from '../../job/touched.ts';
import type { Mm } from '../../measure/units.ts';
import type { PrinterCorrection } from '../../patterns/result.ts';
import { type Document, freshDocument } from '../document/document.ts';
import type { Guide } from '../document/guide.ts';
import type { Shown } from '../document/shown.ts';
import type { Touching } from '../document/touching.ts';
import type { Photo, PhotoMode } from './photo.ts';
import type { StepId } from './steps.ts';
import type { ToolId } from './tools.ts';

export type Look = 'color' | 'tape' | 'shadow';
export type SideTab = 'step' | 'part' | 'parts';
export const THEMES = ['light', 'dark', 'contrast', 'contrast-dark'] as const;
export type Theme = (typeof THEMES)[number];
export type ThemeChoice = 'auto' | Theme;

/** Where the face stands on the canvas: pixels per millimeter, and the pixel of the face's origin. */
export interface View {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

/** What hangs at the pointer while a gesture runs. */
export interface Hud {
  readonly at: Point;
  readonly text: string;
  /** A measure being typed. */
  readonly typed: string | null;
}

/** What a gesture shows before it is finished; the design is untouched until then. */
export interface Provisional {
  readonly shown: Shown;
  readonly guides: readonly Guide[];
  /** It follows a hand, frame by frame; else it is a question that waits for an answer. */
  readonly live: boolean;
}

/** A margin or a size of an opening. */
export interface OpeningMeasure {
  readonly part: string;
  readonly opening: string;
  readonly side: 'left' | 'right' | 'bottom' | 'top' | 'w' | 'h';
}

/** A press that selected, while it may still become a drag. */
export interface Pressed {
  /** What it made; anything else that is done since ends it. */
  readonly edit: Document;
  /** What the panes showed before, and go on showing. */
  readonly selection: readonly string[];
  readonly tab: SideTab;
}

/** A field opened on the canvas itself. */
export type CanvasField =
  | {
      readonly kind: 'rule';
      readonly rule: string;
      /** Which end of it, where a rule has a measure at each. */
      readonly measure?: string | undefined;
      readonly at: Point;
    }
  | { readonly kind: 'size'; readonly part: string; readonly side: 'w' | 'h'; readonly at: Point }
  | ({ readonly kind: 'opening'; readonly at: Point } & OpeningMeasure)
  /** The spacing of an array: how many, the pitch, or the largest gap. */
  | { readonly kind: 'spacing'; readonly part: string; readonly axis: Axis; readonly at: Point }
  | { readonly kind: 'lettering'; readonly part: string };

/** One thing that a release may have meant. */
export interface Reading {
  /** From the design before the gesture. */
  readonly edits: readonly Edit[];
  /** The rules that it brings, in words. */
  readonly rules: readonly { readonly id: string; readonly says: string }[];
  readonly says: string;
}

/** What a release held, and what else it may have meant: shown beside the part until the next act. */
export interface Release {
  readonly before: Document;
  /** As it was left; anything else that is done takes the bar away. */
  readonly design: Design;
  readonly part: string;
  readonly selection: readonly string[];
  /** By the digit that takes each; at 0 the part is held by nothing. */
  readonly readings: readonly Reading[];
  readonly chosen: number;
  /** What was done, by the design that comes of it. */
  readonly label: (there: Design) => string;
}

/** The last release, until something else is done. */
export const releaseNow = ({ release, edit, tool }: EditorState): Release | null =>
  release && release.design === edit.design && release.selection === edit.selection && tool === 'select'
    ? release
    : null;

/** Another bed that waits for a word whether to take it: it moves parts. */
export interface BedQuestion {
  /** The bed that it was asked of; another one since then answers it. */
  readonly from: Design['bed'];
  readonly next: Design['bed'];
  readonly label: string;
}

/** A change that waits for a word: it touches what is done. */
export interface DoneQuestion {
  /** The design that it is a change of; another one since then answers it. */
  readonly from: Document;
  readonly edits: readonly Edit[];
  readonly label: string;
  readonly selection?: readonly string[] | undefined;
  readonly held?: ReadonlySet<string> | undefined;
  readonly touched: readonly Touched[];
  readonly touching: Touching;
}

/** Where the menu of the selection was asked for. */
export interface PartMenuAt {
  /** On the window, pixels. */
  readonly at: Point;
  readonly opened: 'keys' | 'pointer';
  /** What was selected before a finger rested on another part: it may be wanted too. */
  readonly too: readonly string[] | null;
}

/** Longest side of a picture, in pixels: to send, for a large screen, to print on a sheet, to print as a poster. */
export const PICTURE_SIZES = [1200, 2400, 4000, 6000] as const;
export type PictureSize = (typeof PICTURE_SIZES)[number];

export interface EditorState {
  /** What the face is drawn on, for drags that begin elsewhere and focus that goes back to it; null before it stands. */
  readonly canvas: HTMLElement | null;
  /** Id under which the open design is kept; null before one is chosen. */
  readonly designId: string | null;
  readonly edit: Document;
  readonly provisional: Provisional | null;
  readonly pressed: Pressed | null;
  readonly frame: { readonly from: Point; readonly to: Point } | null;
  readonly hud: Hud | null;
  readonly release: Release | null;
  readonly bedQuestion: BedQuestion | null;
  readonly doneQuestion: DoneQuestion | null;
  readonly field: CanvasField | null;
  readonly partMenu: PartMenuAt | null;
  /** The chosen corner of the one selected part. */
  readonly corner: number | null;
  /** The chosen opening of the one selected part: its corners and sides are what the handles are of. */
  readonly opening: string | null;
  /** The chosen member of the one selected array, as `id[column,row]`. */
  readonly member: string | null;
  /** Under the drawing, on this device only. */
  readonly photo: Photo | null;
  /** The photo that lay there before it was taken away or changed for another, to be put back. */
  readonly photoBefore: Photo | null;
  readonly photoMode: PhotoMode;
  /** Corners set so far of a path being placed. */
  readonly path: readonly Point[];
  readonly step: StepId;
  readonly tab: SideTab;
  readonly look: Look;
  readonly tool: ToolId;
  /** What new parts are made of, where they can be; null: the usual stock of each kind. */
  readonly stock: string | null;
  /** Assemblies of the person's own, as this device keeps them, by their ids there. */
  readonly owned: ReadonlyMap<string, OwnAssembly>;
  /** A finger carries a piece of stock: the list it came from must not scroll then. */
  readonly lifted: boolean;
  readonly view: View;
  /** The view follows the window until the person zooms or pans. */
  readonly fitted: boolean;
  readonly theme: ThemeChoice;
  readonly sheetOpen: boolean;
  /** The board of keys, mouse and fingers is open. */
  readonly keysShown: boolean;
  /** Keys that type a character do something on the drawing; kept on the device. */
  readonly singleKeys: boolean;
  /** Longest side of a picture of the face; kept on the device. */
  readonly picturePixels: PictureSize;
  /** Of the printer at hand; kept on the device, not with the design. */
  readonly correction: PrinterCorrection;
  readonly said: { readonly text: string; readonly count: number };
  readonly notice: Notice | null;
  /** Cautions that were put away, for this visit. */
  readonly cautionsRead: readonly string[];
  readonly saved: 'saved' | 'saving' | 'blocked' | 'full';
  /** This tab writes the journal; false when another one does. */
  readonly writes: boolean;
}

export interface Notice {
  readonly tone: 'warn' | 'bad';
  readonly text: string;
  readonly lines?: readonly string[];
  /** What can be done about it at once; the notice goes with it. */
  readonly offer?: { readonly label: string; readonly take: () => void };
}

export const MOST_SCALE = 12;
export const LEAST_SCALE = 0.02;

export type EditorStore = ReturnType<typeof createEditorStore>;

/** A store without React, so that gestures, keys and tests drive it directly. */
export function createEditorStore(design: Design, theme: ThemeChoice) {
  return createStore<EditorState>(() => ({
    canvas: null,
    designId: null,
    edit: freshDocument(design),
    provisional: null,
    pressed: null,
    frame: null,
    hud: null,
    release: null,
    bedQuestion: null,
    doneQuestion: null,
    field: null,
    partMenu: null,
    corner: null,
    opening: null,
    member: null,
    path: [],
    photo: null,
    photoBefore: null,
    photoMode: 'rest',
    step: 'layout',
    tab: 'step',
    look: 'color',
    tool: 'select',
    stock: null,
    owned: new Map(),
    lifted: false,
    view: { scale: 0.25, x: 0, y: 0 },
    fitted: true,
    theme,
    sheetOpen: false,
    keysShown: false,
    singleKeys: true,
    picturePixels: 2400,
    correction: { x: 1, y: 1 },
    said: { text: '', count: 0 },
    notice: null,
    cautionsRead: [],
    saved: 'saved',
    writes: true,
  }));
}

/** Puts a sentence into the live region. */
export function say(store: EditorStore, text: string): void {
  store.setState((s) => ({ said: { text, count: s.said.count + 1 } }));
}

/** The design as it is shown, laid out: with what a running gesture proposes. */
export const shownNow = ({ provisional, edit }: Pick<EditorState, 'provisional' | 'edit'>): Shown =>
  provisional?.shown ?? edit.shown;

/** Something is dragged, drawn or turned just now. */
export const isCarrying = (s: EditorState): boolean => s.provisional?.live === true;

/** What the panes show of the selection: beside a hand that just took something they stay as they were. */
export const inPanes = ({ pressed, edit, tab }: EditorState): Pick<Pressed, 'selection' | 'tab'> =>
  pressed?.edit === edit
    ? { selection: pressed.selection, tab: pressed.tab }
    : { selection: edit.selection, tab };

export const toFace = (view: View, px: Point): Point => ({
  x: (px.x - view.x) / view.scale,
  y: (view.y - px.y) / view.scale,
});

export const toScreen = (view: View, p: Point): Point => ({
  x: view.x + p.x * view.scale,
  y: view.y - p.y * view.scale,
});

/** Millimeters of a number of pixels, whatever the zoom. */
export const pixels = (view: View, px: number): Mm => px / view.scale;
