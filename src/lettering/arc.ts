import { degrees, type Mm } from '../measure/units.ts';
import type { SetLine } from './setting.ts';
import { straightTracks, type Track } from './track.ts';

/** The opening angle whose arc rises highest for its length: root of x/2 sin(x/2) = 1 - cos(x/2). */
const WIDEST = 4.6622;
/** A line bent on its own closes no more than this of a circle. */
const MOST_OF_CIRCLE = 0.9;

/**
 * Opening angle in radians of an arc whose middle rises `rise` over its chord, when letters of the given
 * length in all are spaced along a circle `inside` of it: (length / angle + inside) (1 - cos(angle / 2)) =
 * rise, solved by halving. A rise that no such arc reaches gives the highest one.
 */
export function openingOf(length: Mm, rise: Mm, inside: Mm = 0): number {
  let low = 0;
  let high = WIDEST;
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    // 1 - cos(a) as 2 sin²(a/2): keeps its digits for nearly straight baselines.
    if ((length / middle + inside) * 2 * Math.sin(middle / 4) ** 2 < rise) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Baselines bent to circles about one center. The widest line's baseline rises
 * `rise` over the chord of its ink (negative: hangs below it). Letters stay rigid, each turned about the
 * middle of its advance. They keep their distances where they come closest: along the baseline when it
 * arches up, along the tops of the caps when it hangs, so that neighbors do not run into each other.
 */
export function arcTracks(lines: readonly SetLine[], rise: Mm): Track[] {
  const widest = lines.reduce((a, b) => (b.right - b.left > a.right - a.left ? b : a));
  const length = widest.right - widest.left;
  if (rise === 0 || length <= 0) return straightTracks(lines);
  const up = Math.sign(rise);
  const insideOf = ({ top }: SetLine) => (up > 0 ? 0 : top);
  const opening = openingOf(length, Math.abs(rise), insideOf(widest));
  const radius = length / opening + insideOf(widest);
  const centerY = widest.baseline - up * radius;
  return lines.map((line) => {
    const least = (line.right - line.left) / (2 * Math.PI * MOST_OF_CIRCLE);
    const own = Math.max(radius + up * (line.baseline - widest.baseline), least + insideOf(line));
    return {
      baseline: line.baseline,
      bent: true,
      at: (along) => {
        const angle = along / (own - insideOf(line));
        return {
          x: own * Math.sin(angle),
          y: centerY + up * own * Math.cos(angle),
          turn: -up * degrees(angle),
        };
      },
    };
  });
}
