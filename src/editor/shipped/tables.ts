import type { Design } from '../../design/schema.ts';
import { byId, lookup } from '../../materials/lookup.ts';
import type { Material, Stock, Tables } from '../../materials/types.ts';
import { remembering } from '../../plan/memory.ts';
import { spoken } from '../words/t.ts';
import { tablesFor } from './shipped.ts';

/** The tables named in the language on screen. */
export const tables = (): Tables => tablesFor(spoken());

const found = new WeakMap<
  Design['stocks'],
  { readonly of: Tables; readonly map: ReadonlyMap<string, Stock> }
>();

/** Stocks by id: the tables' and the design's own. */
export function stocksOf(design: Pick<Design, 'stocks'>): ReadonlyMap<string, Stock> {
  const of = tables();
  const known = found.get(design.stocks);
  if (known?.of === of) return known.map;
  const { stocks: map } = lookup(of, design.stocks);
  found.set(design.stocks, { of, map });
  return map;
}

const materials = remembering((all: Tables['materials']) => byId(all));

/** Materials by id. */
export const materialsOf = (): ReadonlyMap<string, Material> => materials(tables().materials);
