import { isLettered, isPaint } from '../../design/made.ts';
import type { Color, DrawItem } from '../../drawing/drawing.ts';
import { rectangle, shape } from '../../drawing/items.ts';
import { INK, WEIGHT } from '../../drawing/style.ts';
import { letterLook } from '../../finish/look.ts';
import { pathOfRegion } from '../../geometry/path.ts';
import { areaOf, boxOf } from '../../geometry/region.ts';
import type { Box, Region } from '../../geometry/shape.ts';
import type { Solid } from '../../joinery/piece.ts';
import { groovesOf } from '../../layout/laid.ts';
import type { Plan } from '../../plan/types.ts';
import { onPage, type PageView } from './view.ts';

/** Solids from the deepest to the highest, as they cover each other. */
export function solidsInOrder(plan: Plan): Solid[] {
  return plan.joinery.solids
    .map((solid, i) => ({ solid, i }))
    .sort((a, b) => a.solid.z1 - b.solid.z1 || a.i - b.i)
    .map(({ solid }) => solid);
}

/** The bed's own wood, whatever it is: its levels are told apart by their lines. */
const BARE: Color = '#e6d6b8';
/** What lies in the shade of its own walls. */
const GROOVE: Color = '#4b4640';

const outlined = (region: Region, fill: Color | undefined, weight: number): DrawItem =>
  shape(pathOfRegion(region), {
    stroke: INK.line,
    width: weight,
    ...(fill ? { fill, fillRule: 'evenodd' } : {}),
  });

/** Levels of the bare face; recessed ones a little darker. */
function levels(plan: Plan, view: PageView, colored: boolean): DrawItem[] {
  return plan.face.levels.map((level) =>
    outlined(view.region(level.region), colored ? BARE : undefined, WEIGHT.thin),
  );
}

/** The face as it will look: every solid in its color, lettering on top, light outlines. */
export function coloredFace(plan: Plan, view: PageView): DrawItem[] {
  const lettering = new Map(plan.signs.map((sign) => [sign.id, sign]));
  const parts = solidsInOrder(plan).flatMap((solid): DrawItem[] => {
    const drawn = [outlined(view.region(solid.region), plan.looks.parts.get(solid.part), WEIGHT.hair)];
    const grooves = groovesOf(solid.relief);
    if (grooves.length > 0) drawn.push(outlined(view.region(grooves), GROOVE, WEIGHT.hair));
    const sign = lettering.get(solid.part);
    if (!sign || isPaint(solid)) return drawn;
    const letters = sign.lettered.layers.map((layer) => {
      const onFace = layer.region.map((polygon) => ({
        outer: polygon.outer.map((p) => ({ x: p.x + sign.at.x, y: p.y + sign.at.y })),
        holes: polygon.holes.map((ring) => ring.map((p) => ({ x: p.x + sign.at.x, y: p.y + sign.at.y }))),
      }));
      return shape(pathOfRegion(view.region(onFace)), {
        fill: letterLook(plan.looks, plan.design.finishes, solid.part, layer.finish) ?? BARE,
        fillRule: 'evenodd',
      });
    });
    return [...drawn, ...letters];
  });
  const free = new Set(
    plan.joinery.solids.filter((s) => isLettered(s) && isPaint(s)).map(({ part }) => part),
  );
  // Letters without a board lie on wood of any height: what is seen of them is told.
  const words = plan.finish.shown
    .filter(({ part, finish }) => free.has(part) && finish !== null)
    .toReversed()
    .map(({ region, look }) =>
      shape(pathOfRegion(view.region(region)), { fill: look ?? BARE, fillRule: 'evenodd' }),
    );
  return [
    ...levels(plan, view, true),
    ...parts,
    ...words,
    rectangle(onPage(view, plan.face.box), { stroke: INK.line, width: WEIGHT.bold }),
  ];
}

/** Outlines only, each part hiding what lies below it; told what is there, of those parts alone. */
export function outlinedFace(
  plan: Plan,
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
    ...levels(plan, view, false),
    ...parts,
    rectangle(onPage(view, plan.face.box), { stroke: INK.line, width: WEIGHT.bold }),
  ];
}

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
