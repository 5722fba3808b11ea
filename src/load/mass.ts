import type { Check } from '../check/check.ts';
import { isBought, isPaint } from '../design/made.ts';
import { boxOf, centroidOf } from '../geometry/region.ts';
import type { Region } from '../geometry/shape.ts';
import { trueAreaOf } from '../geometry/trueArea.ts';
import type { Solid } from '../joinery/piece.ts';
import { KeptResults } from '../layout/kept.ts';
import type { Laid, LaidPart } from '../layout/laid.ts';
import { addTo, type Groups } from '../list/grouped.ts';
import type { Material, Stock } from '../materials/types.ts';
import type { Kg, Liters, Mm } from '../measure/units.ts';
import { volumeOfMolding } from './molding.ts';

/** Cubic millimeters in a cubic meter. */
const MM3_PER_M3 = 1e9;

/**
 * Mass that a liter of paint leaves once dry: about 1.3 kg a liter wet, of which a little over half stays.
 * Common practice, no source.
 */
const DRY_KG_PER_LITER: Kg = 0.75;

/** A mass and where its center of gravity lies, in face coordinates. */
export interface PointMass {
  readonly part: string;
  readonly mass: Kg;
  readonly x: Mm;
  readonly y: Mm;
  readonly z: Mm;
}

/** Liters that stay on a part, coats of all finishes and primer together, waste left out. */
export interface Coating {
  readonly part: string;
  readonly liters: Liters;
}

/**
 * A solid's mass: a molding by its section along each of its lengths; anything else by its footprint after
 * joints and openings, times its height. Null when no density is known for its stock.
 */
function massOfSolid(
  solid: Solid,
  stock: Stock | undefined,
  material: Material | undefined,
  results: KeptResults,
): PointMass | null {
  if (!stock || !material) return null;
  if (stock.form === 'shaped' && solid.lengths) {
    const { lengths } = solid;
    const molding = results.of(solid, 'volume', [stock], () => volumeOfMolding(lengths, stock));
    const { volume, x, y, z } = molding ?? { volume: 0, ...centroidOf(solid.region), z: 0 };
    return { part: solid.part, mass: (volume * material.density) / MM3_PER_M3, x, y, z: solid.z0 + z };
  }
  const whole = massOfPrism(solid.part, solid.sawn?.rest ?? solid.region, solid.z0, solid.z1, material);
  const lacking = ((solid.relief?.lacking ?? 0) * material.density) / MM3_PER_M3;
  return lacking === 0 ? whole : { ...whole, mass: whole.mass - lacking };
}

function massOfPrism(part: string, region: Region, z0: Mm, z1: Mm, { density }: Material): PointMass {
  const mass = (trueAreaOf(region) * (z1 - z0) * density) / MM3_PER_M3;
  return { part, mass, ...centroidOf(region), z: (z0 + z1) / 2 };
}

function massOfFitting(laid: Laid<'fitting'>): PointMass {
  const { box, z0, z1 } = laid;
  return {
    part: laid.id,
    mass: laid.spec.mass_kg,
    x: box.x + box.w / 2,
    y: box.y + box.h / 2,
    z: (z0 + z1) / 2,
  };
}

/** What hangs on the bed: solids after their joints, the parts they come from, and the tables they need. */
export interface MassInput {
  readonly solids: readonly Solid[];
  readonly parts: readonly LaidPart[];
  readonly stocks: readonly Stock[];
  readonly materials: readonly Material[];
  /** Paint that stays on the parts; empty to leave it out. */
  readonly coatings: readonly Coating[];
}

/**
 * Masses of everything that is added, in the order of the solids, the paint last. Fittings weigh what their
 * label says; painted shapes are weighed with the paint.
 *
 * Checks: `load.no-density` (warning), one for each stock whose material has no density, with its parts,
 * which then are missing from every sum.
 *
 * @param results what was found of the solids before
 */
export function massesOf(
  input: MassInput,
  results = new KeptResults(),
): {
  readonly masses: readonly PointMass[];
  readonly checks: readonly Check[];
} {
  const stocks = new Map(input.stocks.map((s) => [s.id, s]));
  const materials = new Map(input.materials.map((m) => [m.id, m]));
  const masses: PointMass[] = [];
  const unknown: Groups<string, string> = new Map();
  const centers = new Map<string, Omit<PointMass, 'mass'>>();
  const fittings = new Map(input.parts.flatMap((p) => (isBought(p) ? [[p.id, p] as const] : [])));
  for (const solid of input.solids) {
    if (boxOf(solid.region)) {
      centers.set(solid.part, { part: solid.part, ...centroidOf(solid.region), z: solid.z1 });
    }
    if (isPaint(solid)) continue;
    const fitting = fittings.get(solid.part);
    const stock = stocks.get(solid.stock ?? '');
    const mass = fitting
      ? massOfFitting(fitting)
      : massOfSolid(solid, stock, materials.get(stock?.material ?? ''), results);
    if (mass) masses.push(mass);
    else addTo(unknown, solid.stock ?? '', solid.part);
    if (!solid.sawn) continue;
    const { part, z0, sawn } = solid;
    const sheet = stocks.get(sawn.stock);
    const made = sheet && materials.get(sheet.material);
    if (made) masses.push(massOfPrism(part, sawn.region, z0, sawn.z1, made));
    else addTo(unknown, sawn.stock, part);
  }
  for (const { part, liters } of input.coatings) {
    const center = centers.get(part);
    if (center && liters > 0) masses.push({ ...center, mass: liters * DRY_KG_PER_LITER });
  }
  const checks = [...unknown].map(
    ([stock, parts]): Check => ({ code: 'load.no-density', severity: 'warning', parts, figures: { stock } }),
  );
  return { masses, checks };
}
