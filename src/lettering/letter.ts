import type { Check } from '../check/check.ts';
import type { Lettering } from '../design/schema.ts';
import { regionOfRings, union } from '../geometry/clip.ts';
import { ringsOfPath } from '../geometry/curve.ts';
import { transformPath } from '../geometry/path.ts';
import { areaOf, boxOf } from '../geometry/region.ts';
import type { Box } from '../geometry/shape.ts';
import { FLATNESS } from '../geometry/tolerance.ts';
import { letterByLetter } from './cluster.ts';
import { expectedReach, factorOf, isEnough, placeOf, type Reach, reachOf, type SignBox } from './fit.ts';
import type { Font } from './font.ts';
import { layersOf } from './layers.ts';
import { boxOfPaths, placedPaths } from './placed.ts';
import type { Lettered, LetterLayer, PlacedGlyph } from './result.ts';
import { type Setting, setText } from './setting.ts';

export interface LetterInput {
  readonly lettering: Lettering;
  readonly font: Font;
  readonly sign: SignBox;
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
    const measured = reachOf(laid.box, boxOfLayers(laid.layers) ?? laid.box);
    if (isEnough(reach, measured)) break;
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

const boxOfLayers = (layers: readonly LetterLayer[]): Box | null =>
  boxOf(layers.flatMap((layer) => layer.whole));

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
  const all = boxOfLayers(lettered.layers) ?? lettered.box;
  const over = Math.max(-all.x, -all.y, all.x + all.w - sign.w, all.y + all.h - sign.h);
  // Outlines are polygons that are no truer than this.
  if (lettered.glyphs.length > 0 && over > FLATNESS) {
    checks.push({
      code: 'lettering.off-sign',
      severity: 'error',
      parts: [sign.id],
      figures: { over_mm: over },
    });
  }
  return checks;
}
