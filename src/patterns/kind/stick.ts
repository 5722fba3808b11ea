import type { DrawItem } from '../../drawing/drawing.ts';
import { layer, line, lines, polyline, rectangle, text } from '../../drawing/items.ts';
import { spreadOut } from '../../drawing/spread.ts';
import { INK, PATTERN_TEXT, WEIGHT } from '../../drawing/style.ts';
import { wrapped } from '../../drawing/text.ts';
import type { Box } from '../../geometry/shape.ts';
import { pick } from '../../list/at.ts';
import { formatLength } from '../../measure/format.ts';
import type { MeasureStyle } from '../../measure/style.ts';
import type { Mm } from '../../measure/units.ts';
import type { PatternWords } from '../words.ts';
import { FOLLOW } from './outlines.ts';
import type { Pattern } from './pattern.ts';

export interface StickMark {
  readonly at: Mm;
  /** As told to a person. */
  readonly shown: Mm;
  /** Name of the part. */
  readonly name: string;
  readonly edge: 'low' | 'mid' | 'high';
}

export interface StickPattern {
  readonly kind: 'stick';
  readonly axis: 'x' | 'y';
  /** Of the face along the axis. */
  readonly length: Mm;
  readonly marks: readonly StickMark[];
  readonly measure: MeasureStyle;
}

const WIDTH: Mm = 120;
/** The marks run this far in from the stick's edge; labels stand beyond. */
const REACH: Mm = 14;
/** Labels end here; the rest of the width is free for the marks that join pages. */
const LABELS_TO: Mm = WIDTH - 16;
const LABEL: Mm = PATTERN_TEXT.small;
const PITCH: Mm = 3.3;
/** Trim lines stay this far from labels, so that the marks on them do as well. */
const TRIM_CLEAR: Mm = 6.5;

/** Marks at one place share a line and a label. */
function places(marks: readonly StickMark[], { axis, measure }: StickPattern, words: PatternWords) {
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
    words: `${formatLength(shown, measure)}  ${names.join(', ')}`,
  }));
}

/** A label in its rows, the lowest first, and how high the middle of each stands. */
interface Label {
  readonly at: Mm;
  readonly rows: readonly { readonly words: string; readonly y: Mm }[];
}

/** Labels one above the other, each as near its mark as its neighbors allow; long ones in several rows. */
function stacked(all: readonly { readonly at: Mm; readonly words: string }[], length: Mm): Label[] {
  const texts = all.map(({ words }) => wrapped(words, { size: LABEL }, LABELS_TO - REACH - 8).reverse());
  const marks = all.flatMap(({ at }, i) => pick(texts, i).map(() => at));
  const heights = spreadOut(marks, PITCH, LABEL, length - LABEL);
  let next = 0;
  return all.map(({ at }, i) => ({
    at,
    rows: pick(texts, i).map((words) => ({ words, y: pick(heights, next++) })),
  }));
}

/** The width of the stick over a label and its mark, and so much more above and below. */
function boxAround({ at, rows }: Label, clear: Mm, length: Mm): Box {
  const heights = [at, ...rows.map((row) => row.y)];
  const low = Math.max(0, Math.min(...heights) - LABEL / 2 - clear);
  const high = Math.min(length, Math.max(...heights) + LABEL / 2 + clear);
  return { x: 0, y: low, w: WIDTH, h: high - low };
}

/** The stick standing up, marks on its left edge and read upright; and the boxes of its labels. */
function upright(stick: StickPattern, words: PatternWords): { items: DrawItem[]; keep: Box[] } {
  const { length, marks } = stick;
  const all = stacked(places(marks, stick, words), length);
  const ticks = all.map(({ at }) => line({ x: 0, y: at }, { x: REACH, y: at }, FOLLOW));
  const thin = { stroke: INK.soft, width: WEIGHT.hair };
  const leaders = all.map(({ at, rows }) => {
    const row = ((rows[0]?.y ?? at) + (rows[rows.length - 1]?.y ?? at)) / 2;
    return polyline(
      [
        { x: REACH, y: at },
        { x: REACH + 5, y: row },
        { x: REACH + 7, y: row },
      ],
      false,
      thin,
    );
  });
  const labels = all.flatMap(({ rows }) =>
    rows.map((row) => text({ x: REACH + 8, y: row.y - LABEL * 0.35 }, row.words, { size: LABEL })),
  );
  const foot = [
    text({ x: 1.5, y: 1 }, words.datum, { size: 1.8, color: INK.soft }),
    lines(
      [
        [
          { x: 0, y: 0 },
          { x: WIDTH, y: 0 },
        ],
      ],
      { stroke: INK.line, width: WEIGHT.bold },
    ),
  ];
  // Twice: a trim line too near to labels is bad, one through a label is worse.
  const keep = [0, TRIM_CLEAR].flatMap((clear) => all.map((label) => boxAround(label, clear, length)));
  const items = [
    layer('stick', [rectangle({ x: 0, y: 0, w: WIDTH, h: length }, FOLLOW), ...foot]),
    layer('marks', ticks),
    layer('labels', [...leaders, ...labels]),
  ];
  return { items, keep };
}

export function stickPatterns(stick: StickPattern, words: PatternWords): Pattern[] {
  const { axis, length } = stick;
  const title = words.stick[axis];
  const { items, keep } = upright(stick, words);
  const standing = axis === 'y';
  return [
    {
      for: `story-stick-${axis}`,
      title,
      drawing: {
        width: standing ? WIDTH : length,
        height: standing ? length : WIDTH,
        title,
        // Laid down to the right: what was up runs right, and the marks stand on the upper edge.
        items: standing ? items : [{ kind: 'group', turn: -90, move: { x: 0, y: WIDTH }, items }],
      },
      letters: [],
      keep: standing ? keep : keep.map(({ x, y, w, h }) => ({ x: y, y: WIDTH - x - w, w: h, h: w })),
    },
  ];
}
