import type { Face } from '../../bed/face.ts';
import { mentionsOf } from '../../design/references.ts';
import { roomsOf, shapeOf } from '../../design/rule/table.ts';
import type { Axis, Edge, PartArray, Rule } from '../../design/schema.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { SAME_PLACE } from '../../geometry/tolerance.ts';
import { gridOf } from '../../layout/place/array.ts';
import { partOf } from '../../layout/reference.ts';
import { isFixedAlong } from '../../layout/structure.ts';
import { keptBy } from '../../list/keptBy.ts';
import type { Mm } from '../../measure/units.ts';
import { edgeOfBox, placeOfEdge } from '../document/edges.ts';
import type { Guide } from '../document/guide.ts';
import type { Shown } from '../document/shown.ts';
import type { ChosenOpening } from '../edit/openings.ts';
import type { OpeningMeasure } from '../state/store.ts';

/** Pixels that lines stand off: those of the face, and the width and height of a part. */
export const OVERALL = 26;
export const STAND_OFF = { x: 30, y: 34 } as const;

/** A dimension line of the selection: between two places on an axis, at a height on the other. */
export interface Dimension {
  readonly key: string;
  readonly axis: Axis;
  readonly from: Mm;
  readonly to: Mm;
  readonly cross: Mm;
  /** Pixels that the line stands off from `cross`, so that lines do not lie on the part. */
  readonly off: number;
  /** Pixels that its plate stands beside the middle of the line. */
  readonly aside?: Point;
  readonly edits:
    | { readonly rule: string; readonly measure?: string }
    | { readonly part: string; readonly side: 'w' | 'h' }
    | OpeningMeasure
    /** The spacing of an array along the dimension: how many, the pitch, or the largest gap. */
    | { readonly array: string }
    | null;
  readonly role: 'size' | 'rule' | 'gap' | 'face';
}

/** Dimensions shown for one selected part: its size, and the rules that place it. */
export function dimensionsOf(shown: Shown, id: string, box: Box): Dimension[] {
  const { design } = shown;
  const part = design.parts.find((p) => p.id === id);
  const size = (axis: Axis, side: 'w' | 'h', editable: boolean): Dimension => ({
    key: side,
    axis,
    from: axis === 'x' ? box.x : box.y,
    to: axis === 'x' ? box.x + box.w : box.y + box.h,
    cross: axis === 'x' ? box.y : box.x + box.w,
    off: STAND_OFF[axis],
    edits: editable && !part?.locked ? { part: id, side } : null,
    role: 'size',
  });
  const found = [
    size('x', 'w', !part || !isFixedAlong(part, 'x')),
    size('y', 'h', !part || !isFixedAlong(part, 'y')),
  ];
  if (part?.kind === 'array') found.push(...firstGaps(part, box, shown));
  for (const rule of design.rules) {
    if (placedBy(rule).has(id)) found.push(...dimensionsOfRule(rule, shown, id, box));
  }
  return found;
}

/** Dimensions of an opening: its size, and its margins from the sides of its part. */
export function dimensionsOfOpening({ part, box, hole, opening }: ChosenOpening): Dimension[] {
  const of = (side: OpeningMeasure['side'], axis: Axis, from: Mm, to: Mm): Dimension[] => {
    const isSize = side === 'w' || side === 'h';
    if (to - from < 0.05) return [];
    const cross = isSize ? (axis === 'x' ? hole.y : hole.x + hole.w) : aside(hole, axis, 0.38);
    const edits = part.locked ? null : { part: part.id, opening: opening.id, side };
    return [
      {
        key: side,
        axis,
        from,
        to,
        cross,
        off: isSize ? STAND_OFF[axis] : 0,
        edits,
        role: isSize ? 'size' : 'rule',
      },
    ];
  };
  const [right, top] = [hole.x + hole.w, hole.y + hole.h];
  return [
    ...of('w', 'x', hole.x, right),
    ...of('h', 'y', hole.y, top),
    ...of('left', 'x', box.x, hole.x),
    ...of('right', 'x', right, box.x + box.w),
    ...of('bottom', 'y', box.y, hole.y),
    ...of('top', 'y', top, box.y + box.h),
  ];
}

/** The first gap of a row and of a column of an array: the others are the same. */
function firstGaps(array: PartArray, box: Box, { stocks }: Shown): Dimension[] {
  const { slots } = gridOf(array, box, stocks);
  const place = (column: number, row: number) => slots.find((s) => s.column === column && s.row === row)?.box;
  const first = place(0, 0);
  const gap = (axis: Axis, next: Box | undefined): Dimension[] =>
    first && next
      ? [
          {
            key: `${array.id}-gap-${axis}`,
            axis,
            from: edgeOfBox(first, axis, 'high'),
            to: edgeOfBox(next, axis, 'low'),
            cross: aside(first, axis),
            off: 0,
            edits: array.locked ? null : { array: array.id },
            role: 'gap',
          },
        ]
      : [];
  return [...gap('x', place(1, 0)), ...gap('y', place(0, 1))];
}

/** Off the middle, where the handles are, and of an opening off the quarter, where one adds a corner. */
const aside = (box: Box, axis: Axis, share = 0.28): Mm =>
  axis === 'x' ? box.y + box.h * share : box.x + box.w * share;

/** What a rule places: each frame of a drag asks all rules of it. */
const placedBy = keptBy(
  (rule: Rule): ReadonlySet<string> =>
    new Set(mentionsOf(rule).follow.flatMap((of) => [of, partOf(of) ?? of])),
);

/** The rooms that a rule keeps beside a part, where there is any to see. */
function dimensionsOfRule(rule: Rule, shown: Shown, id: string, box: Box): Dimension[] {
  const { drawn } = shapeOf(rule);
  if (!drawn) return [];
  return roomsOf(rule, id).flatMap(({ key, axis, measure, ...edges }): Dimension[] => {
    const places = (all: readonly Edge[]) => all.flatMap((edge) => placeOfEdge(edge, axis, shown) ?? []);
    const from = Math.max(...places(edges.from));
    const to = Math.min(...places(edges.to));
    if (!Number.isFinite(from) || !Number.isFinite(to) || Math.abs(to - from) < 0.05) return [];
    // A gap like another one is measured there.
    const edits = drawn === 'gap' || measure ? { rule: rule.id, ...(measure && { measure }) } : null;
    const role = drawn === 'gap' ? 'gap' : 'rule';
    return [{ key: rule.id + key, axis, from, to, cross: aside(box, axis), off: 0, edits, role }];
  });
}

/** The face's own width and height, along its lower and right edge. */
export function faceDimensions(face: Face): Dimension[] {
  return [
    { key: 'face-w', axis: 'x', from: 0, to: face.width, cross: 0, off: OVERALL, edits: null, role: 'face' },
    {
      key: 'face-h',
      axis: 'y',
      from: 0,
      to: face.height,
      cross: face.width,
      off: OVERALL,
      edits: null,
      role: 'face',
    },
  ];
}

/** Guides without those that a dimension of the selection measures too: held while it is carried, it has its own. */
export const withoutMeasured = (guides: readonly Guide[], dimensions: readonly Dimension[]): Guide[] =>
  guides.filter((guide) => {
    if (guide.kind !== 'gap') return true;
    const ends = (of: { readonly from: Mm; readonly to: Mm }) =>
      [Math.min(of.from, of.to), Math.max(of.from, of.to)] as const;
    const [low, high] = ends(guide);
    return !dimensions.some((d) => {
      const [a, b] = ends(d);
      return d.axis === guide.axis && Math.abs(a - low) < SAME_PLACE && Math.abs(b - high) < SAME_PLACE;
    });
  });

/** Ends of a dimension line on the screen, and the middle of its plate. */
export function dimensionOnScreen(d: Dimension, toScreen: (p: { x: Mm; y: Mm }) => { x: number; y: number }) {
  const at = (along: Mm) => (d.axis === 'x' ? { x: along, y: d.cross } : { x: d.cross, y: along });
  const shift = d.axis === 'x' ? { x: 0, y: d.off } : { x: d.off, y: 0 };
  const a = toScreen(at(d.from));
  const b = toScreen(at(d.to));
  const from = { x: a.x + shift.x, y: a.y + shift.y };
  const to = { x: b.x + shift.x, y: b.y + shift.y };
  const { x, y } = d.aside ?? { x: 0, y: 0 };
  const middle = { x: (from.x + to.x) / 2 + x, y: (from.y + to.y) / 2 + y };
  return { foot: [a, b] as const, from, to, middle };
}
