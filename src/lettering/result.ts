import type { LineRole, PictureRole } from '../design/schema.ts';
import type { Box, Path, Point, Region, Ring } from '../geometry/shape.ts';
import type { Deg, Mm } from '../measure/units.ts';

/** A glyph in place on the sign. */
export interface PlacedGlyph {
  readonly character: string;
  readonly line: number;
  /** Which look it has: 0 that of the lettering, else the one of a line (`design/look.ts`). */
  readonly look: number;
  /** Cap height of its size. */
  readonly capHeight: Mm;
  /** Height of its baseline over the sign's lower edge; where lines are bent, at their middle. */
  readonly baseline: Mm;
  /** In the sign's coordinates: origin at the lower left of the sign's box, millimeters. */
  readonly path: Path;
  readonly region: Region;
  /** Of a picture in colors of its own, from the back to the front: what is painted of each; null for letters. */
  readonly colors: readonly { readonly finish: string | null; readonly whole: Region }[] | null;
}

/** Colors of letters, from the back to the front. */
export type OwnRole = 'ribbon' | 'shade' | 'outline' | 'fill' | 'inline';
/** Which color of the lettering it is; those of lines with a look of their own name the line. */
export type Role = OwnRole | LineRole | PictureRole;

export const roleOf = (role: OwnRole, look: number): Role => (look === 0 ? role : `${role}-${look}`);

/** What a color is of, and the number that it has: of a look (0 the lettering's own), or of a color of pictures. */
export function toldOf(role: Role): { readonly of: OwnRole | 'picture'; readonly number: number } {
  const [of, number] = role.split('-');
  return { of: of as OwnRole | 'picture', number: number === undefined ? 0 : Number(number) };
}

/** Whether a color is that of letters themselves. */
export const isFill = ({ role }: Pick<LetterLayer, 'role'>): boolean => toldOf(role).of === 'fill';

/** Whether a color lies around letters, beside them or behind them. */
export const isAround = ({ role }: Pick<LetterLayer, 'role'>): boolean =>
  ['ribbon', 'outline', 'shade'].includes(toldOf(role).of);

/** Whether a color lies on the letters themselves, and so on sawn ones too. */
export const isOnLetters = (role: Role | null): boolean =>
  role !== null && ['inline', 'picture'].includes(toldOf(role).of);

/** One color of the lettering, from the back to the front. */
export interface LetterLayer {
  readonly role: Role;
  readonly finish: string;
  /** What is seen of it once everything is painted: the layer less all that lies over it. */
  readonly region: Region;
  /** What is painted when the colors go on from the back to the front: the layer under the next ones too. */
  readonly whole: Region;
}

/** A bridge of the stencil: a bar of sheet that holds an island. */
export interface Bridge {
  /** Index of the island it holds; -1 for a thin tongue of the frame or of an island. */
  readonly island: number;
  readonly kind: 'island' | 'tongue';
  /** Middle of the bar's center line, direction and length across the stroke. */
  readonly at: { readonly x: Mm; readonly y: Mm };
  readonly angle: Deg;
  readonly width: Mm;
  readonly length: Mm;
}

export interface Stencil {
  /** The sheet that stays, frame and all. */
  readonly sheet: Region;
  /** What is cut away. */
  readonly cut: Region;
  readonly bridges: readonly Bridge[];
  /** From the left; `placed` bridges count them the same way. Angles are taken about `at`. */
  readonly islands: readonly {
    readonly box: Box;
    /** All around, across the bridges too. */
    readonly border: Ring;
    readonly at: Point;
    /** `tongue`: hangs on a neck of sheet that is too thin. */
    readonly kind: 'island' | 'tongue';
    /**
     * Bars that all have to break before it falls out, counted up to two: the least cut between it and the
     * frame. Thin necks and bars on thin fingers count as nothing, bars that run into each other as one.
     */
    readonly hold: number;
  }[];
  /** Pieces of the sheet that would fall out: 0 when it holds together. */
  readonly loose: number;
  /** Pieces of `islands` that hang on one bar, alone or tied to others. */
  readonly single: number;
}

/** Lettering of one sign, laid out. */
export interface Lettered {
  /** Laid part. */
  readonly sign: string;
  readonly text: string;
  readonly font: string;
  /** As asked for, or as it follows from the sign. */
  readonly capHeight: Mm;
  /** Cap heights of all its letters, each once, from the tallest. */
  readonly capHeights: readonly Mm[];
  readonly glyphs: readonly PlacedGlyph[];
  readonly layers: readonly LetterLayer[];
  /** Ink box in the sign's coordinates. */
  readonly box: { readonly x: Mm; readonly y: Mm; readonly w: Mm; readonly h: Mm };
  /** Sum of the kerned advances of the longest line. */
  readonly width: Mm;
  readonly ink_mm2: number;
  readonly missing: readonly string[];
}
