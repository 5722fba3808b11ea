import { withoutRepeats } from '../geometry/cut.ts';
import { cross, subtract, unit } from '../geometry/point.ts';
import type { Point } from '../geometry/shape.ts';
import { placeAt, type Side, sideBetween } from '../geometry/side.ts';
import { DUST } from '../geometry/tolerance.ts';
import { cyclic, pick } from '../list/at.ts';
import type { Deg, Mm } from '../measure/units.ts';
import type { End } from './bar.ts';
import type { EndCut } from './piece.ts';

/** A cut through a bar, in the bar's own coordinates: the line x = at + slope * y. */
export interface Cut {
  readonly at: Mm;
  readonly slope: number;
  readonly kind: EndCut;
  /** Laid part that the end meets. */
  readonly with: string | null;
  /** Interior angle of the corner, where sprung molding turns it. */
  readonly corner: Deg | null;
  /** Where it is no straight cut: from the left edge to the right one; it reaches no farther than the straight one. */
  readonly line?: readonly Point[];
}

/** A corner of an outline; `edge` tells which cut made the side that leaves it, or null for a long edge. */
export interface Corner extends Point {
  readonly edge: { readonly end: End; readonly cut: Cut } | null;
}

/** A side of an outline, and which cut made it. */
interface Edged extends Side {
  readonly edge: Corner['edge'];
}

/**
 * What stays of an outline this side of a line that runs from its left edge to its right one. The outline is that
 * of straight cuts, so that at every height it is one stretch; so is what stays of it.
 */
export function keepToLine(outline: readonly Corner[], end: End, cut: Cut, line: readonly Point[]): Corner[] {
  if (end === 'end') return keepBefore(outline, line, { end, cut });
  // Turned half around, the start is an end.
  const turn = <P extends Point>(p: P): P => ({ ...p, x: -p.x, y: -p.y });
  return keepBefore(outline.map(turn), line.map(turn).reverse(), { end, cut }).map(turn);
}

function keepBefore(
  outline: readonly Corner[],
  line: readonly Point[],
  edge: NonNullable<Corner['edge']>,
): Corner[] {
  const sides = outline.map((p, i): Edged => ({ ...sideBetween(p, cyclic(outline, i + 1)), edge: p.edge }));
  // Counterclockwise, the right side of an outline runs up.
  const rising = sides.filter((_, i) => cyclic(outline, i + 1).y > pick(outline, i).y + DUST);
  const falling = sides.filter((_, i) => cyclic(outline, i + 1).y < pick(outline, i).y - DUST);
  const cutting = line.slice(1).map((q, i): Edged => ({ low: q, high: pick(line, i), edge }));
  const levels = levelsOf([...outline, ...line], [...rising, ...falling], cutting);
  const right: Corner[] = [];
  const left: Corner[][] = [];
  for (let i = 1; i < levels.length; i++) {
    const [low, high] = [pick(levels, i - 1), pick(levels, i)];
    const middle = (low + high) / 2;
    const [far, near, over] = [rising, falling, cutting].map((all) => sideAt(all, middle));
    if (!far || !near) continue;
    const to = over && placeAt(over, middle) < placeAt(far, middle) ? over : far;
    if (placeAt(to, middle) <= placeAt(near, middle)) continue;
    right.push(cornerAt(to, low), cornerAt(to, high));
    left.push([cornerAt(near, high), cornerAt(near, low)]);
  }
  return joined(right, left.reverse().flat());
}

/** Heights at which anything has a corner, or a side crosses the line, from the lowest up. */
function levelsOf(corners: readonly Point[], sides: readonly Side[], cutting: readonly Side[]): Mm[] {
  const levels = corners.map(({ y }) => y);
  for (const a of sides) {
    for (const b of cutting) {
      const low = Math.max(a.low.y, b.low.y);
      const high = Math.min(a.high.y, b.high.y);
      if (high - low <= DUST) continue;
      const [before, after] = [placeAt(a, low) - placeAt(b, low), placeAt(a, high) - placeAt(b, high)];
      if (before * after < 0) levels.push(low + ((high - low) * before) / (before - after));
    }
  }
  return levels.sort((a, b) => a - b).filter((y, i, all) => i === 0 || y - pick(all, i - 1) > DUST);
}

const sideAt = (sides: readonly Edged[], y: Mm): Edged | undefined =>
  sides.find(({ low, high }) => low.y <= y && y <= high.y && high.y - low.y > DUST);

const cornerAt = (side: Edged, y: Mm): Corner => ({ x: placeAt(side, y), y, edge: side.edge });

/** Up the right side and down the left one; a long edge, or nothing, leaves the last point of each. */
function joined(up: readonly Corner[], down: readonly Corner[]): Corner[] {
  const around = [up, down].flatMap((side) =>
    side.map((p, i) => (i < side.length - 1 ? p : { ...p, edge: null })),
  );
  const apart = withoutRepeats(around);
  // A side is told in parts where another one has a corner level with it.
  return apart.filter((p, i) => {
    const [before, after] = [cyclic(apart, i - 1), cyclic(apart, i + 1)];
    return (
      before.edge !== p.edge || Math.abs(cross(unit(subtract(after, before)), subtract(p, before))) > DUST
    );
  });
}
