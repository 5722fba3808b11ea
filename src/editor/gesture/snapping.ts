import type { Edit } from '../../design/edit/edit.ts';
import { inserting, removing } from '../../design/edit/make.ts';
import type { Axis, Design, Part, Rule } from '../../design/schema.ts';
import { preview } from '../../design/state.ts';
import { boxAround } from '../../geometry/box.ts';
import { boxesMeet } from '../../geometry/region.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { followersOf } from '../../layout/follow.ts';
import type { LaidPart, Layout } from '../../layout/laid.ts';
import { carrierOf } from '../../layout/place/carrier.ts';
import { snapPointTo } from '../../layout/snap/point.ts';
import { type Holding, heldBy, rankOf } from '../../layout/snap/ranking.ts';
import { holdingSize } from '../../layout/snap/sized.ts';
import type { Grip, Offer, OfferedRule, SnapInput, Thing } from '../../layout/snap/snapping.ts';
import { AXES, otherAxis, spanOf, withSpan } from '../../layout/span.ts';
import type { Mm } from '../../measure/units.ts';
import { remembering } from '../../plan/memory.ts';
import type { Guide } from '../document/guide.ts';
import { boundsFor, boundsIn, type Shown } from '../document/shown.ts';
import { freeId } from '../edit/ids.ts';
import { carrying, restingOn } from '../edit/lay.ts';
import { type EditorState, pixels } from '../state/store.ts';
import { lengthText } from '../words/text.ts';

/** Reach of snapping in pixels, whatever the zoom. */
const REACH = 8;

export interface InHand {
  readonly moving: readonly { readonly id: string; readonly box: Box }[];
  readonly grip: { readonly x: Grip; readonly y: Grip };
  /** The parts in the hand as they are in the design, or will be: one that is drawn is not there yet. */
  readonly parts: readonly Part[];
}

/** What a drag is drawn to: where everything in the hand comes to lie, and what releasing would hold. */
export interface Snap {
  readonly boxes: ReadonlyMap<string, Box>;
  readonly guides: readonly Guide[];
  readonly rules: readonly OfferedRule[];
  /** A margin says all there is to say of where its part is. */
  readonly held: Readonly<Record<Axis, Holding | null>>;
  /** What else the hand may have meant, the likeliest first. */
  readonly next: () => readonly Snap[];
  /** With the size that was typed along an axis, from the end at which the hand began. */
  readonly sized: (axis: Axis, size: Mm, began: 'low' | 'high') => Snap;
}

/** As the hand has it, held by nothing. */
export const asInHand = ({ moving }: Pick<InHand, 'moving'>): Snap => ({
  boxes: new Map(moving.map(({ id, box }) => [id, box])),
  guides: [],
  rules: [],
  held: { x: null, y: null },
  next: () => [],
  sized: (axis, size, began) =>
    asInHand({
      moving: moving.map(({ id, box }) => {
        const { low, high } = spanOf(box, axis);
        return { id, box: withSpan(box, axis, began === 'low' ? low : high - size, size) };
      }),
    }),
});

/** What stays where it is while the same parts move. */
interface Around {
  readonly others: readonly Thing[];
  /** Members of arrays, which are offered while they are near. */
  readonly members: readonly LaidPart[];
  /** Parts that go with those in the hand: they carry none of them. */
  readonly without: ReadonlySet<string>;
}

/** What a gesture goes over: everything as it lies while the gesture runs, and what of it stays. */
export interface Ground {
  readonly shown: Shown;
  /** `design`: without the rules that the gesture breaks; ids of the parts in hand, put together. */
  readonly around: (design: Design, ids: string) => Around;
}

/** The ground of one gesture, looked over once for the same parts. */
export const groundOf = (shown: Shown): Ground => ({
  shown,
  around: remembering((design, ids) => {
    const own = new Set(ids.split(' '));
    const following = followersOf(design, own);
    const free = (id: string) => !own.has(id) && !following.has(id);
    const strips = new Map(design.parts.map((p) => [p.id, straightStock(p)]));
    return {
      others: boundsFor(shown)
        .filter(({ id }) => free(id))
        .map((bounds) => ({ ...bounds, stock: strips.get(bounds.id) })),
      members: shown.layout.parts.filter((p) => p.member !== null && free(p.part)),
      without: new Set([...own, ...following, ...restingOn(design, own)]),
    };
  }),
});

const straightStock = (part: Part | undefined): string | undefined =>
  part?.kind === 'strip' && (part.lie === 'across' || part.lie === 'up') ? part.stock : undefined;

/** What a release would hold of what is in the hand: `design` is without the rules that the gesture breaks. */
export function snapInHand(state: EditorState, design: Design, ground: Ground, hand: InHand): Snap {
  const { shown } = ground;
  const { moving, grip, parts } = hand;
  const { others, members, without } = ground.around(design, moving.map((m) => m.id).join(' '));
  const outset = outsetIn(shown);
  const outside = moving.map(({ id, box }) => ({
    id,
    box: outset(id, box, 1),
    stock: straightStock(parts.find((p) => p.id === id)),
  }));
  const held = heldBy({
    moving: outside,
    grip,
    others: members.length > 0 ? [...others, ...membersNear(shown.layout, moving, members)] : others,
    support: supportOf(shown, hand, without),
    face: shown.face,
    reach: pixels(state.view, REACH),
    style: design.measure,
  });
  const snapWith = (held: Snap['held'], next: Snap['next'], as = grip): Snap => {
    const place = (thing: Thing): Box => {
      let { box } = thing;
      for (const axis of AXES) box = placedAlong(axis, box, held[axis], outside, as[axis]);
      return outset(thing.id, box, -1);
    };
    const found = [held.x, held.y].flatMap((one) => one ?? []);
    return {
      boxes: new Map(outside.map((thing) => [thing.id, place(thing)])),
      guides: found.flatMap(({ offers }) => offers.flatMap((offer) => guidesOf(offer, design))),
      rules: found.flatMap(({ rules }) => rules),
      held,
      next,
      sized: (axis, size, began) =>
        snapWith(holdingSize(held, axis, size, began), () => [], { ...as, [axis]: 'both' }),
    };
  };
  const next = () =>
    AXES.flatMap((axis) => (held[axis]?.next() ?? []).map((one) => ({ axis, one })))
      .sort((a, b) => likeliness(a.one) - likeliness(b.one))
      .map(({ axis, one }) => snapWith({ ...held, [axis]: one }, () => []));
  return snapWith(held, next);
}

const likeliness = ({ offers: [first] }: Holding): number => (first ? rankOf(first.reading) : 0);

/** Grows a box to the visible outside of its part, past it for frames around their path, and back (`way` -1). */
const outsetIn =
  (shown: Shown) =>
  (id: string, box: Box, way: 1 | -1): Box => {
    const rest = shown.layout.boxes.get(id);
    const outside = boundsIn(shown, id)?.box;
    if (!rest || !outside) return box;
    const dx = way * (rest.x - outside.x);
    const dy = way * (rest.y - outside.y);
    return dx === 0 && dy === 0
      ? box
      : { x: box.x - dx, y: box.y - dy, w: box.w + 2 * dx, h: box.h + 2 * dy };
  };

function placedAlong(axis: Axis, box: Box, held: Holding | null, all: readonly Thing[], grip: Grip): Box {
  if (!held) return box;
  const { low, high } = held.span;
  if (grip !== 'move') return withSpan(box, axis, low, high - low);
  const start = (one: Thing) => (axis === 'x' ? one.box.x : one.box.y);
  const shift = low - Math.min(...all.map(start));
  return axis === 'x' ? { ...box, x: box.x + shift } : { ...box, y: box.y + shift };
}

/** What lies under the one part in the hand; of several the face, which is under all of them. */
function supportOf(shown: Shown, { moving, parts }: InHand, without: ReadonlySet<string>) {
  const [only] = moving;
  const part = parts.find((p) => p.id === only?.id);
  if (!only || !part || moving.length > 1) return 'face';
  const found = carrierOf(carrying(shown), part, only.box, (id) => without.has(id));
  return 'part' in found ? found.part : `level:${found.level}`;
}

/** The members of an array are offered one by one while it is this near to what moves, and no more of them in all. */
const NEAR: Mm = 300;
const MOST_MEMBERS = 400;

/** Members of the arrays that are near, as `id[column,row]`. */
function membersNear(
  layout: Layout,
  moving: InHand['moving'],
  members: readonly LaidPart[],
): readonly { readonly id: string; readonly box: Box }[] {
  const whole = boxAround(moving.map((m) => m.box));
  if (!whole) return [];
  const reach = { x: whole.x - NEAR, y: whole.y - NEAR, w: whole.w + 2 * NEAR, h: whole.h + 2 * NEAR };
  const near = new Map<string, boolean>();
  const isNear = (id: string): boolean => {
    const known = near.get(id);
    if (known !== undefined) return known;
    const box = layout.boxes.get(id);
    const found = box !== undefined && boxesMeet(box, reach);
    near.set(id, found);
    return found;
  };
  return members.filter((p) => isNear(p.part)).slice(0, MOST_MEMBERS);
}

/** Where a single point is drawn to, such as a corner, with the lines that show it. */
export interface PointInHand {
  readonly dx: Mm;
  readonly dy: Mm;
  readonly guides: readonly Guide[];
}

export const NO_SNAP: PointInHand = { dx: 0, dy: 0, guides: [] };

/**
 * The best for a single point: whatever edges snap to, and lines through other points. `part`: the part that it
 * belongs to, whose own edges go with it. Nothing is held by rules.
 */
export function snapPoint(
  state: EditorState,
  shown: Shown,
  p: Point,
  part: string | null,
  points: readonly Point[],
): PointInHand {
  const { design } = state.edit;
  const following = part === null ? new Set<string>() : followersOf(design, new Set([part]));
  const reach = pixels(state.view, REACH);
  const others = boundsFor(shown).filter(({ id }) => id !== part && !following.has(id));
  const input: Pick<SnapInput, 'others' | 'face' | 'reach' | 'style'> = {
    others,
    face: shown.face,
    reach,
    style: design.measure,
  };
  const best = snapPointTo(p, input);
  const along = (axis: Axis): { readonly delta: Mm; readonly guides: readonly Guide[] } => {
    const { delta, guide } = best[axis];
    const own = alignedWith(p, points, axis, guide ? delta : reach);
    if (own) return { delta: own.delta, guides: [own.guide] };
    return { delta, guides: guide ? [lineOf(axis, guide)] : [] };
  };
  const [x, y] = [along('x'), along('y')];
  return { dx: x.delta, dy: y.delta, guides: [...x.guides, ...y.guides] };
}

/** The nearest of other points that is in line along an axis, when it is nearer than what was found already. */
function alignedWith(p: Point, others: readonly Point[], axis: Axis, within: Mm) {
  const across = otherAxis(axis);
  let found: { readonly delta: Mm; readonly guide: Guide } | null = null;
  let least = Math.abs(within);
  for (const q of others) {
    const delta = q[axis] - p[axis];
    if (Math.abs(delta) > least) continue;
    least = Math.abs(delta);
    const [from, to] = [Math.min(p[across], q[across]), Math.max(p[across], q[across])];
    found = { delta, guide: { kind: 'line', axis, at: q[axis], from, to } };
  }
  return found;
}

function lineOf(axis: Axis, { from, to }: { readonly from: Point; readonly to: Point }): Guide {
  const across = otherAxis(axis);
  return { kind: 'line', axis, at: from[axis], from: from[across], to: to[across] };
}

function guidesOf({ axis, guides, dimensions }: Offer, design: Design): Guide[] {
  return [
    ...guides.map((guide) => lineOf(axis, guide)),
    ...dimensions
      .filter(({ length }) => length > 0)
      .map(
        ({ from, to, length }): Guide => ({
          kind: 'gap',
          axis,
          from: from[axis],
          to: to[axis],
          cross: from[otherAxis(axis)],
          label: lengthText(design, length),
        }),
      ),
  ];
}

/** The edits that hold what a snap offered. Touched at one end before and at the other now, a part runs between. */
export function ruleEdits(design: Design, { parts }: InHand, snap: Snap): Edit[] {
  const ids = new Set(parts.map((part) => part.id));
  const edits: Edit[] = [];
  const taken = new Set<string>();
  for (const offered of snap.rules) {
    if (!isAmongParts(offered, ids)) continue;
    const met = metAtTheOtherEnd(design, offered);
    if (met) edits.push(removing('rules', met.id));
    const id = met?.id ?? freeId(design, 'rule', taken);
    taken.add(id);
    edits.push(inserting('rules', { ...(met ? runsBetween(met, offered) : offered), id } as Rule));
  }
  return edits;
}

/** A keep-clear may snap, but no rule holds it. */
const isAmongParts = (rule: OfferedRule, ids: ReadonlySet<string>): boolean =>
  rule.kind === 'set' || rule.kind === 'gap' ? ids.has(rule.edge.of) : ids.size > 0;

type Set = Extract<Rule, { readonly kind: 'set' }>;

const isTouch = (rule: OfferedRule | Rule): rule is Set | Extract<OfferedRule, { kind: 'set' }> =>
  rule.kind === 'set' && rule.distance === 0 && rule.edge.side !== 'mid' && rule.from.side !== 'mid';

function metAtTheOtherEnd(design: Design, offered: OfferedRule): Set | undefined {
  if (!isTouch(offered)) return undefined;
  return design.rules.find(
    (rule): rule is Set =>
      isTouch(rule) &&
      rule.axis === offered.axis &&
      rule.edge.of === offered.edge.of &&
      rule.edge.side !== offered.edge.side,
  );
}

function runsBetween(met: Set, offered: OfferedRule): OfferedRule {
  if (!isTouch(offered)) return offered;
  const [low, high] = met.edge.side === 'low' ? [met, offered] : [offered, met];
  return {
    kind: 'between',
    axis: met.axis,
    part: met.edge.of,
    low: low.from,
    high: high.from,
    insetLow: 0,
    insetHigh: 0,
  };
}

/** A design with some edits made, for what a gesture goes on from. */
export const edited = (state: EditorState, edits: readonly Edit[]): Design =>
  edits.length > 0 ? preview(state.edit, edits) : state.edit.design;
