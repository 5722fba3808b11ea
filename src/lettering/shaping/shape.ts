/**
 * A line of letters that are to be set together, by the rules that their font has for their script. Characters are told
 * by their index in it.
 */
export interface LineToShape {
  readonly characters: readonly string[];
  /** Stretches of one size, by a number each, one a character: nothing is kerned across their ends. */
  readonly sizes: readonly number[];
  /** What stands for itself, as pictures do. */
  readonly apart?: (character: string) => boolean;
  /** Space is added between letters: they make no ligatures that their script does not ask for. */
  readonly spaced: boolean;
  /** Features that are chosen, of the whole line, or of some characters of it. */
  readonly features: readonly ChosenFeature[];
}

export interface ChosenFeature {
  /** As OpenType registers it. */
  readonly tag: string;
  /** Which of several forms: counted from 1. */
  readonly value: number;
  readonly from?: number;
  readonly count?: number;
}

/** Letters that stand as one thing: a letter with its marks, a ligature, or what a script puts together. */
export interface Cluster {
  readonly from: number;
  readonly count: number;
  /** What is drawn, for the font: a form (`font/form.ts`), or the character itself of what stands apart. */
  readonly key: string;
  /** The same with the shifts of kerning, and what that adds to its advance, in font units. */
  readonly kerned: string;
  readonly kern: number;
  /** Its script is written joined: no space comes between it and a neighbor of the kind. */
  readonly joined: boolean;
  /** The font has no rules for what its script asks, so that it cannot be drawn right. */
  readonly unruled: boolean;
}

/** Clusters of a line as they stand from left to right. */
export type Shape = (line: LineToShape) => readonly Cluster[];

/** Opens a font for shaping: its tables as a plain file. Nothing is done before a line is shaped. */
export type Shaper = (file: () => Uint8Array, rules: LayoutRules) => Shape;

/** What a font has rules for. */
export interface LayoutRules {
  /** Scripts by their OpenType tags. */
  readonly scripts: ReadonlySet<string>;
  /** Features, by tags. */
  readonly features: ReadonlySet<string>;
  /** Glyph of a code point by itself; 0 where there is none. */
  readonly glyphOf: (code: number) => number;
  /** What fonts without positions of their own kern two glyphs by; null where shaping does it. */
  readonly tabled: ((left: number, right: number) => number) | null;
}
