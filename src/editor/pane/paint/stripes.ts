/** A background of upright stripes, one for each color; plain where there is one, `none` where there are none. */
export function stripes(colors: readonly string[], none: string): string {
  const [first, second] = colors;
  if (first === undefined) return none;
  if (second === undefined) return first;
  const share = 100 / colors.length;
  const stops = colors.map((color, i) => `${color} ${i * share}% ${(i + 1) * share}%`);
  return `linear-gradient(to right, ${stops.join(', ')})`;
}
