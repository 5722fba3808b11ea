/**
 * Scripts that run from right to left, or whose letters change, join, stack or trade places beside each
 * other (Unicode Standard, chapters 9 to 16): setting their characters one by one from the left gives no
 * words. Marks that Unicode composes with no letter have no place of their own either.
 */
const ONLY_TOGETHER =
  /[\p{M}\p{scx=Adlm}\p{scx=Arab}\p{scx=Beng}\p{scx=Deva}\p{scx=Gujr}\p{scx=Guru}\p{scx=Hebr}\p{scx=Khmr}\p{scx=Knda}\p{scx=Laoo}\p{scx=Mlym}\p{scx=Mong}\p{scx=Mymr}\p{scx=Nkoo}\p{scx=Orya}\p{scx=Rohg}\p{scx=Samr}\p{scx=Sinh}\p{scx=Syrc}\p{scx=Taml}\p{scx=Telu}\p{scx=Thaa}\p{scx=Thai}\p{scx=Tibt}]/u;
/** As many are named as show what is meant. */
const MOST_NAMED = 5;

/** Characters of a text that make sense only as they are shaped together, each once, the first few. */
export function onlyTogether(text: string): string[] {
  const found = [...text.normalize('NFC')].filter((c) => ONLY_TOGETHER.test(c) && !/[\p{P}\p{N}]/u.test(c));
  return [...new Set(found)].slice(0, MOST_NAMED);
}
