import type { Lettering } from '../../design/schema.ts';
import { grownBox } from '../../geometry/box.ts';
import { intersect } from '../../geometry/clip.ts';
import { inOrder } from '../../geometry/cluster.ts';
import { add, angleOf, midpoint } from '../../geometry/point.ts';
import { boxesMeet, boxOf, regionOfRing } from '../../geometry/region.ts';
import { boxOfPoints } from '../../geometry/ring.ts';
import type { Box, Point, Region } from '../../geometry/shape.ts';
import type { ShapeMemory } from '../../geometry/shapeMemory.ts';
import { at, pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Bridge } from '../result.ts';
import { type Standing, standing } from '../shapes.ts';
import {
  type Choices,
  choicesFor,
  choicesLeft,
  chooseAll,
  holdTongues,
  type Placed,
  wishesOf,
} from './bridging.ts';
import { putOff } from './choose.ts';
import { barRing, type Crossing } from './crossing.ts';
import { type FirmSheet, firmReach, firmSheet } from './firm.ts';
import { type Bar, barsMeet, CLEAR_OF_OTHERS, holdAll, holdsOf } from './hold.ts';
import { type Cut, proveConnected } from './prove.ts';
import { type Solid, solidOf } from './solid.ts';
import { grownBy, reachOf, type Tongue, weakSheet } from './weak.ts';

type Options = Lettering['stencil'];

/** Held on two sides, so that the knife cannot turn it out: no more is asked of what is told as firm. */
const TWICE = 2;

/**
 * A letter, or letters with less sheet between them than has to stay, as a stencil of its own. Letters farther
 * apart share nothing but the frame, and so equal ones are prepared, bridged and proved once.
 */
export interface Unit {
  readonly letters: Region;
  readonly stands: Standing;
  readonly prepared: Prepared;
}

/** What does not depend on how many bridges are asked for or set by hand; all of a unit's work is at the origin. */
interface Prepared {
  readonly solid: Solid;
  readonly firm: FirmSheet;
  readonly choices: readonly Choices[];
  readonly tongues: readonly Tongue[];
}

/** A unit's stencil, at the origin. */
export interface Held extends Cut {
  readonly placed: readonly Placed[];
  readonly bridges: readonly Bridge[];
  /** How often each island is held, up to twice. */
  readonly holds: readonly number[];
  /** Thin fingers of sheet that no bar holds. */
  readonly unheld: readonly Tongue[];
}

export function unitOf(letters: Region, options: Options, memory: ShapeMemory): Unit {
  const stands = standing(letters);
  const { tongue, bridgeWidth, direction } = options;
  const prepared = memory(`prepared ${tongue} ${bridgeWidth} ${direction}:${stands.text}`, () =>
    prepare(stands.shape(), options),
  );
  return { letters, stands, prepared };
}

function prepare(letters: Region, options: Options): Prepared {
  const reaches = { weak: reachOf(options.tongue), firm: firmReach(options.tongue, options.bridgeWidth) };
  const grown = grownBy(letters, reaches.weak);
  const weak = weakSheet(letters, options.tongue, grown);
  const solid = solidOf(weak.letters, (hole) => (weak.isWeak(hole) ? 'tongue' : 'island'));
  const beside = reaches.firm === reaches.weak ? grown : grownBy(letters, reaches.firm);
  const firm = firmSheet(letters, solid, options.bridgeWidth, reaches.firm, inOrder(beside.flat()));
  const choices = solid.islands.map((island) => choicesFor(island, solid, firm, options));
  return { solid, firm, choices, tongues: weak.tongues };
}

/** Bridges the unit and proves that it holds. `options.placed` counts the unit's own islands. */
export function holdUnit({ stands, prepared }: Unit, options: Options, memory: ShapeMemory): Held {
  const { tongue, bridgeWidth, direction, bridges, placed } = options;
  const asked = `held ${tongue} ${bridgeWidth} ${direction} ${bridges} ${JSON.stringify(placed)}`;
  return memory(`${asked}:${stands.text}`, () => hold(stands.shape(), prepared, options));
}

/** How often bars are chosen anew where they leave crumbs: most that can be spared are gone at the second. */
const MOST_TRIES = 4;

function hold(letters: Region, prepared: Prepared, options: Options): Held {
  const width = options.bridgeWidth;
  let choices = choicesLeft(prepared.choices, options);
  let best = barred(letters, choices, prepared, options);
  for (let tries = 1, last = best; tries < MOST_TRIES && last.cut.crumbs.length > 0; tries += 1) {
    const { crumbs } = last.cut;
    choices = choices.map((own) => ({
      ...own,
      candidates: putOff(own.candidates, (crossing) => touchesAny(crossing, crumbs, width)),
    }));
    last = barred(letters, choices, prepared, options);
    if (isBetter(last, best)) best = last;
  }
  const { cut, placed, unheld, holds } = best;
  return { ...cut, placed, bridges: placed.map((one) => bridgeOf(one, width)), holds, unheld };
}

interface Barred {
  readonly placed: readonly Placed[];
  readonly cut: Cut;
  readonly unheld: readonly Tongue[];
  readonly holds: readonly number[];
}

function barred(
  letters: Region,
  choices: readonly Choices[],
  { solid, firm, tongues }: Prepared,
  options: Options,
): Barred {
  const width = options.bridgeWidth;
  const placed = chooseAll(choices, options);
  holdAll(placed, choices, wishesOf(options), firm, width);
  const unheld = holdTongues(tongues, solid, placed, width);
  const around = grownBox(boxOf(letters) ?? { x: 0, y: 0, w: 0, h: 0 }, width);
  const cut = proveConnected(letters, around, placed, choices, width);
  return { placed, cut, unheld, holds: holdsOf(placed, solid.islands.length, firm, width, TWICE) };
}

/** Firmer before whole letters: a choice with fewer crumbs counts where it holds no less. */
function isBetter(one: Barred, than: Barred): boolean {
  const more =
    than.cut.loose.length - one.cut.loose.length ||
    sum(one.holds) - sum(than.holds) ||
    than.unheld.length - one.unheld.length ||
    than.cut.crumbs.length - one.cut.crumbs.length;
  return more > 0;
}

const sum = (holds: readonly number[]): number => holds.reduce((all, hold) => all + hold, 0);

/** Bars this near to a crumb border it. */
const BESIDE: Mm = 0.05;

function touchesAny(crossing: Crossing, crumbs: Region, width: Mm): boolean {
  const bar = barRing(crossing, width + 2 * BESIDE);
  const box = boxOfPoints(bar);
  const near = crumbs.filter(({ outer }) => boxesMeet(boxOfPoints(outer), box));
  return near.length > 0 && intersect(near, regionOfRing(bar)).length > 0;
}

function bridgeOf({ island, crossing }: Placed, width: Mm): Bridge {
  return {
    island: island?.index ?? -1,
    kind: island?.kind ?? 'tongue',
    at: midpoint(crossing.leaves, crossing.reaches),
    angle: angleOf(crossing.along),
    width,
    length: crossing.length,
  };
}

/**
 * Groups of units that have to be worked as one, because bars of theirs would run into each other, by the
 * units' numbers; none where every unit stands for itself.
 */
export function meetingUnits(units: readonly Unit[], helds: readonly Held[], width: Mm): number[][] {
  const near = CLEAR_OF_OTHERS * width;
  const bars = helds
    .flatMap(({ placed }, unit) => {
      const at = pick(units, unit).stands.at;
      return placed.map(({ crossing }) => ({ unit, ...barAt(crossing, at, near) }));
    })
    .sort((a, b) => a.box.x - b.box.x);
  const group = units.map((_, i) => i);
  bars.forEach((bar, i) => {
    for (let k = i + 1; k < bars.length; k += 1) {
      const other = bars[k];
      if (!other || other.box.x > bar.box.x + bar.box.w) break;
      const [own, old] = [at(group, bar.unit), at(group, other.unit)];
      if (own !== old && barsMeet(bar, other, near)) {
        group.forEach((one, at) => {
          if (one === old) group[at] = own;
        });
      }
    }
  });
  const groups = units.map((_, root) => group.flatMap((one, i) => (one === root ? [i] : [])));
  return groups.some((members) => members.length > 1) ? groups.filter(({ length }) => length > 0) : [];
}

/** A bar in its place, with a box around it. */
function barAt({ leaves, reaches, along }: Bar, at: Point, by: Mm): Bar & { readonly box: Box } {
  const [from, to] = [add(leaves, at), add(reaches, at)];
  const [x, y] = [Math.min(from.x, to.x), Math.min(from.y, to.y)];
  const box = grownBox({ x, y, w: Math.abs(to.x - from.x), h: Math.abs(to.y - from.y) }, by);
  return { leaves: from, reaches: to, along, box };
}
