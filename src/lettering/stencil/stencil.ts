import type { Check } from '../../check/check.ts';
import type { Lettering } from '../../design/schema.ts';
import { union } from '../../geometry/clip.ts';
import { angleOf, midpoint } from '../../geometry/point.ts';
import { signedArea } from '../../geometry/ring.ts';
import type { Box, Point, Region } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import { letterByLetter } from '../cluster.ts';
import type { Bridge, Stencil } from '../result.ts';
import { choicesFor, chooseAll, holdTongues, type Placed, wishesOf } from './bridging.ts';
import { firmSheet } from './firm.ts';
import { holdAll, holdsOf } from './hold.ts';
import { proveConnected } from './prove.ts';
import { solidOf } from './solid.ts';
import { type Tongue, weakSheet } from './weak.ts';

type Options = Lettering['stencil'];

/** Islands smaller than this are specks between overlapping outlines: they are cut away, not held. */
const SPECK_MM2 = 0.25;
/** Held on two sides, so that the knife cannot turn it out: no more is asked of what is told as firm. */
const TWICE = 2;

export interface StencilInput {
  /** Sign or layer that the checks name. */
  readonly sign: string;
  /** What shall be painted. */
  readonly letters: Region;
  /** The sheet before cutting; the letters lie inside of it with some frame around. */
  readonly sheet: Box;
  readonly options: Options;
  /** Holes for registration, cut through beside the letters. */
  readonly holes?: Region;
}

/**
 * Makes a stencil that holds together. Every island is held by as many bridges as asked, each as wide as asked,
 * counted by the least cut between it and the frame (fewer where no more fit); pieces that hang on a neck thinner
 * than the tongue limit get one, and so do long thin fingers of sheet. Bridges set by hand replace the proposed
 * ones of their island; where all were taken away, it gets none, and is told as loose.
 *
 * Whether the sheet is in one piece is read off its own polygons after cutting, and pieces found loose get
 * further bridges; `loose` is what that count comes to, not what the bridges promise.
 *
 * Checks: `stencil.loose-island` (error); `stencil.one-bridge` (warning, a note where one was asked for), of all
 * that hangs on one bridge, alone or as a group; `stencil.thin-tongue` (warning).
 */
export function stencil({ sign, letters, sheet, options, holes = [] }: StencilInput): {
  stencil: Stencil;
  checks: Check[];
} {
  const whole = withoutSpecks(letterByLetter(letters, 0, (touching) => union([touching])));
  const weak = weakSheet(whole, options.tongue);
  const solid = solidOf(weak.letters, (hole) => (weak.isWeak(hole) ? 'tongue' : 'island'));
  const firm = firmSheet(whole, solid.islands, options.tongue, options.bridgeWidth);
  const choices = solid.islands.map((island) => choicesFor(island, solid, firm, options));
  const placed = chooseAll(choices, options);
  holdAll(placed, choices, wishesOf(options), firm, options.bridgeWidth);
  const unheld = holdTongues(weak.tongues, solid, placed, options.bridgeWidth);
  const held = proveConnected(whole, sheet, holes, placed, choices, options.bridgeWidth);
  const bridges = placed.map((one) => bridgeOf(one, options.bridgeWidth));
  const holds = holdsOf(placed, solid.islands.length, firm, options.bridgeWidth, TWICE);
  const result: Stencil = {
    sheet: held.sheet,
    cut: held.cut,
    bridges,
    islands: solid.islands.map(({ box, ring, inside, kind, index }) => ({
      box,
      border: ring,
      at: inside,
      kind,
      hold: holds[index] ?? 0,
    })),
    loose: held.loose.length,
    // What hangs on nothing is loose, and told as such.
    single: holds.filter((hold) => hold === 1).length,
  };
  return { stencil: result, checks: checksOf(sign, result, held.loose, unheld, options.bridges) };
}

const withoutSpecks = (letters: Region): Region =>
  letters.map((polygon) => ({
    ...polygon,
    holes: polygon.holes.filter((hole) => Math.abs(signedArea(hole)) >= SPECK_MM2),
  }));

function bridgeOf({ island, crossing }: Placed, width: Mm): Bridge {
  return {
    island: island?.index ?? -1,
    kind: island?.kind ?? 'tongue',
    at: midpoint(crossing.leaves, crossing.reaches),
    angle: angleOf(crossing.along),
    width,
    length: crossing.length,
  };
}

function checksOf(
  sign: string,
  { single, islands }: Stencil,
  loose: readonly Region[],
  unheld: readonly Tongue[],
  asked: number,
): Check[] {
  const checks: Check[] = [];
  const first = (place: Point | undefined) => (place ? { at: place } : {});
  if (loose.length > 0) {
    checks.push({
      code: 'stencil.loose-island',
      severity: 'error',
      parts: [sign],
      ...first(loose[0]?.[0]?.outer[0]),
      figures: { count: loose.length },
    });
  }
  if (single > 0) {
    checks.push({
      code: 'stencil.one-bridge',
      severity: asked > 1 ? 'warning' : 'note',
      parts: [sign],
      ...first(islands.find(({ hold }) => hold === 1)?.at),
      figures: { count: single, asked },
    });
  }
  for (const { width, root } of unheld) {
    checks.push({
      code: 'stencil.thin-tongue',
      severity: 'warning',
      parts: [sign],
      at: root,
      figures: { width_mm: width },
    });
  }
  return checks;
}
