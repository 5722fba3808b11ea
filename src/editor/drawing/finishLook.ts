import type { Design } from '../../design/schema.ts';
import { appearanceOf } from '../../finish/lit/appearance.ts';
import { letterLook } from '../../finish/look.ts';
import { shadowOf } from '../../finish/shadow.ts';
import { keptBy } from '../../list/keptBy.ts';
import type { Shown } from '../document/shown.ts';
import { gleamsOn } from './gleam.ts';
import type { PartsLook } from './paintParts.ts';

/** What parts look like by their finishes, their wood and the light. */
export function finishLook(
  { face, stocks, materials, looks }: Pick<Shown, 'face' | 'stocks' | 'materials' | 'looks'>,
  { finishes, light }: Pick<Design, 'finishes' | 'light'>,
): Pick<PartsLook, 'light' | 'lamp' | 'appearance' | 'letterOf' | 'gleamsOn'> {
  const sheens = new Map(finishes.map((finish) => [finish.id, finish.sheen]));
  return {
    light: shadowOf(light),
    lamp: light,
    appearance: appearanceOf({ looks, finishes, stocks, materials }),
    letterOf: (sign, finish) => ({
      fill: letterLook(looks, finishes, sign, finish) ?? '#888888',
      sheen: sheens.get(finish) ?? null,
    }),
    gleamsOn: keptBy((ctx) => gleamsOn(ctx, light, face.box)),
  };
}
