import type { Lettering } from '../design/schema.ts';
import { boxOfPath, transformPath } from '../geometry/path.ts';
import { rotate } from '../geometry/point.ts';
import { boxOf } from '../geometry/region.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Box, Path, Point, Region } from '../geometry/shape.ts';
import { pick } from '../list/at.ts';
import type { Deg } from '../measure/units.ts';
import { outlineTracks } from './along.ts';
import { arcTracks } from './arc.ts';
import { pathTracks } from './openPath.ts';
import type { Setting } from './setting.ts';
import type { Stand, Track } from './track.ts';

/** Where the origin of a glyph's outline stands, and how far it is turned. */
interface Spot {
  readonly at: Point;
  readonly turn: Deg;
}

const NO_BOX: Box = { x: 0, y: 0, w: 0, h: 0 };

/** What the lines of a text stand on; outlines are those of the board in the sign's coordinates. */
export function tracksOf({ lines }: Setting, lettering: Lettering, board: Region): Track[] {
  const { along, margin, shift } = lettering;
  if (along === 'path') return pathTracks(lines, lettering.path, boxOf(board) ?? NO_BOX, shift);
  if (along === undefined) return arcTracks(lines, lettering.arcRise);
  const atFoot = lettering.lines.map(({ foot }) => foot ?? false);
  return outlineTracks(lines, board, { side: along, margin, shift, atFoot });
}

/** Where the middle of each letter's advance stands on its baseline. */
export const standsOf = ({ slots }: Setting, tracks: readonly Track[]): Stand[] =>
  slots.map(({ line, x, advance }) => pick(tracks, line).at(x + advance / 2, advance / 2));

/** Spots of the slots, one each. Flat capitals stand on the baseline. */
export function spotsOf(setting: Setting, tracks: readonly Track[]): Spot[] {
  const stands = standsOf(setting, tracks);
  return setting.slots.map((slot, i) => {
    const stand = pick(stands, i);
    const own = { x: -slot.advance / 2, y: slot.rise - slot.font.foot * slot.scale };
    const turned = stand.turn === 0 ? own : rotate(own, stand.turn);
    return { at: { x: turned.x + stand.x, y: turned.y + stand.y }, turn: stand.turn };
  });
}

/** A glyph's outline in millimeters, turned about its origin. */
export const turnedPath = (outline: Path, scale: number, turn: Deg): Path =>
  transformPath(outline, (p) => {
    const own = { x: p.x * scale, y: p.y * scale };
    return turn === 0 ? own : rotate(own, turn);
  });

/** Outlines of the slots in millimeters, one each, empty for spaces and missing glyphs. */
export const placedPaths = (setting: Setting, tracks: readonly Track[]): Path[] =>
  spotsOf(setting, tracks).map(({ at, turn }, i) => {
    const slot = setting.slots[i];
    if (!slot) return [];
    const path = turnedPath(slot.font.outline(slot.key), slot.scale, turn);
    return transformPath(path, (p) => ({ x: p.x + at.x, y: p.y + at.y }));
  });

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
