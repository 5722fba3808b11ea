/** With the whole inches before it and the mark behind it, which stay on its line. */
const FRACTION = /(\d+ )?(\d+)\/(\d+)("?)/g;

/** A stretch of text as it stands, or a measure whose fraction is set as a tape shows it. */
export type TextPart =
  | { readonly plain: string }
  | { readonly whole: string; readonly over: string; readonly under: string; readonly mark: string };

/** A text cut at its fractions. */
export function fractionsIn(text: string): TextPart[] {
  const found: TextPart[] = [];
  let from = 0;
  for (const match of text.matchAll(FRACTION)) {
    if (match.index > from) found.push({ plain: text.slice(from, match.index) });
    const [all, whole = '', over = '', under = '', mark = ''] = match;
    found.push({ whole: whole.trimEnd(), over, under, mark });
    from = match.index + all.length;
  }
  if (from < text.length) found.push({ plain: text.slice(from) });
  return found;
}
