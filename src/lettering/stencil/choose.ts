import type { Lettering } from '../../design/schema.ts';
import { distance, dot, leftNormal, scale, subtract } from '../../geometry/point.ts';
import { addUp } from '../../list/totals.ts';
import { type Deg, type Mm, radians } from '../../measure/units.ts';
import { type Crossing, leavingAngle } from './crossing.ts';
import { imageOf, type Mirror, turnedBy } from './mirror.ts';
import { FRAME, type Island } from './solid.ts';

type Direction = Lettering['stencil']['direction'];

/** A crossing with what speaks against it, in millimeters of stroke. */
export interface Candidate {
  readonly crossing: Crossing;
  readonly angle: Deg;
  readonly cost: Mm;
}

/**
 * Weights of what makes a bridge look and hold well, as shares of the stroke's thickness. Common practice
 * of stencil cutting, no source: bars stand upright to the stroke or level or plumb, at its thinnest place, in line
 * with the middle of the counter, evenly about it, away from corners, and leave nothing between them that is too small to
 * paint.
 */
const WEIGHT = {
  slant: 1.5,
  corner: 4,
  offCenter: 0.35,
  /** Between equal places, above and below look better than left and right. */
  lying: 0.12,
  /** Against the direction that was asked for. */
  astray: 12,
  missesHome: 1,
  missesTarget: 4,
  /** Neither level nor plumb: at 45 degrees, and less so nearer to either. */
  oblique: 1.1,
  /** Two bridges of which neither is the other's image, though what they hold is its own. */
  lopsided: 2,
  /** Two bridges that leave the same way, through one stroke. */
  sameWay: 0.4,
  /** Ends in sheet that is too thin to hold. */
  thin: 2,
  /** Two bridges near each other, where the far end of the island would flap. */
  crowded: 1.2,
  /** A crumb of the letter between two bars, or between a bar and what else is cut off. */
  crumb: 1.5,
};

/**
 * Power by which a stroke thicker than the island's thinnest counts for more than its thickness: where strokes are
 * much alike, bars are even and square; where one is half as thick as the others, they stand in it.
 */
const THICK = 0.3;

/** What a bar between two islands costs each of them: it stands for one of either. */
const SHARED = 0.6;

/** Bridges of one island leave it at least this far apart, or this share of a fair turn where there are many. */
const LEAST_APART: Deg = 50;
const FAIR_SHARE = 0.7;
/** From here on they stand on opposite sides, however small the island. */
const OPPOSITE: Deg = 120;
/** Pairs are tried among this many of the best places. */
const MOST_TRIED = 48;

export function candidatesOf(
  crossings: readonly Crossing[],
  island: Island,
  direction: Direction,
  isFirm: (crossing: Crossing) => boolean,
): Candidate[] {
  const thinnest = Math.min(...crossings.map(({ length }) => length));
  return crossings
    .map((crossing) => ({
      ...candidateOf(crossing, island),
      cost:
        crossing.length *
        (crossing.length / thinnest) ** THICK *
        (crossing.target === FRAME ? 1 : SHARED) *
        (1 + againstIt(crossing, island, direction) + (isFirm(crossing) ? 0 : WEIGHT.thin)),
    }))
    .sort((a, b) => a.cost - b.cost || a.angle - b.angle);
}

function againstIt(crossing: Crossing, island: Island, direction: Direction): number {
  const { along } = crossing;
  const lying = along.x * along.x;
  const astray = {
    thinnest: WEIGHT.lying * lying,
    up: WEIGHT.astray * lying,
    across: WEIGHT.astray * (1 - lying),
  };
  return (
    WEIGHT.slant * Math.sin(radians(crossing.slant)) ** 2 +
    WEIGHT.oblique * 2 * Math.abs(along.x * along.y) +
    WEIGHT.corner * crossing.corner +
    WEIGHT.offCenter * offCenter(crossing, island) ** 2 +
    astray[direction] +
    (crossing.meetsHome ? 0 : WEIGHT.missesHome) +
    (crossing.meetsTarget ? 0 : WEIGHT.missesTarget)
  );
}

/** How far the bar's center line passes the island's middle, as a share of half the island's size. */
function offCenter({ along, leaves }: Crossing, { box, inside }: Island): number {
  const across = leftNormal(along);
  const half = (Math.abs(across.x) * box.w + Math.abs(across.y) * box.h) / 2;
  return half > 0 ? Math.min(1.5, Math.abs(dot(subtract(leaves, inside), across)) / half) : 0;
}

/**
 * The best of an island's candidates that, with the bridges it already has from its neighbors, make
 * `count`: the pair with the least cost whose bars stand on different sides, then more of them, each in the
 * widest gap left. Fewer where no more fit side by side.
 */
export function chooseBridges(
  candidates: readonly Candidate[],
  island: Island,
  count: number,
  width: Mm,
  held: readonly Candidate[],
): Candidate[] {
  const tried = spread(candidates);
  const spacing: Spacing = {
    size: sizeOf(island),
    width,
    apart: Math.min(LEAST_APART, (FAIR_SHARE * 360) / count),
  };
  const pair = count >= 2 && held.length === 0 ? bestPair(tried, spacing, island.mirrors) : null;
  const chosen = pair ? [...held, ...pair] : [...held];
  while (chosen.length < count) {
    const next = chosen.length === 0 ? candidates[0] : bestNext(tried, chosen, spacing);
    if (!next) break;
    chosen.push(next);
  }
  return chosen.slice(held.length);
}

/** A bridge as seen from its island, with nothing against it. */
export const candidateOf = (crossing: Crossing, island: Island): Candidate => ({
  crossing,
  angle: leavingAngle(crossing, island.inside),
  cost: crossing.length,
});

/** A neighbor's bridge as seen from the island that it reaches. */
export function fromOtherEnd(crossing: Crossing, island: Island): Candidate {
  const { leaves, reaches, along, before, after, meetsHome, meetsTarget } = crossing;
  const turned: Crossing = {
    ...crossing,
    leaves: reaches,
    reaches: leaves,
    along: scale(along, -1),
    before: after,
    after: before,
    meetsHome: meetsTarget,
    meetsTarget: meetsHome,
  };
  return candidateOf(turned, island);
}

/** The cheapest candidates, but of each direction some: forty places on one thin serif would crowd out the rest. */
function spread(candidates: readonly Candidate[]): Candidate[] {
  const perSector = new Map<number, number>();
  return candidates
    .filter(({ angle }) => {
      const sector = Math.floor((angle + 180) / 30);
      return addUp(perSector, sector) < MOST_TRIED / 12;
    })
    .slice(0, MOST_TRIED);
}

/** What keeps an island's bridges from crowding. */
interface Spacing {
  /** Across the island, corner to corner of its box. */
  readonly size: Mm;
  /** Of a bar. */
  readonly width: Mm;
  readonly apart: Deg;
}

function bestPair(
  candidates: readonly Candidate[],
  spacing: Spacing,
  mirrors: readonly Mirror[],
): [Candidate, Candidate] | null {
  let best: [Candidate, Candidate] | null = null;
  let least = Infinity;
  candidates.forEach((a, i) => {
    for (const b of candidates.slice(i + 1)) {
      if (!standApart(a, b, spacing)) continue;
      const uneven = Math.min(
        1,
        ...mirrors.map((mirror) => unevenness(a.crossing, b.crossing, mirror, spacing)),
      );
      const cost =
        (a.cost + b.cost) *
        (1 + WEIGHT.crowded * nearness(a, [b], spacing.size) ** 2) *
        (1 + WEIGHT.lopsided * (mirrors.length > 0 ? uneven : 0)) *
        (1 + WEIGHT.sameWay * Math.max(0, dot(a.crossing.along, b.crossing.along))) *
        (leaveCrumb(a.crossing, b.crossing, spacing.width) ? 1 + WEIGHT.crumb : 1);
      if (cost < least) {
        least = cost;
        best = [a, b];
      }
    }
  });
  return best;
}

/** Places this near to each other, as a share of the island's size, are one to the eye. */
const SAME_PLACE = 0.03;

/** 0 where two bars are each other's image, or each its own; ½ where one of them is; else 1. */
function unevenness(a: Crossing, b: Crossing, mirror: Mirror, { size }: Spacing): number {
  const images = (one: Crossing, other: Crossing): boolean =>
    distance(imageOf(one.leaves, mirror), other.leaves) <= SAME_PLACE * size &&
    distance(turnedBy(one.along, mirror), other.along) <= SAME_PLACE;
  return images(a, b) ? 0 : [a, b].filter((one) => !images(one, one)).length / 2;
}

/** How far bars may turn from each other, as a cosine, to cross one stroke side by side. */
const SIDE_BY_SIDE = 0.8;

/** Whether what two bars leave between them of a stroke is a crumb: smaller than a bar is wide each way. */
function leaveCrumb(a: Crossing, b: Crossing, width: Mm): boolean {
  if (dot(a.along, b.along) < SIDE_BY_SIDE) return false;
  const between = Math.abs(dot(subtract(a.leaves, b.leaves), leftNormal(a.along))) - width;
  return between > 0 && (between * (a.length + b.length)) / 2 < width * width;
}

/** The choices once more, those bars put off that touch a crumb: what they cost counts for so much more. */
export const putOff = (
  candidates: readonly Candidate[],
  touches: (crossing: Crossing) => boolean,
): Candidate[] =>
  candidates
    .map((one) => (touches(one.crossing) ? { ...one, cost: one.cost * (1 + WEIGHT.crumb) } : one))
    .sort((a, b) => a.cost - b.cost || a.angle - b.angle);

function bestNext(
  candidates: readonly Candidate[],
  chosen: readonly Candidate[],
  spacing: Spacing,
): Candidate | null {
  let best: Candidate | null = null;
  let least = Infinity;
  for (const candidate of candidates) {
    if (!chosen.every((other) => standApart(candidate, other, spacing))) continue;
    const cost = candidate.cost * crowding(candidate, chosen, spacing.size);
    if (cost < least) {
      least = cost;
      best = candidate;
    }
  }
  return best;
}

/** Across an island, corner to corner of its box. */
export const sizeOf = ({ box }: Island): Mm => Math.hypot(box.w, box.h);

/** What one more bar costs beside those of its island, as a factor. */
export const crowding = (candidate: Candidate, others: readonly Candidate[], size: Mm): number =>
  1 + 2 * WEIGHT.crowded * nearness(candidate, others, size) ** 2;

/** 1 where a bar stands beside another one, 0 where the whole size of the island lies between. */
function nearness(candidate: Candidate, others: readonly Candidate[], size: Mm): number {
  const nearest = Math.min(
    ...others.map((other) => distance(candidate.crossing.leaves, other.crossing.leaves)),
  );
  return Math.max(0, 1 - nearest / size);
}

/** Bars leave in different directions, with a bar's width between those that are not opposite. */
function standApart(a: Candidate, b: Candidate, { apart: least, width }: Spacing): boolean {
  const turn = apart(a.angle, b.angle);
  return turn >= least && (turn >= OPPOSITE || distance(a.crossing.leaves, b.crossing.leaves) >= 2 * width);
}

const apart = (a: Deg, b: Deg): Deg => {
  const turn = Math.abs(a - b) % 360;
  return Math.min(turn, 360 - turn);
};

/** Bars set by hand leave the island at least so many bar widths apart, so that each is a bar of its own. */
const CLEAR = 1.5;

/**
 * The candidates that leave the island nearest to directions given by hand, in their order. Each stands clear
 * of those before it; directions for which no place is left are passed over, so those are always the last.
 */
export function nearestTo(candidates: readonly Candidate[], angles: readonly Deg[], width: Mm): Candidate[] {
  const found: Candidate[] = [];
  for (const angle of angles) {
    let best: Candidate | null = null;
    for (const candidate of candidates) {
      if (best && apart(candidate.angle, angle) >= apart(best.angle, angle)) continue;
      if (found.every((other) => standClear(candidate, other, width))) best = candidate;
    }
    if (best) found.push(best);
  }
  return found;
}

export const standClear = (a: Candidate, b: Candidate, width: Mm): boolean =>
  apart(a.angle, b.angle) >= OPPOSITE || distance(a.crossing.leaves, b.crossing.leaves) >= CLEAR * width;
