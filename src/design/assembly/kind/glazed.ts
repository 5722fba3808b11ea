import { inches, type Mm } from '../../../measure/units.ts';
import { SQUARE } from '../../ends.ts';
import type { FreeEnd, PanelShape } from '../../schema.ts';
import { type Building, GLUED, GROUND, type Space } from '../building.ts';
import { archFramed, framed, HEAD } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { stopping, upTo } from '../paneling.ts';
import { type Answers, choice, count, FIELD, FINISH, length, type Size, stock } from '../question.ts';
import { row } from '../row.ts';
import { boardNear, lathNear, sheetNear, thicknessOf } from '../stock.ts';

const notRound = { field: 'head', is: ['square', 'arched'] };

/** Stile of 2 in and lower rail of 2 1/2 to 3 in of a sash (Radford's Cyclopedia); of small windows less. */
const casingOf = ({ w }: Size): Mm => Math.min(inches(2), w / 9);
const sillOf = ({ h }: Size): Mm => Math.min(inches(2.75), h / 9);

/** Lights that stand beside each other in a window of a size, and over each other. */
const columnsIn = (size: Size): number =>
  Math.min(4, Math.max(2, Math.round((size.w - 2 * casingOf(size)) / LIGHT)));
function rowsIn(size: Size): number {
  const clear = { w: size.w - 2 * casingOf(size), h: size.h - casingOf(size) - sillOf(size) };
  return Math.min(6, Math.max(2, clear.h / ((clear.w / columnsIn(size)) * TALL)));
}

const questions = {
  head: choice(['square', 'arched', 'round'], 'square'),
  columns: count(1, 8, columnsIn),
  rows: count(1, 8, rowsIn),
  rise: length(10, 1500, ({ w }) => w / 4, { field: 'head', is: ['arched'] }),
  casing: stock('flat', (size, has) => boardNear(has, casingOf(size), size.w / 5)),
  sill: stock('flat', (size, has) => boardNear(has, sillOf(size), size.h / 5), notRound),
  // Muntins of single glass are 3/4 in.
  bar: stock('flat', (_, has) => lathNear(has, inches(3 / 4), inches(1 / 4))),
  finish: FINISH,
  glass: FIELD,
};

type Window = Answers<typeof questions>;

/** A light is about as wide as the old panes of 8 by 10 in, and no taller than 5/4 of its width (stock glass of old). */
const LIGHT: Mm = inches(8);
const TALL = 10 / 8;

/** A window of lights in a casing with a sill; its head square or arched, or the whole round. */
export const window = kindOf({
  usual: { w: inches(18), h: inches(24) },
  questions,
  make: (b, answers) => {
    const shape = SHAPES[answers.head](answers.rise);
    b.part('painted', GROUND, 'glass', { finish: answers.glass, shape });
    const all = b.within(GROUND);
    const head = sheetNear(b.has, thicknessOf(b.has, answers.casing));
    const made = {
      stile: answers.casing,
      bottom: answers.sill,
      finish: answers.finish,
      head,
      rise: answers.rise,
    };
    if (answers.head === 'square') lights(b, answers, framed(b, all, made));
    else if (answers.head === 'arched') {
      const inner = archFramed(b, made);
      lights(b, answers, inner, 'end');
      transom(b, answers, inner);
    } else {
      const width = b.widthOf(answers.casing);
      b.part('panel', RING, 'ring', { stock: head, finish: answers.finish, shape: { form: 'ring', width } });
      b.fill(RING, all);
      lights(b, answers, all, 'both');
    }
  },
});

const SHAPES: Readonly<Record<Window['head'], (rise: Mm) => PanelShape>> = {
  square: () => ({ form: 'rectangle' }),
  arched: (rise) => ({ form: 'arched', rise }),
  round: () => ({ form: 'round' }),
};

const RING = 'ring';

/**
 * Bars that part the lights: uprights run through, bars across are cut in between them.
 * @param cut which ends of the uprights the head cuts; in a ring the outer bars too
 */
function lights(b: Building, answers: Window, space: Space, cut?: 'end' | 'both'): void {
  const { columns, rows } = answers;
  const bars = { stock: answers.bar, finish: answers.finish };
  if (columns > 1) {
    const ends = cut && stopping(b, cut, cut === 'both' ? RING : HEAD);
    const spacing = { mode: 'gaps', count: columns - 1 } as const;
    row(b, 'uprights', 'upright-bars', 'up', { ...bars, spacing, ends });
    b.between('uprights', 'x', space.left, space.right);
    b.between('uprights', 'y', space.bottom, cut ? b.edge(GROUND, 'high') : space.top);
  }
  if (rows < 2) return;
  for (const column of upTo(columns)) {
    const role = `bars-${column}`;
    const stop: FreeEnd = { cut: 'stop', at: b.id(RING) };
    const ends =
      cut === 'both'
        ? { start: column === 1 ? stop : SQUARE, end: column === columns ? stop : SQUARE }
        : undefined;
    const spacing = { mode: 'gaps', count: rows - 1 } as const;
    row(b, role, { noun: 'cross-bars', number: column }, 'across', {
      ...bars,
      spacing,
      ends,
      without: cut === 'both' ? outOfRing(answers, column) : [],
    });
    bay(b, role, column, columns, space);
    b.between(role, 'y', space.bottom, space.top);
  }
}

/** Square of the way out to the ring, as a share, beyond which no bar meets an upright: the ring is wide there. */
const WITHIN = 0.5;

/** Bars of a column that would meet an upright under the ring, or beyond it. */
function outOfRing({ columns, rows }: Window, column: number): number[] {
  const uprights = [column - 1, column].filter((at) => at > 0 && at < columns);
  const reach = Math.max(0, ...uprights.map((at) => ((2 * at) / columns - 1) ** 2));
  return upTo(rows - 1)
    .filter((at) => uprights.length > 0 && reach + ((2 * at) / rows - 1) ** 2 > WITHIN + 1e-9)
    .map((at) => at - 1);
}

/** Puts something between two uprights, or one and the side. */
function bay(b: Building, role: string, column: number, columns: number, space: Space): void {
  const left = column === 1 ? space.left : b.edgeOfMember('uprights', column - 2, 0, 'high');
  const right = column === columns ? space.right : b.edgeOfMember('uprights', column - 1, 0, 'low');
  b.between(role, 'x', left, right);
}

/** Bars at the foot of an arched head: lights below stand in rows, above them they follow the arch. */
function transom(b: Building, answers: Window, space: Space): void {
  for (const column of upTo(answers.columns)) {
    const role = `transom-${column}`;
    b.strip(role, { noun: 'transom', number: column }, 'across', {
      stock: answers.bar,
      finish: answers.finish,
      fixing: GLUED,
    });
    bay(b, role, column, answers.columns, space);
    b.set(role, 'y', 'high', space.top);
  }
}
