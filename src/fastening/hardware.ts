import type { Check } from '../check/check.ts';
import type { Sold } from '../design/schema.ts';
import type { Point } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { holesOf, type LaidHardware } from '../layout/laid.ts';
import { grouped } from '../list/grouped.ts';
import type { Screw } from '../materials/types.ts';
import type { Mm } from '../measure/units.ts';
import { leastFor } from './apart.ts';
import { chooseDrive, type DriveRule, type Place } from './drive.ts';
import { type Driven, noLength, nothingSolid, THREAD_DIAMETERS, unknownFastener } from './driven.ts';
import type { FasteningInput } from './input.ts';
import { type Stack, woodUnder } from './stack.ts';

type Way = Sold['ways'][number];

/**
 * Wood screws from the front are as other screws; what is turned into a thread of the hardware from behind needs one
 * diameter of it (common practice, no source), and ends at its bottom.
 */
const ruleOf = ({ from }: Way, screw: Screw, { shortOfFar, bite }: FasteningInput['settings']): DriveRule =>
  from === 'front'
    ? { lengths: screw.lengths, short: shortOfFar, bite, enough: THREAD_DIAMETERS * screw.diameter }
    : { lengths: screw.lengths, short: 0, bite: screw.diameter, enough: screw.diameter };

/**
 * The screws of hardware, in its holes: by the first of its ways of which a listed length will do, those over as much
 * wood alike. Nothing comes out under the mattress: from behind only the head is there, let in flush.
 *
 * Checks: `fastening.unknown` where a screw is not in the table, `fastening.nothing-solid` at a hole without wood, and
 * `fastening.through` or `fastening.no-brad` where none of its ways has a length.
 */
export function driveHardware(
  { screws, settings }: Pick<FasteningInput, 'screws' | 'settings'>,
  stack: Stack,
  laid: LaidHardware,
): { readonly driven: readonly Driven[]; readonly checks: readonly Check[] } {
  const ways = (laid.spec.sold?.ways ?? []).map((way) => ({
    way,
    screw: screws.find(({ id }) => id === way.screw),
  }));
  const radius = Math.max(0, ...ways.map(({ screw }) => (screw?.diameter ?? 0) / 2));
  const spots = holesOf(laid).map((at) => ({ at, under: woodUnder(stack, at, laid.z0, radius) }));
  const all: Driven[] = [];
  const airy = spots.find(({ under }) => under <= SAME_LENGTH);
  if (airy) all.push(nothingSolid(laid, airy.at));
  const solid = spots.filter(({ under }) => under > SAME_LENGTH);
  for (const group of grouped(solid, ({ under }) => Math.round(under * 1000)).values()) {
    let found: Driven | undefined;
    for (const { way, screw } of ways) {
      const tried = drivenBy(laid, group, way, screw, settings);
      const held = tried.at.length > 0;
      // Where none holds, the best of them says why.
      if (held || !found) found = tried;
      if (held) break;
    }
    if (found) all.push(found);
  }
  return { driven: all.filter(({ at }) => at.length > 0), checks: all.flatMap(({ checks }) => checks) };
}

function drivenBy(
  laid: LaidHardware,
  spots: readonly { readonly at: Point; readonly under: Mm }[],
  way: Way,
  screw: Screw | undefined,
  settings: FasteningInput['settings'],
): Driven {
  if (!screw) return unknownFastener(laid, 'screw', way.screw);
  const { from, into } = way;
  const places = spots.map(
    ({ at, under }): Place => ({ at, through: from === 'front' ? into : under, depth: into + under }),
  );
  const rule = ruleOf(way, screw, settings);
  const drive = chooseDrive(places, rule);
  if (!drive) return noLength(laid, places, rule, 'screw');
  const { apart } = leastFor('screw', screw.diameter);
  const { z0 } = laid;
  const shanks = spots.map(({ at, under }) =>
    from === 'front'
      ? { at, top: z0 + into, tip: z0 + into - drive.length, apart }
      : { at, top: z0 - under + drive.length, tip: z0 - under, apart },
  );
  return { fastener: screw.id, from, ...drive, checks: [], shanks };
}
