import { isBought } from '../../design/made.ts';
import type { Design, Finish } from '../../design/schema.ts';
import type { LaidPart } from '../../layout/laid.ts';
import type { Material, ShapedStock, Stock } from '../../materials/types.ts';
import type { Looks } from '../look.ts';

/** How the surface of a part is drawn. */
export interface Appearance {
  readonly fill: string;
  /** Of its finish; null for bare wood and fittings. */
  readonly sheen: Finish['sheen'] | null;
  /** Its wood shows, and has a grain. */
  readonly grained: boolean;
  /** What it is made of, where that is shaped in section. */
  readonly molding: ShapedStock | null;
}

interface AppearanceInput {
  readonly looks: Looks;
  readonly finishes: Design['finishes'];
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly materials: ReadonlyMap<string, Material>;
}

/** Appearances by part. */
export function appearanceOf({ looks, finishes, stocks, materials }: AppearanceInput) {
  const byId = new Map(finishes.map((finish) => [finish.id, finish]));
  return (part: LaidPart): Appearance => {
    const finish = isBought(part) ? undefined : byId.get(part.finish ?? '');
    const stock = stocks.get(part.stock ?? '');
    return {
      fill: looks.parts.get(part.id) ?? '#888888',
      sheen: finish?.sheen ?? null,
      grained: finish?.kind !== 'paint' && grows(stock, materials),
      molding: stock?.form === 'shaped' ? stock : null,
    };
  };
}

/** Boards of a wood have a grain; of a sheet its stock says so. */
function grows(stock: Stock | undefined, materials: ReadonlyMap<string, Material>): boolean {
  if (!stock) return false;
  return stock.form === 'sheet' ? stock.grain : materials.get(stock.material)?.hardness !== 'board';
}

/** Black or chalk, whichever shows on a color. */
export function inkOn(color: string): string {
  const n = Number.parseInt(color.slice(1), 16);
  const light = 0.299 * ((n >> 16) & 255) + 0.587 * ((n >> 8) & 255) + 0.114 * (n & 255);
  return light > 110 ? '#14110a' : '#f6f1e2';
}
