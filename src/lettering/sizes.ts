import { type FeatureTag, MEANT_FOR } from '../design/features.ts';
import type { Lettering } from '../design/schema.ts';
import { boxOfPath } from '../geometry/path.ts';
import { under } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import type { Font } from './font.ts';
import { isShaped } from './script.ts';
import type { ChosenFeature, Shape } from './shaping/shape.ts';

type Line = Lettering['lines'][number];
type LetterSize = NonNullable<Line['sizes']>[number];

/** A character, or several that stand as one, with the size they are drawn in. */
export interface Sized {
  readonly character: string;
  /** By which the font draws it. */
  readonly key: string;
  /** Its place among the others in reading; they are listed as they stand from the left. */
  readonly index: number;
  /** As drawn where pairs are kerned, and what is then added to its advance, in font units; null: as the font's pair says. */
  readonly kerned: { readonly key: string; readonly by: number } | null;
  /** Written joined: no space is added between it and a neighbor of the kind. */
  readonly joined: boolean;
  readonly unruled: boolean;
  readonly capHeight: Mm;
  /** How far it stands over the line's baseline; below 0 under it. */
  readonly rise: Mm;
}

/** Letters whose ink ends below this share of the cap height are no taller than small letters. */
const AS_TALL_AS_CAPS = 0.9;

/** How the characters of a line are set. */
export interface SetBy {
  /** Space is added between letters. */
  readonly spaced: boolean;
  readonly features: readonly FeatureTag[];
}

/**
 * Characters of a line as they are drawn, in a cap height of `capHeight` where they have no size of their
 * own. Sizes count the code points of the text as it was typed; characters are composed within one size.
 *
 * Raised letters are leveled by their caps, as a sign painter does it, or, where a size holds none that are
 * so tall (the o of a number sign, a dash), by their ink.
 */
export function sizedCharacters(line: Line, capHeight: Mm, font: Font, by: SetBy): Sized[] {
  if (font.shape && isShaped(line, by.features))
    return shapedCharacters(line, capHeight, font, font.shape, by);
  const alone = { kerned: null, joined: false, unruled: false };
  let index = 0;
  return runsOf(line).flatMap(({ text, own }) => {
    const characters = charactersOf(text);
    const drawn = drawnIn(own, capHeight, characters, font);
    return characters.map((key) => ({ ...alone, ...drawn, character: key, key, index: index++ }));
  });
}

/** The same of what is set together: marks are as large as their letter. */
function shapedCharacters(line: Line, capHeight: Mm, font: Font, shape: Shape, by: SetBy): Sized[] {
  const { sizes = [], text } = line;
  const characters = Array.from(text, shownAs);
  const sizeAt = (i: number) => sizes.findIndex(({ from, count }) => i >= from && i < from + count);
  const clusters = shape({
    characters,
    sizes: characters.map((_, i) => sizeAt(i)),
    spaced: by.spaced,
    features: chosenIn(line, characters, by.features),
  });
  const drawn = new Map(
    [...new Set(clusters.map(({ from }) => sizeAt(from)))].map((size) => {
      const keys = clusters.filter(({ from }) => sizeAt(from) === size).map(({ key }) => key);
      return [size, drawnIn(sizes[size] ?? null, capHeight, keys, font)] as const;
    }),
  );
  return clusters.map(({ from, count, key, kerned, kern, joined, unruled }) => ({
    ...under(drawn, sizeAt(from)),
    character: characters
      .slice(from, from + count)
      .join('')
      .normalize('NFC')
      .replace(UNSEEN, ''),
    key,
    index: from,
    kerned: { key: kerned, by: kern },
    joined,
    unruled,
  }));
}

/** What is chosen for a line: features where they are meant, and forms of single letters. */
function chosenIn(
  { text, forms = [] }: Line,
  characters: readonly string[],
  features: readonly FeatureTag[],
): ChosenFeature[] {
  const whole = features.flatMap((tag): ChosenFeature[] => {
    const meant = MEANT_FOR[tag];
    if (!meant) return [{ tag, value: 1 }];
    return [...text.matchAll(meant)].map((found) => ({
      tag,
      value: 1,
      from: [...text.slice(0, found.index)].length,
      count: [...found[0]].length,
    }));
  });
  const single = forms.filter(({ at }) => at < characters.length);
  return [...whole, ...single.map(({ at, tag, value }) => ({ tag, value, from: at, count: 1 }))];
}

/** In which size characters are drawn, and how high they stand. */
function drawnIn(own: LetterSize | null, capHeight: Mm, keys: readonly string[], font: Font) {
  if (!own) return { capHeight, rise: 0 };
  const drawn = capHeight * own.size;
  return { capHeight: drawn, rise: riseOf(own.stand, capHeight, spanOf(keys, drawn, font)) };
}

function riseOf(stand: LetterSize['stand'], capHeight: Mm, span: { low: Mm; high: Mm }): Mm {
  if (stand === 'baseline') return 0;
  return stand === 'top' ? capHeight - span.high : (capHeight - span.low - span.high) / 2;
}

/** From where to where letters reach over their own baseline, tails left out. */
function spanOf(keys: readonly string[], capHeight: Mm, font: Font): { low: Mm; high: Mm } {
  const boxes = keys
    .map((key) => font.outline(key))
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

/** What leaves no ink, and what tells whether a sign is shown as a picture: one typed from a list of such signs has it. */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Cs}\p{Variation_Selector}]/gu;

/** Letters of a text as a person counts them, composed where Unicode has a composed form, without what is not seen. */
const charactersOf = (text: string): string[] =>
  Array.from(text.normalize('NFC'), shownAs).filter((c) => c.search(UNSEEN) < 0);

const shownAs = (character: string): string => (/\s/u.test(character) ? ' ' : character);
