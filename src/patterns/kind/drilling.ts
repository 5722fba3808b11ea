import type { DrawItem } from '../../drawing/drawing.ts';
import { circle, layer, line, lines, moved, rectangle, text } from '../../drawing/items.ts';
import { DASH, INK, PATTERN_TEXT, WEIGHT } from '../../drawing/style.ts';
import { shortened, wrapped } from '../../drawing/text.ts';
import { boxOf } from '../../geometry/region.ts';
import type { Box, Point, Region } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import { onShelves } from '../shelves.ts';
import type { PatternWords } from '../words.ts';
import { CENTER, FOLLOW, GUIDE, outlines } from './outlines.ts';
import { type Pattern, SQUARE } from './pattern.ts';

/** Holes of one template that are drilled alike. */
export interface Drilled {
  readonly at: readonly Point[];
  /** As wide as it is drawn. */
  readonly wide: Mm;
  /** With which bit, and how deep. */
  readonly told: string;
}

/** Hardware that is drilled for alike: all places are told from its middle. */
export interface DrillTemplate {
  readonly name: string;
  readonly region: Region;
  readonly holes: readonly Drilled[];
  /** Straight edges of the wood beneath that are near enough to lay the template to: how far right or left, up or down. */
  readonly edges: { readonly x: readonly Mm[]; readonly y: readonly Mm[] };
  /** Which parts it is for, and where the middle of each lies. */
  readonly places: readonly string[];
}

/** The templates of all hardware: small ones share pages. */
export interface DrillingPattern {
  readonly kind: 'drilling';
  readonly templates: readonly DrillTemplate[];
}

/** White around what is drawn, for tape; center lines go through it. */
const AROUND: Mm = 10;
/** Paper beyond an edge of the wood, which is folded down over it. */
const BEYOND: Mm = 8;
/** Lines of text are no shorter than this. */
const LINE: Mm = 72;
const LEAD: Mm = 3.4;
const INSIDE: Mm = 2;
/** Between two templates. */
const APART: Mm = 4;
/** A hole's cross goes on so far beyond its rim. */
const CROSS: Mm = 3;
/** So many places are told, and the others counted: the list of marks names them all. */
const TOLD = 12;

const CUT = { stroke: INK.soft, width: WEIGHT.thin, dash: DASH.trim } as const;
const EDGE = { stroke: INK.line, width: WEIGHT.bold } as const;

/** What is drawn about the middle: the outline with white around it, out to the edges of the wood. */
function drawnBox({ region, edges }: DrillTemplate): Box {
  const { x, y, w, h } = boxOf(region) ?? { x: 0, y: 0, w: 0, h: 0 };
  const reach = (low: Mm, high: Mm, at: readonly Mm[]) => [
    Math.min(low - AROUND, ...at.map((edge) => edge - BEYOND)),
    Math.max(high + AROUND, ...at.map((edge) => edge + BEYOND)),
  ];
  const [left = 0, right = 0] = reach(x, x + w, edges.x);
  const [bottom = 0, top = 0] = reach(y, y + h, edges.y);
  return { x: left, y: bottom, w: right - left, h: top - bottom };
}

/** A hole: its rim, and a cross through its middle. */
const holeAt = ({ x, y }: Point, wide: Mm): DrawItem[] => {
  const half = wide / 2 + CROSS;
  return [
    circle({ x, y }, wide / 2, FOLLOW),
    lines(
      [
        [
          { x: x - half, y },
          { x: x + half, y },
        ],
        [
          { x, y: y - half },
          { x, y: y + half },
        ],
      ],
      { stroke: INK.line, width: WEIGHT.hair },
    ),
  ];
};

interface Drawn {
  readonly name: string;
  readonly w: Mm;
  readonly h: Mm;
  readonly items: readonly DrawItem[];
}

/** A template with its lower left corner at the origin, what is said of it below what is drawn. */
function drawn(template: DrillTemplate, words: PatternWords): Drawn {
  const { name, region, holes, edges, places } = template;
  const box = drawnBox(template);
  const w = Math.max(box.w, LINE);
  const several = holes.length > 1;
  const letterOf = (i: number) => String.fromCharCode(65 + i);
  const small = { size: PATTERN_TEXT.small };
  const told = [
    ...holes.map((hole, i) => (several ? `${letterOf(i)}: ${hole.told}` : hole.told)),
    words.drilling.middle,
    ...places.slice(0, TOLD),
    ...(places.length > TOLD ? [words.more(places.length - TOLD)] : []),
  ].flatMap((row) => wrapped(row, small, w - 2 * INSIDE));
  const foot = (told.length + 1) * LEAD + 2 * INSIDE;
  const [right, top] = [box.x + box.w, box.y + box.h];
  const note = { size: PATTERN_TEXT.note, color: INK.soft };
  const along = edges.x.map((x) => line({ x, y: box.y }, { x, y: top }, EDGE));
  const level = edges.y.map((y) => line({ x: box.x, y }, { x: right, y }, EDGE));
  const named = [
    ...edges.x.map((x) =>
      text({ x: x + (x < 0 ? -1.2 : 3), y: box.y + 2 }, words.drilling.edge, { ...note, angle: 90 }),
    ),
    ...edges.y.map((y) => text({ x: box.x + 2, y: y + (y < 0 ? -3 : 1.2) }, words.drilling.edge, note)),
  ];
  const heading = { size: PATTERN_TEXT.body, bold: true };
  const begin = { x: INSIDE, y: foot - INSIDE - PATTERN_TEXT.body };
  const items = [
    layer('guides', [rectangle({ x: 0, y: 0, w, h: foot + box.h }, CUT)]),
    moved({ x: (w - box.w) / 2 - box.x, y: foot - box.y }, [
      layer('guides', [
        line({ x: 0, y: box.y }, { x: 0, y: top }, CENTER),
        line({ x: box.x, y: 0 }, { x: right, y: 0 }, CENTER),
      ]),
      layer('edges', [...along, ...level, ...named]),
      layer('hardware', outlines(region, GUIDE)),
      layer('holes', [
        ...holes.flatMap(({ at, wide }) => at.flatMap((one) => holeAt(one, wide))),
        ...(several
          ? holes.flatMap(({ at, wide }, i) => at.map((one) => letterAt(one, wide, letterOf(i))))
          : []),
      ]),
    ]),
    layer('labels', [
      text(begin, shortened(name, heading, w - 2 * INSIDE), heading),
      ...told.map((row, i) => text({ x: INSIDE, y: begin.y - (i + 1) * LEAD }, row, small)),
    ]),
  ];
  return { name, w, h: foot + box.h, items };
}

const letterAt = ({ x, y }: Point, wide: Mm, letter: string): DrawItem =>
  text({ x: x + wide / 2 + 0.6, y: y + wide / 2 + 0.6 }, letter, { size: PATTERN_TEXT.small });

/**
 * Templates to tape on and drill through: outline, center lines, edges of the wood and holes of each hardware, true to size,
 * cut apart. What fits a page shares it; what does not is tiled by itself.
 *
 * @param room of a page
 */
export function drillingPatterns(
  { templates }: DrillingPattern,
  words: PatternWords,
  room: { readonly w: Mm; readonly h: Mm } = { w: 1e4, h: 1e4 },
): Pattern[] {
  const all = templates.map((template) => drawn(template, words));
  const { title, note } = words.drilling;
  // The square stands below them or beside them, whichever takes fewer pages.
  const ways = [
    { w: room.w, h: room.h - SQUARE },
    { w: room.w - SQUARE, h: room.h },
  ].map((own) => {
    const fits = ({ w, h }: Drawn) => w <= own.w && h <= own.h;
    return { shared: onShelves(all.filter(fits), own, APART), alone: all.filter((one) => !fits(one)) };
  });
  const { shared, alone } = ways.reduce((a, b) =>
    b.shared.length + b.alone.length < a.shared.length + a.alone.length ? b : a,
  );
  const count = shared.length + alone.length;
  const named = (i: number) => (count === 1 ? 'drilling' : `drilling-${i + 1}`);
  return [
    ...shared.map((page, i): Pattern => {
      const ends = page.map(({ one, at }) => ({ x: at.x + one.w, y: at.y + one.h }));
      return {
        for: named(i),
        title,
        note,
        numbered: { page: i + 1, of: shared.length },
        drawing: {
          width: Math.max(...ends.map(({ x }) => x)),
          height: Math.max(...ends.map(({ y }) => y)),
          title,
          items: page.map(({ one, at }) => moved(at, one.items)),
        },
        letters: [],
      };
    }),
    ...alone.map(({ name, w, h, items }, i): Pattern => {
      const own = `${title}: ${name}`;
      const drawing = { width: w, height: h, title: own, items };
      return { for: named(shared.length + i), title: own, note, drawing, letters: [] };
    }),
  ];
}
