import type { Edit } from '../../design/edit/edit.ts';
import { isBought } from '../../design/made.ts';
import { mentionsOf } from '../../design/references.ts';
import { isAlong, roomsOf } from '../../design/rule/table.ts';
import type { Axis, Rule } from '../../design/schema.ts';
import { boxAround } from '../../geometry/box.ts';
import type { Box } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { type Stretch, stretchTo } from '../../layout/arrange/stretch.ts';
import { partOf } from '../../layout/reference.ts';
import {
  AXES,
  otherAxis,
  type Span,
  sizeOf,
  spanOf,
  spansMeet,
  startOf,
  withSpan,
} from '../../layout/span.ts';
import { structureOf } from '../../layout/structure.ts';
import type { Mm } from '../../measure/units.ts';
import { placeOfEdge } from '../document/edges.ts';
import { type Shown, shownFrom } from '../document/shown.ts';
import { editsToLay } from './lay.ts';
import { editsToLoosen } from './loosen.ts';
import { movableBoxes } from './movable.ts';
import { type Boxes, editsToPlace } from './place.ts';
import { made, type Typed } from './typed.ts';

/** The size that several parts together are to have along an axis, and the end that stays. */
export interface Sizing {
  readonly axis: Axis;
  readonly size: Mm;
  readonly keep: 'low' | 'high';
}

/** What sizing several parts comes to, with them held. */
export interface Resized extends Typed {
  readonly shown: Shown;
}

/** Far enough from what was asked for that a rule stands against it. */
const OFF = 10 * SAME_LENGTH;

/**
 * The edits by which several parts together have other sizes. Widths of stock and distances that rules hold between
 * the parts keep their length, all else gives alike: what touches goes on touching. Rules go on holding, those with
 * a measure to things outside take another one; the ones against which it could not be are let go, and told.
 * Null where nothing of it gives way.
 */
export function editsToResize(
  shown: Shown,
  selection: readonly string[],
  sizings: readonly Sizing[],
): Resized | null {
  const { design, layout } = shown;
  const before = movableBoxes(design, layout.boxes, selection);
  const after = stretched(shown, before, sizings);
  if (!after) return null;
  const held = new Set(before.keys());
  const holding = new Set(layout.rules.filter(({ holds }) => holds).map(({ id }) => id));
  const touched = touchingIn(before, sizings);
  let loosen: readonly Edit[] = [];
  let then = shown;
  // First what holds the outermost edges that are pulled, then the parts that have them, then whatever is in the way.
  for (const round of [0, 1, 2, 3]) {
    const loose = made(design, loosen);
    const edits = [...loosen, ...editsToPlace(loose, before, after)];
    then = shownFrom(made(design, edits), held, then);
    const { rules, boxes } = then.layout;
    const fought = new Set(rules.filter(({ id, holds }) => !holds && holding.has(id)).map(({ id }) => id));
    const off = sizings.flatMap((sizing) => [
      ...offIn(boxes, after, sizing),
      ...apartIn(boxes, before, touched, sizing),
    ]);
    if (fought.size === 0 && off.length === 0) {
      const broken = new Set(loosen.flatMap((edit) => ('id' in edit ? edit.id : [])));
      const letGo = design.rules.filter((rule) => broken.has(rule.id));
      const lay = editsToLay(then, held);
      const all = [...edits, ...lay];
      return { edits: all, letGo, shown: lay.length === 0 ? then : shownFrom(made(design, all), held, then) };
    }
    const moved = [...after].filter(([id, box]) => differs(boxes.get(id), box)).map(([id]) => id);
    const ids = new Set(round < 2 ? off : moved);
    for (const { axis, keep } of sizings) {
      const hand = round === 0 ? (keep === 'low' ? 'high' : 'low') : 'each';
      const isInTheWay = (rule: Rule) =>
        fought.has(rule.id) || mentionsOf(rule).follow.some((of) => ids.has(partOf(of) ?? ''));
      loosen = [...loosen, ...editsToLoosen(made(design, loosen), held, axis, hand, isInTheWay)];
    }
  }
  return null;
}

const differs = (a: Box | undefined, b: Box): boolean =>
  a !== undefined &&
  AXES.some(
    (axis) =>
      Math.abs(sizeOf(a, axis) - sizeOf(b, axis)) + Math.abs(spanOf(a, axis).low - spanOf(b, axis).low) > OFF,
  );

/** The parts that are to end where all of them do along an axis, and do not; none where others end there. */
function offIn(boxes: Boxes, after: Boxes, { axis }: Sizing): string[] {
  const wanted = around(after, axis);
  const there = around(new Map([...after].map(([id, box]) => [id, boxes.get(id) ?? box])), axis);
  if (!wanted || !there) return [];
  const ends = (['low', 'high'] as const).filter((end) => Math.abs(wanted[end] - there[end]) > OFF);
  return [...after].flatMap(([id, box]) => {
    const now = boxes.get(id) ?? box;
    const isOff = ends.some(
      (end) =>
        Math.abs(spanOf(box, axis)[end] - wanted[end]) <= OFF ||
        Math.abs(spanOf(now, axis)[end] - there[end]) <= OFF,
    );
    return isOff ? [id] : [];
  });
}

/** Two parts of which one ends along an axis where the other begins, beside each other. */
interface Touching {
  readonly axis: Axis;
  readonly low: string;
  readonly high: string;
}

function touchingIn(boxes: Boxes, sizings: readonly Sizing[]): Touching[] {
  return sizings.flatMap(({ axis }) => {
    const across = otherAxis(axis);
    return [...boxes].flatMap(([low, box]) => {
      const end = spanOf(box, axis).high;
      return [...boxes]
        .filter(
          ([high, next]) =>
            Math.abs(startOf(next, axis) - end) <= OFF &&
            high !== low &&
            spansMeet(spanOf(box, across), spanOf(next, across)),
        )
        .map(([high]): Touching => ({ axis, low, high }));
    });
  });
}

/** Parts that touched along an axis and no longer do. */
function apartIn(boxes: Boxes, before: Boxes, touched: readonly Touching[], { axis }: Sizing): string[] {
  const spanIn = (id: string) => {
    const box = boxes.get(id) ?? before.get(id);
    return box ? spanOf(box, axis) : null;
  };
  return touched.flatMap((pair) => {
    const [low, high] = [spanIn(pair.low), spanIn(pair.high)];
    const isApart = pair.axis === axis && low && high && Math.abs(low.high - high.low) > OFF;
    return isApart ? [pair.low, pair.high] : [];
  });
}

function around(boxes: Boxes, axis: Axis): Span | null {
  const box = boxAround(boxes.values());
  return box && spanOf(box, axis);
}

/** The boxes of the parts once they are stretched together; null where none of them changes. */
function stretched(shown: Shown, before: Boxes, sizings: readonly Sizing[]): Boxes | null {
  let after: Boxes = before;
  for (const { axis, size, keep } of sizings) {
    const from = around(before, axis);
    const stretch = from && stretchTo(from, rigidIn(shown, before, axis), size, keep);
    if (stretch) after = new Map([...after].map(([id, box]) => [id, stretchedBox(box, axis, stretch)]));
  }
  return [...after].some(([id, box]) => differs(before.get(id), box)) ? after : null;
}

function stretchedBox(box: Box, axis: Axis, stretch: Stretch): Box {
  const { low, high } = spanOf(box, axis);
  const start = stretch(low);
  return withSpan(box, axis, start, stretch(high) - start);
}

/** What keeps its length along an axis: stock across its width, what is bought, and distances that rules hold. */
function rigidIn(shown: Shown, boxes: Boxes, axis: Axis): Span[] {
  const { design, stocks } = shown;
  const ofParts = design.parts.flatMap((part): Span[] => {
    const box = boxes.get(part.id);
    if (!box) return [];
    const span = spanOf(box, axis);
    const { fixed, inset } = structureOf(part, axis, stocks, undefined);
    if (fixed !== null || isBought(part)) return [span];
    return [
      { low: span.low, high: span.low + inset },
      { low: span.high - inset, high: span.high },
    ];
  });
  const keeps = design.keepClears.flatMap(({ id }) => {
    const box = boxes.get(id);
    return box ? [spanOf(box, axis)] : [];
  });
  return [...ofParts, ...keeps, ...design.rules.flatMap((rule) => heldBy(rule, shown, boxes, axis))];
}

/** The distances along an axis that a rule holds among some parts. */
function heldBy(rule: Rule, shown: Shown, boxes: Boxes, axis: Axis): Span[] {
  if (!isAlong(rule, axis)) return [];
  const parts = new Set(mentionsOf(rule).follow.map((of) => partOf(of) ?? ''));
  return [...parts]
    .flatMap((part) => roomsOf(rule, part))
    .flatMap((room): Span[] => {
      if (room.axis !== axis || room.measure === undefined) return [];
      const edges = [...room.from, ...room.to];
      if (!edges.every(({ of }) => boxes.has(partOf(of) ?? ''))) return [];
      const places = edges.flatMap((edge) => placeOfEdge(edge, axis, shown) ?? []);
      return places.length < 2 ? [] : [{ low: Math.min(...places), high: Math.max(...places) }];
    });
}
