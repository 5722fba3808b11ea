import type { Design, Finish } from '../../src/design/schema.ts';
import type { FinishInput, LetterPaint } from '../../src/finish/input.ts';
import type { Looks } from '../../src/finish/look.ts';
import { regionOfBox } from '../../src/geometry/region.ts';
import type { Region } from '../../src/geometry/shape.ts';
import type { Solid } from '../../src/joinery/piece.ts';
import type { PaintedLayer } from '../../src/lettering/painted.ts';

/** Builders for tests of the finish room: a flat face of 1000 by 2000 and parts on it. */
export const box = (x: number, y: number, w: number, h: number): Region => regionOfBox({ x, y, w, h });

export const LEVEL = {
  id: 'skin',
  z: 0,
  region: box(0, 0, 1000, 2000),
  box: { x: 0, y: 0, w: 1000, h: 2000 },
  inner: null,
  behind: 12,
  material: 'plywood',
} as const;

export function solid(
  part: string,
  region: Region,
  z0: number,
  z1: number,
  more: Partial<Solid> = {},
): Solid {
  return { part, kind: 'panel', region, z0, z1, stock: null, finish: 'red', on: 'skin', ...more };
}

export function finish(id: string, more: Partial<Finish> = {}): Finish {
  return {
    id,
    name: id,
    kind: 'paint',
    color: '#b03030',
    sheen: 'satin',
    coats: 2,
    rate_m2_l: 10,
    containers: [],
    owned_l: 0,
    primer: null,
    ...more,
  };
}

/** Every solid in the color of its finish: looks have tests of their own. */
export function looksBy(solids: readonly Solid[], finishes: readonly Finish[]): Looks {
  const colors = new Map(finishes.map((f) => [f.id, f.color]));
  const parts = new Map(solids.map((s) => [s.part, colors.get(s.finish ?? '') ?? '#e4cfa4']));
  return { parts, grounds: parts };
}

export const NO_WASTE: Design['paint'] = { waste: 0, containers: 'metric', backPriming: false };

/** Lettering of which the brush covers what is seen of it, where nothing else is said. */
export interface ShortLettering extends Omit<LetterPaint, 'layers'> {
  readonly layers: readonly (Omit<PaintedLayer, 'painted'> & { readonly painted?: Region })[];
}

export function input(
  solids: readonly Solid[],
  {
    lettering = [],
    ...more
  }: Omit<Partial<FinishInput>, 'lettering'> & {
    readonly lettering?: readonly ShortLettering[];
  } = {},
): FinishInput {
  return {
    face: { levels: [LEVEL] },
    solids,
    lettering: lettering.map((one) => ({
      ...one,
      layers: one.layers.map((layer) => ({ painted: layer.region, ...layer })),
    })),
    sawn: [],
    glued: new Set(),
    joined: new Map(),
    finishes: [finish('red'), finish('blue')],
    looks: looksBy(solids, more.finishes ?? [finish('red'), finish('blue')]),
    paint: NO_WASTE,
    stocks: new Map(),
    materials: new Map(),
    containers: [
      { id: 'one', name: '1 L', system: 'metric', volume: 1, source: '' },
      { id: 'five', name: '5 L', system: 'metric', volume: 5, source: '' },
    ],
    ...more,
  };
}
