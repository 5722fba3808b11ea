import { layer, line, lines, moved, polyline, rectangle, text } from '../../drawing/items.ts';
import { spreadOut } from '../../drawing/spread.ts';
import { INK, PATTERN_TEXT, WEIGHT } from '../../drawing/style.ts';
import { wrapped } from '../../drawing/text.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { lastOf, pick } from '../../list/at.ts';
import { formatLength } from '../../measure/format.ts';
import type { MeasureStyle } from '../../measure/style.ts';
import type { Mm } from '../../measure/units.ts';
import type { PatternWords } from '../words.ts';
import { FOLLOW } from './outlines.ts';
import { type Pattern, SQUARE } from './pattern.ts';

export interface StickMark {
  readonly at: Mm;
  /** As told to a person. */
  readonly shown: Mm;
  /** Name of the part. */
  readonly name: string;
  readonly edge: 'low' | 'mid' | 'high' | 'hole';
}

/** One story stick. */
export interface Stick {
  readonly axis: 'x' | 'y';
  /** Of the face along the axis. */
  readonly length: Mm;
  readonly marks: readonly StickMark[];
}

/** All story sticks of a job: they share pages. */
export interface StickPattern {
  readonly kind: 'sticks';
  readonly sticks: readonly Stick[];
  readonly measure: MeasureStyle;
}

/** Width of a strip, and of one whose labels need more room. */
const WIDTHS = [46, 92] as const;
/** The marks run this far in from the stick's edge; labels stand beyond. */
const REACH: Mm = 8;
/** From the end of a mark to its label, and from there to the other edge. */
const TO_LABEL: Mm = 7;
const LABEL: Mm = PATTERN_TEXT.small;
const PITCH: Mm = 3.3;
/** Strips end this far from labels. */
const CLEAR: Mm = 2;
/** A strip goes on so far below its first line, to lie under the strip before. */
const TAB: Mm = 12;

/** So many edges are named at one mark, and the others counted: the list of marks names them all. */
const NAMED = 4;

/** Marks at one place share a line and a label. */
function places({ marks, axis }: Stick, measure: MeasureStyle, words: PatternWords) {
  const sorted = [...marks].sort((a, b) => a.at - b.at || (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
  const found: { at: Mm; names: string[]; shown: Mm }[] = [];
  for (const mark of sorted) {
    const name = `${mark.name} ${words.edge[mark.edge][axis]}`;
    const last = found[found.length - 1];
    if (last && mark.at - last.at < 0.01) {
      if (!last.names.includes(name)) last.names.push(name);
    } else found.push({ at: mark.at, names: [name], shown: mark.shown });
  }
  return found.map(({ at, names, shown }) => ({
    at,
    words: [
      `${formatLength(shown, measure)} `,
      names.slice(0, NAMED).join(', '),
      ...(names.length > NAMED ? [words.more(names.length - NAMED)] : []),
    ].join(' '),
  }));
}

/** A label in its rows, the lowest first, and how high the middle of each stands. */
interface Label {
  readonly at: Mm;
  readonly rows: readonly { readonly words: string; readonly y: Mm }[];
}

/** Labels one above the other, each as near its mark as its neighbors allow; long ones in several rows. */
function stacked(
  all: readonly { readonly at: Mm; readonly words: string }[],
  length: Mm,
  width: Mm,
): Label[] {
  const room = width - REACH - TO_LABEL - 1.5;
  const texts = all.map(({ words }) => wrapped(words, { size: LABEL }, room).reverse());
  const marks = all.flatMap(({ at }, i) => pick(texts, i).map(() => at));
  const heights = spreadOut(marks, PITCH, LABEL, length - LABEL);
  let next = 0;
  return all.map(({ at }, i) => ({
    at,
    rows: pick(texts, i).map((words) => ({ words, y: pick(heights, next++) })),
  }));
}

/** From where to where a label and its mark reach along the stick. */
function reachOf({ at, rows }: Label): { readonly low: Mm; readonly high: Mm } {
  const heights = rows.map(({ y }) => y);
  return {
    low: Math.min(at, ...heights.map((y) => y - LABEL / 2)) - CLEAR,
    high: Math.max(at, ...heights.map((y) => y + LABEL / 2)) + CLEAR,
  };
}

/** A stretch of a stick that is cut out of the page as one strip. */
interface Strip {
  readonly stick: Stick;
  readonly labels: readonly Label[];
  readonly from: Mm;
  readonly to: Mm;
  /** Its number among those of its stick. */
  readonly number: number;
}

/** Parts a stick into strips no longer than `longest`, between labels where there is such a place. */
function stripsOf(stick: Stick, labels: readonly Label[], longest: Mm): Strip[] {
  const reaches = labels.map(reachOf);
  const strips: Strip[] = [];
  let from = 0;
  while (from < stick.length) {
    const most = from + longest - (from === 0 ? 0 : TAB);
    let to = Math.min(stick.length, most);
    if (to < stick.length) {
      // Down to below what stands there, and again where that stands beside something else.
      for (let low = to; low > from + longest / 2; ) {
        const over = reaches.filter((one) => one.low < low && low < one.high);
        if (over.length === 0) {
          to = low;
          break;
        }
        low = Math.min(...over.map((one) => one.low));
      }
    }
    const own = labels.filter(({ at }) => at >= from && (at < to || to === stick.length));
    strips.push({ stick, labels: own, from, to, number: strips.length + 1 });
    from = to;
  }
  return strips;
}

/** A strip standing up, marks on its left edge, its foot at the origin; below its first line the tab to join it by. */
function drawStrip({ stick, labels, from, to, number }: Strip, of: number, width: Mm, words: PatternWords) {
  const foot = from === 0 ? 0 : TAB;
  const up = (at: Mm): Mm => foot + at - from;
  const across = (at: Mm) =>
    [
      { x: 0, y: up(at) },
      { x: width, y: up(at) },
    ] as const;
  const thin = { stroke: INK.soft, width: WEIGHT.hair };
  const ticks = labels.map(({ at }) => line({ x: 0, y: up(at) }, { x: REACH, y: up(at) }, FOLLOW));
  const leaders = labels.map(({ at, rows }) => {
    const row = up((pick(rows, 0).y + lastOf(rows).y) / 2);
    return polyline(
      [
        { x: REACH, y: up(at) },
        { x: REACH + TO_LABEL - 3, y: row },
        { x: REACH + TO_LABEL - 1, y: row },
      ],
      false,
      thin,
    );
  });
  const told = labels.flatMap(({ rows }) =>
    rows.map(({ words: row, y }) =>
      text({ x: REACH + TO_LABEL, y: up(y) - LABEL * 0.35 }, row, { size: LABEL }),
    ),
  );
  const name = words.strip[stick.axis](number, of);
  const note = { size: 1.8, color: INK.soft };
  const ends = [
    ...(from === 0 ? [text({ x: 1.5, y: 0.8 }, words.datum, note)] : []),
    ...(from === 0 ? [] : [text({ x: 1.5, y: TAB / 2 }, `${name}: ${words.tab}`, note)]),
    lines([across(from)], { stroke: INK.line, width: WEIGHT.bold }),
    ...(to === stick.length ? [] : [lines([across(to)], { stroke: INK.line, width: WEIGHT.bold })]),
  ];
  return [
    layer('stick', [rectangle({ x: 0, y: 0, w: width, h: up(to) }, FOLLOW), ...ends]),
    layer('marks', ticks),
    layer('labels', [...leaders, ...told]),
  ];
}

/**
 * Story sticks in strips that are cut apart and joined end to end, as many beside each other as a page holds.
 *
 * @param room of a page; without it every stick is one strip
 */
export function stickPatterns(
  { sticks, measure }: StickPattern,
  words: PatternWords,
  room: { readonly w: Mm; readonly h: Mm } = { w: 1e4, h: 1e4 },
): Pattern[] {
  const all = sticks.map((stick) => ({ stick, places: places(stick, measure, words) }));
  const labelled = (width: Mm) =>
    all.map((one) => ({ ...one, labels: stacked(one.places, one.stick.length, width) }));
  const [narrow, wide] = WIDTHS;
  const crowded = labelled(narrow).some(
    ({ stick, labels }) =>
      labels.reduce((sum, { rows }) => sum + rows.length * PITCH, 0) > stick.length * 0.9,
  );
  const width = crowded ? wide : narrow;
  const made = (beside: number, longest: Mm) => {
    const strips = labelled(width).flatMap(({ stick, labels }) => {
      // A hair less, so that what is added up along the stick does not come out longer than the page.
      const own = stripsOf(stick, labels, longest - SAME_LENGTH);
      return own.map((strip) => ({ strip, of: own.length }));
    });
    return Array.from({ length: Math.ceil(strips.length / beside) }, (_, i) =>
      strips.slice(i * beside, (i + 1) * beside),
    );
  };
  // The square stands beside the strips or below them, whichever takes fewer pages.
  const pages = [
    made(Math.max(1, Math.floor((room.w - SQUARE) / width)), room.h),
    made(Math.max(1, Math.floor(room.w / width)), room.h - SQUARE),
  ].reduce((a, b) => (b.length < a.length ? b : a));
  return pages.map((strips, i) => {
    const heights = strips.map(({ strip: { from, to } }) => to - from + (from === 0 ? 0 : TAB));
    return {
      for: pages.length === 1 ? 'story-sticks' : `story-sticks-${i + 1}`,
      title: words.sticks,
      note: words.joinSticks,
      numbered: { page: i + 1, of: pages.length },
      drawing: {
        width: strips.length * width,
        height: Math.max(...heights),
        title: words.sticks,
        items: strips.map(({ strip, of }, k) =>
          moved({ x: k * width, y: 0 }, drawStrip(strip, of, width, words)),
        ),
      },
      letters: [],
    };
  });
}
