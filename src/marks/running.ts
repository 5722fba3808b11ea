import { isBoards, isBought } from '../design/made.ts';
import type { Axis } from '../design/schema.ts';
import { boxAround } from '../geometry/box.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { type Course, holesOf, type Laid, type LaidPart, type Leg } from '../layout/laid.ts';
import { hasMiddle } from '../layout/place/outlines.ts';
import { AXES, otherAxis, sizeOf, startOf } from '../layout/span.ts';
import { pick } from '../list/at.ts';
import { grouped } from '../list/grouped.ts';
import { roundLength } from '../measure/round.ts';
import type { MeasureStyle } from '../measure/style.ts';
import type { Mm } from '../measure/units.ts';
import type { Mark, StickMark, StoryStick } from './result.ts';

const DATUM = { x: 'left', y: 'bottom' } as const;
/** Edges closer than a pencil line are one line on the stick. */
const ONE_LINE: Mm = 0.01;

/** Edges of a part that are marked: both of its own, the middle of what is set by its middle, and holes for its screws. */
function edgesOf(laid: LaidPart, axis: Axis): { readonly edge: Mark['edge']; readonly at: Mm }[] {
  // Of a fill the boards are marked that lie square to the axis; its pattern tells the others.
  if (isBoards(laid) && !(isRowed(laid.spec.pattern) && liesAlong(laid.leg, otherAxis(axis)))) return [];
  if ('course' in laid.spec && laid.spec.course && !isRuled(laid.spec.course, axis)) return [];
  const [low, size] = [startOf(laid.box, axis), sizeOf(laid.box, axis)];
  const edges: { edge: Mark['edge']; at: Mm }[] = [{ edge: 'low', at: low }];
  const byMiddle = isBought(laid) || ('shape' in laid.spec && hasMiddle(laid.spec.shape));
  if (byMiddle) edges.push({ edge: 'mid', at: low + size / 2 });
  edges.push({ edge: 'high', at: low + size });
  if (isBought(laid)) {
    const holes = holesOf(laid).map((hole) => hole[axis]);
    edges.push(...mergedAlong(holes).map((at) => ({ edge: 'hole', at }) as const));
  }
  return edges;
}

/** Places along an axis, each once. */
const mergedAlong = (all: readonly Mm[]): Mm[] =>
  [...all].sort((a, b) => a - b).filter((at, i, sorted) => i === 0 || at - pick(sorted, i - 1) > ONE_LINE);

const isRowed = ({ form }: Laid<'fill'>['spec']['pattern']): boolean => ROWED.includes(form);
const ROWED: readonly Laid<'fill'>['spec']['pattern']['form'][] = [
  'planks',
  'battened',
  'lattice',
  'courses',
  'grooved',
  'louvers',
];

/** Courses repeat after this many at the most. */
const REPEATS = 3;

/** Of painted courses every level joint is marked, and the upright ones of those that the others repeat. */
const isRuled = ({ angle, row }: Course, axis: Axis): boolean =>
  angle === (axis === 'y' ? 0 : 90) || (angle === (axis === 'y' ? 90 : 0) && row < REPEATS);

const liesAlong = ({ start, end }: Leg, axis: Axis): boolean =>
  Math.abs(axis === 'x' ? end.y - start.y : end.x - start.x) <= SAME_LENGTH;

/** How far a fill reaches along an axis. */
function outsideOf(part: string, pieces: readonly Laid<'fill'>[], axis: Axis) {
  const around = boxAround(pieces.map(({ box }) => box));
  if (!around) return [];
  const [low, size] = [startOf(around, axis), sizeOf(around, axis)];
  return [
    { part, edge: 'low', at: low },
    { part, edge: 'high', at: low + size },
  ] as const;
}

/**
 * Running marks of every laid part from the left and bottom edges of the face, along each axis from the
 * datum on. Each is rounded by itself from the datum, so that no mark is off by more than half a step,
 * however many stand before it.
 */
export function runningMarks(parts: readonly LaidPart[], style: MeasureStyle): Mark[] {
  const fills = grouped(
    parts.filter((laid) => isBoards(laid)),
    (laid) => laid.part,
  );
  return AXES.flatMap((axis) =>
    [
      ...parts.flatMap((laid) => edgesOf(laid, axis).map((found) => ({ part: laid.id, ...found }))),
      ...[...fills].flatMap(([part, pieces]) => outsideOf(part, pieces, axis)),
    ]
      .map(({ part, edge, at }): Mark => {
        const shown = roundLength(at, style);
        return { datum: DATUM[axis], axis, at, part, edge, shown };
      })
      .sort((a, b) => a.at - b.at),
  );
}

/** The story stick of each axis that has marks: edges that fall on one line share it. */
export function storySticks(marks: readonly Mark[]): StoryStick[] {
  return AXES.flatMap((axis) => {
    const lines: { at: Mm; shown: Mm; edges: StickMark['edges'][number][] }[] = [];
    for (const { at, shown, part, edge } of marks.filter((mark) => mark.axis === axis)) {
      const last = lines[lines.length - 1];
      if (last && at - last.at <= ONE_LINE) last.edges.push({ part, edge });
      else lines.push({ at, shown, edges: [{ part, edge }] });
    }
    return lines.length > 0 ? [{ axis, datum: DATUM[axis], marks: lines }] : [];
  });
}
