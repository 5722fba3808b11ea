import type { Design } from '../../src/design/schema.ts';
import type { FasteningInput } from '../../src/fastening/input.ts';
import { fastenParts, planFastening } from '../../src/fastening/planFastening.ts';
import type { FasteningPlan } from '../../src/fastening/result.ts';
import { boxOf } from '../../src/geometry/region.ts';
import type { Solid } from '../../src/joinery/piece.ts';
import type { LaidPart, Leg } from '../../src/layout/laid.ts';

type Fixing = LaidPart['fixing'];

function common(solid: Solid, fixing: Fixing) {
  const box = boxOf(solid.region) ?? { x: 0, y: 0, w: 0, h: 0 };
  const { region, z0, z1, stock, finish, on, part } = solid;
  return { id: part, part, name: part, member: null, box, region, z0, z1, on, stock, finish, fixing };
}

/** A laid panel that came out of layout as this solid. */
export function panelOf(solid: Solid, fixing: Fixing): LaidPart {
  const spec = { shape: { form: 'rectangle' }, openings: [], grain: 'any' } as const;
  return { ...common(solid, fixing), kind: 'panel', spec };
}

/** A laid strip along the longer side of this solid. */
export function stripOf(solid: Solid, fixing: Fixing): LaidPart {
  const base = common(solid, fixing);
  const { x, y, w, h } = base.box;
  const up = h > w;
  const leg: Leg = {
    start: up ? { x: x + w / 2, y } : { x, y: y + h / 2 },
    end: up ? { x: x + w / 2, y: y + h } : { x: x + w, y: y + h / 2 },
    width: up ? w : h,
    thickness: solid.z1 - solid.z0,
    angle: up ? 90 : 0,
  };
  const ends = { start: { cut: 'square' }, end: { cut: 'square' } } as const;
  return {
    ...base,
    kind: 'strip',
    leg,
    spec: { lie: up ? 'up' : 'across', ends, fit: false, onEdge: false },
  };
}

/** A laid fitting. */
export function fittingOf(solid: Solid): LaidPart {
  const spec = { shape: { form: 'rectangle' }, depth: 10, mass_kg: 1, price: 0, color: '#000000' } as const;
  return { ...common(solid, { how: 'screws', glue: false }), kind: 'fitting', spec };
}

type Spacings = Pick<Design['fastening'], 'lengths' | 'spacing' | 'fromEdge' | 'shortOfFar' | 'bite'>;

/** Panels and strips that came out of layout as these solids, fastened with one brad and nothing else. */
export function bradded(
  solids: readonly Solid[],
  on: Pick<FasteningInput, 'bed' | 'face'>,
  brad: NonNullable<FasteningInput['brad']>,
  spacings: Spacings,
): FasteningPlan {
  const fixing = { how: 'brads', glue: false } as const;
  return planFastening(
    fastenParts({
      ...on,
      keepClears: [],
      parts: solids.map((s) => (s.kind === 'strip' ? stripOf(s, fixing) : panelOf(s, fixing))),
      solids,
      pieces: [],
      stocks: [],
      masses: [],
      settings: { brad: brad.id, ...spacings, screw: 's', screwOver_kg: 100 },
      brad,
      screw: null,
      screws: [],
      glue: null,
    }),
  );
}
