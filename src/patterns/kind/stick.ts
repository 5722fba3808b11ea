import type { DrawItem } from '../../drawing/drawing.ts';
import { layer, line, lines, polyline, rectangle, text } from '../../drawing/items.ts';
import { spreadOut } from '../../drawing/spread.ts';
import { INK, TEXT, WEIGHT } from '../../drawing/style.ts';
import { shortened } from '../../drawing/text.ts';
import type { Box } from '../../geometry/shape.ts';
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

const WIDTH: Mm = 100;
/** The marks run this far in from the stick's edge; labels stand beyond. */
const REACH: Mm = 14;
const LABEL: Mm = TEXT.small;
const PITCH: Mm = 3.3;

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

/** The stick standing up, marks on its left edge and read upright; and the boxes of its labels. */
function upright(stick: StickPattern, words: PatternWords): { items: DrawItem[]; keep: Box[] } {
  const { length, marks } = stick;
  const all = places(marks, stick, words);
  const rows = spreadOut(
    all.map((p) => p.at),
    PITCH,
    LABEL,
    length - LABEL,
  );
  const ticks = all.map(({ at }) => line({ x: 0, y: at }, { x: REACH, y: at }, FOLLOW));
  const thin = { stroke: INK.soft, width: WEIGHT.hair };
  const leaders = all.map(({ at }, i) => {
    const row = rows[i] ?? at;
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
  const room = WIDTH - REACH - 9;
  const labels = all.map(({ at, words }, i) =>
    text({ x: REACH + 8, y: (rows[i] ?? at) - LABEL * 0.35 }, shortened(words, { size: LABEL }, room), {
      size: LABEL,
    }),
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
  const keep = all.map(({ at }, i) => {
    const row = rows[i] ?? at;
    const low = Math.min(at, row) - LABEL / 2;
    return { x: 0, y: low, w: WIDTH, h: Math.max(at, row) + LABEL / 2 - low };
  });
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
