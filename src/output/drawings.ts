import { isLettersAlone } from '../design/made.ts';
import type { DrawItem, Drawing } from '../drawing/drawing.ts';
import { layer } from '../drawing/items.ts';
import { union } from '../geometry/clip.ts';
import type { Region } from '../geometry/shape.ts';
import { truePathOfRegion } from '../geometry/truePath.ts';
import type { Solid } from '../joinery/piece.ts';
import { groovesOf } from '../layout/laid.ts';
import { keptBy } from '../list/keptBy.ts';
import type { Pictured } from '../plan/types.ts';
import { solidsInOrder } from './packet/faceView.ts';
import { litFace } from './picture/litFace.ts';

/** Line weight of outlines that a machine follows; any weight will do. */
const OUTLINE = { stroke: '#000000', width: 0.1 } as const;

/** The face in color, full size. */
export function faceDrawing(plan: Pictured): Drawing {
  const { width, height } = plan.face;
  return { width, height, title: plan.design.name, items: litFace(plan) };
}

/** Where there are letters alone, those. */
const outlineOf = ({ finish }: Pictured, solid: Solid): Region =>
  isLettersAlone(solid)
    ? union(finish.shown.filter(({ part }) => part === solid.part).map(({ region }) => region))
    : solid.region;

/** Outlines of everything on the face, full size, a layer for each level and part. */
export const faceOutlines = keptBy((plan: Pictured): Drawing => {
  const { width, height } = plan.face;
  const name = new Map(plan.layout.parts.map((p) => [p.id, p.name]));
  const levels = plan.face.levels.map(
    (l): DrawItem => layer(`level ${l.id}`, [{ kind: 'path', path: truePathOfRegion(l.region), ...OUTLINE }]),
  );
  const parts = solidsInOrder(plan).map((solid) =>
    layer(name.get(solid.part) ?? solid.part, [
      { kind: 'path', path: truePathOfRegion(outlineOf(plan, solid)), ...OUTLINE },
      ...groovesOf(solid.relief).map(
        (groove): DrawItem => ({ kind: 'path', path: truePathOfRegion([groove]), ...OUTLINE }),
      ),
    ]),
  );
  return { width, height, title: plan.design.name, items: [...levels, ...parts] };
});
