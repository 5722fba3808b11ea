import { intersect, offset, subtract, union } from '../geometry/clip.ts';
import type { Region } from '../geometry/shape.ts';
import { inches, type Mm } from '../measure/units.ts';
import { fillOf } from './letter.ts';
import { isAround, type Lettered, type LetterLayer, toldOf } from './result.ts';
import type { StencilSet } from './stencil/layers.ts';

/** Paint ends this far inside the outline of what is glued over it, so that no bare wood shows. Common practice, no source. */
export const UNDER_EDGE: Mm = inches(1 / 16);

/** A color of the lettering with what the brush covers of it. */
export interface PaintedLayer extends Pick<LetterLayer, 'role' | 'finish' | 'region'> {
  readonly painted: Region;
}

/**
 * What is painted of each color, by the way the letters are made. Through a stencil it is all that the sheet
 * opens, under the colors that follow too, bridges left out. Traced or transferred, it is what stays in sight:
 * the pattern has no other lines to paint up to. Around letters that are sawn out, the color next to them
 * runs a little way under their edge; their own is on the sawn letters.
 */
export function paintedLayers(
  lettered: Lettered,
  sawn: boolean,
  stencils: StencilSet | null,
): PaintedLayer[] {
  // Of each look the color that lies next to its letters.
  const isNext = (layer: LetterLayer): boolean =>
    layer ===
    lettered.layers.findLast((one) => isAround(one) && toldOf(one.role).number === toldOf(layer.role).number);
  const painted = (layer: LetterLayer): Region => {
    if (stencils) return stencils.layers.find(({ role }) => role === layer.role)?.stencil.cut ?? [];
    return sawn && isNext(layer) ? underLetters(layer, fillOf(lettered.layers)) : layer.region;
  };
  return lettered.layers.map((layer) => ({
    role: layer.role,
    finish: layer.finish,
    region: layer.region,
    painted: painted(layer),
  }));
}

function underLetters({ region, whole }: LetterLayer, letters: Region): Region {
  const edge = subtract(letters, offset(letters, -UNDER_EDGE, 'miter'));
  return union([region, intersect(whole, edge)]);
}
