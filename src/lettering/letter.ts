import type { Check } from '../check/check.ts';
import type { Lettering } from '../design/schema.ts';
import { regionOfRings, union } from '../geometry/clip.ts';
import { ringsOfPath } from '../geometry/curve.ts';
import { boxOfPath, transformPath } from '../geometry/path.ts';
import { rotate } from '../geometry/point.ts';
import { areaOf, boxOf } from '../geometry/region.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Box, Path, Point } from '../geometry/shape.ts';
import { FLATNESS } from '../geometry/tolerance.ts';
import type { Mm } from '../measure/units.ts';
import { type Stand, standsOf } from './arc.ts';
import { letterByLetter } from './cluster.ts';
import type { Font } from './font.ts';
import { layersOf, shadeVector } from './layers.ts';
import type { Lettered, LetterLayer, PlacedGlyph } from './result.ts';
import { type Setting, type Slot, setText } from './setting.ts';

/** The board the letters go on: id and size of its box. */
export interface SignBox {
  readonly id: string;
  readonly w: Mm;
  readonly h: Mm;
}

export interface LetterInput {
  readonly lettering: Lettering;
  readonly font: Font;
  readonly sign: SignBox;
}

/** How far the outline and shade reach beyond the ink of the letters. */
interface Reach {
  readonly left: Mm;
  readonly right: Mm;
  readonly below: Mm;
  readonly above: Mm;
}

/** A second pass settles the reach: outline and shade do not grow with the letters. */
const PASSES = 4;

/**
 * Lays out the text of a sign: outlines in place, color layers, figures.
 *
 * Place: centered on the sign, then moved by the shift. Across, the middle of the ink stands on the middle
 * of the sign. Up, straight lines are centered from the last baseline to the top of the first line's caps,
 * as a sign painter does it, so that one tail of a Q does not push the whole text up; bent lines, and text
 * fitted to the height, by their ink. Text fitted to the sign includes its outline and shade.
 *
 * Checks: `lettering.missing-glyph`, `lettering.off-sign`.
 */
export function letter({ lettering, font, sign }: LetterInput): { lettered: Lettered; checks: Check[] } {
  let reach = expectedReach(lettering);
  let laid = layAt(lettering, font, sign, reach);
  for (let pass = 1; pass < PASSES && lettering.fit !== 'none'; pass += 1) {
    const measured = reachOf(laid);
    if (SIDES.every((side) => isEnough(reach[side], measured[side]))) break;
    reach = measured;
    laid = layAt(lettering, font, sign, reach);
  }
  const { setting, factor, glyphs, layers, box } = laid;
  const lettered: Lettered = {
    sign: sign.id,
    text: lettering.lines.map((line) => line.text).join('\n'),
    font: lettering.font,
    capHeight: lettering.capHeight * factor,
    glyphs,
    layers,
    box,
    width: Math.max(...setting.lines.map((line) => line.width)),
    ink_mm2: areaOf(fillOf(layers)),
    missing: setting.missing,
  };
  return { lettered, checks: checksOf(lettered, sign) };
}

/** The whole area of the letters themselves. */
export const fillOf = (layers: readonly LetterLayer[]) =>
  layers.find((layer) => layer.role === 'fill')?.whole ?? [];

interface Laid {
  readonly setting: Setting;
  readonly factor: number;
  readonly glyphs: readonly PlacedGlyph[];
  readonly layers: readonly LetterLayer[];
  /** Box of the letters' ink, without outline and shade. */
  readonly box: Box;
}

function layAt(lettering: Lettering, font: Font, sign: SignBox, reach: Reach): Laid {
  const factor = factorOf(lettering, font, sign, reach);
  const setting = setText(lettering, font, factor);
  const paths = placedPaths(setting, font, lettering.arcRise);
  const ink = boxOfPaths(paths);
  const by = placeOf(lettering, setting, ink, sign, reach);
  const glyphs = paths.flatMap((path, i): PlacedGlyph[] => {
    const slot = setting.slots[i];
    if (!slot || path.length === 0) return [];
    const placed = transformPath(path, (p) => ({ x: p.x + by.x, y: p.y + by.y }));
    const region = regionOfRings(ringsOfPath(placed), 'nonzero');
    return [{ character: slot.character, line: slot.line, path: placed, region }];
  });
  const letters = glyphs.flatMap((glyph) => glyph.region);
  const layers = layersOf(
    letterByLetter(letters, 0, (touching) => union([touching])),
    lettering,
  );
  return { setting, factor, glyphs, layers, box: { ...ink, x: ink.x + by.x, y: ink.y + by.y } };
}

/** Outlines of the slots in millimeters, one each, empty for spaces and missing glyphs. */
function placedPaths(setting: Setting, font: Font, rise: Mm): Path[] {
  const stands = standsOf(setting, rise);
  return setting.slots.map((slot, i) => {
    const stand = stands[i];
    return stand ? standingPath(font.outline(slot.character), slot, stand) : [];
  });
}

function standingPath(outline: Path, slot: Slot, stand: Stand): Path {
  return transformPath(outline, (p) => {
    const own = { x: p.x * slot.scale - slot.advance / 2, y: p.y * slot.scale };
    const turned = stand.turn === 0 ? own : rotate(own, stand.turn);
    return { x: turned.x + stand.x, y: turned.y + stand.y };
  });
}

function boxOfPaths(paths: readonly Path[]): Box {
  const corners: Point[] = [];
  for (const path of paths) {
    if (path.length === 0) continue;
    const { x, y, w, h } = boxOfPath(path);
    corners.push({ x, y }, { x: x + w, y: y + h });
  }
  return corners.length === 0 ? { x: 0, y: 0, w: 0, h: 0 } : boxOfPoints(corners);
}

/** Factor on the cap heights that makes the ink fill the room the sign leaves, less margins and reach. */
function factorOf(lettering: Lettering, font: Font, sign: SignBox, reach: Reach): number {
  const room = {
    w: sign.w - 2 * lettering.margin - reach.left - reach.right,
    h: sign.h - 2 * lettering.margin - reach.below - reach.above,
  };
  const inkAt = (factor: number) =>
    boxOfPaths(placedPaths(setText(lettering, font, factor), font, lettering.arcRise));
  const fits = (ink: Box): number => {
    const across = room.w / ink.w;
    const up = room.h / ink.h;
    return lettering.fit === 'width' ? across : lettering.fit === 'height' ? up : Math.min(across, up);
  };
  const ink = inkAt(1);
  const needed = { none: [], width: [room.w], height: [room.h], both: [room.w, room.h] }[lettering.fit];
  if (needed.length === 0 || ink.w <= 0 || ink.h <= 0 || needed.some((size) => size <= 0)) return 1;
  // Straight text grows in proportion; bent text does not, since its rise stays as asked.
  return lettering.arcRise === 0 ? fits(ink) : balanced((factor) => fits(inkAt(factor)));
}

/**
 * Factor at which `spare` (room over need, falling) comes to 1. Bent text grows nearly by a straight line
 * over the factor, so false position with halving of the end that stands still finds it in a few steps.
 */
function balanced(spare: (factor: number) => number): number {
  const over = (factor: number) => 1 / spare(factor) - 1;
  let low = 1;
  for (let i = 0; i < 30 && over(low) > 0; i += 1) low /= 2;
  let high = 2 * low;
  for (let i = 0; i < 30 && over(high) < 0; i += 1) high *= 2;
  let [atLow, atHigh] = [over(low), over(high)];
  for (let i = 0; i < 60 && high - low > 1e-9 * high; i += 1) {
    const next = atHigh > atLow ? low - (atLow * (high - low)) / (atHigh - atLow) : (low + high) / 2;
    const at = over(next);
    if (Math.abs(at) < 1e-9) return next;
    if (at < 0) {
      [low, atLow] = [next, at];
      atHigh /= 2;
    } else {
      [high, atHigh] = [next, at];
      atLow /= 2;
    }
  }
  return low;
}

/** The move that puts the text in its place on the sign. */
function placeOf(lettering: Lettering, setting: Setting, ink: Box, sign: SignBox, reach: Reach): Point {
  const first = setting.lines[0];
  const last = setting.lines.at(-1);
  const caps = first && last ? (first.baseline + first.capHeight + last.baseline) / 2 : ink.y + ink.h / 2;
  const fitsHeight = lettering.fit === 'height' || lettering.fit === 'both';
  const fitsWidth = lettering.fit === 'width' || lettering.fit === 'both';
  const middle = {
    x: ink.x + ink.w / 2 + (fitsWidth ? (reach.right - reach.left) / 2 : 0),
    y: fitsHeight
      ? ink.y + ink.h / 2 + (reach.above - reach.below) / 2
      : lettering.arcRise === 0
        ? caps
        : ink.y + ink.h / 2,
  };
  return {
    x: sign.w / 2 - middle.x + lettering.shift.x,
    y: sign.h / 2 - middle.y + lettering.shift.y,
  };
}

function reachOf({ layers, box }: Laid): Reach {
  const all = boxOf(layers.flatMap((layer) => layer.whole)) ?? box;
  return {
    left: Math.max(0, box.x - all.x),
    right: Math.max(0, all.x + all.w - box.x - box.w),
    below: Math.max(0, box.y - all.y),
    above: Math.max(0, all.y + all.h - box.y - box.h),
  };
}

/** Reach of an outline without sharp corners, and of the shade; corners may run out farther. */
function expectedReach({ outline, shade }: Lettering): Reach {
  const around = outline?.width ?? 0;
  const by = shade ? shadeVector(shade) : { x: 0, y: 0 };
  return {
    left: around + Math.max(0, -by.x),
    right: around + Math.max(0, by.x),
    below: around + Math.max(0, -by.y),
    above: around + Math.max(0, by.y),
  };
}

const SIDES = ['left', 'right', 'below', 'above'] as const;
/** Layers are measured on flattened curves, which stay a little inside of the true ones. */
const isEnough = (kept: Mm, needed: Mm): boolean =>
  needed <= kept + SAME_PLACE && needed >= kept - 2 * FLATNESS;
/** Nobody sees less than this over the edge of a board. */
const SAME_PLACE: Mm = 0.001;

function checksOf(lettered: Lettered, sign: SignBox): Check[] {
  const checks: Check[] = [];
  if (lettered.missing.length > 0) {
    checks.push({
      code: 'lettering.missing-glyph',
      severity: 'error',
      parts: [sign.id],
      figures: { sign: sign.id, characters: lettered.missing.join(' ') },
    });
  }
  const all = boxOf(lettered.layers.flatMap((layer) => layer.whole)) ?? lettered.box;
  const over = Math.max(-all.x, -all.y, all.x + all.w - sign.w, all.y + all.h - sign.h);
  if (lettered.glyphs.length > 0 && over > SAME_PLACE) {
    checks.push({
      code: 'lettering.off-sign',
      severity: 'error',
      parts: [sign.id],
      figures: { over_mm: over },
    });
  }
  return checks;
}
