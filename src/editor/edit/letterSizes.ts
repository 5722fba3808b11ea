import { PICTURE_HEIGHT } from '../../design/limits.ts';
import { characterOf } from '../../design/picture.ts';
import type { Lettering, Picture } from '../../design/schema.ts';
import { ORNAMENTS } from '../../lettering/picture/ornaments.ts';
import type { Mm } from '../../measure/units.ts';

export type Line = Lettering['lines'][number];
export type LetterSize = NonNullable<Line['sizes']>[number];

/** Smaller letters that stand high, as in a number sign: what is asked for most often. */
const FIRST_SIZE = { size: 0.6, stand: 'top' } as const;

const withSizes = (line: Line, sizes: readonly LetterSize[]): Line => {
  const { sizes: _before, ...plain } = line;
  return sizes.length === 0 ? plain : { ...plain, sizes: [...sizes] };
};

type FormOfLetter = NonNullable<Line['forms']>[number];

const withForms = (line: Line, forms: readonly FormOfLetter[]): Line => {
  const { forms: _before, ...plain } = line;
  return forms.length === 0 ? plain : { ...plain, forms: [...forms] };
};

/** A line with one letter in another form; null for the form that it has of itself. */
export function withForm(line: Line, at: number, chosen: Omit<FormOfLetter, 'at'> | null): Line {
  const others = (line.forms ?? []).filter((form) => form.at !== at);
  const all = chosen ? [...others, { at, ...chosen }] : others;
  return withForms(
    line,
    all.sort((a, b) => a.at - b.at),
  );
}

/**
 * Which letter is meant by a selection, given as places in the text as a field counts them: the first of it, else the one
 * before the caret. Null where there is none to be seen.
 */
export function letterMeant(
  text: string,
  { from, to }: { readonly from: number; readonly to: number },
): { readonly at: number; readonly letter: string } | null {
  const before = [...text.slice(0, from)].length;
  const at = to > from ? before : Math.max(0, before - 1);
  const letter = [...text][at];
  return letter === undefined || letter.trim() === '' ? null : { at, letter };
}

/** Letters of a line: from which on, and how many. */
type Letters = Pick<LetterSize, 'from' | 'count'>;

/**
 * A line with other words, its sizes and forms on the letters they were on. Letters typed beside a size do not take
 * it; letters typed in the place of all that had a size do.
 */
export function lineAfterTyping(line: Line, text: string): Line {
  const [before, after] = [[...line.text], [...text]];
  let start = 0;
  while (start < Math.min(before.length, after.length) && before[start] === after[start]) start += 1;
  let same = 0;
  const most = Math.min(before.length, after.length) - start;
  while (same < most && before.at(-1 - same) === after.at(-1 - same)) same += 1;
  const end = before.length - same;
  const by = after.length - before.length;
  const moved = (letters: Letters): Letters | null => {
    const [from, to] = [letters.from, letters.from + letters.count];
    const replaced = from >= start && to <= end && end > start;
    if (replaced && (from > start || to < end)) return null;
    const first = from >= end ? from + by : Math.min(from, start);
    const last = to <= start ? to : to >= end ? to + by : start;
    return last > first ? { from: first, count: last - first } : null;
  };
  const sizes = (line.sizes ?? []).flatMap((size): LetterSize[] => {
    const letters = moved(size);
    return letters ? [{ ...size, ...letters }] : [];
  });
  // Another letter in its place has other forms.
  const kept = (line.forms ?? []).filter(({ at }) => at < start || at >= end);
  const forms = kept.map((form) => ({ ...form, at: form.at < start ? form.at : form.at + by }));
  return withForms(withSizes({ ...line, text }, sizes), forms);
}

/** Lines with the words of a text; unchanged lines above and below a change keep what is theirs. */
export function linesAfterTyping(lines: readonly Line[], texts: readonly string[]): Line[] {
  let above = 0;
  const least = Math.min(lines.length, texts.length);
  while (above < least && lines[above]?.text === texts[above]) above += 1;
  let below = 0;
  while (below < least - above && lines.at(-1 - below)?.text === texts.at(-1 - below)) below += 1;
  const by = texts.length - lines.length;
  return texts.map((text, i) => {
    const isBelow = i >= texts.length - below;
    const line = isBelow ? lines[i - by] : i < lines.length - below ? lines[i] : undefined;
    return line ? lineAfterTyping(line, text) : { text };
  });
}

/** Gives letters a size of their own; other sizes give way to it. */
export function withOwnSize(line: Line, from: number, count: number): Line {
  const end = from + count;
  const others = (line.sizes ?? []).flatMap((size): LetterSize[] => {
    const last = size.from + size.count;
    return [
      { ...size, count: Math.min(last, from) - size.from },
      { ...size, from: Math.max(size.from, end), count: last - Math.max(size.from, end) },
    ].filter((rest) => rest.count > 0);
  });
  const sizes = [...others, { from, count, ...FIRST_SIZE }].sort((a, b) => a.from - b.from);
  return withSizes(line, sizes);
}

/** The sides of a picture: its height is that of the capitals it is set among. */
export interface PictureSides {
  readonly capHeight: Mm;
  /** Width over height. */
  readonly aspect: number;
}

/** Width over height of the picture or ornament that a character stands for; null for letters. */
export function aspectOf(character: string, pictures: readonly Picture[] = []): number | null {
  const own = pictures.find(({ id }) => characterOf(id) === character);
  if (own) return own.width / PICTURE_HEIGHT;
  const ornament = ORNAMENTS.find((one) => one.character === character);
  return ornament ? ornament.width / 1000 : null;
}

/** Both sides of a picture of some size, and the size at which one of them is as long as it was measured. */
export const sidesOf = ({ size }: Pick<LetterSize, 'size'>, { capHeight, aspect }: PictureSides) => ({
  height: size * capHeight,
  width: size * capHeight * aspect,
});
export const sizeBySide = (side: 'height' | 'width', mm: Mm, { capHeight, aspect }: PictureSides): number =>
  mm / (side === 'width' ? capHeight * aspect : capHeight);

export const withSizeChanged = (line: Line, index: number, fields: Partial<LetterSize>): Line =>
  withSizes(
    line,
    (line.sizes ?? []).map((size, i) => (i === index ? { ...size, ...fields } : size)),
  );

export const withoutSize = (line: Line, index: number): Line =>
  withSizes(
    line,
    (line.sizes ?? []).filter((_, i) => i !== index),
  );

/** The letters of a size. */
export const lettersOf = ({ text }: Line, { from, count }: Pick<LetterSize, 'from' | 'count'>): string =>
  [...text].slice(from, from + count).join('');

/**
 * Which letters are meant by a selection, given as places in the text as a field counts them: those
 * selected, else the word at the caret, else the last word. Null where there is none.
 */
export function lettersMeant(
  text: string,
  selection: { readonly from: number; readonly to: number } | null,
): { readonly from: number; readonly count: number } | null {
  const words = [...text.matchAll(/\S+/gu)].map((m) => ({ from: m.index, to: m.index + m[0].length }));
  const at = selection ?? { from: text.length, to: text.length };
  const meant =
    at.to > at.from
      ? { from: at.from, to: Math.min(at.to, text.length) }
      : (words.find(({ from, to }) => at.from >= from && at.from <= to) ?? words.at(-1));
  if (!meant || meant.to <= meant.from || text.slice(meant.from, meant.to).trim() === '') return null;
  const from = [...text.slice(0, meant.from)].length;
  return { from, count: [...text.slice(meant.from, meant.to)].length };
}
