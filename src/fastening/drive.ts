import type { Point } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Mm } from '../measure/units.ts';

/** One place to drive something in: what it passes through first, and all the way to the far side. */
export interface Place {
  readonly at: Point;
  /** What it goes through before it holds: the part, or the bed when driven from behind. */
  readonly through: Mm;
  /** From where it is driven in to the far side. */
  readonly depth: Mm;
}

export interface Drive {
  readonly length: Mm;
  readonly at: readonly Point[];
  /** Least depth of the places. */
  readonly depth: Mm;
  /** Least bite of the places. */
  readonly bite: Mm;
}

export interface DriveRule {
  readonly lengths: readonly Mm[];
  /** Stops this far short of the far side. */
  readonly short: Mm;
  /** Bites at least this deep into what holds it. */
  readonly bite: Mm;
  /** A bite that is enough: the least length that reaches it; null: the longest that fits. */
  readonly enough: Mm | null;
}

const roomOf = (place: Place, rule: DriveRule): Mm => place.depth - rule.short;
const needOf = (place: Place, rule: DriveRule): Mm => place.through + rule.bite;

/** Half a tolerance keeps lengths that fit exactly, and never lets one through. */
const fits = (length: Mm, place: Place, rule: DriveRule): boolean =>
  length <= roomOf(place, rule) + SAME_LENGTH / 2 && length >= needOf(place, rule) - SAME_LENGTH / 2;

/**
 * One length for all places of a part: the longest listed that stops `short` of the far side everywhere
 * (or the least that bites `enough`). Places where no listed length would do are left out; null when that
 * leaves none.
 *
 * The place with least room decides, and some length fits there, so its longest one bites there too; a
 * place where the same length does not bite is left out as well.
 */
export function chooseDrive(places: readonly Place[], rule: DriveRule): Drive | null {
  const usable = places.filter((p) => rule.lengths.some((length) => fits(length, p, rule)));
  const tightest = usable.reduce<Place | null>((a, b) => (a === null || b.depth < a.depth ? b : a), null);
  if (!tightest) return null;
  const fitting = rule.lengths.filter((l) => fits(l, tightest, rule)).sort((a, b) => a - b);
  const { enough } = rule;
  const least = enough === null ? undefined : fitting.find((l) => l - tightest.through >= enough);
  const length = least ?? fitting[fitting.length - 1];
  if (length === undefined) return null;
  const held = usable.filter((p) => fits(length, p, rule));
  return {
    length,
    at: held.map((p) => p.at),
    depth: Math.min(...held.map((p) => p.depth)),
    bite: Math.min(...held.map((p) => length - p.through)),
  };
}

/** Figures of a part for which no listed length will do: the most room of its places, and what they need. */
export function noDrive(places: readonly Place[], rule: DriveRule): { room: Mm; need: Mm } {
  return {
    room: Math.max(...places.map((p) => roomOf(p, rule))),
    need: Math.min(...places.map((p) => needOf(p, rule))),
  };
}
