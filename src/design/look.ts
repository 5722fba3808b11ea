import type { FeatureTag } from './features.ts';
import type { Lettering, LetterLine } from './schema.ts';

/** What is painted of letters: themselves, and around, in and behind them. */
export type Look = Pick<Lettering, 'finish' | 'outline' | 'inline' | 'shade' | 'ribbon'>;

/** A look with the lines that have it. */
export interface LinesOfLook {
  readonly look: Look;
  /** 0: the lettering's own; else that of the first line that looks so, counted from 1. */
  readonly number: number;
}

const same = (a: Look, b: Look): boolean => JSON.stringify(a) === JSON.stringify(b);

/** For each line, how it looks. Lines that look alike share a number. */
export function looksOfLines({ lines }: Lettering, lettering: Look): LinesOfLook[] {
  return lines.map(({ look }) => {
    if (!look) return { look: lettering, number: 0 };
    const first = lines.findIndex((line) => line.look && same(line.look, look));
    return { look, number: first + 1 };
  });
}

/** Every look that lettering has: its own, and those of lines. */
export const looksIn = (lettering: Lettering): Look[] => [
  lettering,
  ...lettering.lines.flatMap(({ look }) => look ?? []),
];

/** The finishes that some lettering names, pictures aside. */
export const finishesIn = (lettering: Lettering): string[] =>
  looksIn(lettering).flatMap((look) =>
    [look, look.outline, look.inline, look.shade, look.ribbon].flatMap((layer) => layer?.finish ?? []),
  );

/** Whether lines run along anything but straight lines. */
export const isBent = ({ arcRise, along }: Lettering): boolean => arcRise !== 0 || along !== undefined;

/** The font of a line. */
export const fontOfLine = ({ font }: Pick<Lettering, 'font'>, line: Pick<LetterLine, 'font'>): string =>
  line.font ?? font;

/** The features that are chosen for the font of a line. */
export const featuresOfLine = (
  { features }: Pick<Lettering, 'features'>,
  line: Pick<LetterLine, 'features'>,
): readonly FeatureTag[] => line.features ?? features ?? [];

/** The fonts that some lettering is set in, each once, in the order of its lines. */
export const fontsIn = (lettering: Pick<Lettering, 'font' | 'lines'>): string[] => [
  ...new Set(lettering.lines.map((line) => fontOfLine(lettering, line))),
];
