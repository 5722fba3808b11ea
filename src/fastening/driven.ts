import type { KeepClear } from '../bed/bed.ts';
import type { Check } from '../check/check.ts';
import { isBoards } from '../design/made.ts';
import type { Design } from '../design/schema.ts';
import { grownBox } from '../geometry/box.ts';
import { clipPolyline, offset, union } from '../geometry/clip.ts';
import { distance } from '../geometry/point.ts';
import { containsPointInRegion, EMPTY, regionOfBox } from '../geometry/region.ts';
import type { Box, Point, Region } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Solid } from '../joinery/piece.ts';
import { isLong, type LaidPart, type Leg, legsOf, reliefOf } from '../layout/laid.ts';
import { designPart } from '../layout/reference.ts';
import { lastOf, pick } from '../list/at.ts';
import { grouped } from '../list/grouped.ts';
import { type Mm, radians } from '../measure/units.ts';
import { DRILLED_EDGE, leastFor, type Shank, type Shanks } from './apart.ts';
import { chooseDrive, type Drive, type DriveRule, noDrive, type Place } from './drive.ts';
import type { FasteningInput } from './input.ts';
import {
  drawingIn,
  EASE,
  FEWEST,
  type Ground,
  placesAlong,
  placesAlongBend,
  placesOver,
  type Spacing,
} from './places.ts';
import type { Fastened } from './result.ts';
import { type Stack, solidsOver, woodUnder } from './stack.ts';
import { surfaceHeight } from './surface.ts';

/** Screws hold so much more than brads that they stand this many spacings apart. Common practice, no source. */
export const SCREW_SPACINGS = 2;
/** Thread in what holds it, in shank diameters: Wood Handbook, Eq. 8-13 (check-values, section 9). */
export const THREAD_DIAMETERS = 7;

/** What the drives need of the room's input. */
export type DriveInput = Pick<
  FasteningInput,
  'keepClears' | 'pieces' | 'stocks' | 'settings' | 'brad' | 'screw'
>;

/** How one part is driven, with what there is to say about it. */
export interface Driven extends Omit<Fastened, 'part' | 'how' | 'glue'> {
  readonly checks: readonly Check[];
  /** What each of them takes up in the wood. */
  readonly shanks: readonly Shank[];
}

/** What is driven into a part that nothing is driven into. */
export const UNDRIVEN = {
  fastener: null,
  length: null,
  from: 'front',
  at: [],
  depth: 0,
  bite: 0,
} satisfies Omit<Fastened, 'part' | 'how' | 'glue'>;

/** Of a part that nothing is driven into. */
export const NOTHING: Driven = { ...UNDRIVEN, checks: [], shanks: [] };

/** What one solid of a part lies on. */
export interface PartContact {
  readonly solid: Solid;
  /** Its contact with each support by itself. */
  readonly supports: readonly Region[];
  /** All of them together. */
  readonly contact: Region;
}

/** A place with the wood on both sides of the part's back. */
interface Spot {
  readonly at: Point;
  /** Height of the part's back. */
  readonly z: Mm;
  /** From the part's back to its surface. */
  readonly part: Mm;
  /** Unbroken wood beneath it. */
  readonly under: Mm;
}

const lengthIn = (leg: Leg, region: Region): Mm =>
  clipPolyline([leg.start, leg.end], region).reduce(
    (sum, line) => sum + distance(pick(line, 0), lastOf(line)),
    0,
  );

/** The leg that a piece is: the one that runs longest within it. */
const legOf = (piece: Region, legs: readonly Leg[]): Leg | null =>
  legs.reduce<Leg | null>(
    (best, leg) => (best === null || lengthIn(leg, piece) > lengthIn(best, piece) ? leg : best),
    null,
  );

/** The places of every piece of a part, or of the whole sheet. */
function placesOf(
  input: DriveInput,
  laid: LaidPart,
  { solid, supports }: PartContact,
  spacing: Spacing,
  free: Ground['free'],
): Point[] {
  const own: Point[] = [];
  const clear = (p: Point) => own.every((q) => distance(p, q) >= spacing.apart - SAME_LENGTH) && free(p);
  const ground: Ground = { supports: supports.map(drawingIn), blocked: EMPTY, free: clear };
  const lay = (place: (ground: Ground) => Point[]) => {
    own.push(...clearOf(input.keepClears, ground, spacing, place));
  };
  if (!isLong(laid)) {
    lay((ground) => placesOver(solid.region, ground, spacing));
    return own;
  }
  const legs = legsOf(laid);
  const pieces = input.pieces.filter((p) => p.part === laid.id && p.placed.length > 0);
  if (pieces.length === 0) {
    for (const leg of legs) lay((ground) => placesAlong(leg, solid.region, ground, spacing));
  }
  for (const piece of pieces) {
    const { bent } = piece;
    const leg = piece.form === 'sheet' || bent ? null : legOf(piece.placed, legs);
    if (bent) lay((ground) => placesAlongBend({ ...piece, ...bent }, ground, spacing));
    else if (piece.form === 'sheet') lay((ground) => placesOver(piece.placed, ground, spacing));
    else if (leg) lay((ground) => placesAlong(leg, piece.placed, ground, spacing));
  }
  return own;
}

const inside = (p: Point, { x, y, w, h }: Box): boolean => p.x > x && p.x < x + w && p.y > y && p.y < y + h;

/**
 * Places that stay clear of hinges, legs and handles. Even places that fall on one are left out; where that
 * leaves fewer than two, which would not hold a piece straight, they are laid again around it.
 */
function clearOf(
  keepClears: readonly KeepClear[],
  ground: Ground,
  { fromEdge, diameter }: Spacing,
  place: (ground: Ground) => Point[],
): Point[] {
  const even = place(ground);
  const near = keepClears.map(({ box }) => grownBox(box, diameter));
  let best = even.filter((p) => !near.some((box) => inside(p, box)));
  if (best.length === even.length) return best;
  for (const by of [fromEdge, diameter + EASE]) {
    if (best.length >= FEWEST) break;
    const blocked = union(keepClears.map(({ box }) => regionOfBox(grownBox(box, by))));
    const around = place({ ...ground, blocked });
    if (around.length > best.length) best = around;
  }
  return best;
}

/** Distance from the nearest of the legs' center lines. */
function sidewaysOf(laid: LaidPart, p: Point): Mm {
  if (!isLong(laid)) return 0;
  const legs = legsOf(laid);
  return Math.min(
    ...legs.map(({ start, end }) => {
      const along = distance(start, end);
      const cross = (end.x - start.x) * (p.y - start.y) - (end.y - start.y) * (p.x - start.x);
      return along === 0 ? distance(start, p) : Math.abs(cross) / along;
    }),
  );
}

/** How much lower the face of a leaning slat is than its edge, `sideways` from its middle; the lower side counts. */
function fallOf(laid: LaidPart, sideways: Mm): Mm {
  const lean = reliefOf(laid)?.lean;
  if (!lean) return 0;
  const middle = pick(legsOf(laid), 0).width / 2;
  return (middle + sideways - lean.edge) * Math.tan(radians(lean.tilt));
}

/** How one kind of fastener is driven: where it may stand, how long it may be. */
interface Way {
  readonly fastener: 'brad' | 'screw';
  readonly id: string;
  readonly spacing: Spacing;
  readonly rule: DriveRule;
}

/** Spots of a part that stand clear of all that is `driven` already. */
function spotsOf(
  input: DriveInput,
  stack: Stack,
  laid: LaidPart,
  contacts: readonly PartContact[],
  way: Way,
  driven: Shanks | null,
): Spot[] {
  const stock = input.stocks.find((s) => s.id === laid.stock);
  const { spacing } = way;
  const radius = spacing.diameter / 2;
  return contacts.flatMap((contact) => {
    const { z0, z1 } = contact.solid;
    const spotAt = (at: Point): Spot => ({
      at,
      z: z0,
      part: surfaceHeight(stock, z1 - z0, radius, sidewaysOf(laid, at)) - fallOf(laid, sidewaysOf(laid, at)),
      under: woodUnder(stack, at, z0, radius),
    });
    const free = (p: Point): boolean => {
      const near = driven?.near(p, spacing.apart) ?? [];
      if (near.length === 0) return true;
      const { low, high } = reachOf(spotAt(p), way);
      return near.every(({ top, tip }) => tip >= high - SAME_LENGTH || top <= low + SAME_LENGTH);
    };
    const over = crossingsOver(stack, laid, contact.solid, spacing.apart);
    const beside = placesOf(input, laid, contact, spacing, (p) => !containsPointInRegion(over, p) && free(p));
    const enough = over.length === 0 || beside.length >= FEWEST;
    return (enough ? beside : placesOf(input, laid, contact, spacing, free))
      .map(spotAt)
      .filter((spot) => spot.under > SAME_LENGTH);
  });
}

/**
 * Where laths of the second layer cross one of the first, with room around: the brad of what lies over has no other
 * place, and goes through both. Laths that are let into each other take no brad there: half of each is gone. Common
 * practice, no source.
 */
function crossingsOver(stack: Stack, laid: LaidPart, { region, z1 }: Solid, apart: Mm): Region {
  if (!isBoards(laid) || laid.spec.pattern.form !== 'lattice') return EMPTY;
  if (laid.relief) return offset(laid.relief.sunk, apart / 2, 'miter');
  const over = solidsOver(stack, region, z1).filter((solid) => designPart(solid.part) === laid.part);
  return over.length > 0 ? offset(union(over.map((solid) => solid.region)), apart / 2, 'miter') : EMPTY;
}

/** Heights between which a fastener may come to stand, whatever its length; a screw from either side. */
function reachOf({ z, part, under }: Spot, { fastener, rule }: Way): { low: Mm; high: Mm } {
  if (fastener === 'screw') return { low: z - under, high: z + part };
  const { lengths, short } = rule;
  const longest = Math.max(0, ...lengths.filter((length) => length <= part + under - short + SAME_LENGTH));
  return { low: z - Math.min(under, Math.max(0, longest - part)), high: z + part };
}

const fromFront = ({ at, part, under }: Spot): Place => ({ at, through: part, depth: part + under });
const fromBack = ({ at, part, under }: Spot): Place => ({ at, through: under, depth: part + under });

function drivenBy(
  way: Way,
  from: 'front' | 'back',
  drive: Drive,
  spots: readonly Spot[],
  laid: LaidPart,
): Driven {
  const { apart } = way.spacing;
  const shanks = spots
    .filter(({ at }) => drive.at.includes(at))
    .map(({ at, z, part, under }): Shank => {
      const bottom = z - under;
      return from === 'front'
        ? { at, top: z + part, tip: z + part - drive.length, apart }
        : { at, top: bottom + drive.length, tip: bottom, apart };
    });
  const checks: Check[] = drive.at.length < FEWEST ? [few(laid, way.fastener, drive.at)] : [];
  return { fastener: way.id, from, ...drive, checks, shanks };
}

/** A part that one brad or screw, or none, finds room for. */
const few = (laid: LaidPart, fastener: Way['fastener'], at: readonly Point[]): Check => ({
  code: 'fastening.few',
  severity: laid.fixing.glue ? 'note' : 'warning',
  parts: [laid.id],
  at: at[0],
  figures: { fastener, count: at.length },
});

const notDriven = (
  laid: LaidPart,
  at: Point | undefined,
  code: Check['code'],
  figures: Check['figures'],
  severity: Check['severity'] = 'warning',
): Driven => ({
  ...NOTHING,
  checks: [{ code, severity, parts: [laid.id], at, figures }],
});

/** Nothing that it could be driven into. */
export const nothingSolid = (laid: LaidPart, at?: Point): Driven =>
  notDriven(laid, at, 'fastening.nothing-solid', {});

/** Nothing is known of what should be driven, neither its lengths nor how thick it is. */
export const unknownFastener = (laid: LaidPart, fastener: 'brad' | 'screw', id: string): Driven =>
  notDriven(laid, undefined, 'fastening.unknown', { fastener, id }, 'error');

/**
 * No listed length will do: either every one that bites comes out on the far side, where shorter ones
 * would fit, or there is not the wood for any.
 */
export function noLength(
  laid: LaidPart,
  places: readonly Place[],
  rule: DriveRule,
  fastener: 'brad' | 'screw',
): Driven {
  const { room, need } = noDrive(places, rule);
  const at = places[0]?.at;
  const biting = rule.lengths.filter((l) => l >= need).sort((a, b) => a - b)[0];
  return biting !== undefined && need <= room
    ? notDriven(laid, at, 'fastening.through', { length_mm: biting, room_mm: room, fastener })
    : notDriven(laid, at, 'fastening.no-brad', { room_mm: room, need_mm: need, fastener });
}

/** Distances by the settings, and never less than the wood stands. */
function spacingOf(
  { spacing, fromEdge }: Pick<Design['fastening'], 'spacing' | 'fromEdge'>,
  fastener: Way['fastener'],
  diameter: Mm,
): Spacing {
  const least = leastFor(fastener, diameter);
  return {
    spacing: Math.max(spacing, least.apart),
    fromEdge: Math.max(fromEdge, least.edge),
    fromEnd: Math.max(fromEdge, least.end),
    leastEdge: least.edge,
    apart: least.apart,
    diameter,
  };
}

/** Its spots; where there are none, what to say instead: it is too small, others stand in all its places, or nothing holds it. */
function spotsOr(
  input: DriveInput,
  stack: Stack,
  laid: LaidPart,
  contacts: readonly PartContact[],
  way: Way,
  driven: Shanks,
): Spot[] | Driven {
  const spots = spotsOf(input, stack, laid, contacts, way, driven);
  if (spots.length > 0) return spots;
  const least = DRILLED_EDGE * way.spacing.diameter;
  const small = contacts.every(({ solid }) => offset(solid.region, -least, 'miter').length === 0);
  return small || spotsOf(input, stack, laid, contacts, way, null).length > 0
    ? { ...NOTHING, checks: [few(laid, way.fastener, [])] }
    : nothingSolid(laid);
}

/** Brads from the front. */
export function driveBrads(
  input: DriveInput,
  stack: Stack,
  laid: LaidPart,
  contacts: readonly PartContact[],
  driven: Shanks,
): Driven {
  const { settings, brad } = input;
  if (!brad) return unknownFastener(laid, 'brad', settings.brad);
  const way: Way = {
    fastener: 'brad',
    id: settings.brad,
    spacing: spacingOf(settings, 'brad', brad.diameter),
    rule: {
      lengths: settings.lengths.length > 0 ? settings.lengths : brad.lengths,
      short: settings.shortOfFar,
      bite: settings.bite,
      enough: null,
    },
  };
  const spots = spotsOr(input, stack, laid, contacts, way, driven);
  if (!Array.isArray(spots)) return spots;
  const places = spots.map(fromFront);
  const drive = chooseDrive(places, way.rule);
  return drive ? drivenBy(way, 'front', drive, spots, laid) : noLength(laid, places, way.rule, 'brad');
}

/** Spots by how much wood lies beneath them, the largest group first: one length of screw for each. */
function byWood(spots: readonly Spot[]): Spot[][] {
  const groups = grouped(spots, ({ under }) => Math.round(under * 1000));
  return [...groups.values()].sort((a, b) => b.length - a.length || a[0].under - b[0].under);
}

/**
 * Screws: from behind into the part where a listed length reaches, so that nothing shows; else from the
 * front. The least length with seven shank diameters of thread in what holds it, else the longest that
 * stays short of the far side, which from behind is the show face.
 */
export function driveScrews(
  input: DriveInput,
  stack: Stack,
  laid: LaidPart,
  contacts: readonly PartContact[],
  driven: Shanks,
): Driven {
  const { settings, screw } = input;
  if (!screw) return unknownFastener(laid, 'screw', settings.screw);
  const { spacing, fromEdge } = settings;
  const way: Way = {
    fastener: 'screw',
    id: settings.screw,
    spacing: spacingOf({ spacing: spacing * SCREW_SPACINGS, fromEdge }, 'screw', screw.diameter),
    rule: {
      lengths: screw.lengths,
      short: settings.shortOfFar,
      bite: settings.bite,
      enough: THREAD_DIAMETERS * screw.diameter,
    },
  };
  const spots = spotsOr(input, stack, laid, contacts, way, driven);
  if (!Array.isArray(spots)) return spots;
  for (const [from, placeOf] of [
    ['back', fromBack],
    ['front', fromFront],
  ] as const) {
    for (const group of byWood(spots)) {
      const drive = chooseDrive(group.map(placeOf), way.rule);
      if (drive) return drivenBy(way, from, drive, group, laid);
    }
  }
  return noLength(laid, spots.map(fromBack), way.rule, 'screw');
}
