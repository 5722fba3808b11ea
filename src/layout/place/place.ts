import type { Face } from '../../bed/face.ts';
import type { Check } from '../../check/check.ts';
import { isBoards } from '../../design/made.ts';
import { isClosed } from '../../design/path.ts';
import type { Fill, Part } from '../../design/schema.ts';
import { boxOf, EMPTY } from '../../geometry/region.ts';
import type { Box, Region } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { entryAt, pick } from '../../list/at.ts';
import type { Stock } from '../../materials/types.ts';
import type { Mm } from '../../measure/units.ts';
import { boxIn } from '../boxIn.ts';
import { countOfFill, cutOfFill, type FillPiece, pieceAt, settingOf, stocksOfFill } from '../fill/fill.ts';
import { isOfSheet } from '../fill/patterns.ts';
import { uncovered } from '../fill/uncovered.ts';
import type { LaidPart } from '../laid.ts';
import { levelOf, memberId } from '../reference.ts';
import { expandArray, memberName, membersOf } from './array.ts';
import { type Body, bodyOf, isSingle, type Single } from './body.ts';
import { easedMeasures } from './eased.ts';
import type { Ground, PlacedPart, Placing } from './placed.ts';
import { sidesOfRun } from './run.ts';
import { arcChecks } from './sawnArcs.ts';
import { regionOfFill } from './shape.ts';
import { type CutAround, withStops } from './stopping.ts';
import { isLevelId, levelUnder, orderBySupport } from './support.ts';

export type { PlacedPart, Placing };

export interface PlaceInput {
  readonly parts: readonly Part[];
  readonly boxes: ReadonlyMap<string, Box>;
  readonly face: Face;
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly finishes: ReadonlySet<string>;
}

export interface Placement {
  /** By part of the design, supports first. */
  readonly placed: readonly PlacedPart[];
  /** Of all of them, one after the other. */
  readonly placings: readonly Placing[];
  readonly checks: readonly Check[];
  /** Where each part stands in `placed`. */
  readonly ranks: ReadonlyMap<string, number>;
  /** The first placing of each in `placed`. */
  readonly starts: readonly number[];
  /** Height that something lying on a part, or on a member of it, starts from. */
  readonly tops: ReadonlyMap<string, Mm>;
  /** Everything that was asked for has been laid, each after what it lies on. */
  readonly whole: boolean;
}

/** More than these are not laid: plans of them would take longer than anyone waits, and nobody would cut them. */
const MOST_LAID = 2000;

/** Lays every part at its height, array members one by one; those that are too many are left out and named. */
export function placeParts(input: PlaceInput, before: Placement | undefined): Placement {
  const byId = new Map(input.parts.map((part) => [part.id, part]));
  const { order, cycles } = orderBySupport(input.parts, byId);
  const checks: Check[] = cycles.map((cycle) => ({
    code: 'part.support-cycle',
    severity: 'error',
    parts: cycle,
    figures: {},
  }));
  const tops = new Map<string, Mm>();
  const placed: PlacedPart[] = [];
  const ranks = new Map<string, number>();
  let count = 0;
  const over: { readonly parts: string[]; count: number } = { parts: [], count: 0 };
  let whole = cycles.length === 0;
  for (const part of order) {
    const box = boxIn(input.boxes, part);
    const more = placesIn({ part, box }, input);
    if (count + more > MOST_LAID) {
      over.parts.push(part.id);
      over.count += more;
      whole = false;
      continue;
    }
    count += more;
    const ground = groundOf(part, input.face, tops);
    const last = before && entryAt(before.placed, before.ranks.get(part.id));
    const now =
      last && isCurrent(last, part, box, input, ground) ? last : placePart(part, box, input, ground, last);
    ranks.set(part.id, placed.length);
    placed.push(now);
    for (const [id, top] of topsOf(now)) tops.set(id, top);
    // A support that has come out without size is told of itself.
    if (ground === null && part.on !== 'face' && !byId.has(part.on)) {
      checks.push({
        code: 'part.unknown-support',
        severity: 'error',
        parts: [part.id],
        figures: { on: part.on },
      });
    }
  }
  if (over.parts.length > 0) {
    const figures = { count: count + over.count, most: MOST_LAID };
    checks.push({ code: 'limit.parts', severity: 'error', parts: over.parts, figures });
  }
  const cut = withStops(placed, ranks, input.face, cutAround);
  const starts = startsOf(cut);
  const placings = cut.flatMap((one) => one.placings);
  return { placed: cut, placings, checks, ranks, starts, tops, whole };
}

/** The number of the first placing of each. */
function startsOf(placed: readonly PlacedPart[]): number[] {
  let laid = 0;
  return placed.map(({ placings }) => {
    laid += placings.length;
    return laid - placings.length;
  });
}

/** A fill cut once more, by what its pieces end at. */
export const cutAround: CutAround = (own, less) =>
  placePart(own.from.part, own.from.box, own.from, own.from.ground, own, less);

/** The heights that a part gives to what lies on it, or on one of its members. */
function* topsOf({ from, placings }: PlacedPart): Generator<readonly [string, Mm]> {
  let most: Mm | null = null;
  for (const { laid } of placings) {
    if (laid.id !== from.part.id) yield [laid.id, laid.z1];
    most = most === null ? laid.z1 : Math.max(most, laid.z1);
  }
  if (most !== null) yield [from.part.id, most];
}

/**
 * Lays some parts anew where the others are as they were: by rank, what has changed. Null where it changes
 * more than those: what lies on them, or how many pieces there are.
 */
export function placeSome(
  input: Omit<PlaceInput, 'parts'>,
  before: Placement,
  parts: readonly Part[],
): Map<number, PlacedPart> | null {
  const found = new Map<number, PlacedPart>();
  if (!before.whole) return null;
  for (const part of parts) {
    const rank = before.ranks.get(part.id);
    if (rank === undefined) return null;
    const last = pick(before.placed, rank);
    if (last.from.part.on !== part.on) return null;
    const box = boxIn(input.boxes, part);
    const ground = groundOf(part, input.face, before.tops);
    if (isCurrent(last, part, box, input, ground)) continue;
    const now = placePart(part, box, input, ground, last);
    if (!sameTops(last.unstopped?.placed ?? last, now) || !samePlaces(last, now, input)) return null;
    found.set(rank, now);
  }
  return found;
}

/** As many places; a fill that is cut as it was, at another place, has as many as it had. */
const samePlaces = (a: PlacedPart, b: PlacedPart, input: Pick<PlaceInput, 'stocks'>): boolean =>
  (a.cut !== null && a.cut === b.cut) || placesIn(a.from, input) === placesIn(b.from, input);

/** Places that count against the most that can be laid, those left empty too. */
const placesIn = (
  { part, box }: Pick<PlacedPart['from'], 'part' | 'box'>,
  { stocks }: Pick<PlaceInput, 'stocks'>,
): number =>
  isSingle(part)
    ? 1
    : isBoards(part)
      ? countOfFill(part, box, stocks, MOST_LAID)
      : membersOf(part, box, stocks);

/** The same pieces, as high as before. */
const sameTops = (a: PlacedPart, b: PlacedPart): boolean =>
  a.placings.length === b.placings.length &&
  a.placings.every(({ laid }, i) => {
    const other = b.placings[i]?.laid;
    return laid.id === other?.id && laid.z1 === other.z1;
  });

function isCurrent(
  last: PlacedPart,
  part: Part,
  box: Box,
  input: Omit<PlaceInput, 'parts'>,
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
function groundOf(part: Part, face: Face, tops: ReadonlyMap<string, Mm>): Ground | null {
  if (part.on === 'face') return null;
  if (isLevelId(part.on)) {
    const level = levelOf(face, part.on);
    return level ? { on: level.id, z: level.z } : null;
  }
  const top = tops.get(part.on);
  return top === undefined ? null : { on: part.on, z: top };
}

function placePart(
  part: Part,
  box: Box,
  input: Pick<PlaceInput, 'face' | 'stocks' | 'finishes'>,
  ground: Ground | null,
  last: PlacedPart | undefined,
  less: Region = EMPTY,
): PlacedPart {
  const { face, stocks, finishes } = input;
  const checks: Check[] = [];
  const unknownStocks = new Set<string>();
  const unknownFinishes = new Set<string>();
  let ofArcs: readonly Check[] = [];
  const placings: Placing[] = [];

  // All pieces of a fill lie on what most of it lies on.
  const whole = ground === null && isBoards(part) ? beneath(face, regionOfFill(part, box), box) : null;
  const lay: Lay = (
    { id, name, member, box: place, finish, on },
    body,
    bounds = body && boxOf(body.region),
  ) => {
    if (!body || !bounds) {
      checks.push(noBody(id, place, body));
      return;
    }
    if (body.unknownStock !== null) unknownStocks.add(body.unknownStock);
    else if ('sawn' in body.make && body.make.sawn) ofArcs = arcChecks(part.id, body.make.sawn, body.height);
    if (finish !== null && !finishes.has(finish)) unknownFinishes.add(finish);
    const known = finish !== null && finishes.has(finish) ? finish : null;
    const slot = { id, name, member, box: place, finish: known };
    const under = ground ?? whole ?? beneath(face, body.region, bounds);
    placings.push({
      laid: laidPart(part, slot, body, on === undefined ? under : { on, z: under.z }),
      bounds,
    });
  };
  const sized = (single: Single, place: Box): Body | null =>
    hasSize(single, place) ? bodyOf(single, place, stocks) : null;

  const cut =
    isBoards(part) && unknownIn(part, stocks) === null && hasRoom(box)
      ? cutOfFill(part, box, stocks, last?.cut, less)
      : null;
  if (isSingle(part)) {
    const { id, name, finish } = part;
    lay({ id, name, member: null, box, finish }, sized(part, box));
  } else if (isBoards(part)) {
    const nothing = less.length > 0 && cut?.pieces.length === 0;
    if (nothing) checks.push(noSize(part.id, box));
    else layFill(part, box, stocks, cut?.pieces ?? [], lay);
    const { widthOf, thicknessOf } = settingOf(part, stocks);
    checks.push(...uncovered(part, widthOf), ...onNothing(part, placings, thicknessOf(part.stock)));
  } else {
    const { slots, tight } = expandArray(part, box, stocks);
    for (const slot of slots) {
      const { column, row, member } = slot;
      lay({ ...slot, member: { column, row }, finish: member.finish }, sized(member, slot.box));
    }
    if (tight) checks.push(tooMany(part.id, tight.count, tight.room, box));
  }
  checks.push(...ofArcs, ...easedMeasures(part, box));
  for (const stock of unknownStocks) {
    checks.push({ code: 'part.unknown-stock', severity: 'error', parts: [part.id], figures: { stock } });
  }
  for (const finish of unknownFinishes) {
    checks.push({ code: 'part.unknown-finish', severity: 'error', parts: [part.id], figures: { finish } });
  }
  return { from: { part, box, face, stocks, finishes, ground }, placings, checks, cut };
}

/** A stock of a fill that its pieces cannot be cut from; null where there is none. */
const unknownIn = (fill: Fill, stocks: ReadonlyMap<string, Stock>): string | null =>
  stocksOfFill(fill).find((id, i) => {
    const form = stocks.get(id)?.form;
    const sheet = i === 0 && form === 'sheet';
    return isOfSheet(fill.pattern) ? !sheet : form !== 'flat' && !sheet;
  }) ?? null;

const hasRoom = ({ w, h }: Box): boolean => w > SAME_LENGTH && h > SAME_LENGTH;

/** An open run may be flat; everything else needs both sizes. */
function hasSize(single: Single, { w, h }: Box): boolean {
  const open = single.kind === 'run' && !isClosed(single.path);
  return open ? w >= 0 && h >= 0 && Math.max(w, h) > SAME_LENGTH : w > SAME_LENGTH && h > SAME_LENGTH;
}

function beneath(face: Face, region: Region, bounds: Box): Ground {
  const id = levelUnder(face, region, bounds);
  const level = id === null ? undefined : levelOf(face, id);
  return level ? { on: level.id, z: level.z } : { on: 'rim', z: 0 };
}

/** Slats that nothing on the face holds, and siding whose lowest board has nothing to lean on. */
function onNothing({ id, pattern }: Fill, placings: readonly Placing[], thickness: Mm): Check[] {
  const first = placings[0]?.laid;
  if (!first || pattern.form !== 'louvers') return [];
  if (pattern.tilt === undefined) {
    if (pattern.starter || placings.length < 2) return [];
    return [{ code: 'fill.starter', severity: 'note', parts: [id], figures: { thick_mm: thickness } }];
  }
  const figures = { out_mm: first.z1 - first.z0, tilt_deg: pattern.tilt };
  return [{ code: 'fill.between-stiles', severity: 'note', parts: [id], figures }];
}

/** What a laid part is called, and where it stands. */
type Slot = Pick<LaidPart, 'id' | 'name' | 'member' | 'box' | 'finish'> & {
  /** A piece of the same fill that it is painted on. */
  readonly on?: string | undefined;
};

/** Lays a part; its bounds are found where they are not told. */
type Lay = (slot: Slot, body: Body | null, bounds?: Box | null) => void;

/** Its stiles hold it. */
const BETWEEN = { how: 'none', glue: false } as const;
const RECTANGLE = { form: 'rectangle' } as const;

/** Every piece of a fill as a laid part, those left out apart; where nothing can be laid, the fill itself is told of. */
function layFill(
  fill: Fill,
  box: Box,
  stocks: ReadonlyMap<string, Stock>,
  pieces: readonly FillPiece[],
  lay: Lay,
): void {
  const unknown = unknownIn(fill, stocks);
  if (pieces.length === 0) {
    const region = unknown === null ? [] : regionOfFill(fill, box);
    const leg = { start: box, end: box, width: 0, thickness: 0, angle: 0 };
    const make = { kind: 'fill', leg, wood: region, spec: { pattern: fill.pattern } } as const;
    const body = { region, height: 0, stock: null, unknownStock: unknown, make };
    lay({ id: fill.id, name: fill.name, member: null, box, finish: fill.finish }, body);
    return;
  }
  const columns = 1 + Math.max(...pieces.map(({ column }) => column));
  const rows = 1 + Math.max(...pieces.map(({ row }) => row));
  const spec = { pattern: fill.pattern };
  const alone = pieces.filter(({ on }) => on === undefined).length === 1;
  for (const piece of pieces) {
    const { column, row, region, wood, leg, lift, stock, relief, on } = pieceAt(piece, box);
    const own = fill.overrides[`${column},${row}`];
    const bounds = boxOf(region);
    if (own?.omit || !bounds) continue;
    const { pattern } = fill;
    const ground = on === undefined && pattern.form === 'courses' ? pattern.joints : undefined;
    const finish = own?.finish === undefined ? (ground ?? fill).finish : own.finish;
    // What is not painted is seen as the board that it would be on.
    if (on !== undefined && finish === null) continue;
    lay(
      {
        // None of these begins with a spread: see `laidPart`.
        on: on === undefined ? undefined : `${fill.id}[${on}]`,
        id: memberId(fill.id, column, row),
        name: ground && alone ? fill.name : memberName(fill.name, column, row, columns, rows),
        member: { column, row },
        box: bounds,
        finish,
      },
      on === undefined
        ? {
            region,
            height: leg.thickness,
            lift,
            stock,
            unknownStock: null,
            make: { kind: 'fill', leg, wood, spec, ...(relief && { relief }) },
            ...(relief?.lean?.between && { fixing: BETWEEN }),
          }
        : {
            region,
            height: 0,
            lift,
            stock: null,
            unknownStock: null,
            make: { kind: 'painted', spec: { shape: RECTANGLE, course: { angle: leg.angle, row } } },
          },
      bounds,
    );
  }
}

function laidPart(part: Part, slot: Slot, body: Body, ground: Ground): LaidPart {
  return {
    // One by one: begun with a spread it takes the engine a hundred times as long, and layouts are made of these.
    id: slot.id,
    name: slot.name,
    member: slot.member,
    box: slot.box,
    finish: slot.finish,
    part: part.id,
    region: body.region,
    z0: ground.z + (body.lift ?? 0),
    z1: ground.z + (body.lift ?? 0) + body.height,
    on: ground.on,
    stock: body.stock,
    fixing: body.fixing ?? part.fixing,
    ...body.make,
  };
}

/** Why a part comes to nothing: its arcs have no room for its stock, or its box has no size. */
function noBody(id: string, box: Box, body: Body | null): Check {
  if (!body || !('sawn' in body.make) || body.unknownStock !== null) return noSize(id, box);
  const { path } = body.make.spec;
  const radii = sidesOfRun(path, box).flatMap((side) =>
    side.kind === 'arc' ? [Math.min(side.rx, side.ry)] : [],
  );
  const figures = { radius_mm: Math.min(...radii), across_mm: body.across ?? 0 };
  return { code: 'run.no-room', severity: 'error', parts: [id], at: { x: box.x, y: box.y }, figures };
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
