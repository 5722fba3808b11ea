import type { Design } from '../../design/schema.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { pointAt } from '../../geometry/stretch.ts';
import { radians } from '../../measure/units.ts';
import { type Corners, cornersOf, sidesOfCorners } from '../edit/corners.ts';
import { openingIn } from '../edit/openings.ts';
import { angleOfStrip } from '../edit/stripAngle.ts';
import { toScreen, type View } from '../state/store.ts';

/** Which sides a handle pulls: -1 the low one, 1 the high one, 0 none. */
export interface Pull {
  readonly x: -1 | 0 | 1;
  readonly y: -1 | 0 | 1;
}

export interface Handle {
  readonly px: Point;
  readonly act:
    | { readonly kind: 'resize'; readonly pull: Pull }
    | { readonly kind: 'turn' }
    | { readonly kind: 'corner'; readonly index: number; readonly chosen: boolean }
    /** On the way to the next corner: dragging it adds one. */
    | { readonly kind: 'middle'; readonly index: number }
    /** Halfway along a side: dragging it bows the side. */
    | { readonly kind: 'bow'; readonly index: number }
    /** A handle of the smooth side after a corner, and the corner on the screen that it bends the side at. */
    | { readonly kind: 'bend'; readonly index: number; readonly which: 0 | 1; readonly at: Point };
  readonly cursor: string;
}

const PULLS: readonly Pull[] = [
  { x: -1, y: 0 },
  { x: 1, y: 0 },
  { x: 0, y: -1 },
  { x: 0, y: 1 },
  { x: -1, y: -1 },
  { x: 1, y: 1 },
  { x: -1, y: 1 },
  { x: 1, y: -1 },
];

/** What a handle takes up, so that a finger that is put on it meets it and nothing that lies over it, in pixels. */
export const GRIP = 18;
/** Handles stand clear of the part by this much where it is too small to hold them, in pixels. */
const ROOM = 26;

/** Handles stand off by this much where corners of a part are handles too, and around several parts, in pixels. */
export const CLEAR = 14;
/** Legs shorter than this have no handle in their middle, in pixels. */
const SHORTEST_LEG = 44;

/** Handles of the one selected part or keep-clear, or of an opening of it; what its stock decides has none. */
export function handlesOf(
  design: Design,
  id: string,
  box: Box,
  view: View,
  corner: number | null = null,
  opening: string | null = null,
): Handle[] {
  const part = design.parts.find((p) => p.id === id);
  if (part?.locked) return [];
  const inner = part && opening !== null ? openingIn(part, box, opening) : null;
  if (inner) return outlineHandles(cornersOf(inner.opening, inner.hole), inner.hole, view, corner);
  const handles = outlineHandles(part ? cornersOf(part, box) : null, box, view, corner, part);
  if (part?.kind === 'strip') {
    const angle = radians(angleOfStrip(part, box));
    const middle = toScreen(view, { x: box.x + box.w / 2, y: box.y + box.h / 2 });
    const away = 30;
    handles.push({
      px: { x: middle.x - Math.sin(angle) * away, y: middle.y - Math.cos(angle) * away },
      act: { kind: 'turn' },
      cursor: 'grab',
    });
  }
  return handles;
}

/** Those of corners and sides, where there are any, and those that pull the sides of the box. */
function outlineHandles(
  corners: Corners | null,
  box: Box,
  view: View,
  corner: number | null,
  part?: Design['parts'][number],
): Handle[] {
  const handles: Handle[] = corners
    ? [...cornerHandles(corners, view, corner), ...sideHandles(corners, view, corner)]
    : [];
  const wide = box.w * view.scale;
  const high = box.h * view.scale;
  const clear = corners ? CLEAR : 0;
  const out = {
    x: Math.max(clear, wide < ROOM ? (ROOM - wide) / 2 : 0),
    y: Math.max(clear, high < ROOM ? (ROOM - high) / 2 : 0),
  };
  for (const pull of PULLS) if (mayPull(part, pull)) handles.push(pullHandle(pull, box, view, out));
  return handles;
}

/** Handles of the frame around several selected parts, which stand off it: theirs are sized together. */
export function handlesAround(box: Box, view: View): Handle[] {
  return PULLS.map((pull) => pullHandle(pull, box, view, { x: CLEAR, y: CLEAR }));
}

/** A handle that pulls sides of a box, so many pixels out from it. */
function pullHandle(pull: Pull, box: Box, view: View, out: Point): Handle {
  const at = toScreen(view, {
    x: box.x + (box.w * (pull.x + 1)) / 2,
    y: box.y + (box.h * (pull.y + 1)) / 2,
  });
  return {
    px: { x: at.x + pull.x * out.x, y: at.y - pull.y * out.y },
    act: { kind: 'resize', pull },
    cursor:
      pull.x === 0
        ? 'ns-resize'
        : pull.y === 0
          ? 'ew-resize'
          : pull.x === pull.y
            ? 'nesw-resize'
            : 'nwse-resize',
  };
}

function cornerHandles(corners: Corners, view: View, chosen: number | null): Handle[] {
  return corners.points.map(
    (p, index): Handle => ({
      px: toScreen(view, p),
      act: { kind: 'corner', index, chosen: index === chosen },
      cursor: 'move',
    }),
  );
}

/**
 * Handles of the sides that are long enough on the screen: halfway one that bows the side, and a plus that adds a corner
 * a quarter of the way. The smooth sides of a chosen corner have their own two.
 */
function sideHandles(corners: Corners, view: View, chosen: number | null): Handle[] {
  const count = corners.points.length;
  return sidesOfCorners(corners).flatMap((side, index): Handle[] => {
    const on = (t: number) => toScreen(view, pointAt(side, t));
    const [from, to] = [toScreen(view, side.from), toScreen(view, side.to)];
    const long = Math.hypot(from.x - to.x, from.y - to.y);
    const bend = (which: 0 | 1, p: Point, at: Point): Handle => ({
      px: toScreen(view, p),
      act: { kind: 'bend', index, which, at },
      cursor: 'move',
    });
    const near = chosen === index || chosen === (index + 1) % count;
    const bends = side.kind === 'cubic' && near ? [bend(0, side.h1, from), bend(1, side.h2, to)] : [];
    const add = (t: number): Handle => ({ px: on(t), act: { kind: 'middle', index }, cursor: 'copy' });
    if (long < SHORTEST_LEG) return bends;
    const bow: Handle = { px: on(1 / 2), act: { kind: 'bow', index }, cursor: 'move' };
    return [...bends, bow, ...(long < 2 * SHORTEST_LEG ? [] : [add(1 / 4)])];
  });
}

function mayPull(part: Design['parts'][number] | undefined, pull: Pull): boolean {
  if (part?.kind === 'strip') {
    if (part.lie === 'turned') return false;
    if (part.lie === 'across') return pull.y === 0;
    if (part.lie === 'up') return pull.x === 0;
  }
  return true;
}

export const handleAt = (handles: readonly Handle[], px: Point, reach: number): Handle | null =>
  handles.find((h) => Math.hypot(h.px.x - px.x, h.px.y - px.y) <= reach) ?? null;
