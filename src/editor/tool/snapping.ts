import type { Edit } from '../../design/edit/edit.ts';
import type { Axis, Design, Rule } from '../../design/schema.ts';
import { boxAround } from '../../geometry/box.ts';
import { boxesMeet } from '../../geometry/region.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import type { Bounds } from '../../layout/bounds.ts';
import { followersOf } from '../../layout/follow.ts';
import type { LaidPart, Layout } from '../../layout/laid.ts';
import { bestSnap } from '../../layout/snap/snap.ts';
import type { Grip, OfferedRule, SnapCandidate } from '../../layout/snap/snapping.ts';
import type { Mm } from '../../measure/units.ts';
import { remembering } from '../../plan/memory.ts';
import { freeId } from '../action/ids.ts';
import { rulesThatHold } from '../action/loosen.ts';
import { boundsFor, faceFor } from '../state/derive.ts';
import { type EditorState, pixels } from '../state/store.ts';
import { stocksOf } from '../state/tables.ts';
import { lengthText } from '../state/text.ts';
import type { Guide } from './guide.ts';

/** What a drag is drawn to: how far, what is shown for it, and the rules that releasing would hold. */
export interface Snap {
  readonly dx: Mm;
  readonly dy: Mm;
  readonly guides: readonly Guide[];
  readonly rules: readonly OfferedRule[];
}

export const NO_SNAP: Snap = { dx: 0, dy: 0, guides: [], rules: [] };

/** Reach of snapping in pixels, whatever the zoom. */
const REACH = 8;

export interface InHand {
  readonly moving: readonly { readonly id: string; readonly box: Box }[];
  readonly grip: { readonly x: Grip; readonly y: Grip };
}

/** What stays as it is while the same parts move over the same layout. */
interface Around {
  readonly free: (axis: Axis) => boolean;
  readonly others: readonly Bounds[];
  /** Members of arrays, which are offered while they are near. */
  readonly members: readonly LaidPart[];
  readonly stockWidths: readonly Mm[];
}

const around = remembering((design: Design, layout: Layout, ids: string): Around => {
  const own = new Set(ids.split(' '));
  const following = followersOf(design, own);
  const free = (id: string) => !own.has(id) && !following.has(id);
  const held = (axis: Axis) => [...own].some((id) => rulesThatHold(design, id, axis).length > 0);
  const still = { x: !held('x'), y: !held('y') };
  return {
    free: (axis) => still[axis],
    others: [...boundsFor(layout).values()].filter(({ id }) => free(id)),
    members: layout.parts.filter((p) => p.member !== null && free(p.part)),
    stockWidths: usedWidths(design),
  };
});

/** The best that is within reach on each axis. An axis on which rules hold a part does not snap. */
export function snapInHand(state: EditorState, layout: Layout, { moving, grip }: InHand): Snap {
  const { design } = state.edit;
  const { free, others, members, stockWidths } = around(design, layout, moving.map((m) => m.id).join(' '));
  /** Where the visible outside of a part is when its box is there: past it for frames around their path. */
  const outsideOf = (id: string, box: Box): Box => {
    const rest = layout.boxes.get(id);
    const outside = boundsFor(layout).get(id)?.box;
    if (!rest || !outside) return box;
    const dx = rest.x - outside.x;
    const dy = rest.y - outside.y;
    return dx === 0 && dy === 0
      ? box
      : { x: box.x - dx, y: box.y - dy, w: box.w + 2 * dx, h: box.h + 2 * dy };
  };
  const best = bestSnap({
    moving: moving.map(({ id, box }) => ({ id, box: outsideOf(id, box) })),
    handle: { x: free('x') ? grip.x : null, y: free('y') ? grip.y : null },
    others: members.length > 0 ? [...others, ...membersNear(layout, moving, members)] : others,
    face: faceFor(design.bed),
    tolerance: pixels(state.view, REACH),
    style: design.measure,
    stockWidths,
  });
  const found = [best.x, best.y].filter((c) => c !== null);
  return {
    dx: best.x?.delta ?? 0,
    dy: best.y?.delta ?? 0,
    guides: found.flatMap((c) => guidesOf(c, design)),
    rules: found.flatMap((c) => c.rule ?? []),
  };
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

/**
 * The best for a single point, such as a corner: whatever edges snap to, and lines through other points.
 * `part`: the part that it belongs to, whose own edges go with it. Nothing is held by rules.
 */
export function snapPoint(
  state: EditorState,
  layout: Layout,
  p: Point,
  part: string | null,
  others: readonly Point[],
): Snap {
  const { design } = state.edit;
  const following = part === null ? new Set<string>() : followersOf(design, new Set([part]));
  const tolerance = pixels(state.view, REACH);
  const best = bestSnap({
    moving: [{ id: 'corner', box: { x: p.x, y: p.y, w: 0, h: 0 } }],
    handle: { x: 'move', y: 'move' },
    others: [...boundsFor(layout).values()].filter(({ id }) => id !== part && !following.has(id)),
    face: faceFor(design.bed),
    tolerance,
    style: design.measure,
    stockWidths: [],
  });
  const alongside = (axis: Axis) => alignedWith(p, others, axis, best[axis]?.delta ?? tolerance);
  const [x, y] = [alongside('x'), alongside('y')];
  const kept = [x ? null : best.x, y ? null : best.y].filter((c) => c !== null);
  return {
    dx: x?.delta ?? best.x?.delta ?? 0,
    dy: y?.delta ?? best.y?.delta ?? 0,
    guides: [...kept.flatMap((c) => guidesOf(c, design)), ...[x, y].flatMap((own) => own?.guide ?? [])],
    rules: [],
  };
}

/** The nearest of other points that is in line along an axis, when it is nearer than what was found already. */
function alignedWith(p: Point, others: readonly Point[], axis: Axis, within: Mm) {
  const along = (q: Point) => (axis === 'x' ? q.x : q.y);
  const across = (q: Point) => (axis === 'x' ? q.y : q.x);
  let found: { readonly delta: Mm; readonly guide: Guide } | null = null;
  let least = Math.abs(within);
  for (const q of others) {
    const delta = along(q) - along(p);
    if (Math.abs(delta) > least) continue;
    least = Math.abs(delta);
    const [from, to] = [Math.min(across(p), across(q)), Math.max(across(p), across(q))];
    found = { delta, guide: { kind: 'line', axis, at: along(q), from, to } };
  }
  return found;
}

/** Widths of the strips on this face: room is left for those rather than for any stock there is. */
function usedWidths(design: Design): Mm[] {
  const stocks = stocksOf(design);
  const widths = design.parts.flatMap((p) => {
    const stock = p.kind === 'strip' ? stocks.get(p.stock) : undefined;
    return stock && stock.form !== 'sheet' ? [stock.width] : [];
  });
  return [...new Set(widths)].sort((a, b) => a - b);
}

function guidesOf(candidate: SnapCandidate, design: Design): Guide[] {
  const { axis } = candidate;
  const along = (p: { x: Mm; y: Mm }) => (axis === 'x' ? p.x : p.y);
  const across = (p: { x: Mm; y: Mm }) => (axis === 'x' ? p.y : p.x);
  return [
    ...candidate.guides.map(
      ({ from, to }): Guide => ({ kind: 'line', axis, at: along(from), from: across(from), to: across(to) }),
    ),
    ...candidate.dimensions.map(
      ({ from, to, length }): Guide => ({
        kind: 'gap',
        axis,
        from: along(from),
        to: along(to),
        cross: across(from),
        label: lengthText(design, length),
      }),
    ),
  ];
}

/**
 * The edits that hold what a snap offered. Set rules of the same parts on the same axis give way to it,
 * since two of them would fight as soon as either changed; of a pulled side only that side's.
 */
export function ruleEdits(design: Design, { moving, grip }: InHand, snap: Snap): Edit[] {
  const parts = new Set(moving.map((m) => m.id).filter((id) => design.parts.some((p) => p.id === id)));
  const edits: Edit[] = [];
  const taken = new Set<string>();
  for (const offered of snap.rules) {
    if (!isAmongParts(offered, parts, design)) continue;
    for (const axis of 'axis' in offered ? [offered.axis] : (['x', 'y'] as const)) {
      for (const old of design.rules) {
        if (givesWay(old, axis, grip[axis], parts)) edits.push({ kind: 'remove', list: 'rules', id: old.id });
      }
    }
    const id = freeId(design, 'rule', taken);
    taken.add(id);
    edits.push({ kind: 'insert', list: 'rules', item: { ...offered, id } as Rule });
  }
  return edits.filter((e, i) => e.kind !== 'remove' || edits.findIndex((o) => sameRemoval(o, e)) === i);
}

const sameRemoval = (a: Edit, b: Edit) => a.kind === 'remove' && b.kind === 'remove' && a.id === b.id;

/** A keep-clear may snap, but no rule holds it. */
function isAmongParts(rule: OfferedRule, parts: ReadonlySet<string>, design: Design): boolean {
  if (rule.kind !== 'set') return parts.size > 0;
  return parts.has(rule.edge.of) || design.parts.some((p) => p.id === rule.edge.of);
}

function givesWay(rule: Rule, axis: Axis, grip: Grip, parts: ReadonlySet<string>): boolean {
  if (rule.kind !== 'set' || rule.axis !== axis || !parts.has(rule.edge.of) || parts.has(rule.from.of))
    return false;
  return grip === 'move' || rule.edge.side === grip;
}
