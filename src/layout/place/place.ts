import type { Face } from '../../bed/face.ts';
import type { Check } from '../../check/check.ts';
import type { Part } from '../../design/schema.ts';
import { boxOf } from '../../geometry/region.ts';
import type { Box } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Stock } from '../../materials/types.ts';
import type { Mm } from '../../measure/units.ts';
import type { LaidPart } from '../laid.ts';
import { levelOf } from '../reference.ts';
import { expandArray, membersOf, type Slot } from './array.ts';
import { type Body, bodyOf, isSingle, type Single } from './body.ts';
import { isLevelId, levelUnder, orderBySupport } from './support.ts';

/** A laid part with the bounds of its footprint, which may reach past its box. */
export interface Placing {
  readonly laid: LaidPart;
  readonly bounds: Box;
}

export interface PlaceInput {
  readonly parts: readonly Part[];
  readonly byId: ReadonlyMap<string, Part>;
  readonly boxes: ReadonlyMap<string, Box>;
  readonly face: Face;
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly finishes: ReadonlySet<string>;
}

/** What a part came to, with all that it came from. */
export interface PlacedPart {
  readonly from: {
    readonly part: Part;
    readonly box: Box;
    readonly face: Face;
    readonly stocks: ReadonlyMap<string, Stock>;
    readonly finishes: ReadonlySet<string>;
    readonly ground: Ground | null;
  };
  readonly placings: readonly Placing[];
  readonly checks: readonly Check[];
}

/** What a part is told to lie on; null: whichever level is beneath it. */
interface Ground {
  readonly on: string;
  readonly z: Mm;
}

export interface Placement {
  /** By part of the design, supports first. */
  readonly placed: readonly PlacedPart[];
  readonly checks: readonly Check[];
}

/** As many as a file may hold one by one. An array beyond it is left out and named: it would never be cut. */
const MOST_LAID = 4000;

/** Lays every part at its height, array members one by one, up to 4000 in all. */
export function placeParts(
  input: PlaceInput,
  before: ReadonlyMap<string, PlacedPart> | undefined,
): Placement {
  const { order, cycles } = orderBySupport(input.parts, input.byId);
  const checks: Check[] = cycles.map((cycle) => ({
    code: 'part.support-cycle',
    severity: 'error',
    parts: cycle,
    figures: {},
  }));
  const tops = new Map<string, Mm>();
  const placed: PlacedPart[] = [];
  let count = 0;
  for (const part of order) {
    const box = input.boxes.get(part.id) ?? part.box;
    const more = isSingle(part) ? 1 : membersOf(part, box, input.stocks);
    if (count + more > MOST_LAID) {
      const figures = { count: count + more, most: MOST_LAID };
      checks.push({ code: 'limit.parts', severity: 'error', parts: [part.id], figures });
      continue;
    }
    count += more;
    const ground = groundOf(part, input, tops);
    const last = before?.get(part.id);
    const now =
      last && isCurrent(last, part, box, input, ground) ? last : placePart(part, box, input, ground);
    placed.push(now);
    for (const { laid } of now.placings) {
      tops.set(laid.id, laid.z1);
      tops.set(part.id, Math.max(tops.get(part.id) ?? laid.z1, laid.z1));
    }
    // A support that has come out without size is told of itself.
    if (ground === null && part.on !== 'face' && !input.byId.has(part.on)) {
      checks.push({
        code: 'part.unknown-support',
        severity: 'error',
        parts: [part.id],
        figures: { on: part.on },
      });
    }
  }
  return { placed, checks };
}

function isCurrent(
  last: PlacedPart,
  part: Part,
  box: Box,
  input: PlaceInput,
  ground: Ground | null,
): boolean {
  const { from } = last;
  return (
    from.part === part &&
    from.box === box &&
    from.face === input.face &&
    from.stocks === input.stocks &&
    from.finishes === input.finishes &&
    from.ground?.on === ground?.on &&
    from.ground?.z === ground?.z
  );
}

/** Null: it lies on whichever level is beneath it, as it says so or what it names is not there. */
function groundOf(part: Part, input: PlaceInput, tops: ReadonlyMap<string, Mm>): Ground | null {
  if (part.on === 'face') return null;
  if (isLevelId(part.on)) {
    const level = levelOf(input.face, part.on);
    return level ? { on: level.id, z: level.z } : null;
  }
  const top = tops.get(part.on);
  return top === undefined ? null : { on: part.on, z: top };
}

function placePart(part: Part, box: Box, input: PlaceInput, ground: Ground | null): PlacedPart {
  const { face, stocks, finishes } = input;
  const checks: Check[] = [];
  const unknownStocks = new Set<string>();
  const unknownFinishes = new Set<string>();
  const placings: Placing[] = [];

  const lay = (single: Single, finish: string | null, slot: Slot | null): void => {
    const place = slot?.box ?? box;
    const body = hasSize(single, place) ? bodyOf(single, place, stocks) : null;
    const bounds = body ? boxOf(body.region) : null;
    if (!body || !bounds) {
      checks.push(noSize(slot?.id ?? part.id, place));
      return;
    }
    if (body.unknownStock !== null) unknownStocks.add(body.unknownStock);
    if (finish !== null && !finishes.has(finish)) unknownFinishes.add(finish);
    const known = finish !== null && finishes.has(finish) ? finish : null;
    placings.push({
      laid: laidPart(part, slot, place, body, known, ground ?? beneath(face, body, bounds)),
      bounds,
    });
  };

  if (isSingle(part)) lay(part, part.finish, null);
  else {
    const { slots, tight } = expandArray(part, box, stocks);
    for (const slot of slots) lay(slot.member, slot.member.finish, slot);
    if (tight) checks.push(tooMany(part.id, tight.count, tight.room, box));
  }
  for (const stock of unknownStocks) {
    checks.push({ code: 'part.unknown-stock', severity: 'error', parts: [part.id], figures: { stock } });
  }
  for (const finish of unknownFinishes) {
    checks.push({ code: 'part.unknown-finish', severity: 'error', parts: [part.id], figures: { finish } });
  }
  return { from: { part, box, face, stocks, finishes, ground }, placings, checks };
}

/** An open run may be flat; everything else needs both sizes. */
function hasSize(single: Single, { w, h }: Box): boolean {
  const open = single.kind === 'run' && single.path.form === 'points' && !single.path.closed;
  return open ? w >= 0 && h >= 0 && Math.max(w, h) > SAME_LENGTH : w > SAME_LENGTH && h > SAME_LENGTH;
}

function beneath(face: Face, body: Body, bounds: Box): Ground {
  const id = levelUnder(face, body.region, bounds);
  const level = id === null ? undefined : levelOf(face, id);
  return level ? { on: level.id, z: level.z } : { on: 'rim', z: 0 };
}

function laidPart(
  part: Part,
  slot: Slot | null,
  box: Box,
  body: Body,
  finish: string | null,
  ground: Ground,
): LaidPart {
  return {
    id: slot?.id ?? part.id,
    part: part.id,
    name: slot?.name ?? part.name,
    member: slot ? { column: slot.column, row: slot.row } : null,
    box,
    region: body.region,
    z0: ground.z,
    z1: ground.z + body.height,
    on: ground.on,
    stock: body.stock,
    finish,
    fixing: part.fixing,
    ...body.make,
  };
}

const noSize = (id: string, box: Box): Check => ({
  code: 'part.no-size',
  severity: 'error',
  parts: [id],
  at: { x: box.x, y: box.y },
  figures: { width_mm: box.w, height_mm: box.h },
});

const tooMany = (id: string, count: number, room: Mm, box: Box): Check => ({
  code: 'array.count',
  severity: 'error',
  parts: [id],
  at: { x: box.x + box.w / 2, y: box.y + box.h / 2 },
  figures: { count, room_mm: room },
});
