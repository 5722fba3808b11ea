import type { Color, DrawItem } from '../../drawing/drawing.ts';
import { rectangle, shape } from '../../drawing/items.ts';
import { INK, WEIGHT } from '../../drawing/style.ts';
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

const outlined = (region: Region, fill: Color | undefined, weight: number): DrawItem =>
  shape(pathOfRegion(region), {
    stroke: INK.line,
    width: weight,
    ...(fill ? { fill, fillRule: 'evenodd' } : {}),
  });

const levels = (plan: Plan, view: PageView): DrawItem[] =>
  plan.face.levels.map((level) => outlined(view.region(level.region), undefined, WEIGHT.thin));

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
    ...levels(plan, view),
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
