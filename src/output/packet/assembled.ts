import { isBoards, isSheet } from '../../design/made.ts';
import { boxArea } from '../../geometry/box.ts';
import { union } from '../../geometry/clip.ts';
import { boxOf } from '../../geometry/region.ts';
import type { Region } from '../../geometry/shape.ts';
import type { Piece } from '../../joinery/piece.ts';
import type { LaidPart } from '../../layout/laid.ts';
import { pick, under } from '../../list/at.ts';
import { grouped, groupOf } from '../../list/grouped.ts';
import type { Kg } from '../../measure/units.ts';
import type { Pictured } from '../../plan/types.ts';
import { partNames } from '../../plan/words/words.ts';
import type { Packet } from './leaf.ts';

/** What is put together before it goes up, with its pieces. */
export interface Assembled {
  readonly name: string;
  /** How many there are that are alike to the letter; the name names all of them. */
  readonly count: number;
  readonly region: Region;
  /** From the lowest to the highest. */
  readonly pieces: readonly Piece[];
  /** Of one of them, all told. */
  readonly mass: Kg;
}

/** Least pieces of what is put together on the bench: two lie flat and square by themselves. */
const LEAST = 3;
/** What takes up more of the face is put together where it stands. Common practice, no source. */
const MOST = 0.5;

/** A panel or sign with all that lies on it, and on that again. */
function carriedBy(id: string, parts: readonly LaidPart[]): LaidPart[] {
  const own = parts.filter(({ on }) => on === id);
  return own.flatMap((part) => [part, ...carriedBy(part.id, parts)]);
}

/**
 * Parts that hold together: joined to each other, or one lying on the other. What a person made as one thing, a group,
 * stays by itself.
 */
function heldTogether({ design, joinery }: Pictured, wood: readonly LaidPart[]): LaidPart[][] {
  const group = new Map(design.groups.flatMap(({ id, parts }) => parts.map((part) => [part, id] as const)));
  const sets = new Map(wood.map((part) => [part.id, [part]]));
  const tie = (a: LaidPart | undefined, b: LaidPart | undefined) => {
    const [one, other] = [a && sets.get(a.id), b && sets.get(b.id)];
    if (!a || !b || !one || !other || one === other || group.get(a.part) !== group.get(b.part)) return;
    one.push(...other);
    for (const { id } of other) sets.set(id, one);
  };
  const byId = new Map(wood.map((part) => [part.id, part]));
  for (const {
    parts: [a, b],
  } of joinery.joints) {
    tie(byId.get(a), byId.get(b));
  }
  // What lies on a fill lies on all of its boards.
  const boards = grouped(wood.filter(isBoards), ({ part }) => part);
  for (const part of wood) {
    tie(part, byId.get(part.on));
    for (const board of groupOf(boards, part.on)) tie(part, board);
  }
  return [...new Set(sets.values())];
}

/** Closed frames, what holds together by joints or by what it lies on, and panels with what they carry: each kind once. */
export function assembled({ plan, say }: Packet): Assembled[] {
  const own = grouped(plan.joinery.pieces, ({ part }) => part);
  const solids = grouped(plan.joinery.solids, ({ part }) => part);
  const regionsOf = (parts: readonly LaidPart[]): Region =>
    parts.flatMap(({ id }) => groupOf(solids, id).flatMap(({ region }) => region));
  const wood = plan.layout.parts.filter(({ id }) => own.has(id));
  const most = MOST * boxArea(plan.face.box);
  const sets = heldTogether(plan, wood).filter((parts) => {
    const box = boxOf(regionsOf(parts));
    return parts.length > 1 && box !== null && boxArea(box) <= most;
  });
  const taken = new Set(sets.flat());
  const carrying = wood.flatMap((part): LaidPart[][] => {
    if (taken.has(part) || !isSheet(part)) return [];
    const carried = carriedBy(part.id, wood);
    return carried.length > 0 ? [[part, ...carried]] : [];
  });
  const frames = wood.filter((part) => part.kind === 'run' && part.closed).map((part) => [part]);
  const rank = new Map(wood.map((part, i) => [part, i]));
  const first = (parts: readonly LaidPart[]) => Math.min(...parts.map((part) => under(rank, part)));
  const found = [...frames, ...sets, ...carrying].sort((a, b) => first(a) - first(b) || b.length - a.length);
  const groupNames = new Map(
    plan.design.groups.flatMap(({ name, parts }) => parts.map((part) => [part, name] as const)),
  );
  const told = found.map((parts) => {
    const ids = new Set(wood.filter((part) => parts.includes(part)).map(({ id }) => id));
    const made = parts.length > 1 ? groupNames.get(pick(parts, 0).part) : undefined;
    return {
      name: made ?? partNames(ids, say).join(', '),
      region: union([regionsOf(parts)]),
      pieces: [...ids].flatMap((id) => groupOf(own, id)).sort((a, b) => a.z1 - b.z1),
      mass: plan.load.byPart.reduce((sum, one) => (ids.has(one.part) ? sum + one.mass : sum), 0),
    };
  });
  const alike = grouped(
    told.filter(({ pieces }) => pieces.length >= LEAST),
    ({ region, pieces }) => {
      const { w, h } = boxOf(region) ?? { w: 0, h: 0 };
      return [w.toFixed(2), h.toFixed(2), ...pieces.map(({ label }) => label).sort()].join('|');
    },
  );
  return [...alike.values()].map((all) => ({
    ...all[0],
    name: [...new Set(all.map(({ name }) => name))].join(', '),
    count: all.length,
  }));
}
