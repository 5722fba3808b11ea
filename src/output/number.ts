const ZERO = '0'.charCodeAt(0);
const POINT = '.'.charCodeAt(0);

/** A number as short as it goes at this many decimals, never in exponents, never `-0`; files read the same everywhere. */
export function decimal(value: number, places: number): string {
  // Files hold a hundred thousand numbers: whole ones have nothing to cut, and zeros are cut without a pattern.
  if (Number.isSafeInteger(value)) return String(value);
  const fixed = value.toFixed(places);
  let end = fixed.length;
  if (fixed.charCodeAt(end - places - 1) === POINT) {
    while (fixed.charCodeAt(end - 1) === ZERO) end -= 1;
    if (fixed.charCodeAt(end - 1) === POINT) end -= 1;
  }
  const short = fixed.slice(0, end);
  return short === '-0' ? '0' : short;
}
