import { isPaint } from '../../../design/made.ts';
import type { DrawItem } from '../../../drawing/drawing.ts';
import { crossAt, lines, shape, text } from '../../../drawing/items.ts';
import { INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import { textWidth, wrapped } from '../../../drawing/text.ts';
import type { Fastened } from '../../../fastening/result.ts';
import { pathOfRegion } from '../../../geometry/path.ts';
import { boxOf } from '../../../geometry/region.ts';
import type { Box, Point } from '../../../geometry/shape.ts';
import { grouped } from '../../../list/grouped.ts';
import { addUp, totalOf } from '../../../list/totals.ts';
import type { Step } from '../../../marks/result.ts';
import { formatVolume } from '../../../measure/format.ts';
import type { Mm } from '../../../measure/units.ts';
import type { Plan } from '../../../plan/types.ts';
import { partNames } from '../../../plan/words/words.ts';
import { outlinedFace, solidsInOrder } from '../faceView.ts';
import { type Way, wayOf, waysOf } from '../fastenerMarks.ts';
import { heading, paragraph, space, tableOf } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';
import { type Drawn, type Figure, standOf, together } from '../together.ts';
import { viewOf } from '../view.ts';

const LEGEND: Mm = 6;
/** Of a mark beside its words, and white up to the next. */
const BESIDE: Mm = 9;
/** From one line of a note to the next. */
const LEAD: Mm = 4;

/** What a way is called beside its mark. */
function wordsOf({ plan, told, terms }: Packet<Plan>, { fastener, length, from, count }: Way): string {
  const known = [...plan.tables.brads, ...plan.tables.screws].find((f) => f.id === fastener);
  const behind = from === 'back' ? `, ${terms.fastening.fromBehind}` : '';
  return `${told(length)}  ${known?.name ?? fastener}${behind}: ${count}`;
}

/** What is fastened at one time: its step in the order of work, and the parts. */
interface Round {
  /** Null for what no step fastens. */
  readonly step: number | null;
  /** Hardware among it comes with its own screws: only its place is known. */
  readonly fastened: readonly Fastened[];
  /** Parts that are on the face by then. */
  readonly there: ReadonlySet<string>;
}

/** Steps at which parts are fastened for good. */
const FASTENED_AT: ReadonlySet<Step['act']> = new Set([
  'fix',
  'measure-in-place',
  'assemble',
  'bend',
  'mount-letters',
  'fit-hardware',
]);

const hasOwnScrews = ({ how, at }: Fastened): boolean => how === 'screws' && at.length === 0;

/** Every brad and screw at the time when it is driven, in the order of work. */
function roundsOf({ plan }: Packet<Plan>): Round[] {
  const left = new Map(
    plan.fastening.parts
      .filter((fastened) => fastened.at.length > 0 || hasOwnScrews(fastened))
      .map((fastened) => [fastened, fastened.part]),
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

/** Half of the lines that cross in the middle of hardware. */
const CENTER: Mm = 4;

const centerMark = (at: Point, half: Mm): DrawItem[] => [
  lines(crossAt(at, half), { stroke: INK.line, width: WEIGHT.thin }),
];

/** Only what is fastened in a round, on the face as it is then. */
function map(
  packet: Packet<Plan>,
  { step, fastened, there }: Round,
  [body, least]: Parameters<Drawn>,
): Figure {
  const terms = packet.terms.fastening;
  const { plan } = packet;
  const all = waysOf(plan);
  const counts = new Map<Way, number>();
  for (const part of fastened) {
    const way = wayOf(all, part);
    if (way) addUp(counts, way, part.at.length);
  }
  const small = { size: TEXT.small };
  const byOwn = fastened.filter(hasOwnScrews).map(({ part }) => part);
  const ways = [
    ...all
      .filter((way) => counts.has(way))
      .map((way) => ({ mark: way.mark, words: wordsOf(packet, { ...way, count: totalOf(counts, way) }) })),
    ...partNames(byOwn, packet.say).map((name) => ({
      mark: (p: Point) => centerMark(p, 1.6),
      words: terms.byOwn(name),
    })),
  ];
  const widest = Math.max(0, ...ways.map(({ words }) => textWidth(words, small)));
  const perRow = Math.max(1, Math.floor(body.w / (widest + BESIDE)));
  const rows = Math.ceil(ways.length / perRow);
  const notes = wrapped(step === null ? terms.map : `${terms.round(step)} ${terms.map}`, small, body.w);
  const stand = standOf({ top: notes.length * LEAD + 3, bottom: rows * LEGEND + 4 }, least);
  const view = viewOf(plan.face.box, body, packet.unit, { left: 0, right: 0, ...stand });
  const draw = (): DrawItem[] => {
    const marks = fastened.flatMap((part) => {
      const way = wayOf(all, part);
      return way ? part.at.flatMap((p) => way.mark(view.to(p))) : [];
    });
    const legend = ways.flatMap(({ mark, words }, i) => {
      const x = body.x + (i % perRow) * (body.w / perRow);
      const y = body.y + (rows - 1 - Math.floor(i / perRow)) * LEGEND + 2;
      return [...mark({ x: x + 2, y: y + 0.9 }), text({ x: x + 5, y }, words, small)];
    });
    const own = new Set(fastened.map(({ part }) => part));
    const shown = solidsInOrder(plan).filter(({ part }) => own.has(part));
    const centers = shown.flatMap(({ part, region }) => {
      const box = byOwn.includes(part) ? boxOf(region) : null;
      return box ? centerMark(view.to({ x: box.x + box.w / 2, y: box.y + box.h / 2 }), CENTER) : [];
    });
    const strong = { stroke: INK.line, width: WEIGHT.bold };
    return [
      ...notes.map((row, i) => text({ x: body.x, y: body.y + body.h - 3 - i * LEAD }, row, small)),
      ...outlinedFace(plan, view, ({ part }) => there.has(part)),
      ...shown.map(({ region }) => shape(pathOfRegion(view.region(region)), strong)),
      ...marks,
      ...centers,
      ...legend,
    ];
  };
  return { scale: view.scale, stand, draw };
}

/** Parts that are fixed alike, told in one row. */
function fixedAlike({ plan, say }: Packet<Plan>) {
  const alike = grouped(
    plan.fastening.parts.filter(({ how }) => how !== 'none'),
    ({ how, fastener, length, from, bite, depth }) =>
      [how, fastener, length, from, bite.toFixed(2), depth.toFixed(2)].join('|'),
  );
  return [...alike.values()].map((all) => ({
    first: all[0],
    names: partNames(
      all.map(({ part }) => part),
      say,
    ),
    count: all.reduce((sum, { at }) => sum + at.length, 0),
    glue: all.reduce((sum, { glue }) => sum + glue, 0),
  }));
}

/** The middle of a row's swatch, where its mark stands. */
const middleOf = ({ x, y, w, h }: Box): Point => ({ x: x + w / 2, y: y + h / 2 });

/** Where each brad and screw goes, and which one. */
export function fastening(packet: Packet<Plan>): Content[] {
  const terms = packet.terms.fastening;
  const { plan, measure, told, body } = packet;
  const names = new Map([...plan.tables.brads, ...plan.tables.screws].map((f) => [f.id, f.name]));
  const ways = waysOf(plan);
  const lengthOf = ({ length, how }: Fastened) =>
    length !== null ? told(length) : how === 'screws' ? terms.own : '';
  /** A figure of those that are driven, of a length that is known. */
  const driven =
    (of: (fastened: Fastened) => Mm) =>
    ({ first, count }: { first: Fastened; count: number }) =>
      count === 0 || first.length === null ? '' : told(of(first));
  const rows = tableOf(
    [
      [terms.part, 6, ({ names }) => names.join(', ')],
      [terms.how, 2.2, ({ first }) => packet.terms.how[first.how]],
      [terms.length, 2, ({ first }) => lengthOf(first), 'figure'],
      [terms.count, 1.2, ({ count }) => (count === 0 ? '' : String(count)), 'figure'],
      [terms.from, 1.8, ({ first, count }) => (count === 0 ? '' : terms[first.from])],
      [terms.bite, 2, driven(({ bite }) => bite), 'figure'],
      [terms.room, 2.8, driven(({ depth }) => depth), 'figure'],
      [terms.glue, 2, ({ glue }) => (glue === 0 ? '' : formatVolume(glue, measure)), 'figure'],
    ],
    fixedAlike(packet),
    body.w,
    ({ first }) => ({ swatch: (box) => wayOf(ways, first)?.mark(middleOf(box)) ?? [] }),
  );
  const total = tableOf(
    [
      [packet.terms.shopping.item, 4, ({ fastener }) => names.get(fastener) ?? fastener],
      [terms.length, 2, ({ length }) => told(length), 'figure'],
      [terms.count, 1, ({ count }) => String(count), 'figure'],
    ],
    ways,
    body.w * 0.6,
    ({ mark }) => ({ swatch: (box) => mark(middleOf(box)) }),
  );
  const blocks = [
    ...paragraph(terms.lead, body.w),
    space(2),
    ...rows,
    space(3),
    ...(total.length > 0 ? [heading(terms.total), ...total] : []),
  ];
  return [
    ...together(
      packet,
      packet.terms.titles.fastening,
      roundsOf(packet).map(
        (round): Drawn =>
          (...where) =>
            map(packet, round, where),
      ),
    ),
    { title: packet.terms.titles.fastening, blocks },
  ];
}
