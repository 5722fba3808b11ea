import type { Check } from '../../check/check.ts';
import type { Lettering } from '../../design/schema.ts';
import { boxOf } from '../../geometry/region.ts';
import { signedArea } from '../../geometry/ring.ts';
import type { Box, Region } from '../../geometry/shape.ts';
import { type ShapeMemory, shapeMemory } from '../../geometry/shapeMemory.ts';
import type { Mm } from '../../measure/units.ts';
import { isFill, type Lettered, type LetterLayer, type Stencil, toldOf } from '../result.ts';
import { lostLetters } from './lost.ts';
import { registrationHoles, sheetAround } from './sheet.ts';
import { stencil } from './stencil.ts';

/** The stencil of one color. */
export interface LayerStencil {
  readonly role: LetterLayer['role'];
  readonly finish: string;
  readonly stencil: Stencil;
}

export interface StencilSet {
  /** The sheet of every color: all have the same size and place. */
  readonly sheet: Box;
  /** Registration holes of every sheet, empty where one color needs no lining up. */
  readonly holes: Region;
  readonly layers: readonly LayerStencil[];
}

/**
 * A stencil for every color of the lettering, from the back to the front. Each opens the whole of its
 * layer, not only what stays in sight: painted over one another from the back, colors meet without gaps,
 * and an outline's stencil has only the counters as islands. Openings that outline and shade close up to
 * crumbs, smaller than a bridge is wide each way, are painted over there: a bar to hold one would be larger
 * than it. Sheets are equal and share their registration
 * holes. Bridges set by hand belong to the stencil of one color; those of islands that it no longer has are
 * passed over.
 *
 * @param board where the holes are to lie, in the coordinates of the lettering
 *
 * Checks: those of each stencil; `stencil.letter-lost` (warning), where bridges cover most of a letter;
 * `stencil.placed-lost` (note), where an island with bridges set by hand is gone.
 */
export function stencilSet(
  lettered: Lettered,
  options: Lettering['stencil'],
  board: Region,
  memory: ShapeMemory = shapeMemory(),
): { set: StencilSet; checks: Check[] } {
  const inked = lettered.layers.filter((layer) => layer.whole.length > 0);
  const sheet = sheetAround(boxOf(inked.flatMap((layer) => layer.whole)) ?? lettered.box, options);
  const holes = inked.length > 1 ? registrationHoles(sheet, options, board) : [];
  const checks: Check[] = [];
  const layers = inked.map((layer): LayerStencil => {
    const own = { ...options, placed: placedOn(layer.role, options) };
    const made = stencil({
      sign: lettered.sign,
      letters: isFill(layer) ? layer.whole : withoutCrumbs(layer.whole, options.bridgeWidth),
      sheet,
      options: own,
      holes,
      memory,
    });
    checks.push(...made.checks, ...goneChecks(lettered.sign, own, made.stencil));
    if (isFill(layer)) {
      const look = toldOf(layer.role).number;
      const own = lettered.glyphs.filter((glyph) => glyph.look === look);
      checks.push(...lostChecks({ ...lettered, glyphs: own }, made.stencil));
    }
    return { role: layer.role, finish: layer.finish, stencil: made.stencil };
  });
  return { set: { sheet, holes, layers }, checks };
}

/** Bridges set by hand on the stencil of one color. */
export const placedOn = (
  role: LetterLayer['role'],
  { placed }: Lettering['stencil'],
): Lettering['stencil']['placed'] => placed.filter(({ layer = 'fill' }) => layer === role);

/** Bridges set by hand on islands that are no more. */
function goneChecks(sign: string, { placed }: Lettering['stencil'], made: Stencil): Check[] {
  const gone = placed.filter(({ island }) => island >= made.islands.length);
  if (gone.length === 0) return [];
  const figures = { count: gone.length };
  return [{ code: 'stencil.placed-lost', severity: 'note', parts: [sign], figures }];
}

/** Letters that are no more under their bridges. */
function lostChecks({ sign, glyphs }: Lettered, made: Stencil): Check[] {
  // A picture in colors of its own has a stencil for each.
  const letters = lostLetters(
    glyphs.filter(({ colors }) => colors === null),
    made,
  );
  if (letters.length === 0) return [];
  const figures = { characters: letters.join(' ') };
  return [{ code: 'stencil.letter-lost', severity: 'warning', parts: [sign], figures }];
}

const withoutCrumbs = (whole: Region, width: Mm): Region =>
  whole.map((polygon) => ({
    ...polygon,
    holes: polygon.holes.filter((hole) => Math.abs(signedArea(hole)) >= width * width),
  }));
