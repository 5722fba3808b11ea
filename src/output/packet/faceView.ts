import type { Color, DrawItem } from '../../drawing/drawing.ts';
import { rectangle, shape } from '../../drawing/items.ts';
import { INK, WEIGHT } from '../../drawing/style.ts';
import { boxAround, grownBox, sharedArea } from '../../geometry/box.ts';
import { asOne, clipPolyline, offset } from '../../geometry/clip.ts';
import { pathOfRegion } from '../../geometry/path.ts';
import { areaOf, boxesMeet, boxOf, ringsOf } from '../../geometry/region.ts';
import { boxOfPoints } from '../../geometry/ring.ts';
import type { Box, Point, Region, Ring } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Solid } from '../../joinery/piece.ts';
import { groovesOf } from '../../layout/laid.ts';
import { cyclic, pick } from '../../list/at.ts';
import { keptBy } from '../../list/keptBy.ts';
import type { Mm } from '../../measure/units.ts';
import type { Joined } from '../../plan/types.ts';
import { onPage, type PageView } from './view.ts';

/** Solids from the deepest to the highest, as they cover each other. */
export function solidsInOrder(plan: Joined): Solid[] {
  return plan.joinery.solids
    .map((solid, i) => ({ solid, i }))
    .sort((a, b) => a.solid.z1 - b.solid.z1 || a.i - b.i)
    .map(({ solid }) => solid);
}

const outlined = (region: Region, fill: Color | undefined, weight: number): DrawItem =>
  shape(pathOfRegion(region), {
    stroke: INK.line,
    width: weight,
    ...(fill ? { fill, fillRule: 'evenodd' } : {}),
  });

const levels = (plan: Joined, view: PageView): DrawItem[] =>
  plan.face.levels.map((level) => outlined(view.region(level.region), undefined, WEIGHT.thin));

/** Outlines only, each part hiding what lies below it; told what is there, of those parts alone. */
export function outlinedFace(
  plan: Joined,
  view: PageView,
  isThere: (solid: Solid) => boolean = () => true,
): DrawItem[] {
  const parts = solidsInOrder(plan)
    .filter(isThere)
    .flatMap(({ region, relief }) => [
      outlined(view.region(region), INK.paper, WEIGHT.fine),
      ...groovesOf(relief).map((groove) => outlined(view.region([groove]), undefined, WEIGHT.hair)),
    ]);
  return [
    ...levels(plan, view),
    ...parts,
    rectangle(onPage(view, plan.face.box), { stroke: INK.line, width: WEIGHT.bold }),
  ];
}

/** Hidden edges nearer to one that is seen are not drawn beside it. */
const SEEN: Mm = 1;

interface HiddenEdges {
  readonly solid: Solid;
  readonly lines: readonly Point[][];
}

/** Whether a side of the ring may come into the box. */
const reaches = (ring: Ring, box: Box): boolean =>
  ring.some((p, i) => boxesMeet(boxOfPoints([p, cyclic(ring, i + 1)]), box));

/** What lies under something, with the lines of its edges there. */
export const hiddenEdges = keptBy((plan: Joined): readonly HiddenEdges[] => {
  const solids = solidsInOrder(plan).flatMap((solid) => {
    const box = boxOf(solid.region);
    return box ? [{ solid, box }] : [];
  });
  return solids.flatMap(({ solid, box }, i) => {
    const above = solids.slice(i + 1).filter((other) => boxesMeet(other.box, box));
    // What runs along an edge that is seen is drawn there already: nothing at the rim of all that lies above is hidden.
    const around = boxAround(above.map((other) => other.box));
    const reached = around && ringsOf(solid.region).some((ring) => reaches(ring, grownBox(around, -SEEN)));
    if (!reached || above.every((other) => sharedArea(other.box, box) < SAME_LENGTH)) return [];
    const cover = offset(asOne(above.map((other) => other.solid.region)), -SEEN, 'miter');
    const lines = ringsOf(solid.region).flatMap((ring) => clipPolyline([...ring, pick(ring, 0)], cover));
    return [{ solid, lines }];
  });
});

/** Box of the part's largest polygon, where a label has most room. */
export function labelBox(region: Region): Box | null {
  let best: { box: Box; area: number } | null = null;
  for (const polygon of region) {
    const area = areaOf([polygon]);
    const box = boxOf([polygon]);
    if (box && (!best || area > best.area)) best = { box, area };
  }
  return best?.box ?? null;
}
