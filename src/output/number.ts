/** A number as short as it goes at this many decimals, never in exponents, never `-0`; files read the same everywhere. */
export function decimal(value: number, places: number): string {
  const fixed = value.toFixed(places);
  const short = fixed.includes('.') ? fixed.replace(/\.?0+$/, '') : fixed;
  return short === '-0' ? '0' : short;
}
