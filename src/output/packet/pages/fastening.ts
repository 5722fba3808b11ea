import { isPaint } from '../../../design/made.ts';
import type { DrawItem } from '../../../drawing/drawing.ts';
import { shape, text } from '../../../drawing/items.ts';
import { INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import type { Fastened } from '../../../fastening/result.ts';
import { pathOfRegion } from '../../../geometry/path.ts';
import type { Box } from '../../../geometry/shape.ts';
import { addUp, totalOf } from '../../../list/totals.ts';
import type { Step } from '../../../marks/result.ts';
import { formatReading, formatVolume } from '../../../measure/format.ts';
import type { Mm } from '../../../measure/units.ts';
import { partNames } from '../../../plan/words/words.ts';
import { outlinedFace, solidsInOrder } from '../faceView.ts';
import { type Way, wayOf, waysOf } from '../fastenerMarks.ts';
import { heading, paragraph, space, table } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';
import { bodyOf, turned } from '../sheet.ts';
import { viewOf } from '../view.ts';

const LEGEND: Mm = 6;
const PER_ROW = 3;

/** What a way is called beside its mark. */
function wordsOf({ plan, measure, terms }: Packet, { fastener, length, from, count }: Way): string {
  const known = [...plan.tables.brads, ...plan.tables.screws].find((f) => f.id === fastener);
  const behind = from === 'back' ? `, ${terms.fastening.fromBehind}` : '';
  return `${formatReading(length, measure)}  ${known?.name ?? fastener}${behind}: ${count}`;
}

/** What is fastened at one time: its step in the order of work, and the parts. */
interface Round {
  /** Null for what no step fastens. */
  readonly step: number | null;
  readonly fastened: readonly Fastened[];
  /** Parts that are on the face by then. */
  readonly there: ReadonlySet<string>;
}

/** Steps at which parts are fastened for good. */
const FASTENED_AT: ReadonlySet<Step['act']> = new Set([
  'fix',
  'cut-in-place',
  'assemble',
  'bend',
  'mount-letters',
  'fit-hardware',
]);

/** Every brad and screw at the time when it is driven, in the order of work. */
function roundsOf({ plan }: Packet): Round[] {
  const left = new Map(
    plan.fastening.parts.filter(({ at }) => at.length > 0).map((fastened) => [fastened, fastened.part]),
  );
  const there = new Set(plan.layout.parts.filter(isPaint).map(({ id }) => id));
  const rounds: Round[] = [];
  for (const { number, act, parts } of plan.marks.steps) {
    if (!FASTENED_AT.has(act)) continue;
    for (const part of parts) there.add(part);
    const fastened = [...left].flatMap(([one, part]) => (parts.includes(part) ? [one] : []));
    for (const one of fastened) left.delete(one);
    if (fastened.length > 0) rounds.push({ step: number, fastened, there: new Set(there) });
  }
  const all = new Set(plan.layout.parts.map(({ id }) => id));
  return left.size === 0 ? rounds : [...rounds, { step: null, fastened: [...left.keys()], there: all }];
}

/** Only what is fastened in a round, on the face as it is then. */
function map(
  packet: Packet,
  { step, fastened, there }: Round,
  body: Box,
): { items: DrawItem[]; scale: number } {
  const terms = packet.terms.fastening;
  const { plan } = packet;
  const all = waysOf(plan);
  const counts = new Map<Way, number>();
  for (const part of fastened) {
    const way = wayOf(all, part);
    if (way) addUp(counts, way, part.at.length);
  }
  const ways = all.filter((way) => counts.has(way)).map((way) => ({ ...way, count: totalOf(counts, way) }));
  const rows = Math.ceil(ways.length / PER_ROW);
  const view = viewOf(plan.face.box, body, packet.unit, {
    left: 0,
    right: 0,
    top: 7,
    bottom: rows * LEGEND + 4,
  });
  const marks = fastened.flatMap((part) => {
    const way = wayOf(all, part);
    return way ? part.at.flatMap((p) => way.mark(view.to(p))) : [];
  });
  const legend = ways.flatMap((way, i) => {
    const x = body.x + (i % PER_ROW) * (body.w / PER_ROW);
    const y = body.y + (rows - 1 - Math.floor(i / PER_ROW)) * LEGEND + 2;
    return [
      ...way.mark({ x: x + 2, y: y + 0.9 }),
      text({ x: x + 5, y }, wordsOf(packet, way), { size: TEXT.small }),
    ];
  });
  const own = new Set(fastened.map(({ part }) => part));
  const shown = solidsInOrder(plan).filter(({ part }) => own.has(part));
  const strong = { stroke: INK.line, width: WEIGHT.bold };
  const words = step === null ? terms.map : `${terms.round(step)} ${terms.map}`;
  return {
    items: [
      text({ x: body.x, y: body.y + body.h - 3 }, words, { size: TEXT.small }),
      ...outlinedFace(plan, view, ({ part }) => there.has(part)),
      ...shown.map(({ region }) => shape(pathOfRegion(view.region(region)), strong)),
      ...marks,
      ...legend,
    ],
    scale: view.scale,
  };
}

/** Parts that are fixed alike, told in one row. */
function rows(packet: Packet) {
  const terms = packet.terms.fastening;
  const { plan, measure } = packet;
  const told = (mm: number) => formatReading(mm, measure);
  const alike = new Map<string, { part: Fastened; ids: string[]; count: number; glue: number }>();
  for (const part of plan.fastening.parts) {
    if (part.how === 'none') continue;
    const key = [
      part.how,
      part.fastener,
      part.length,
      part.from,
      part.bite.toFixed(2),
      part.depth.toFixed(2),
    ].join('|');
    const known = alike.get(key) ?? { part, ids: [], count: 0, glue: 0 };
    known.ids.push(part.part);
    known.count += part.at.length;
    known.glue += part.glue;
    alike.set(key, known);
  }
  const ways = waysOf(plan);
  return [...alike.values()].map(({ part, ids, count, glue }) => ({
    swatch: ({ x, y, w, h }: Box) => wayOf(ways, part)?.mark({ x: x + w / 2, y: y + h / 2 }) ?? [],
    cells: [
      partNames(ids, packet.say).join(', '),
      packet.terms.how[part.how],
      part.length !== null ? told(part.length) : part.how === 'screws' ? terms.own : '',
      count === 0 ? '' : String(count),
      count === 0 ? '' : terms[part.from],
      count === 0 || part.length === null ? '' : told(part.bite),
      count === 0 || part.length === null ? '' : told(part.depth),
      glue === 0 ? '' : formatVolume(glue, measure),
    ],
  }));
}

/** Where each brad and screw goes, and which one. */
export function fastening(packet: Packet): Content[] {
  const terms = packet.terms.fastening;
  const { plan, measure } = packet;
  const landscape = plan.face.width > plan.face.height;
  const room = bodyOf(landscape ? turned(packet.sheet) : packet.sheet);
  const body = bodyOf(packet.sheet);
  const figure = (title: string, share: number) => ({ title, share, figure: true });
  const columns = [
    { title: terms.part, share: 6 },
    { title: terms.how, share: 2.2 },
    figure(terms.length, 2),
    figure(terms.count, 1.2),
    { title: terms.from, share: 1.8 },
    figure(terms.bite, 2),
    figure(terms.room, 2.8),
    figure(terms.glue, 2),
  ];
  const names = new Map([...plan.tables.brads, ...plan.tables.screws].map((f) => [f.id, f.name]));
  const total = waysOf(plan).map(({ fastener, length, count, mark }) => ({
    swatch: ({ x, y, w, h }: Box) => mark({ x: x + w / 2, y: y + h / 2 }),
    cells: [names.get(fastener) ?? fastener, formatReading(length, measure), String(count)],
  }));
  const found = rows(packet);
  const blocks = [
    ...paragraph(terms.lead, body.w),
    space(2),
    ...(found.length > 0 ? table(columns, found, body.w) : []),
    space(3),
    ...(total.length > 0 ? [heading(terms.total)] : []),
    ...(total.length > 0
      ? table(
          [{ title: packet.terms.shopping.item, share: 4 }, figure(terms.length, 2), figure(terms.count, 1)],
          total,
          body.w * 0.6,
        )
      : []),
  ];
  return [
    ...roundsOf(packet).map((round) => ({
      title: packet.terms.titles.fastening,
      landscape,
      scale: map(packet, round, room).scale,
      draw: (on: Box) => map(packet, round, on).items,
    })),
    { title: packet.terms.titles.fastening, blocks },
  ];
}
