import type { Fill } from '../../design/schema.ts';
import type { Box, Ring } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';
import { firstStart } from './balance.ts';

/** A piece before the outline cuts it, in the frame of its fill. */
export interface Cell {
  readonly column: number;
  readonly row: number;
  /** Convex and counterclockwise: what is seen of it. */
  readonly seen: Ring;
  /** The same with what reaches under its neighbor. */
  readonly wood: Ring;
}

type Pattern = Fill['pattern'];
type PatternOf<F extends Pattern['form']> = Extract<Pattern, { readonly form: F }>;

/** What a pattern is laid over, and of what. */
interface Setting<F extends Pattern['form']> {
  readonly room: Pick<Box, 'w' | 'h'>;
  readonly pattern: PatternOf<F>;
  /** Of the stock. */
  readonly width: Mm;
  readonly gap: Mm;
  readonly start: Fill['start'];
}

/** Every pattern: the pieces that cover the room, row by row from its lower left. A new one is a line here. */
const PATTERNS: { readonly [F in Pattern['form']]: (setting: Setting<F>) => Iterable<Cell> } = {
  planks: function* ({ room, pattern, width, gap, start }) {
    const lap = pattern.edge === 'square' ? 0 : Math.min(pattern.lap, width / 2);
    const cover = width - lap;
    let at = firstStart(room.h, cover, gap, start);
    for (let column = 0; at < room.h - SAME_LENGTH; column++, at += cover + gap) {
      const seen = rectangle(0, at, room.w, cover);
      yield { column, row: 0, seen, wood: lap > 0 ? rectangle(0, at, room.w, width) : seen };
    }
  },
};

/** The pieces of a fill before its outline cuts them; one at a time, since there may be very many. */
export function cellsOf<F extends Pattern['form']>(
  fill: Pick<Fill, 'gap' | 'start'> & { readonly pattern: PatternOf<F> },
  room: Pick<Box, 'w' | 'h'>,
  width: Mm,
): Iterable<Cell> {
  const { pattern, gap, start } = fill;
  return PATTERNS[pattern.form as F]({ room, pattern, width, gap, start });
}

const rectangle = (x: Mm, y: Mm, w: Mm, h: Mm): Ring => [
  { x, y },
  { x: x + w, y },
  { x: x + w, y: y + h },
  { x, y: y + h },
];
