import { NO_SUPPLIES } from '../../design/defaults.ts';
import type { Design } from '../../design/schema.ts';
import { lookup } from '../../materials/lookup.ts';
import type { Tables } from '../../materials/types.ts';
import type { Cell } from './csv.ts';

/** Columns of the list of prices: kinds and ids as in the design file, a size or a container by which it is bought. */
export const PRICES_HEAD = ['kind', 'id', 'name', 'container', 'length_mm', 'width_mm', 'price'] as const;

/** Columns of the list of what is on hand. */
export const SHELF_HEAD = [
  'kind',
  'id',
  'name',
  'length_mm',
  'width_mm',
  'count',
  'liters',
  'defects_mm',
] as const;

/** What the lists are made of. */
export interface Listed {
  readonly design: Design;
  readonly tables: Tables;
}

type Filled<C extends string> = Partial<Readonly<Record<C, Cell>>>;

/** A list as rows, its columns in their order; what a row does not tell is empty. */
const rowsUnder = <C extends string>(head: readonly C[], rows: readonly Filled<C>[]): Cell[][] => [
  [...head],
  ...rows.map((row) => head.map((column) => row[column] ?? null)),
];

/** A price that nobody entered is an empty cell. */
const orEmpty = (price: number | undefined): Cell => (price === undefined || price <= 0 ? null : price);

/** Every price that the plan reckons with, in a list that is filled in and read back. */
export function pricesRows({ design, tables }: Listed): Cell[][] {
  const { prices, primer } = design.supplies ?? NO_SUPPLIES;
  const containers = tables.containers.filter(({ system }) => system === design.paint.containers);
  const bought = [...tables.brads, ...tables.screws, ...tables.glues, ...tables.tapes];
  const stocks = [...lookup(tables, design.stocks).stocks.values()].flatMap((stock) => {
    const told = { kind: 'stock', id: stock.id, name: stock.name };
    return stock.form === 'sheet'
      ? stock.sizes.map((one) => ({
          ...{ ...told, length_mm: one.length, width_mm: one.width },
          price: orEmpty(one.price),
        }))
      : stock.lengths.map((one) => ({ ...told, length_mm: one.length, price: orEmpty(one.price) }));
  });
  const supply = (id: string, name: string, price: number) => ({
    ...{ kind: 'supply', id, name },
    price: orEmpty(prices[id] ?? price),
  });
  const canned = (kind: string, id: string, name: string, own: Design['finishes'][number]['containers']) =>
    containers.map((can) => ({
      ...{ kind, id, name, container: can.id },
      price: orEmpty(own.find(({ container }) => container === can.id)?.price),
    }));
  return rowsUnder(PRICES_HEAD, [
    ...stocks,
    ...bought.map(({ id, name, price }) => supply(id, name, price)),
    ...tables.papers.map(({ id, name }) => supply(id, name, 0)),
    ...design.finishes.flatMap(({ id, name, containers: own }) => canned('paint', id, name, own)),
    ...canned('primer', '', '', primer),
  ]);
}

/** What is on hand, in a list that is filled in and read back. */
export function shelfRows({ design, tables }: Listed): Cell[][] {
  const { owned } = design.supplies ?? NO_SUPPLIES;
  const { stocks } = lookup(tables, design.stocks);
  const screws = new Map(tables.screws.map(({ id, name }) => [id, name]));
  return rowsUnder(SHELF_HEAD, [
    ...design.owned.map(({ stock, length, width, count, defects }) => ({
      ...{ kind: 'offcut', id: stock, name: stocks.get(stock)?.name ?? stock },
      ...{ length_mm: length, width_mm: width ?? null, count },
      defects_mm: defects.map(({ from, to }) => `${from}-${to}`).join(' '),
    })),
    ...design.finishes.map(({ id, name, owned_l }) => ({ kind: 'paint', id, name, liters: owned_l })),
    { kind: 'primer', liters: owned.primer_l },
    { kind: 'glue', liters: owned.glue_l },
    { kind: 'tape', length_mm: owned.tape },
    ...owned.screws.map(({ screw, length, count }) => ({
      ...{ kind: 'screws', id: screw, name: screws.get(screw) ?? screw },
      ...{ length_mm: length, count },
    })),
  ]);
}
