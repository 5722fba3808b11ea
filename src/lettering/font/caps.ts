import { boxOfPath } from '../../geometry/path.ts';
import type { Path } from '../../geometry/shape.ts';
import { pick } from '../../list/at.ts';
import type { Bytes } from './bytes.ts';

/** Where the flat capitals of a font stand and how tall they are, in font units. */
export interface Caps {
  /** Their foot over the font's zero line: below 0 where even flat letters dip under it. */
  readonly foot: number;
  readonly height: number;
}

/** Letters as tall as capitals, looked at in this order; the first set that the font has is measured. */
const SETS = [
  'HIETFLZXNMKDBPRVWAYUJOCGQS',
  'НПЕГТЦШИКЛМВБРХДЖОС',
  'ΗΙΕΤΓΠΝΜΚΛΔΒΡΧΥΖΞΟΣ',
  '1234567890',
  'bdhkl',
];
/** Letters that end this near to each other end on one line, as a share of the em. */
const SAME_LINE = 0.002;
/** Where there is nothing to measure and the font says nothing. */
const USUAL_SHARE = 0.7;

/**
 * Measured on the ink, as a ruler does it: from the line on which most capitals stand to the line on which most
 * end. Round and pointed letters run over those lines and are few; so are letters with a flourish. Where
 * nothing is drawn, what the font says of itself (`OS/2` version 2 and later), else 0.7 em.
 */
export function capsOf(
  outline: (character: string) => Path,
  os2: Bytes | undefined,
  unitsPerEm: number,
): Caps {
  for (const set of SETS) {
    const boxes = [...set]
      .map(outline)
      .filter((path) => path.length > 0)
      .map(boxOfPath);
    if (boxes.length === 0) continue;
    const foot = lineOf(
      boxes.map(({ y }) => -y),
      SAME_LINE * unitsPerEm,
    );
    const top = lineOf(
      boxes.map(({ y, h }) => y + h),
      SAME_LINE * unitsPerEm,
    );
    if (top + foot > 0) return { foot: -foot, height: top + foot };
  }
  const stated = os2 && os2.length >= 90 && os2.u16(0) >= 2 ? os2.i16(88) : 0;
  return { foot: 0, height: stated > 0 ? stated : USUAL_SHARE * unitsPerEm };
}

/** The value most often met among those that most others are near to; of equals the least. */
function lineOf(values: readonly number[], near: number): number {
  const around = (value: number) => values.filter((other) => Math.abs(other - value) <= near);
  const crowd = around(mostOf(values, (value) => around(value).length));
  return mostOf(crowd, (value) => crowd.filter((other) => other === value).length);
}

const mostOf = (values: readonly number[], score: (value: number) => number): number =>
  pick(
    [...values].sort((a, b) => score(b) - score(a) || a - b),
    0,
  );
