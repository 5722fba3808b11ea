import type { Fill } from '../../design/schema.ts';
import { grownBox } from '../../geometry/box.ts';
import { boxesMeet, ringOfBox } from '../../geometry/region.ts';
import { boxOfPoints, containsPoint } from '../../geometry/ring.ts';
import type { Box, Ring } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { lastOf, pick } from '../../list/at.ts';
import { type Deg, type Mm, radians } from '../../measure/units.ts';
import type { Relief } from '../laid.ts';
import { firstFrom, firstStart } from './balance.ts';
import { type Louvers, louversOf } from './louvers.ts';

/** A piece before the outline cuts it, in the frame of its fill. */
export interface Cell {
  readonly column: number;
  readonly row: number;
  /** Convex and counterclockwise, its first side along the piece: what is seen of it. */
  readonly seen: Ring;
  /** The same with what reaches under its neighbor. */
  readonly wood: Ring;
  /** Lies over the pieces of the first layer. */
  readonly over: boolean;
  /** What it is sawn from. */
  readonly stock: string;
  /** Sawn out of it; grooves have walls that are seen, and wood that nothing fills. */
  readonly sunk?: {
    readonly rings: readonly Ring[];
    readonly side: Relief['side'];
    readonly depth: Mm;
    readonly width: Mm;
  };
  /** Leans by `tilt` and stands `depth` out, the line of its first side the most; `edge` is what is seen of its edge. */
  readonly lean?: { readonly tilt: Deg; readonly depth: Mm; readonly edge: Mm; readonly between: boolean };
  /** Painted, on the piece that has this column and row. */
  readonly on?: string;
  /** What is seen of it, where others run over it; all of `seen` where nothing is said. */
  readonly between?: readonly Ring[];
}

type Pattern = Fill['pattern'];
type PatternOf<F extends Pattern['form']> = Extract<Pattern, { readonly form: F }>;
type Room = Pick<Box, 'w' | 'h'>;

/** What a pattern is laid over. */
export interface Ground {
  readonly room: Room;
  /** From where to where there is something to cover along a row, told by its place across and its width. */
  reach(y: Mm, width: Mm): readonly [Mm, Mm];
}

/** What the stocks of a fill come to. */
export interface Sizes {
  widthOf(stock: string): Mm;
  thicknessOf(stock: string): Mm;
  /** The largest sheet of its own stock: along and across the grain; none where it is no sheet. */
  readonly sheet: Room;
}

/** What a pattern is laid over, and of what. */
interface Setting<F extends Pattern['form']> extends Ground, Sizes {
  readonly pattern: PatternOf<F>;
  /** Of the fill. */
  readonly stock: string;
  /** Of the stock. */
  readonly width: Mm;
  readonly thickness: Mm;
  readonly gap: Mm;
  readonly start: Fill['start'];
}

/** Every pattern: the pieces that cover the room, from its lower left. A new one is a line here. */
const PATTERNS: { readonly [F in Pattern['form']]: (setting: Setting<F>) => Iterable<Cell> } = {
  planks: function* ({ room, reach, pattern, stock, width, gap, start }) {
    const lap = pattern.edge === 'square' ? 0 : Math.min(pattern.lap, width / 2);
    const cover = width - lap;
    for (const [column, y] of rowOf(room.h, cover, gap, start)) {
      for (const [row, x, length] of boardsAlong(
        room.w,
        reach(y, width),
        column,
        pattern.length || undefined,
      )) {
        const seen = rectangle(x, y, length, cover);
        const wood = lap > 0 ? rectangle(x, y, length, width) : seen;
        yield { column, row, seen, wood, over: false, stock };
      }
    }
  },
  battened: function* ({ room, pattern, stock, width, widthOf, gap, start }) {
    const batten = widthOf(pattern.stock);
    for (const [column, y] of rowOf(room.h, width, gap, start)) {
      yield piece(column, 0, rectangle(0, y, room.w, width), stock);
    }
    if (batten <= 0) return;
    // Over every joint between two boards.
    for (const [column, y] of rowOf(room.h, width, gap, start)) {
      if (column === 0) continue;
      const low = y - gap / 2 - batten / 2;
      yield { ...piece(column - 1, 1, rectangle(0, low, room.w, batten), pattern.stock), over: true };
    }
  },
  lattice: function* ({ room, pattern, stock, width, thickness, gap, start }) {
    const [rows, columns] = [[...rowOf(room.h, width, gap, start)], [...rowOf(room.w, width, gap, start)]];
    const halved = (side: 'face' | 'back', rings: readonly Ring[]): Partial<Cell> =>
      pattern.halved ? { sunk: { rings, side, depth: thickness / 2, width } } : { over: side === 'back' };
    for (const [column, y] of rows) {
      const ring = rectangle(0, y, room.w, width);
      const crossed = columns.map(([, x]) => rectangle(x, y, width, width));
      const ends = [0, ...columns.map(([, x]) => x + width)];
      const between = ends.map((x, i) => rectangle(x, y, (columns[i]?.[1] ?? room.w) - x, width));
      const seen = pattern.halved
        ? { between: between.filter(([a, b]) => b && a && b.x > a.x + SAME_LENGTH) }
        : {};
      yield { ...piece(column, 0, ring, stock), ...seen, ...halved('face', crossed), over: false };
    }
    for (const [column, x] of columns) {
      const crossed = rows.map(([, y]) => rectangle(x, y, width, width));
      yield { ...piece(column, 1, upright(x, 0, width, room.h), stock), ...halved('back', crossed) };
    }
  },
  courses: function* (setting) {
    const { room, pattern, stock, width, gap, start } = setting;
    const sheets = pattern.joints ? [...sheetsOver(setting, width)] : [];
    const count = [...rowOf(room.h, width, gap, start)].length;
    // Numbered after the courses, so that these are called alike whether they are sawn or painted.
    for (const { column, row, ring } of sheets) yield piece(column, count + row, ring, stock);
    const pitch = pattern.length + gap;
    const first =
      start === 'balanced'
        ? widestEnds(room.w, pattern, gap)
        : firstStart(room.w, pattern.length, gap, start);
    for (const [row, y] of rowOf(room.h, width, gap, start)) {
      let x = firstFrom(first + SHIFTS[pattern.bond](row) * pitch, pattern.length, gap);
      for (let column = 0; x < room.w - SAME_LENGTH; column++, x += pitch) {
        const ring = rectangle(x, y, pattern.length, width);
        const middle = { x: x + pattern.length / 2, y: y + width / 2 };
        const under =
          sheets.find((sheet) => containsPoint(sheet.ring, middle)) ??
          sheets.findLast((sheet) => boxesMeet(boxOfPoints(ring), boxOfPoints(sheet.ring)));
        yield {
          ...piece(column, row, ring, stock),
          ...(under && { on: `${under.column},${count + under.row}` }),
        };
      }
    }
  },
  basket: function* ({ room, pattern, stock, width, gap, start }) {
    const side = pattern.count * (width + gap);
    const squares = [...rowOf(room.w, side - gap, gap, start)];
    for (const [j, y] of rowOf(room.h, side - gap, gap, start)) {
      for (const [i, x] of squares) {
        for (let k = 0; k < pattern.count; k++) {
          const along = k * (width + gap);
          const ring =
            (i + j) % 2 === 0
              ? rectangle(x, y + along, side - gap, width)
              : upright(x + along, y, width, side - gap);
          yield piece(i * pattern.count + k, j, ring, stock);
        }
      }
    }
  },
  herringbone: function* ({ room, pattern, stock, width, gap, start }) {
    const [l, w] = [pattern.length + gap, width + gap];
    // A flat piece and the upright one at its end repeat by (w, w) and (l, -l).
    const corner = { x: room.w - l - width, y: room.h - width };
    const from = {
      piece: { x: (room.w - pattern.length) / 2, y: corner.y / 2 },
      // The square that the upright one takes up beside the flat one.
      gap: { x: room.w / 2 - l - width / 2, y: corner.y / 2 },
      low: { x: 0, y: 0 },
      high: corner,
    }[start === 'balanced' ? 'piece' : start];
    const reach = Math.ceil((room.w + room.h) / (2 * w)) + Math.ceil(l / w) + 1;
    const rows = Math.ceil((room.w + room.h) / (2 * l)) + 1;
    for (let row = -rows; row <= rows; row++) {
      for (let k = -reach; k <= reach; k++) {
        const x = from.x + k * w + row * l;
        const y = from.y + k * w - row * l;
        const pair = [
          rectangle(x, y, pattern.length, width),
          upright(x + l, y + width - pattern.length, width, pattern.length),
        ];
        for (const [i, ring] of pair.entries()) {
          if (meets(ring, room)) yield piece(2 * (k + reach) + i, row + rows, ring, stock);
        }
      }
    }
  },
  grooved: function* (setting) {
    const { face, depth } = setting.pattern;
    const { stock, gap } = setting;
    for (const { column, row, ring, gaps } of sheetsOver(setting, face)) {
      const rings = gap > 0 ? gaps : [];
      yield { ...piece(column, row, ring, stock), sunk: { rings, side: 'groove', depth, width: gap } };
    }
  },
  louvers: function* ({ room, pattern: { lap, tilt, starter }, stock, width, thickness }) {
    const slats = louversOf(room.h, width, thickness, lap, tilt);
    const { depth, height, pitch, count } = slats;
    const edge = thickness * Math.sin(radians(slats.tilt));
    // Numbered after the others, so that those keep their numbers, but fixed before them.
    const under = starterOf(slats, edge);
    if (starter && tilt === undefined && under > SAME_LENGTH)
      yield piece(count, 0, rectangle(0, edge, room.w, under), stock);
    const lean = { tilt: slats.tilt, depth, edge, between: tilt !== undefined };
    for (let column = 0; column < count; column++) {
      const y = column * pitch;
      const wood = rectangle(0, y, room.w, height);
      const seen = rectangle(0, y, room.w, column < count - 1 ? pitch : height);
      yield { ...piece(column, 0, wood, stock), seen, lean };
    }
  },
  chevron: function* ({ room, pattern, stock, width, gap, start }) {
    const rise = pattern.span * Math.tan(radians(pattern.slope));
    const [tall, pitch] = [width, width + gap].map((across) => across / Math.cos(radians(pattern.slope))) as [
      Mm,
      Mm,
    ];
    for (const [column, x] of rowOf(room.w, pattern.span, gap, start)) {
      const up = column % 2 === 0 ? rise : -rise;
      // A piece begins where the one beside it ends.
      const from = Math.max(0, -up);
      const below = Math.ceil((rise + tall) / pitch);
      for (let row = 0; ; row++) {
        const y = from + (row - below) * pitch;
        if (Math.min(y, y + up) >= room.h) break;
        const ring = [
          { x, y },
          { x: x + pattern.span, y: y + up },
          { x: x + pattern.span, y: y + up + tall },
          { x, y: y + tall },
        ];
        if (meets(ring, room)) yield piece(column, row, ring, stock);
      }
    }
  },
};

/** What is a board of sheet, and no boards beside each other. */
export const isOfSheet = (pattern: Pattern): boolean =>
  pattern.form === 'grooved' || (pattern.form === 'courses' && pattern.joints !== undefined);

/**
 * How wide the strip under the lowest board of lap siding is: as much as the upper edge of a board below it would reach up,
 * so that it leans as the others do. Common practice, no source.
 */
export const starterOf = ({ height, pitch }: Pick<Louvers, 'height' | 'pitch'>, edge: Mm): Mm =>
  height - pitch - edge;

/** How far each course is moved along, as a share of a piece with its joint. */
const SHIFTS = {
  stacked: () => 0,
  half: (row: number) => (row % 2) / 2,
  third: (row: number) => (row % 3) / 3,
} as const satisfies Readonly<Record<PatternOf<'courses'>['bond'], (row: number) => number>>;

const CYCLES = { stacked: 1, half: 2, third: 3 } as const satisfies Record<keyof typeof SHIFTS, number>;

/**
 * Where the first course begins so that no course has a sliver at an end: with a piece in the middle, or moved by half of
 * what the courses are moved by, whichever leaves the wider ends. These are alike at both sides then, if not of one course.
 */
function widestEnds(room: Mm, { length, bond }: Pick<PatternOf<'courses'>, 'length' | 'bond'>, gap: Mm): Mm {
  const [pitch, cycle] = [length + gap, CYCLES[bond]];
  const leastEnd = (first: Mm): Mm => {
    const ends = Array.from({ length: cycle }, (_, row) => {
      const x = firstFrom(first + SHIFTS[bond](row) * pitch, length, gap);
      const last = x + Math.floor((room - SAME_LENGTH - x) / pitch) * pitch;
      return Math.min(length + Math.min(x, 0), room - last, length);
    });
    return Math.min(...ends);
  };
  const middle = firstStart(room, length, gap, 'piece');
  const moved = middle + pitch / (2 * cycle);
  return leastEnd(moved) > leastEnd(middle) + SAME_LENGTH ? moved : middle;
}

/** What the pieces of a fill are laid out from. */
export interface Layable<F extends Pattern['form'] = Pattern['form']>
  extends Pick<Fill, 'gap' | 'start' | 'stock'> {
  readonly pattern: PatternOf<F>;
}

/** The pieces of a fill before its outline cuts them; one at a time, since there may be very many. */
export function cellsOf<F extends Pattern['form']>(
  { pattern, gap, start, stock }: Layable<F>,
  ground: Ground,
  sizes: Sizes,
): Iterable<Cell> {
  return PATTERNS[pattern.form as F]({
    ...ground,
    ...sizes,
    pattern,
    gap,
    start,
    stock,
    width: sizes.widthOf(stock),
    thickness: sizes.thicknessOf(stock),
  });
}

/** No board is told shorter: a file may ask for any length over none, and for more boards than can be listed. */
const LEAST_LENGTH: Mm = 1;

/**
 * Where the boards of a row begin, and how long each is: alike, and in every other row moved by half of one, so that no two
 * joints lie beside each other. A joint that is not needed where the outline is narrower is left out. Common practice, no
 * source.
 */
function* boardsAlong(
  room: Mm,
  [from, to]: readonly [Mm, Mm],
  row: number,
  most: Mm = room,
): Generator<readonly [number, Mm, Mm]> {
  const count = Math.ceil(room / Math.max(most, LEAST_LENGTH) - SAME_LENGTH);
  const each = room / count;
  const first = count > 1 && row % 2 === 1 ? each / 2 : each;
  const ends = Array.from({ length: count }, (_, i) => first + i * each).filter((x) => x > from && x < to);
  let column = 0;
  let begun = 0;
  for (const [i, end] of ends.entries()) {
    if ((ends[i + 1] ?? to) - Math.max(begun, from) <= most + SAME_LENGTH) continue;
    yield [column++, begun, end - begun];
    begun = end;
  }
  yield [column, begun, room - begun];
}

/**
 * Pieces of sheet over the room, each with as many rows of faces as the sheet takes, alike but for the last one, and with
 * the gap beyond its last row; `gaps` are those in it.
 */
function* sheetsOver(
  {
    room,
    reach,
    sheet,
    gap,
    start,
  }: Pick<Setting<Pattern['form']>, 'room' | 'reach' | 'sheet' | 'gap' | 'start'>,
  face: Mm,
): Generator<{ readonly column: number; readonly row: number; readonly ring: Ring; readonly gaps: Ring[] }> {
  const faces = [...rowOf(room.h, face, gap, start)];
  const most = Math.max(1, Math.floor((sheet.h + SAME_LENGTH) / (face + gap)));
  const each = Math.ceil(faces.length / Math.ceil(faces.length / most));
  for (let column = 0; column * each < faces.length; column++) {
    const own = faces.slice(column * each, (column + 1) * each).map(([, y]) => y);
    const low = pick(own, 0) - (column === 0 ? gap : 0);
    const high = lastOf(own) + face + gap;
    const along = boardsAlong(room.w, reach(low, high - low), column, sheet.w || undefined);
    for (const [row, x, length] of along) {
      const gaps = [...(column === 0 ? [low] : []), ...own.map((y) => y + face)];
      yield {
        ...{ column, row, ring: rectangle(x, low, length, high - low) },
        gaps: gaps.map((y) => rectangle(x, y, length, gap)),
      };
    }
  }
}

/** Places of a row of pieces that cover a width, each with its number. */
function* rowOf(room: Mm, cover: Mm, gap: Mm, start: Fill['start']): Generator<readonly [number, Mm]> {
  const first = firstStart(room, cover, gap, start);
  for (let i = 0, at = first; at < room - SAME_LENGTH; i++, at = first + i * (cover + gap)) yield [i, at];
}

const piece = (column: number, row: number, ring: Ring, stock: string): Cell => ({
  column,
  row,
  seen: ring,
  wood: ring,
  over: false,
  stock,
});

/** A piece that lies flat. */
export const rectangle = (x: Mm, y: Mm, w: Mm, h: Mm): Ring => ringOfBox({ x, y, w, h });

/** A rectangle whose piece stands: its first side is a long one. */
const upright = (x: Mm, y: Mm, w: Mm, h: Mm): Ring => [
  { x: x + w, y },
  { x: x + w, y: y + h },
  { x, y: y + h },
  { x, y },
];

/** Whether something of a ring lies in the room, by their boxes. */
const meets = (ring: Ring, { w, h }: Room): boolean =>
  boxesMeet(grownBox(boxOfPoints(ring), -SAME_LENGTH), { x: 0, y: 0, w, h });
