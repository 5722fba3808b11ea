/**
 * Features of fonts that can be chosen for letters, by their tags in the OpenType registry ("Registered features"), in the
 * order in which they are offered.
 */
export const FEATURE_TAGS = [
  ...['liga', 'dlig', 'hlig', 'calt', 'smcp', 'c2sc', 'case', 'titl', 'swsh', 'salt', 'hist'],
  ...['lnum', 'onum', 'pnum', 'tnum', 'zero', 'frac', 'ordn'],
  ...['ss01', 'ss02', 'ss03', 'ss04', 'ss05', 'ss06', 'ss07', 'ss08', 'ss09', 'ss10'],
  ...['ss11', 'ss12', 'ss13', 'ss14', 'ss15', 'ss16', 'ss17', 'ss18', 'ss19', 'ss20'],
] as const;
export type FeatureTag = (typeof FEATURE_TAGS)[number];

/** Which stylistic set a tag names, `ss01` to `ss20`; null for other features. */
export function stylisticSet(tag: string): number | null {
  const set = /^ss(\d\d)$/.exec(tag);
  return set && Number(set[1]);
}

/** Of each of these one is chosen at most. */
export const EXCLUSIVE = { figures: ['lnum', 'onum'], widths: ['pnum', 'tnum'] } as const satisfies Readonly<
  Record<string, readonly FeatureTag[]>
>;

/** Where in a text a feature is meant; all over it when not told. */
export const MEANT_FOR: Readonly<Partial<Record<FeatureTag, RegExp>>> = {
  frac: /\p{Nd}+[/\u2044]\p{Nd}+/gu,
  ordn: /(?<=\p{Nd})\p{L}+/gu,
};
