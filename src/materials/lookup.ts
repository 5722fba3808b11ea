import type { Material, Stock, Tables } from './types.ts';

/** Finders by id over the tables that come with the tool and what a design adds to them. */
export interface Lookup {
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly materials: ReadonlyMap<string, Material>;
  /** What a stock is made of; undefined when either is unknown. */
  readonly materialOf: (stock: string | null) => Material | undefined;
}

/** Entries by their ids; where an id comes twice, the later one counts. */
export function byId<T extends { readonly id: string }>(entries: readonly T[]): ReadonlyMap<string, T> {
  return new Map(entries.map((entry) => [entry.id, entry]));
}

/** A design's own stock takes the place of a table's with the same id. */
export function lookup(tables: Pick<Tables, 'stocks' | 'materials'>, own: readonly Stock[] = []): Lookup {
  const stocks = byId([...tables.stocks, ...own]);
  const materials = byId(tables.materials);
  return {
    stocks,
    materials,
    materialOf: (stock) => {
      const known = stock === null ? undefined : stocks.get(stock);
      return known?.material ? materials.get(known.material) : undefined;
    },
  };
}
