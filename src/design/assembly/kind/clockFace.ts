import { boxAround } from '../../../geometry/box.ts';
import type { Point } from '../../../geometry/shape.ts';
import { inches, type Mm } from '../../../measure/units.ts';
import type { PanelShape } from '../../schema.ts';
import { type Building, type Called, GROUND } from '../building.ts';
import { FACING, facing } from '../facing.ts';
import { kindOf } from '../kind.ts';
import { upTo } from '../paneling.ts';
import { type Answers, choice, count, length, stock } from '../question.ts';
import { sheetNear } from '../stock.ts';
import { digitsOf } from './digits.ts';
import { HOURS, numeralOf } from './numerals.ts';

const questions = {
  shape: choice(['round', 'rectangle'], ({ w, h }) =>
    Math.max(w, h) <= NEARLY_SQUARE * Math.min(w, h) ? 'round' : 'rectangle',
  ),
  diameter: length(60, 2000, ({ w, h }) => Math.min(w, h)),
  marks: choice(['bars', 'roman', 'arabic', 'none'], 'roman'),
  // Hands of a clock that is for sale stand so, clear of each other and of what is written above. Common practice.
  hour: count(1, 12, 10),
  minute: count(0, 59, 9),
  ring: stock('sheet', (_, has) => sheetNear(has, inches(1 / 2))),
  ...FACING,
};

type Clock = Answers<typeof questions>;

/** Shares of the diameter; of hands, from the middle. Common practice, no source. */
const RING = 0.055;
const AIR = 0.02;
const MARK = 0.12;
/** Upright figures are lower, so that their corners stay off the ring. */
const DIGITS = 0.1;
const BAR = { usual: 0.012, quarter: 0.026 };
const HAND = { hour: { reach: 0.25, width: 0.034 }, minute: { reach: 0.37, width: 0.024 } };
const TAIL = 0.07;
const HUB = 0.06;

/** Spaces that are no longer than so many times their width take a round board. */
const NEARLY_SQUARE = 1.05;

/**
 * A ring with marks at its twelve hours and two hands, on a board that fills the space. The clock stays round whatever
 * the space is, or the bed comes to: as large as is told, in the middle.
 */
export const clockFace = kindOf({
  usual: { w: inches(14), h: inches(14) },
  questions,
  make: (b, answers) => {
    const { diameter, ring, finish } = answers;
    facing(b, 'dial', answers, { form: answers.shape });
    b.part('panel', 'ring', 'ring', { stock: ring, finish, shape: { form: 'ring', width: RING * diameter } });
    centered(b, 'ring', diameter);
    if (answers.marks !== 'none') marks(b, answers, answers.marks);
    hands(b, answers);
    b.part('painted', 'hub', 'hub', { finish, shape: ROUND });
    centered(b, 'hub', HUB * diameter);
  },
});

const ROUND: PanelShape = { form: 'round' };

function centered(b: Building, role: string, diameter: Mm): void {
  const middle = b.edge(GROUND, 'mid');
  for (const axis of ['x', 'y'] as const) {
    b.size(role, axis, diameter);
    b.center(role, axis, middle, middle);
  }
}

/** How far hours reach in and out, from the middle. */
const reachOf = (diameter: Mm): { readonly inner: Mm; readonly outer: Mm } => {
  const outer = diameter * (1 / 2 - RING - AIR);
  return { inner: outer - MARK * diameter, outer };
};

/** No more than all, whatever the last digit of a division is. */
const share = (part: Mm, of: Mm): number => Math.min(1, part / of);

/** A figure in paint, its corners told from the middle of the clock. */
function drawn(
  b: Building,
  role: string,
  called: Called,
  points: readonly Point[],
  finish: Clock['finish'],
): void {
  const box = boxAround(points.map((p) => ({ ...p, w: 0, h: 0 })));
  if (!box) return;
  const shape: PanelShape = {
    form: 'polygon',
    points: points.map(({ x, y }) => ({ u: share(x - box.x, box.w), v: share(y - box.y, box.h) })),
  };
  b.part('painted', role, called, { finish, shape });
  for (const axis of ['x', 'y'] as const) {
    b.size(role, axis, axis === 'x' ? box.w : box.h);
    b.set(role, axis, 'low', b.edge(GROUND, 'mid'), box[axis]);
  }
}

/** Turned clockwise about the middle, by a share of a round. */
const turned = (points: readonly Point[], round: number): Point[] => {
  const [cos, sin] = [Math.cos(2 * Math.PI * round), Math.sin(2 * Math.PI * round)];
  return points.map(({ x, y }) => ({ x: x * cos + y * sin, y: y * cos - x * sin }));
};

/** A bar upright between two heights, as wide at its foot and its head as is told. */
const bar = (low: Mm, high: Mm, foot: Mm, head = foot): Point[] => [
  { x: -foot / 2, y: low },
  { x: foot / 2, y: low },
  { x: head / 2, y: high },
  { x: -head / 2, y: high },
];

/** The figures of an hour in a kind of marks: the roles that they have, and their corners from the middle of the clock. */
const FIGURES: Readonly<
  Record<
    Exclude<Clock['marks'], 'none'>,
    (hour: number, diameter: Mm) => readonly (readonly [string, readonly Point[]])[]
  >
> = {
  bars: (hour, diameter) => {
    const { inner, outer } = reachOf(diameter);
    const wide = hour % 3 === 0 ? BAR.quarter : BAR.usual;
    return [['1', turned(bar(inner, outer, wide * diameter), hour / HOURS)]];
  },
  // Roman ones stand with their feet to the middle. Common practice, no source.
  roman: (hour, diameter) => {
    const { inner, outer } = reachOf(diameter);
    return numeralOf(hour, inner, outer).map((figure, i) => [
      `stroke-${i + 1}`,
      turned(figure, hour / HOURS),
    ]);
  },
  // Arabic ones stand upright. Common practice, no source.
  arabic: (hour, diameter) => {
    const { inner, outer } = reachOf(diameter);
    const round = (2 * Math.PI * hour) / HOURS;
    const [x, y] = [Math.sin(round), Math.cos(round)].map((share) => (share * (inner + outer)) / 2);
    return digitsOf(hour, DIGITS * diameter).map((figure, i) => [
      `digit-${i + 1}`,
      figure.map((p) => ({ x: p.x + (x ?? 0), y: p.y + (y ?? 0) })),
    ]);
  },
};

/** A mark's roles are those of its kind: they would keep their numbers in their names when the marks change. */
function marks(b: Building, { diameter, finish }: Clock, kind: keyof typeof FIGURES): void {
  let number = 0;
  for (const hour of upTo(HOURS)) {
    for (const [role, figure] of FIGURES[kind](hour, diameter)) {
      number += 1;
      drawn(b, `hour-${hour}-${role}`, { noun: 'hour-mark', number }, figure, finish);
    }
  }
}

/** The hour hand goes on with the minutes. */
function hands(b: Building, { diameter, hour, minute, finish }: Clock): void {
  const rounds = { hour: (hour + minute / 60) / HOURS, minute: minute / 60 };
  for (const which of ['hour', 'minute'] as const) {
    const { reach, width } = HAND[which];
    const hand = bar(-TAIL * diameter, reach * diameter, width * diameter, (width * diameter) / 3);
    drawn(b, `hand-${which}`, { noun: `${which}-hand` }, turned(hand, rounds[which]), finish);
  }
}
