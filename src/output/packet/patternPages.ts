import type { DrawItem } from '../../drawing/drawing.ts';
import { circle, crossAt, line, lines, polyline, rectangle, text } from '../../drawing/items.ts';
import { DASH, INK, READ, TEXT, WEIGHT } from '../../drawing/style.ts';
import { fittedSize, shortened, wrapped } from '../../drawing/text.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { under } from '../../list/at.ts';
import { byId } from '../../materials/lookup.ts';
import type { Mm } from '../../measure/units.ts';
import { coverSheets, type Job, jobsOf, MAPS_ON } from '../../patterns/cover.ts';
import type { PatternSet } from '../../patterns/result.ts';
import type { Plan } from '../../plan/types.ts';
import type { PdfPage } from '../pdf/pdf.ts';
import { type Block, entry, heading, paragraph, space } from './flow.ts';
import type { Packet } from './leaf.ts';
import { leavesOf } from './leaves.ts';
import { framed, packetFor } from './packet.ts';

const TERM: Mm = 26;
/** A key map with its words: so many beside each other. */
const PER_ROW = 3;
const GAP: Mm = 6;
const MAP: Mm = 34;
/** Lines of a pattern's note are told in full. */
const LEAD = TEXT.note * 1.35;

/** Two pages that join: apart, with what is cut off, and then the one over the other. */
function taping({ terms, plan }: Packet<Plan>, { x, y }: Point): DrawItem[] {
  const { patternCover: words } = terms;
  const { join } = plan.design.pages;
  const sheet = { stroke: INK.line, width: WEIGHT.middle, fill: INK.paper };
  const trim = { stroke: INK.accent, width: WEIGHT.middle, dash: DASH.trim };
  const [w, h, over] = [34, 26, 7];
  const cross = (p: Point): DrawItem[] => [
    circle(p, 1.3, { stroke: INK.line, width: WEIGHT.thin }),
    lines(crossAt(p, 2.6), { stroke: INK.line, width: WEIGHT.thin }),
  ];
  const page = (left: Mm, name: string, cutLeft: boolean): DrawItem[] => {
    const at = cutLeft ? left + over : left + w - over;
    return [
      rectangle({ x: left, y, w, h }, sheet),
      line({ x: at, y }, { x: at, y: y + h }, trim),
      ...cross({ x: at, y: y + h * 0.28 }),
      ...cross({ x: at, y: y + h * 0.72 }),
      text({ x: left + w / 2 + (cutLeft ? 3 : -3), y: y + h / 2 - 2 }, name, {
        size: TEXT.heading,
        bold: true,
        anchor: 'middle',
      }),
    ];
  };
  const second = x + w + 8;
  const joined = second + w + 22;
  const seam = joined + w - over;
  // Pages edge to edge have lost what is beyond the line on both.
  const waste: Box[] = [
    { x: second, y, w: over, h },
    ...(join === 'butt' ? [{ x: x + w - over, y, w: over, h }] : []),
  ];
  const arrow = second + w + 6;
  const tape = { stroke: INK.soft, width: WEIGHT.thin, fill: INK.tint };
  return [
    ...page(x, '1', false),
    ...page(second, '2', true),
    ...waste.map((box) => rectangle(box, { fill: INK.faint, fillOpacity: 0.5 })),
    polyline(
      [
        { x: arrow, y: y + h / 2 + 3 },
        { x: arrow + 7, y: y + h / 2 },
        { x: arrow, y: y + h / 2 - 3 },
      ],
      true,
      { fill: INK.line },
    ),
    rectangle({ x: joined, y, w: join === 'overlap' ? w : w - over, h }, sheet),
    rectangle({ x: seam, y, w: w - over, h }, sheet),
    ...cross({ x: seam, y: y + h * 0.28 }),
    ...cross({ x: seam, y: y + h * 0.72 }),
    ...[0.12, 0.5, 0.88].map((share) =>
      rectangle({ x: seam - 5, y: y + share * h - 1.6, w: 10, h: 3.2 }, tape),
    ),
    text({ x: joined + 12, y: y + h / 2 - 2 }, '1', { size: TEXT.heading, bold: true, anchor: 'middle' }),
    text({ x: seam + 15, y: y + h / 2 - 2 }, '2', { size: TEXT.heading, bold: true, anchor: 'middle' }),
    text({ x: second, y: y - 4.4 }, words.cutOff, { size: TEXT.note, color: INK.accent }),
    text({ x: joined, y: y - 4.4 }, words.taped, { size: TEXT.note }),
  ];
}

const scaleOf = ({ width, height }: PatternSet, room: Pick<Box, 'w' | 'h'>): number =>
  Math.min(room.w / width, room.h / height);

/** The pages of a pattern as they join, each with its number. */
function keyMap(set: PatternSet, room: Box): DrawItem[] {
  const { pages, height } = set;
  const k = scaleOf(set, room);
  const at = { x: room.x, y: room.y + room.h - k * height };
  return pages.flatMap(({ name, cell }): DrawItem[] => {
    const box = { x: at.x + k * cell.x, y: at.y + k * cell.y, w: k * cell.w, h: k * cell.h };
    const size = fittedSize(name, { size: TEXT.body }, box.w - 1);
    const isRead = size >= READ && box.h > size;
    return [
      rectangle(box, { stroke: INK.line, width: WEIGHT.thin, fill: INK.paper }),
      ...(isRead
        ? [
            text({ x: box.x + box.w / 2, y: box.y + box.h / 2 - size * 0.36 }, name, {
              size,
              anchor: 'middle',
            }),
          ]
        : []),
    ];
  });
}

/**
 * Key maps of patterns, three to a row, each with which pages of the file are its own and how it is used: as high as the
 * room lets all of them be.
 *
 * @param before pages of the file that come before the patterns
 */
function keyMaps(
  packet: Packet<Plan>,
  jobs: readonly Job[],
  { w: width, h }: Pick<Box, 'w' | 'h'>,
  before: number,
): Block[] {
  const { told } = packet;
  const { patternCover: words } = packet.terms;
  const own = (width + GAP) / PER_ROW - GAP;
  const small = { size: TEXT.note };
  const notesOf = ({ sets: [set] }: Job) => wrapped(set?.note ?? '', small, own).filter((row) => row !== '');
  const rows = Array.from({ length: Math.ceil(jobs.length / PER_ROW) }, (_, i) =>
    jobs.slice(i * PER_ROW, (i + 1) * PER_ROW),
  );
  const wordy = (row: readonly Job[]) => 17 + LEAD * Math.max(...row.map((job) => notesOf(job).length));
  const left = h - rows.reduce((sum, row) => sum + wordy(row), 0);
  const high = Math.min(MAP, left / Math.max(1, rows.length));
  const cell = (job: Job) => {
    const { sets, first } = job;
    const [set] = sets;
    const count = sets.reduce((sum, { pages }) => sum + pages.length, 0);
    const notes = notesOf(job);
    const map = set && sets.length === 1 ? scaleOf(set, { w: own, h: high }) * set.height : null;
    const foot = map === null ? 10 : 12 + map;
    const draw = (x: Mm, top: Mm): DrawItem[] => {
      if (!set) return [];
      const title = { size: TEXT.small, bold: true };
      const range = words.pages(first + before, first + before + count - 1);
      const size = map === null ? '' : `, ${told(set.width)} x ${told(set.height)}`;
      return [
        text({ x, y: top - 4 }, shortened(set.title, title, own), title),
        text({ x, y: top - 8 }, shortened(`${range}${size}`, small, own), small),
        ...(map === null ? [] : keyMap(set, { x, y: top - 10 - high, w: own, h: high })),
        ...notes.map((row, i) => text({ x, y: top - foot - (i + 1) * LEAD }, row, small)),
      ];
    };
    return { height: foot + notes.length * LEAD + 5, draw };
  };
  return rows.map((row): Block => {
    const cells = row.map(cell);
    return {
      height: Math.max(...cells.map(({ height }) => height)),
      draw: ({ x, y }) => cells.flatMap(({ draw }, k) => draw(x + k * (own + GAP), y)),
    };
  });
}

/** How patterns are printed, measured, trimmed and taped. */
function howTo(packet: Packet<Plan>, w: Mm): Block[] {
  const { patternCover: words } = packet.terms;
  const { plan } = packet;
  const paper = under(byId(plan.tables.papers), plan.design.pages.paper).name;
  const steps = [
    [words.print, words.printHow(paper)],
    [words.measure, words.measureHow],
    [words.trim, words.trimHow[plan.design.pages.join]],
    [words.tape, words.tapeHow],
    [words.caution, packet.words.patterns.caution],
  ] as const;
  const figure: Block = {
    height: 40,
    draw: ({ x, y }) => taping(packet, { x: x + TERM, y: y - 29 }),
  };
  return [
    ...paragraph(words.lead, w),
    space(2),
    ...steps.flatMap(([term, how]) => entry(term, how, w, TERM)),
    space(2),
    figure,
    heading(words.maps),
  ];
}

/** As many sheets as the shopping list counts (`coverSheets`), each with its share of the key maps. */
function coverOf(packet: Packet<Plan>): PdfPage[] {
  const { patternCover: words } = packet.terms;
  const { plan, body: room } = packet;
  const jobs = jobsOf(plan.patterns);
  const count = coverSheets(plan.patterns);
  const sections = Array.from({ length: count }, (_, i) => {
    const from = i === 0 ? 0 : MAPS_ON.first + (i - 1) * MAPS_ON.further;
    const own = jobs.slice(from, i === 0 ? MAPS_ON.first : from + MAPS_ON.further);
    const above = i === 0 ? howTo(packet, room.w) : [];
    const left = room.h - above.reduce((sum, { height }) => sum + height, 0);
    const blocks = [...above, ...keyMaps(packet, own, { w: room.w, h: left }, count)];
    return { title: words.title, blocks, alone: true };
  });
  const of = count + plan.patterns.reduce((sum, { pages }) => sum + pages.length, 0);
  return leavesOf(sections, packet).map(({ leaf }, i) => ({
    ...framed(packet, leaf, { page: i + 1, of }, []),
    begins: i === 0 ? [words.title] : [],
    label: count === 1 ? words.title : `${words.title} ${i + 1}`,
  }));
}

/** The full-size patterns, behind a cover that tells how they are printed, measured, trimmed and taped. */
export function patternPages(plan: Plan): PdfPage[] {
  const packet = packetFor(plan);
  const pages = plan.patterns.flatMap((set) =>
    set.pages.map(({ drawing }, i) => ({
      width_mm: drawing.width,
      height_mm: drawing.height,
      drawing,
      begins: i === 0 ? [set.title] : [],
      label: drawing.title,
    })),
  );
  return pages.length === 0 ? [] : [...coverOf(packet), ...pages];
}
