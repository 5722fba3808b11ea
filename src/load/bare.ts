import type { Bed } from '../bed/bed.ts';
import { depthsOf } from '../bed/depths.ts';
import type { Face } from '../bed/face.ts';
import type { Material } from '../materials/types.ts';
import type { KgPerM3, Mm } from '../measure/units.ts';
import type { PointMass } from './mass.ts';

/** A foam mattress; common practice, no source (30 to 50 kg/m3 are usual). */
const MATTRESS_DENSITY: KgPerM3 = 40;
/** Where the table has no density for a board of the bed: dry softwood, about pine of check-values section 7. */
const WOOD_DENSITY: KgPerM3 = 480;

/**
 * The bare bed by its measures: frame boards, cleats, platform, skin and mattress, each at its own height.
 * Legs, hinges and bedding are left out: an estimate to set the added mass beside.
 */
export function bareBed(bed: Bed, face: Face, materials: readonly Material[]): PointMass[] {
  const density = new Map(materials.map((m) => [m.id, m.density]));
  const depths = depthsOf(bed);
  // Every layer is the same on both sides of the middle of the face.
  const layer = (part: string, volume: number, material: string, low: Mm, high: Mm): PointMass => ({
    part,
    mass: (volume * (density.get(material) ?? WOOD_DENSITY)) / 1e9,
    x: face.width / 2,
    y: face.height / 2,
    z: (low + high) / 2,
  });
  const masses = face.boards.map((board) => {
    const volume = board.length * board.width * board.thickness * board.count;
    const rail = board.name === 'side rail' || board.name === 'end rail';
    return rail
      ? layer(`bed:${board.name}`, volume, board.material, depths.frameTop, depths.frameLow)
      : layer(`bed:${board.name}`, volume, board.material, depths.platformLow, depths.cleatLow);
  });
  const { platform, skin, mattress } = bed;
  masses.push(
    layer(
      'bed:platform',
      face.platform.w * face.platform.h * platform.thickness,
      platform.material,
      depths.platformTop,
      depths.platformLow,
    ),
  );
  if (skin) {
    const volume = face.width * face.height * skin.thickness;
    masses.push(layer('bed:skin', volume, skin.material, depths.frameLow, 0));
  }
  const foam = mattress.width * mattress.length * mattress.thickness;
  masses.push({
    ...layer('bed:mattress', 0, '', depths.mattressTop, depths.platformTop),
    mass: (foam * MATTRESS_DENSITY) / 1e9,
  });
  return masses;
}
