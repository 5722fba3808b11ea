import type { Lettering } from '../design/schema.ts';
import { boxOfPath } from '../geometry/path.ts';
import type { Mm } from '../measure/units.ts';
import type { Font } from './font.ts';

type Line = Lettering['lines'][number];
type LetterSize = NonNullable<Line['sizes']>[number];

/** A character with the size it is drawn in. */
export interface Sized {
  readonly character: string;
  readonly capHeight: Mm;
  /** How far it stands over the line's baseline; below 0 under it. */
  readonly rise: Mm;
}

/** Letters whose ink ends below this share of the cap height are no taller than small letters. */
const AS_TALL_AS_CAPS = 0.9;

/**
 * Characters of a line as they are drawn, in a cap height of `capHeight` where they have no size of their
 * own. Sizes count the code points of the text as it was typed; characters are composed within one size.
 *
 * Raised letters are leveled by their caps, as a sign painter does it, or, where a size holds none that are
 * so tall (the o of a number sign, a dash), by their ink.
 */
export function sizedCharacters(line: Line, capHeight: Mm, font: Font): Sized[] {
  return runsOf(line).flatMap(({ text, own }) => {
    const characters = charactersOf(text);
    if (!own) return characters.map((character) => ({ character, capHeight, rise: 0 }));
    const drawn = capHeight * own.size;
    const rise = riseOf(own.stand, capHeight, spanOf(characters, drawn, font));
    return characters.map((character) => ({ character, capHeight: drawn, rise }));
  });
}

function riseOf(stand: LetterSize['stand'], capHeight: Mm, span: { low: Mm; high: Mm }): Mm {
  if (stand === 'baseline') return 0;
  return stand === 'top' ? capHeight - span.high : (capHeight - span.low - span.high) / 2;
}

/** From where to where letters reach over their own baseline, tails left out. */
function spanOf(characters: readonly string[], capHeight: Mm, font: Font): { low: Mm; high: Mm } {
  const boxes = characters
    .map((c) => font.outline(c))
    .filter((path) => path.length > 0)
    .map((path) => ({ low: boxOfPath(path).y - font.foot, h: boxOfPath(path).h }));
  const high = Math.max(...boxes.map(({ low, h }) => low + h));
  if (boxes.length === 0 || high >= AS_TALL_AS_CAPS * font.capHeight) return { low: 0, high: capHeight };
  const scale = capHeight / font.capHeight;
  return { low: scale * Math.max(0, Math.min(...boxes.map(({ low }) => low))), high: scale * high };
}

/** Stretches of the text that have one size; `own` is null where it is the line's. */
function runsOf({ text, sizes = [] }: Line): { text: string; own: LetterSize | null }[] {
  const runs: { text: string; own: LetterSize | null }[] = [];
  [...text].forEach((point, i) => {
    const own = sizes.find(({ from, count }) => i >= from && i < from + count) ?? null;
    const last = runs.at(-1);
    if (last && last.own === own) last.text += point;
    else runs.push({ text: point, own });
  });
  return runs;
}

/**
 * Letters of a text as a person counts them, composed where Unicode has a composed form. What leaves no ink is left
 * out, and so is what tells whether a sign is shown as a picture: one typed from a list of such signs has it.
 */
const charactersOf = (text: string): string[] =>
  Array.from(text.normalize('NFC'), (c) => (/\s/u.test(c) ? ' ' : c)).filter(
    (c) => !/[\p{Cc}\p{Cf}\p{Cs}\p{Variation_Selector}]/u.test(c),
  );
