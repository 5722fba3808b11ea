import type { Pages } from '../design/schema.ts';
import type { Paper } from '../materials/types.ts';
import type { MeasureStyle } from '../measure/style.ts';
import type { Mm } from '../measure/units.ts';
import type { PrinterCorrection } from './result.ts';
import type { PatternWords } from './words.ts';

/** Everything about the paper and how its pages join; the same for all patterns of a job. */
export interface PageSetup {
  readonly paper: Paper;
  readonly pages: Pick<Pages, 'rollWidth' | 'margin' | 'join' | 'overlap' | 'wholeLetters'>;
  readonly correction: PrinterCorrection;
  /** How places are told; its system is that of the measuring square. */
  readonly measure: MeasureStyle;
  readonly words: PatternWords;
  /** Printed on every page. */
  readonly design: string;
}

/** A sheet as it lies before the reader. */
export interface Sheet {
  readonly turned: boolean;
  readonly width: Mm;
  readonly height: Mm;
  readonly margin: { readonly left: Mm; readonly right: Mm; readonly top: Mm; readonly bottom: Mm };
  /** Drawn size over true size, so that what the printer makes of it is true. */
  readonly scale: { readonly x: number; readonly y: number };
  /** Room inside the margins, in true millimeters of the pattern. */
  readonly room: { readonly w: Mm; readonly h: Mm };
  /** Room shared by neighbors. */
  readonly overlap: Mm;
}

/** PDF allows pages of 14,400 units of 1/72 in (ISO 32000-1, annex C): 5080 mm, less a little. */
const LONGEST_ROLL: Mm = 5000;
/** A roll's page holds at least the ruler, the square and the key map. */
const SHORTEST_ROLL: Mm = 160;
/** Less room than this on a page, and it is no use to tile on it. */
const LEAST_ROOM: Mm = 40;

/**
 * The two ways to lay the paper, upright first; those without room are left out. A printer turns a
 * landscape page either way about, so its margins are the larger of the two they may come from, and the
 * correction of each direction goes with the paper. `need` is the pattern's own size, for rolls.
 */
export function sheetsOf(setup: PageSetup, need: { w: Mm; h: Mm }): Sheet[] {
  const { paper, pages, correction } = setup;
  const { left, right, top, bottom } = pages.margin;
  const overlap = pages.join === 'overlap' ? pages.overlap : 0;
  const across = paper.height === undefined ? (pages.rollWidth ?? paper.width) : paper.width;
  const ends = Math.max(top, bottom);
  const sides = Math.max(left, right);
  const rolled = (along: Mm, both: Mm, by: number) =>
    Math.min(LONGEST_ROLL, Math.max(SHORTEST_ROLL, along / by + both));
  const height = paper.height ?? rolled(need.h, top + bottom, correction.y);
  const length = paper.height ?? rolled(need.w, 2 * ends, correction.y);
  const sheet = (
    turned: boolean,
    size: { width: Mm; height: Mm },
    margin: Sheet['margin'],
    by: PrinterCorrection,
  ): Sheet => ({
    turned,
    ...size,
    margin,
    scale: { x: 1 / by.x, y: 1 / by.y },
    room: {
      w: (size.width - margin.left - margin.right) * by.x,
      h: (size.height - margin.top - margin.bottom) * by.y,
    },
    overlap,
  });
  return [
    sheet(false, { width: across, height }, { left, right, top, bottom }, correction),
    sheet(
      true,
      { width: length, height: across },
      { left: ends, right: ends, top: sides, bottom: sides },
      { x: correction.y, y: correction.x },
    ),
  ].filter(({ room }) => Math.min(room.w, room.h) - overlap >= LEAST_ROOM);
}
