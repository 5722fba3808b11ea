import type { Face } from '../bed/face.ts';
import { isBought } from '../design/made.ts';
import { bitFor } from '../fastening/bit.ts';
import type { Fastened } from '../fastening/result.ts';
import { ringsOf, translateRegion } from '../geometry/region.ts';
import type { Point, Region } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { LaidHardware, LaidPart } from '../layout/laid.ts';
import { AXES, otherAxis } from '../layout/span.ts';
import { cyclic } from '../list/at.ts';
import { addTo, type Groups, grouped, groupOf } from '../list/grouped.ts';
import { byId } from '../materials/lookup.ts';
import type { Screw, Tables } from '../materials/types.ts';
import { formatReading } from '../measure/format.ts';
import { isInch, type MeasureStyle } from '../measure/style.ts';
import type { Mm } from '../measure/units.ts';
import type { Drilled, DrillTemplate } from '../patterns/kind/drilling.ts';
import type { PatternRequest } from '../patterns/planPatterns.ts';
import type { PatternWords } from '../patterns/words.ts';

export interface DrillingInput {
  readonly face: Face;
  readonly parts: readonly LaidPart[];
  readonly fastened: readonly Fastened[];
  readonly tables: Pick<Tables, 'hardware' | 'screws'>;
  readonly measure: MeasureStyle;
  readonly words: PatternWords;
  readonly nameOf: (id: string) => string;
}

/** An edge of the wood beneath that is farther from the middle than this is no help to lay a template by. Our own choice. */
const NEAR: Mm = 75;

/** Bits are told in sixty-fourths of an inch, or in millimeters. */
const bitStyle = (measure: MeasureStyle): MeasureStyle =>
  isInch(measure.unit) ? { ...measure, unit: 'in', fraction: '64' } : { ...measure, unit: 'mm' };

/** The holes of one way to be held, told from the middle of the hardware. */
function drilled(
  { at, bite }: Fastened,
  screw: Screw,
  middle: Point,
  measure: MeasureStyle,
  { drilling: words }: PatternWords,
): Drilled {
  const bit = bitFor(screw);
  const [size, deep] = [(mm: Mm) => formatReading(mm, bitStyle(measure)), formatReading(bite, measure)];
  return {
    at: at.map(({ x, y }) => ({ x: x - middle.x, y: y - middle.y })),
    wide: 'through' in bit ? bit.through : bit.hard,
    told:
      'through' in bit ? words.through(size(bit.through)) : words.lead(size(bit.soft), size(bit.hard), deep),
  };
}

/** How far from a point the nearest straight edges are along an axis that pass it, before and behind. */
function edgesAt(region: Region, point: Point, axis: 'x' | 'y'): Mm[] {
  const across = otherAxis(axis);
  const found = ringsOf(region).flatMap((ring) =>
    ring.flatMap((a, i) => {
      const b = cyclic(ring, i + 1);
      const [low, high] = [Math.min(a[across], b[across]), Math.max(a[across], b[across])];
      const passes = low < point[across] - SAME_LENGTH && high > point[across] + SAME_LENGTH;
      return passes && Math.abs(a[axis] - b[axis]) <= SAME_LENGTH ? [a[axis] - point[axis]] : [];
    }),
  );
  const before = Math.max(...found.filter((by) => by < -SAME_LENGTH));
  const behind = Math.min(...found.filter((by) => by > SAME_LENGTH));
  return [before, behind].filter((by) => Math.abs(by) <= NEAR);
}

/** Templates for hardware that is screwed on through holes of its own, one for all that are drilled alike. */
export function drillingRequests(input: DrillingInput): PatternRequest[] {
  const { face, parts, tables, measure, nameOf, words } = input;
  const screws = byId(tables.screws);
  const names = byId(tables.hardware);
  const fastened = grouped(input.fastened, ({ part }) => part);
  const under = new Map([...face.levels, ...parts].map(({ id, region }) => [id, region]));
  const alike: Groups<
    string,
    { laid: LaidHardware; middle: Point; template: Omit<DrillTemplate, 'places'> }
  > = new Map();
  for (const laid of parts.filter((part) => isBought(part))) {
    const { box, on, region, spec } = laid;
    const middle = { x: box.x + box.w / 2, y: box.y + box.h / 2 };
    const holes = groupOf(fastened, laid.id).flatMap((one) => {
      const screw = screws.get(one.fastener ?? '');
      return screw && one.at.length > 0 ? [drilled(one, screw, middle, measure, words)] : [];
    });
    if (holes.length === 0) continue;
    const [x = [], y = []] = AXES.map((axis) => edgesAt(groupOf(under, on), middle, axis));
    const template = {
      name: names.get(spec.sold?.entry ?? '')?.name ?? nameOf(laid.part),
      region: translateRegion(region, -middle.x, -middle.y),
      holes,
      edges: { x, y },
    };
    addTo(alike, keyOf(laid, template), { laid, middle, template });
  }
  const told = (mm: Mm) => formatReading(mm, measure);
  const templates = [...alike.values()].flatMap((all) =>
    all.slice(0, 1).map(({ template }): DrillTemplate => {
      const places = all.map(({ laid, middle: { x, y } }) =>
        words.drilling.place(nameOf(laid.id), told(x), told(y)),
      );
      return { ...template, places };
    }),
  );
  return templates.length > 0 ? [{ kind: 'drilling', templates }] : [];
}

/** What two templates have in common that are the same on paper. */
function keyOf({ box, spec }: LaidHardware, { name, holes, edges }: Omit<DrillTemplate, 'places'>): string {
  const hundredths = (_: string, value: unknown) =>
    typeof value === 'number' ? Math.round(value * 100) : value;
  return JSON.stringify([name, spec.shape, box.w, box.h, holes, edges], hundredths);
}
