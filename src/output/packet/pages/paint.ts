import type { DrawItem } from '../../../drawing/drawing.ts';
import { HATCHINGS, type Hatching, hatch } from '../../../drawing/hatch.ts';
import { circle, rectangle, shape, text } from '../../../drawing/items.ts';
import { INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import { textWidth, wrapped } from '../../../drawing/text.ts';
import { looksOfFinish } from '../../../finish/look.ts';
import type { FinishUse } from '../../../finish/result.ts';
import { pathOfRegion } from '../../../geometry/path.ts';
import { areaOf, containsPointInRegion, regionOfBox } from '../../../geometry/region.ts';
import type { Box, Point, Region } from '../../../geometry/shape.ts';
import { UNDER_EDGE } from '../../../lettering/painted.ts';
import { cyclic, pick } from '../../../list/at.ts';
import { formatCovered, formatFar, formatLength, formatRate, formatVolume } from '../../../measure/format.ts';
import { partNames } from '../../../plan/words/words.ts';
import { labelBox } from '../faceView.ts';
import { type Block, type ColumnOf, entry, heading, paragraph, space, tableOf } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';
import { type Drawn, type Figure, type Stand, standOf, together } from '../together.ts';
import { type PageView, viewOf } from '../view.ts';

const LEGEND = 9;
/** From one line of a note to the next. */
const LEAD = 4;
/** More colors than this in one swatch cannot be told apart. */
const MOST_LOOKS = 4;

/** Finishes that show, in the order of the design, each with its hatching; bare wood comes last. */
function finishesShown({ plan }: Packet): (string | null)[] {
  const shown = new Set(plan.finish.shown.map((s) => s.finish));
  const own = plan.design.finishes.map((f) => f.id).filter((id) => shown.has(id));
  return shown.has(null) ? [...own, null] : own;
}

const hatchingOf = (i: number): Hatching | null => cyclic(HATCHINGS, i + 1);

/** Bare wood is left white in the map. */
const patternOf = (finish: string | null, i: number): Hatching | null =>
  finish === null ? null : hatchingOf(i);

/** Mixed with white, so that hatching and figures stay readable on it. */
function pale(color: string): string {
  const channel = (at: number) => {
    const value = Number.parseInt(color.slice(at, at + 2), 16);
    return Math.round(value + (255 - value) * 0.62)
      .toString(16)
      .padStart(2, '0');
  };
  return `#${channel(1)}${channel(3)}${channel(5)}`;
}

/** A place inside the region for its number: the middle of its box, or of its largest part's box. */
function numberPlace(region: Region): Point | null {
  const box = labelBox(region);
  if (!box) return null;
  const tries = [0.5, 0.25, 0.75, 0.12, 0.88].flatMap((u) =>
    [0.5, 0.25, 0.75, 0.12, 0.88].map((v) => ({ x: box.x + u * box.w, y: box.y + v * box.h })),
  );
  return tries.find((p) => containsPointInRegion(region, p)) ?? null;
}

function numbered(at: Point, number: string): DrawItem[] {
  const size = TEXT.note;
  return [
    circle(at, 2.3, { fill: INK.paper, stroke: INK.line, width: WEIGHT.thin }),
    text({ x: at.x, y: at.y - size * 0.36 }, number, { size, anchor: 'middle', bold: true }),
  ];
}

/** Every surface that shows, in its finish. */
function map(packet: Packet, body: Box, least: Stand): Figure {
  const terms = packet.terms.paint;
  const { plan, say } = packet;
  const finishes = finishesShown(packet);
  const small = { size: TEXT.small };
  const named = finishes.map((finish, i) =>
    finish === null ? terms.bare : `${i + 1}  ${say.finish(finish)}`,
  );
  const widest = Math.max(0, ...named.map((words) => textWidth(words, small)));
  const perRow = Math.max(1, Math.floor(body.w / (widest + 18)));
  const rows = Math.ceil(finishes.length / perRow);
  const notes = notesIn(terms.map, body);
  const stand = standOf({ top: notes.length * LEAD + 2, bottom: rows * LEGEND + 4 }, least);
  const view = viewOf(plan.face.box, body, packet.unit, { left: 0, right: 0, ...stand });
  return { scale: view.scale, stand, draw: () => drawnMap(packet, body, view, { named, perRow, notes }) };
}

/** What stands around the map of finishes. */
interface Around {
  readonly named: readonly string[];
  readonly perRow: number;
  readonly notes: readonly DrawItem[];
}

function drawnMap(packet: Packet, body: Box, view: PageView, { named, perRow, notes }: Around): DrawItem[] {
  const { plan } = packet;
  const finishes = finishesShown(packet);
  const rows = Math.ceil(finishes.length / perRow);
  const areas = plan.finish.shown.map((s) => ({ ...s, region: view.region(s.region) }));
  const fills = areas.map((s) =>
    shape(pathOfRegion(s.region), {
      fill: s.finish === null || s.look === null ? INK.paper : pale(s.look),
      fillRule: 'evenodd',
      stroke: INK.line,
      width: WEIGHT.thin,
    }),
  );
  const hatches = areas.flatMap((s) => hatch(s.region, patternOf(s.finish, finishes.indexOf(s.finish))));
  const taken: Point[] = [];
  const numbers = [...areas]
    .filter((s) => s.finish !== null && areaOf(s.region) > 25)
    .sort((a, b) => areaOf(b.region) - areaOf(a.region))
    .flatMap((s) => {
      const at = numberPlace(s.region);
      if (!at || taken.some((p) => Math.hypot(p.x - at.x, p.y - at.y) < 5)) return [];
      taken.push(at);
      return numbered(at, String(finishes.indexOf(s.finish) + 1));
    });
  const legend = finishes.flatMap((finish, i) => {
    const w = body.w / perRow;
    const at = { x: body.x + (i % perRow) * w, y: body.y + (rows - 1 - Math.floor(i / perRow)) * LEGEND };
    const box = { x: at.x, y: at.y, w: 12, h: 6 };
    return [
      ...swatch(packet, finish, i)(box),
      text({ x: at.x + 14, y: at.y + 2 }, pick(named, i), { size: TEXT.small }),
    ];
  });
  const border = rectangle(view.box, { stroke: INK.line, width: WEIGHT.bold });
  return [...notes, ...fills, ...hatches, ...numbers, border, ...legend];
}

/** A note over a map, from the top of its room. */
const notesIn = (words: string, body: Box): DrawItem[] =>
  wrapped(words, { size: TEXT.small }, body.w).map((row, i) =>
    text({ x: body.x, y: body.y + body.h - 3 - i * LEAD }, row, { size: TEXT.small }),
  );

/** Where surfaces that are painted first stay bare for glue: hatched, over the outlines of all parts. */
function bareMap({ terms, plan, measure, unit }: Packet, body: Box, least: Stand): Figure {
  const notes = notesIn(`${terms.paint.bareMap} ${formatLength(UNDER_EDGE, measure)}.`, body);
  const stand = standOf({ top: notes.length * LEAD + 2, bottom: 4 }, least);
  const view = viewOf(plan.face.box, body, unit, { left: 0, right: 0, ...stand });
  const draw = (): DrawItem[] => {
    const outlines = plan.joinery.solids.map(({ region }) =>
      shape(pathOfRegion(view.region(region)), { stroke: INK.line, width: WEIGHT.thin }),
    );
    const bare = plan.finish.bare.map(({ region }) => view.region(region));
    const fills = bare.flatMap((region) => [
      shape(pathOfRegion(region), {
        fill: INK.paper,
        fillRule: 'evenodd',
        stroke: INK.line,
        width: WEIGHT.thin,
      }),
      ...hatch(region, hatchingOf(0)),
    ]);
    const border = rectangle(view.box, { stroke: INK.line, width: WEIGHT.bold });
    return [...notes, ...fills, ...outlines, border];
  };
  return { scale: view.scale, stand, draw };
}

/** Color and hatching of a finish, as on the map; side by side what it looks like on different woods. */
const swatch =
  ({ plan }: Packet, finish: string | null, i: number) =>
  (box: Box): DrawItem[] => {
    const looks = finish === null ? [] : looksOfFinish(plan.finish.shown, finish).slice(0, MOST_LOOKS);
    const w = box.w / Math.max(1, looks.length);
    return [
      ...looks.map((look, k) => rectangle({ ...box, x: box.x + k * w, w }, { fill: pale(look) })),
      rectangle(box, { stroke: INK.line, width: WEIGHT.thin }),
      ...hatch(regionOfBox(box), patternOf(finish, i)),
    ];
  };

function uses(packet: Packet, width: number): Block[] {
  const terms = packet.terms.paint;
  const { plan, say, measure } = packet;
  const finishes = finishesShown(packet);
  const area = (m2: number) => (m2 === 0 ? '' : formatCovered(m2, measure));
  const volume = (l: number) => (l === 0 ? '' : formatVolume(l, measure));
  const containers = new Map(plan.tables.containers.map((c) => [c.id, c.name]));
  const finishOf = ({ finish }: FinishUse) => plan.design.finishes.find(({ id }) => id === finish);
  const named = (use: FinishUse) => {
    const i = finishes.indexOf(use.finish);
    const finish = finishOf(use);
    const kind = finish ? ` (${terms.kind[finish.kind]}, ${terms.sheen[finish.sheen]})` : '';
    return `${i < 0 ? '' : `${i + 1}  `}${say.finish(use.finish)}${kind}`;
  };
  const rate = (use: FinishUse) => {
    const finish = finishOf(use);
    return finish ? formatRate(finish.rate_m2_l, measure) : '';
  };
  const columns: ColumnOf<FinishUse>[] = [
    [terms.finish, 4.9, named],
    [terms.face, 2.6, ({ face }) => area(face), 'figure'],
    [terms.edge, 2.6, ({ edge }) => area(edge), 'figure'],
    [terms.painted, 2.6, ({ painted: { face, edge, back } }) => area(face + edge + back), 'figure'],
    [terms.coats, 2.1, ({ coats }) => String(coats), 'figure'],
    [terms.rate, 2.9, rate, 'figure'],
    [terms.need, 2.5, (use) => volume(use.volume), 'figure'],
    [terms.primer, 2.4, ({ primer }) => volume(primer), 'figure'],
    [
      terms.buy,
      3.4,
      ({ buy }) => buy.map((b) => `${b.count} x ${containers.get(b.container) ?? b.container}`).join(', '),
    ],
    [terms.left, 2.3, ({ left }) => volume(left), 'figure'],
    [terms.tape, 2.7, ({ tape }) => (tape === 0 ? '' : formatFar(tape, measure)), 'figure'],
  ];
  return tableOf(columns, plan.finish.uses, width, ({ finish }) => {
    const i = finishes.indexOf(finish);
    return i < 0 ? {} : { swatch: swatch(packet, finish, i) };
  });
}

/** Which color goes where, how much of each, and what is painted before it is fixed. */
export function paint(packet: Packet): Content[] {
  const terms = packet.terms.paint;
  const { plan, words, body } = packet;
  const { finish } = plan;
  const names = (ids: readonly string[]) => words.list(partNames(ids, packet.say)) || terms.nothing;
  const cost = finish.uses.reduce((sum, u) => sum + u.cost, 0);
  const blocks = [
    ...(finish.uses.length > 0
      ? [...uses(packet, body.w), space(2), ...paragraph(terms.paintedNote, body.w)]
      : paragraph(terms.none, body.w)),
    space(2),
    ...entry(terms.cost, packet.money(cost), body.w, 38),
    space(2),
    heading(packet.terms.titles.steps),
    ...entry(terms.before, names(finish.before), body.w, 38),
    ...entry(terms.after, names(finish.after), body.w, 38),
  ];
  const { paint: title } = packet.terms.titles;
  const bare = finish.bare.length === 0 ? [] : [bareMap];
  const maps = [map, ...bare].map(
    (one): Drawn =>
      (room, least) =>
        one(packet, room, least),
  );
  return [...together(packet, title, maps), { title, blocks }];
}
