import type { Edit } from '../../design/edit/edit.ts';
import { replacing } from '../../design/edit/make.ts';
import { type Ends, endAt, endsOf, SQUARE, SQUARE_ENDS, stopsOnlyOf, withEnds } from '../../design/ends.ts';
import type { Axis, Design, Part } from '../../design/schema.ts';
import { boxAround, grownBox } from '../../geometry/box.ts';
import { distance, dot, subtract, unit } from '../../geometry/point.ts';
import { boxesMeet } from '../../geometry/region.ts';
import type { Region } from '../../geometry/shape.ts';
import { ENDS } from '../../joinery/bar.ts';
import type { Laid } from '../../layout/laid.ts';
import { stopped } from '../../layout/place/stop.ts';
import type { OfferedRule } from '../../layout/snap/snapping.ts';
import { pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Shown } from '../document/shown.ts';
import { t } from '../words/t.ts';
import { referenceName } from './sentence.ts';

type End = keyof Ends;

/** A border that runs askew by less than this over the width of a strip is square to it: a rule holds that end. */
const ASKEW: Mm = 0.5;

/**
 * The ends of a strip, or of the strips of a row, as they are meant where they were drawn to a border that a square
 * end cannot follow: an arch, a circle, a slope. Null where none is. An end that was chosen already stays.
 *
 * @param within how far from the border an end may have been drawn
 * @param which the ends that the hand has
 */
export function endsMeant(shown: Shown, id: string, within: Mm, which: readonly End[] = ENDS): Ends | null {
  const part = shown.design.parts.find((one) => one.id === id);
  const own = shown.layout.parts.filter((one) => one.part === id);
  const strips = own.filter((one) => one.kind === 'strip');
  const ends = part && endsOf(part);
  const around = boxAround(own.map(({ box }) => box));
  if (!ends || !around || strips.length < own.length) return null;
  const near = grownBox(around, within);
  const others = shown.layout.parts.filter((other) => other.part !== id && boxesMeet(other.box, near));
  let meant = ends;
  for (const end of which) {
    if (ends[end].cut !== 'square') continue;
    let least = within;
    for (const other of others) {
      const cut = { ...meant, [end]: { cut: 'stop', at: other.id } } as Ends;
      const off = drawnOff(strips, cut, end, other.region, within);
      if (off === null || off > least) continue;
      least = off;
      meant = cut;
    }
  }
  return meant === ends ? null : meant;
}

/**
 * How far from a border an end was drawn, along the strip that came nearest; null where some miss it or end well
 * before it, where it is met nearer to their other ends, and where it is square to all of them.
 */
function drawnOff(
  strips: readonly Laid<'strip'>[],
  ends: Ends,
  end: End,
  border: Region,
  within: Mm,
): Mm | null {
  let least: Mm = Number.POSITIVE_INFINITY;
  let askew = false;
  for (const strip of strips) {
    const places = placesMet(strip, ends, end, border);
    if (!places) return null;
    const [nearest, farthest] = [Math.min(...places), Math.max(...places)];
    if (nearest > within || nearest < -distance(strip.leg.start, strip.leg.end) / 2) return null;
    askew ||= farthest - nearest >= ASKEW;
    least = Math.min(
      least,
      ...places.map(Math.abs),
      Math.abs(pick(places, 0) + pick(places, places.length - 1)) / 2,
    );
  }
  return askew ? least : null;
}

/** How far beyond its end a strip meets a border, at each corner of the cut; null where not all of its width does. */
function placesMet(strip: Laid<'strip'>, ends: Ends, end: End, border: Region): readonly Mm[] | null {
  const stop = ends[end];
  if (stop.cut !== 'stop') return null;
  const alone = { ...SQUARE_ENDS, [end]: stop } as Ends;
  const cut = stopped({ ...strip, spec: { ...strip.spec, ends: alone } }, new Map([[stop.at, border]])).laid;
  const { start, end: last } = strip.leg;
  const outward = end === 'end' ? unit(subtract(last, start)) : unit(subtract(start, last));
  return cut.stops?.[end]?.line.map((p) => dot(subtract(p, strip.leg[end]), outward)) ?? null;
}

/** The rules but for those that hold an end of a strip which now stops by itself; a row keeps the room that it has. */
export const rulesBeside = (part: Part, ends: Ends, rules: readonly OfferedRule[]): OfferedRule[] =>
  rules.filter((rule) => {
    if (part.kind !== 'strip' || rule.kind !== 'set' || rule.edge.of !== part.id || rule.edge.side === 'mid')
      return true;
    const end = endAt(part, rule.axis, rule.edge.side);
    return end === null || ends[end].cut !== 'stop';
  });

/** The edits by which an end that is pulled at a side of its strip's box stops at nothing any more. */
export function editsToUnstop(design: Design, id: string, axis: Axis, side: 'low' | 'high'): Edit[] {
  const part = design.parts.find((one) => one.id === id);
  const ends = part && endsOf(part);
  const end = part && endAt(part, axis, side);
  if (!ends || !end || ends[end].cut !== 'stop') return [];
  const item = withEnds(part, { ...ends, [end]: SQUARE });
  return [replacing('parts', item)];
}

/** A sentence for each thing that ends of a part stop at in one design and not in the other. */
export function stopsTold(before: Design, after: Design): string[] {
  const then = new Map(before.parts.map((part) => [part.id, part]));
  return after.parts.flatMap((part) => {
    const was = then.get(part.id);
    if (was === part) return [];
    const { name } = part;
    const lost = was ? stopsOnlyOf(was, part) : [];
    return [
      ...lost.map((at) => t('say.endLetGo', { name, at: referenceName(before, at) })),
      ...stopsOnlyOf(part, was).map((at) => t('say.endsAt', { name, at: referenceName(after, at) })),
    ];
  });
}
