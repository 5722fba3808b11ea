import type { Lettering } from '../design/schema.ts';
import { ringsOfPath } from '../geometry/curve.ts';
import { boxOfPath, pathOfRings, transformPath } from '../geometry/path.ts';
import { distance, lerp, rotate } from '../geometry/point.ts';
import { boxOf } from '../geometry/region.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Box, Path, Point, Region, Ring } from '../geometry/shape.ts';
import { cyclic, pick } from '../list/at.ts';
import type { Deg } from '../measure/units.ts';
import { outlineTracks } from './along.ts';
import { arcTracks } from './arc.ts';
import { pathTracks } from './openPath.ts';
import type { Setting, Slot } from './setting.ts';
import { LEAST_HALF, STEP, type Stand, type Track } from './track.ts';

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

/**
 * Brings outlines of a slot to their place by bending them along what it stands on; null where they are turned as a whole.
 * Letters that are written joined go on into each other only so.
 */
export function bentAlong(slot: Slot, track: Track): ((outline: Path) => Path) | null {
  if (!slot.joined || !track.bent) return null;
  const { x, rise, scale, font } = slot;
  // One measure for all letters of a line: where they meet they have to be bent alike.
  const half = LEAST_HALF * font.capHeight * scale;
  const bent = (p: Point): Point => {
    const stand = track.at(x + p.x, half);
    const up = rotate({ x: 0, y: rise - font.foot * scale + p.y }, stand.turn);
    return { x: stand.x + up.x, y: stand.y + up.y };
  };
  return (outline) =>
    pathOfRings(ringsOfPath(turnedPath(outline, scale, 0)).map((ring) => inSteps(ring).map(bent)));
}

/** A ring with corners no farther apart than a way is walked in. */
const inSteps = (ring: Ring): Point[] =>
  ring.flatMap((from, i) => {
    const to = cyclic(ring, i + 1);
    const count = Math.max(1, Math.ceil(distance(from, to) / STEP));
    return Array.from({ length: count }, (_, k) => lerp(from, to, k / count));
  });

/** Outlines of the slots in millimeters, one each, empty for spaces and missing glyphs. */
export const placedPaths = (setting: Setting, tracks: readonly Track[]): Path[] =>
  spotsOf(setting, tracks).map(({ at, turn }, i) => {
    const slot = setting.slots[i];
    if (!slot) return [];
    const outline = slot.font.outline(slot.key);
    const bend = bentAlong(slot, pick(tracks, slot.line));
    if (bend) return bend(outline);
    return transformPath(turnedPath(outline, slot.scale, turn), (p) => ({ x: p.x + at.x, y: p.y + at.y }));
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
