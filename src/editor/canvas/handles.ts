import type { Design } from '../../design/schema.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { radians } from '../../measure/units.ts';
import { toScreen, type View } from '../state/store.ts';
import type { Pull } from '../tool/resize.ts';
import { angleOfStrip } from '../tool/turn.ts';

export interface Handle {
  readonly px: Point;
  readonly act: { readonly kind: 'resize'; readonly pull: Pull } | { readonly kind: 'turn' };
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

/** Handles stand clear of the part by this much where it is too small to hold them, in pixels. */
const ROOM = 26;

/** Handles of the one selected part or keep-clear; what its stock decides has none. */
export function handlesOf(design: Design, id: string, box: Box, view: View): Handle[] {
  const part = design.parts.find((p) => p.id === id);
  if (part?.locked) return [];
  const handles: Handle[] = [];
  const wide = box.w * view.scale;
  const high = box.h * view.scale;
  const out = { x: wide < ROOM ? (ROOM - wide) / 2 : 0, y: high < ROOM ? (ROOM - high) / 2 : 0 };
  for (const pull of PULLS) {
    if (!mayPull(part, pull)) continue;
    const at = toScreen(view, {
      x: box.x + (box.w * (pull.x + 1)) / 2,
      y: box.y + (box.h * (pull.y + 1)) / 2,
    });
    handles.push({
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
    });
  }
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
