import type { Strip } from '../../design/schema.ts';
import { grownBox } from '../../geometry/box.ts';
import { distance, dot, midpoint, subtract, unit } from '../../geometry/point.ts';
import { boxesMeet } from '../../geometry/region.ts';
import type { Point } from '../../geometry/shape.ts';
import type { Laid } from '../../layout/laid.ts';
import { stopped } from '../../layout/place/stop.ts';
import { pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Shown } from '../document/shown.ts';

type Ends = Strip['ends'];
type End = keyof Ends;

/** A border that runs askew by less than this over the width of a strip is square to it: a rule holds that end. */
const ASKEW: Mm = 0.5;

/**
 * The ends of a strip as they are meant where it was drawn to a border that a square end cannot follow: an arch, a
 * circle, a slope. Null where none is. An end that was chosen already stays.
 *
 * @param within how far from the border an end may have been drawn
 */
export function endsMeant(shown: Shown, id: string, within: Mm): Ends | null {
  const part = shown.design.parts.find((one) => one.id === id);
  const laid = shown.layout.parts.find((one) => one.id === id);
  if (part?.kind !== 'strip' || laid?.kind !== 'strip') return null;
  const near = grownBox(laid.box, within);
  const others = shown.layout.parts.filter((other) => other.part !== id && boxesMeet(other.box, near));
  let ends: Ends = part.ends;
  for (const end of ['start', 'end'] as const) {
    if (ends[end].cut !== 'square') continue;
    let least = within;
    for (const other of others) {
      const cut = { ...ends, [end]: { cut: 'stop', at: other.id } } as Ends;
      const off = drawnOff(laid, cut, end, other.region);
      if (off === null || off > least) continue;
      least = off;
      ends = cut;
    }
  }
  return ends === part.ends ? null : ends;
}

/** How far from a border an end was drawn, along the strip; null where the border is square to it or not met. */
function drawnOff(laid: Laid<'strip'>, ends: Ends, end: End, border: Laid<'strip'>['region']): Mm | null {
  const stop = ends[end];
  if (stop.cut !== 'stop') return null;
  const alone = { start: { cut: 'square' }, end: { cut: 'square' }, [end]: stop } as Ends;
  const cut = stopped({ ...laid, spec: { ...laid.spec, ends: alone } }, new Map([[stop.at, border]])).laid;
  const line = cut.stops?.[end]?.line;
  if (!line) return null;
  const along = unit(subtract(laid.leg.end, laid.leg.start));
  const places = line.map((p) => dot(subtract(p, laid.leg[end]), along));
  if (Math.max(...places) - Math.min(...places) < ASKEW) return null;
  return Math.min(...places.map(Math.abs), distance(middleOf(line), laid.leg[end]));
}

const middleOf = (line: readonly Point[]): Point => midpoint(pick(line, 0), pick(line, line.length - 1));
