import { boxOfPath, transformPath } from '../geometry/path.ts';
import { rotate } from '../geometry/point.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Box, Path, Point } from '../geometry/shape.ts';
import type { Mm } from '../measure/units.ts';
import { type Stand, standsOf } from './arc.ts';
import type { Font } from './font.ts';
import type { Setting, Slot } from './setting.ts';

/** Outlines of the slots in millimeters, one each, empty for spaces and missing glyphs. */
export function placedPaths(setting: Setting, font: Font, rise: Mm): Path[] {
  const stands = standsOf(setting, rise);
  return setting.slots.map((slot, i) => {
    const stand = stands[i];
    return stand ? standingPath(font.outline(slot.character), font.foot, slot, stand) : [];
  });
}

/** Flat capitals stand on the baseline. */
function standingPath(outline: Path, foot: number, slot: Slot, stand: Stand): Path {
  return transformPath(outline, (p) => {
    const own = { x: p.x * slot.scale - slot.advance / 2, y: (p.y - foot) * slot.scale + slot.rise };
    const turned = stand.turn === 0 ? own : rotate(own, stand.turn);
    return { x: turned.x + stand.x, y: turned.y + stand.y };
  });
}

/** Smallest box around all of them; a box without size at the origin when none is drawn. */
export function boxOfPaths(paths: readonly Path[]): Box {
  const corners: Point[] = [];
  for (const path of paths) {
    if (path.length === 0) continue;
    const { x, y, w, h } = boxOfPath(path);
    corners.push({ x, y }, { x: x + w, y: y + h });
  }
  return corners.length === 0 ? { x: 0, y: 0, w: 0, h: 0 } : boxOfPoints(corners);
}
