import type { Check } from '../check/check.ts';
import { featuresOfLine, fontOfLine, looksOfLines } from '../design/look.ts';
import { textTold } from '../design/picture.ts';
import type { Lettering, LetterLine, Picture } from '../design/schema.ts';
import { gridded, regionOfRings, union } from '../geometry/clip.ts';
import { ringsOfPath } from '../geometry/curve.ts';
import { transformPath } from '../geometry/path.ts';
import { areaOf, boxOf, EMPTY, regionOfBox, translateRegion } from '../geometry/region.ts';
import type { Box, Path, Point, Region } from '../geometry/shape.ts';
import { type ShapeMemory, shapeMemory } from '../geometry/shapeMemory.ts';
import { pick } from '../list/at.ts';
import type { Deg, Mm } from '../measure/units.ts';
import {
  expectedReach,
  factorOf,
  isEnough,
  lackingRoom,
  placeOf,
  type Reach,
  reachOf,
  type SignBox,
} from './fit.ts';
import type { Font } from './font.ts';
import { type LookedAlike, layersOf } from './layers.ts';
import { type PictureFont, withPictures } from './picture/withPictures.ts';
import { bentAlong, boxOfPaths, placedPaths, spotsOf, tracksOf, turnedPath } from './placed.ts';
import { isFill, type Lettered, type LetterLayer, type PlacedGlyph } from './result.ts';
import { ribbonOf } from './ribbon.ts';
import { isShaped, onlyTogether } from './script.ts';
import { type Setting, setText } from './setting.ts';
import { eachShape, placed } from './shapes.ts';
import { overRun } from './sight.ts';
import type { Track } from './track.ts';

export interface LetterInput {
  readonly lettering: Lettering;
  readonly font: Font;
  /** Those of lines that are set in others, by their names. */
  readonly fonts?: ReadonlyMap<string, Font> | undefined;
  /** That characters of the text may stand for; none when not given. */
  readonly pictures?: readonly Picture[] | undefined;
  readonly sign: SignBox;
  /** The board in the sign's coordinates, openings taken out; the whole box of the sign when not given. */
  readonly board?: Region | undefined;
  /** What of the board is in sight, with what lies on it taken away; the whole board when not given. */
  readonly room?: Region | undefined;
  /** The board is no more than a place on what is beneath: ink may leave it. */
  readonly free?: boolean | undefined;
  /** Where work on letters is kept for the next text; of this text alone when not given. */
  readonly memory?: ShapeMemory | undefined;
}

/** A second pass settles the reach: outline and shade do not grow with the letters. */
const PASSES = 4;

/**
 * Lays out the text of a sign: outlines in place, color layers, figures. Ornaments stand where the font lacks the
 * characters that mean them.
 *
 * Place: centered on what is in sight of the sign, by its box, then moved by the shift. Across, the middle
 * of the ink stands on the middle of the sign. Up, straight lines are centered from the last baseline to the top of the first line's caps,
 * as a sign painter does it, so that one tail of a Q does not push the whole text up; bent lines, and text
 * fitted to the height, by their ink. Text fitted to the sign includes its outline and shade.
 *
 * Checks: `lettering.corner` (warning), where a letter stands over a sharp corner of what its line runs along; `lettering.missing-glyph` (error); `lettering.no-room` (error), where the margins leave a fit
 * nothing to fill; `lettering.off-sign`, an error where ink would miss the board and a warning where
 * something on the board covers it; `lettering.script` (error), where letters that have to be set together cannot be: the
 * font has no rules for them, or what sets them is not there.
 */
export function letter({
  lettering,
  font,
  fonts,
  pictures = [],
  sign,
  board = regionOfBox({ x: 0, y: 0, w: sign.w, h: sign.h }),
  room = board,
  free = false,
  memory = shapeMemory(),
}: LetterInput): { lettered: Lettered; checks: Check[] } {
  const drawn = new Map<Font, PictureFont>();
  const fontOf: FontOf = (line) => {
    const own = fonts?.get(fontOfLine(lettering, line)) ?? font;
    const known = drawn.get(own) ?? withPictures(own, pictures);
    drawn.set(own, known);
    return known;
  };
  const seen = boxOf(room) ?? { x: sign.w / 2, y: sign.h / 2, w: 0, h: 0 };
  let reach = expectedReach(lettering);
  let laid = layAt(lettering, fontOf, board, seen, reach, memory);
  for (let pass = 1; pass < PASSES && lettering.fit !== 'none' && lettering.along === undefined; pass += 1) {
    const measured = reachOf(laid.box, boxOfLayers(laid.layers) ?? laid.box);
    if (isEnough(reach, measured)) break;
    reach = measured;
    laid = layAt(lettering, fontOf, board, seen, reach, memory);
  }
  const { setting, factor, glyphs, layers, box } = laid;
  const lettered: Lettered = {
    sign: sign.id,
    text: textTold(lettering.lines.map((line) => line.text).join('\n'), pictures),
    font: lettering.font,
    capHeight: lettering.capHeight * factor,
    capHeights: heightsOf(glyphs),
    glyphs,
    layers,
    box,
    width: Math.max(...setting.lines.map((line) => line.width)),
    ink_mm2: areaOf(laid.silhouette),
    missing: setting.missing,
  };
  const unshaped = lettering.lines.some(
    (line) => fontOf(line).shape === null && isShaped(line, featuresOfLine(lettering, line)),
  );
  const lack = lackingRoom(lettering, seen, reach);
  return {
    lettered,
    checks: [
      ...textChecks(lettered, setting),
      ...(unshaped ? [scriptCheck(sign.id, onlyTogether(lettered.text), 'unloaded')] : []),
      ...wayChecks(sign.id, laid),
      ...(lack !== null
        ? [noRoom(sign.id, lack, lettering.margin)]
        : free
          ? []
          : sightChecks(lettered, board, room)),
    ],
  };
}

/** The whole area of the letters themselves. */
export function fillOf(layers: readonly LetterLayer[]): Region {
  const fills = layers.filter(isFill).map(({ whole }) => whole);
  const [only] = fills;
  return only && fills.length === 1 ? only : union(fills);
}

const boxOfLayers = (layers: readonly LetterLayer[]): Box | null =>
  boxOf(layers.flatMap((layer) => layer.whole));

type FontOf = (line: LetterLine) => PictureFont;

interface Laid {
  readonly setting: Setting<PictureFont>;
  readonly tracks: readonly Track[];
  readonly factor: number;
  readonly glyphs: readonly PlacedGlyph[];
  readonly layers: readonly LetterLayer[];
  /** All that letters and pictures cover. */
  readonly silhouette: Region;
  /** Box of the letters' ink, without outline and shade. */
  readonly box: Box;
}

function layAt(
  lettering: Lettering,
  fontOf: FontOf,
  board: Region,
  seen: Box,
  reach: Reach,
  memory: ShapeMemory,
): Laid {
  const factor = factorOf(lettering, fontOf, board, seen, reach);
  const setting = setText(lettering, fontOf, factor);
  const tracks = tracksOf(setting, lettering, board);
  const paths = placedPaths(setting, tracks);
  const ink = boxOfPaths(paths);
  const by = placeOf(lettering, setting, ink, seen, reach);
  const drawn = glyphShapes(setting, tracks, by);
  const looks = looksOfLines(lettering, lettering);
  const glyphs = paths.flatMap((path, i): PlacedGlyph[] => {
    const slot = setting.slots[i];
    if (!slot || path.length === 0) return [];
    const moved = transformPath(path, (p) => ({ x: p.x + by.x, y: p.y + by.y }));
    const { character, line } = slot;
    const capHeight = slot.scale * slot.font.capHeight;
    const look = pick(looks, line).number;
    const baseline = pick(tracks, line).baseline + slot.rise + by.y;
    return [{ character, line, look, capHeight, baseline, path: moved, ...pick(drawn, i) }];
  });
  const numbers = [...new Set(looks.map(({ number }) => number))].sort((a, b) => a - b);
  const alike = numbers.flatMap((number): LookedAlike[] => {
    const found = looks.find((one) => one.number === number);
    const own = glyphs.filter((glyph) => glyph.look === number);
    const letters = own.flatMap((glyph) => glyph.region);
    const silhouette = eachShape(memory, 'union', letters, 0, (touching) => union([touching]));
    const ribbons = setting.lines.flatMap((line, i) => {
      const ribbon = pick(looks, i).number === number ? found?.look.ribbon : undefined;
      return ribbon ? translateRegion(ribbonOf(line, pick(tracks, i), ribbon), by.x, by.y) : [];
    });
    return found ? [{ ...found, glyphs: own, silhouette, ribbons }] : [];
  });
  const layers = layersOf(alike, lettering.make === 'cut-out', memory);
  const silhouette =
    alike.length === 1 ? pick(alike, 0).silhouette : union(alike.map((one) => one.silhouette));
  return {
    setting,
    tracks,
    factor,
    glyphs,
    layers,
    silhouette,
    box: { ...ink, x: ink.x + by.x, y: ink.y + by.y },
  };
}

/** What the glyphs cover, and each color of pictures. Equal letters are the same regions, put in place. */
function glyphShapes(
  setting: Setting<PictureFont>,
  tracks: readonly Track[],
  by: Point,
): Pick<PlacedGlyph, 'region' | 'colors'>[] {
  const shapes = new Map<string, Pick<PlacedGlyph, 'region' | 'colors'>>();
  return spotsOf(setting, tracks).map(({ at, turn }, i) => {
    const slot = setting.slots[i];
    if (!slot) return { region: EMPTY, colors: null };
    const { key: drawnBy, scale, font } = slot;
    const bend = bentAlong(slot, pick(tracks, slot.line));
    const brought = (path: Path) => bend?.(path) ?? turnedPath(path, scale, turn);
    const covered = (path: Path) => regionOfRings(ringsOfPath(brought(path)), 'nonzero');
    const shapeOf = () => {
      const paths = font.colors(drawnBy);
      const colors = paths?.map(({ finish, path }) => ({ finish, whole: covered(path) })) ?? null;
      return { region: covered(font.outline(drawnBy)), colors };
    };
    const key = `${drawnBy} ${scale} ${turn} ${font.name} ${bend ? slot.x : ''}`;
    const { region, colors } = shapes.get(key) ?? shapeOf();
    shapes.set(key, { region, colors });
    const own = bend ? { x: 0, y: 0 } : at;
    const to = { x: gridded(own.x + by.x), y: gridded(own.y + by.y) };
    return {
      region: placed(region, to),
      colors: colors?.map(({ finish, whole }) => ({ finish, whole: placed(whole, to) })) ?? null,
    };
  });
}

/** Told apart by a hundredth of a millimeter: the same size is reckoned in more than one way. */
function heightsOf(glyphs: readonly PlacedGlyph[]): Mm[] {
  const heights = new Map(glyphs.map(({ capHeight }) => [Math.round(capHeight * 100), capHeight]));
  return [...heights.values()].sort((a, b) => b - a);
}

function textChecks({ sign, missing }: Lettered, { unruled }: Setting): Check[] {
  const checks: Check[] = [];
  if (missing.length > 0) {
    // A picture that is no more is told by its id.
    const figures = { sign, characters: textTold(missing.join(' ')) };
    checks.push({ code: 'lettering.missing-glyph', severity: 'error', parts: [sign], figures });
  }
  const drawn = unruled.filter((characters) => !missing.includes(characters));
  return drawn.length === 0 ? checks : [...checks, scriptCheck(sign, drawn, 'rules')];
}

const scriptCheck = (sign: string, characters: readonly string[], why: 'rules' | 'unloaded'): Check => ({
  code: 'lettering.script',
  severity: 'error',
  parts: [sign],
  figures: { sign, characters: characters.join(' '), why },
});

/** A line that is longer than the outline it runs along meets its own beginning; one longer than its path leaves it. */
function wayChecks(sign: string, laid: Laid): Check[] {
  const { setting, tracks } = laid;
  const over = setting.lines.map(({ left, right }, i) => right - left - (pick(tracks, i).length ?? Infinity));
  const over_mm = Math.max(...over);
  const figures = { over_mm, by: tracks.some(({ open }) => open) ? 'path' : 'outline' };
  return [
    ...(over_mm > 0
      ? [{ code: 'lettering.off-sign', severity: 'error', parts: [sign], figures } as const]
      : []),
    ...cornerChecks(sign, laid),
  ];
}

/** Under a letter the way may turn so far; beyond it stands over a corner rather than on a line. Our own choice, by eye. */
const MOST_BEND: Deg = 60;

/** Letters that stand over a sharp corner of what their line runs along. */
function cornerChecks(sign: string, { setting, tracks }: Laid): Check[] {
  const over = setting.slots.flatMap(({ character, line, x, advance }) => {
    const bend = pick(tracks, line).bend?.(x + advance / 2, advance / 2) ?? 0;
    return bend > MOST_BEND && character.trim() !== '' ? [{ character, bend }] : [];
  });
  if (over.length === 0) return [];
  const characters = textTold(over.map(({ character }) => character).join(' '));
  const figures = { characters, turn_deg: Math.max(...over.map(({ bend }) => bend)) };
  return [{ code: 'lettering.corner', severity: 'warning', parts: [sign], figures }];
}

const noRoom = (sign: string, room: Mm, margin: Mm): Check => ({
  code: 'lettering.no-room',
  severity: 'error',
  parts: [sign],
  figures: { lack_mm: -room, margin_mm: margin },
});

/** Paint that misses the board is lost; what something on the board covers can be meant so. */
function sightChecks({ sign, layers }: Lettered, board: Region, room: Region): Check[] {
  const all = layers.flatMap((layer) => layer.whole);
  const off = (over_mm: Mm, severity: Check['severity'], by: string): Check => ({
    code: 'lettering.off-sign',
    severity,
    parts: [sign],
    figures: { over_mm, by },
  });
  const beyond = overRun(all, board);
  if (beyond > 0) return [off(beyond, 'error', 'edge')];
  const covered = room === board ? 0 : overRun(all, room);
  return covered > 0 ? [off(covered, 'warning', 'cover')] : [];
}
