import type { Check } from '../check/check.ts';
import { containsPoint } from '../geometry/ring.ts';
import type { Mm } from '../measure/units.ts';
import { type Bar, ENDS, type End, edgeLine, otherSide, TOUCH, toFace } from './bar.ts';
import type { BarEnd } from './corner.ts';
import type { Decisions } from './decide.ts';
import { crossingPlace, type Meeting, nearSide } from './meet.ts';
import { cutAlong } from './trim.ts';

/** A bar that would pass a frame and stops at it, and how much of it stood beyond. */
export interface Stop {
  readonly ending: BarEnd;
  readonly passing: Bar;
  readonly beyond: Mm;
}

/**
 * What begins inside a closed frame or arch and runs out of it to nothing stops at it, with an end cut to each
 * leg that it would have crossed; a batten under an arch is never halved into the arch. A joint that the person
 * chose for the two lets it pass. Returns the meetings, with such crossings told as ends, and the stops.
 */
export function stopsOf(
  meetings: readonly Meeting[],
  decisions: Decisions,
): { readonly meetings: Meeting[]; readonly stops: Stop[] } {
  const held = meetings.flatMap(endsOf);
  const stops: Stop[] = [];
  const settled = meetings.map((meeting): Meeting => {
    if (meeting.shape !== 'cross' || !meeting.laps || decisions(meeting.a, meeting.b)) return meeting;
    const { a, b } = meeting;
    const stop = stopAt(a, b, held) ?? stopAt(b, a, held);
    if (!stop) return meeting;
    stops.push(stop);
    return { shape: 'tee', ending: stop.ending, passing: stop.passing, laps: true };
  });
  return { meetings: settled, stops };
}

const endKey = ({ bar, end }: BarEnd): string => `${bar.index} ${end}`;

/** An end that runs to something, and to what. */
interface HeldEnd {
  readonly end: BarEnd;
  readonly to: Bar;
}

function endsOf(meeting: Meeting): HeldEnd[] {
  if (meeting.shape === 'tee') return [{ end: meeting.ending, to: meeting.passing }];
  if (meeting.shape !== 'corner') return [];
  const { a, b } = meeting;
  return [
    { end: a, to: b.bar },
    { end: b, to: a.bar },
  ];
}

function stopAt(bar: Bar, passing: Bar, held: readonly HeldEnd[]): Stop | null {
  const { laid } = passing;
  if (laid.kind !== 'run' || !laid.closed || laid.id === bar.laid.id) return null;
  const inside = laid.legs.map((leg) => leg.start);
  const isInside = (end: End): boolean =>
    containsPoint(inside, toFace(bar, { x: end === 'start' ? 0 : bar.length, y: 0 }));
  const end = ENDS.find((one) => !isInside(one));
  if (!end || !isInside(end === 'start' ? 'end' : 'start')) return null;
  const ending = { bar, end };
  const runsOn = held.some((h) => endKey(h.end) === endKey(ending) && h.to.laid.id !== laid.id);
  if (!bar.free[end] || runsOn) return null;
  return { ending, passing, beyond: beyondOf(ending, passing) };
}

/** How far the bar was laid past the outer edge of what it stops at, along its center line. */
function beyondOf(ending: BarEnd, passing: Bar): Mm {
  const { bar, end } = ending;
  const far = edgeLine(passing, otherSide(nearSide(ending, passing)));
  const cut = cutAlong(bar, far, { kind: 'butt', with: null, corner: null });
  if (!cut) return 0;
  return Math.max(0, end === 'end' ? bar.length - cut.at : cut.at);
}

/** What stops is told once for each two parts: how many ends, and the most that was left out. */
export function stopChecks(stops: readonly Stop[]): Check[] {
  const told = new Map<string, { at: Stop; ends: Set<string>; most: Mm }>();
  for (const stop of stops) {
    const key = [stop.ending.bar.laid.part, stop.passing.laid.part].join('\n');
    const known = told.get(key) ?? { at: stop, ends: new Set<string>(), most: 0 };
    known.ends.add(endKey(stop.ending));
    told.set(key, { ...known, most: Math.max(known.most, stop.beyond) });
  }
  return [...told.values()].flatMap(({ at: { ending, passing }, ends, most }): Check[] =>
    most <= TOUCH
      ? []
      : [
          {
            code: 'joint.stops',
            severity: 'note',
            parts: [ending.bar.laid.part, passing.laid.part],
            at: crossingPlace(ending.bar, { at: passing.start, along: passing.along }),
            figures: { count: ends.size, beyond_mm: most },
          },
        ],
  );
}
