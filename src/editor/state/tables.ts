import brads from '../../../assets/materials/brads.json';
import containers from '../../../assets/materials/containers.json';
import fonts from '../../../assets/materials/fonts.json';
import glues from '../../../assets/materials/glues.json';
import materials from '../../../assets/materials/materials.json';
import mattresses from '../../../assets/materials/mattresses.json';
import papers from '../../../assets/materials/papers.json';
import screws from '../../../assets/materials/screws.json';
import stocks from '../../../assets/materials/stocks.json';
import tapes from '../../../assets/materials/tapes.json';
import type { Design } from '../../design/schema.ts';
import { lookup } from '../../materials/lookup.ts';
import type { Stock, Tables } from '../../materials/types.ts';

/** The tables that come with the tool. */
export const TABLES = {
  materials,
  stocks,
  brads,
  screws,
  containers,
  glues,
  tapes,
  papers,
  mattresses,
  fonts,
} as Tables;

const found = new WeakMap<Design['stocks'], ReadonlyMap<string, Stock>>();

/** Stocks by id: the tables' and the design's own. */
export function stocksOf(design: Pick<Design, 'stocks'>): ReadonlyMap<string, Stock> {
  let map = found.get(design.stocks);
  if (!map) {
    map = lookup(TABLES, design.stocks).stocks;
    found.set(design.stocks, map);
  }
  return map;
}
