import type { DrawItem } from '../../../drawing/drawing.ts';
import { line, lines, polyline, text } from '../../../drawing/items.ts';
import { DASH, INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import type { Box, Point } from '../../../geometry/shape.ts';
import { pick } from '../../../list/at.ts';
import { grouped } from '../../../list/grouped.ts';
import { formatMoment } from '../../../measure/format.ts';
import { isInch } from '../../../measure/style.ts';
import { GRAVITY, inches, KG_PER_POUND, type Kg, type Mm } from '../../../measure/units.ts';
import { partNames } from '../../../plan/words/words.ts';
import { type Block, entry, heading, paragraph, space, table } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';

/** Moment of a pound of force at a foot. */
const NEWTON_METERS_PER_FOOT_POUND = (KG_PER_POUND * GRAVITY * inches(12)) / 1000;

/** Height of the chart. */
const CURVE: Mm = 70;

/** A round step that divides `most` into four to eight. */
function stepOf(most: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(most, 1e-9)));
  return [0.2, 0.5, 1, 2].map((s) => s * power).find((s) => most / s <= 8) ?? 2 * power;
}

/** Moment against angle: one line with the face, one for the bare bed, told apart by dashes. */
function curve(packet: Packet, box: Box): DrawItem[] {
  const terms = packet.terms.load;
  const { plan, measure } = packet;
  const points = plan.load.curve;
  // The grid is round in the unit that is read.
  const unit = isInch(measure.unit) ? NEWTON_METERS_PER_FOOT_POUND : 1;
  const whole = points.map((p) => ({ angle: p.angle, moment: (p.added + p.bare) / unit }));
  const bare = points.map((p) => ({ angle: p.angle, moment: p.bare / unit }));
  const all = [...whole, ...bare].map((p) => p.moment);
  const step = stepOf(Math.max(...all.map(Math.abs), 1));
  const low = Math.floor(Math.min(0, ...all) / step) * step;
  const high = Math.max(low + step, Math.ceil(Math.max(0, ...all) / step) * step);
  const plot = { x: box.x + 24, y: box.y + 10, w: box.w - 60, h: box.h - 16 };
  const to = (angle: number, moment: number): Point => ({
    x: plot.x + (angle / 90) * plot.w,
    y: plot.y + ((moment - low) / (high - low)) * plot.h,
  });
  const hair = { stroke: INK.faint, width: WEIGHT.hair };
  const items: DrawItem[] = [];
  for (let i = 0; low + i * step <= high + step / 1000; i++) {
    const moment = low + i * step;
    items.push(line(to(0, moment), to(90, moment), hair));
    const at = to(0, moment);
    const words = formatMoment(moment * unit, measure);
    items.push(text({ x: at.x - 1.6, y: at.y - 0.8 }, words, { size: TEXT.note, anchor: 'end' }));
  }
  for (let angle = 0; angle <= 90; angle += 15) {
    items.push(line(to(angle, low), to(angle, high), hair));
    const at = to(angle, low);
    items.push(
      text({ x: at.x, y: at.y - 4 }, packet.say.angle(angle), { size: TEXT.note, anchor: 'middle' }),
    );
  }
  items.push(lines([[to(0, 0), to(90, 0)]], { stroke: INK.line, width: WEIGHT.thin }));
  const drawn = [
    { row: whole, words: terms.curveAdded, dash: undefined },
    { row: bare, words: terms.curveBare, dash: DASH.hidden },
  ];
  const ends = drawn.map(({ row }) => to(90, pick(row, row.length - 1).moment).y);
  // Words at the lines' ends, parted where the lines end too near to each other.
  const near = Math.abs(pick(ends, 0) - pick(ends, 1)) < 4;
  drawn.forEach(({ row, words, dash }, i) => {
    const path = row.map((p) => to(p.angle, p.moment));
    items.push(polyline(path, false, { stroke: INK.line, width: WEIGHT.bold, ...(dash ? { dash } : {}) }));
    const upper = pick(ends, i) >= pick(ends, 1 - i) && i === 0;
    const shift = near ? (upper ? 2 : -2) : 0;
    items.push(
      text({ x: plot.x + plot.w + 1.6, y: pick(ends, i) - 0.9 + shift }, words, { size: TEXT.small }),
    );
  });
  return items;
}

/** So many of the heaviest parts are told one by one. */
const HEAVIEST = 15;

const massOf = (all: readonly { readonly mass: Kg }[]): Kg => all.reduce((sum, { mass }) => sum + mass, 0);

/** Weights, the heaviest first, members of one array added up. */
function massesByPart(packet: Packet): { name: string; mass: number }[] {
  const { plan } = packet;
  const baseOf = new Map(plan.layout.parts.map((p) => [p.id, p.part]));
  const groups = grouped(plan.load.byPart, ({ part }) => baseOf.get(part) ?? part);
  return [...groups.values()]
    .map((own) => {
      const ids = own.map(({ part }) => part);
      return { name: partNames(ids, packet.say).join(', '), mass: massOf(own) };
    })
    .sort((a, b) => b.mass - a.mass || (a.name < b.name ? -1 : 1));
}

/** A list in two columns, read down the left one first. */
function inTwo<T>(list: readonly T[]): T[][] {
  const half = Math.ceil(list.length / 2);
  return list.slice(0, half).map((first, i) => [first, ...list.slice(half + i, half + i + 1)]);
}

/** Estimates of weight and lift, and the moment through the swing. */
export function load(packet: Packet): Content[] {
  const terms = packet.terms.load;
  const { plan, say, measure, told, body } = packet;
  const { center } = plan.load;
  const limits = plan.design.load;
  const figures: [string, string][] = [
    [terms.added, say.mass(plan.load.added)],
    [terms.bare, say.mass(plan.load.bare)],
    [terms.center, terms.centerAt(told(center.x), told(center.y), say.fromRim(center.z))],
    [terms.moment, formatMoment(plan.load.moment, measure)],
    [terms.lift, say.force(plan.load.liftAdded)],
    [terms.liftBare, say.force(plan.load.liftBare)],
    [terms.limits, terms.limitsAt(say.mass(limits.warnAdded_kg), say.force(limits.warnLift_n))],
  ];
  const chart: Block = {
    height: CURVE,
    draw: (at, w) => curve(packet, { x: at.x, y: at.y - CURVE, w, h: CURVE }),
  };
  const all = massesByPart(packet);
  const lighter = all.slice(HEAVIEST);
  const masses = [
    ...all.slice(0, HEAVIEST),
    ...(lighter.length === 0 ? [] : [{ name: terms.others(lighter.length), mass: massOf(lighter) }]),
  ];
  const blocks = [
    heading(terms.figures),
    ...figures.flatMap(([term, words]) => entry(term, words, body.w, 74)),
    space(2),
    ...paragraph(terms.caution, body.w),
    space(2),
    heading(terms.curve),
    chart,
    space(2),
    ...(masses.length === 0
      ? []
      : [
          heading(terms.byPart),
          ...table(
            [0, 1].flatMap(() => [
              { title: terms.part, share: 5 },
              { title: terms.mass, share: 2, figure: true },
            ]),
            inTwo(masses).map((pair) => ({
              cells: pair.flatMap(({ name, mass }) => [name, say.mass(mass)]),
            })),
            body.w,
          ),
        ]),
  ];
  return [{ title: packet.terms.titles.load, blocks }];
}
