import { DUST } from '../geometry/tolerance.ts';
import { type Laid, legsOf } from '../layout/laid.ts';
import { pick } from '../list/at.ts';
import type { Deg } from '../measure/units.ts';
import { type Bar, uprightness } from './bar.ts';
import type { Attempt } from './chosen.ts';
import { type BarEnd, cornerLines } from './corner.ts';
import type { Decision, Decisions } from './decide.ts';
import { cutCorner, type Works } from './join.ts';

/** Cuts the corners of one run, in order of travel; a closed run ends with the corner at its start. */
export function joinRun(
  works: Works,
  laid: Laid<'run'>,
  bars: readonly Bar[],
  decisions: Decisions,
): Attempt[] {
  const first = bars[0];
  if (!first) return [];
  const decision = decisions(first, first);
  const corners = bars
    .slice(1)
    .map((bar, i) => [pick(bars, i), bar] as const)
    // An arc lies between them.
    .filter(([bar]) => !bar.free.end);
  const last = bars[bars.length - 1];
  if (laid.closed && last && last !== first) corners.push([last, first]);
  return corners.map(([a, b]) => joinRunCorner(works, laid, a, b, decision));
}

/** Of a turn by less a miter, which halves it, is the lesser cut: a butt is cut by what it lacks to a square corner. */
const BLUNT: Deg = 60;

function joinRunCorner(works: Works, laid: Laid<'run'>, a: Bar, b: Bar, decision: Decision | null): Attempt {
  const ends: [BarEnd, BarEnd] = [
    { bar: a, end: 'end' },
    { bar: b, end: 'start' },
  ];
  const blunt = Math.abs(cornerLines(...ends).turn) < BLUNT;
  const kind = laid.spec.corner === 'miter' || blunt ? 'miter' : 'butt';
  const joint = cutCorner(works, ...ends, {
    kind: isBowed(a) || isBowed(b) ? 'miter' : (decision?.kind ?? kind),
    through: throughOf(laid, a, b),
    decided: decision !== null,
    toOutside: true,
  });
  return { a, b, shape: 'run', decision, joint };
}

/** The corners of a bow are mitered, those at its ends too, whatever others are. */
const isBowed = ({ laid, leg }: Bar): boolean => legsOf(laid)[leg]?.bowed === true;

/** `butt-across`: rails run through; otherwise the stiles do. Of two alike, the earlier one. */
function throughOf(laid: Laid<'run'>, a: Bar, b: Bar): Bar {
  const difference = uprightness(a) - uprightness(b);
  if (Math.abs(difference) < DUST) return a.index < b.index ? a : b;
  const plumb = difference > 0 ? a : b;
  const level = difference > 0 ? b : a;
  return laid.spec.corner === 'butt-across' ? level : plumb;
}
