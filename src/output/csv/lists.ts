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

/** A price that nobody entered is an empty cell. */
const orEmpty = (price: number | undefined): Cell => (price === undefined || price <= 0 ? null : price);

/** Every price that the plan reckons with, in a list that is filled in and read back. */
export function pricesRows({ design, tables }: Listed): Cell[][] {
  const { prices, primer } = design.supplies ?? NO_SUPPLIES;
  const containers = tables.containers.filter(({ system }) => system === design.paint.containers);
  const bought = [...tables.brads, ...tables.screws, ...tables.glues, ...tables.tapes];
  const stocks = [...lookup(tables, design.stocks).stocks.values()].flatMap((stock) =>
    stock.form === 'sheet'
      ? stock.sizes.map(({ length, width, price }): Cell[] => [
          'stock',
          stock.id,
          stock.name,
          '',
          length,
          width,
          orEmpty(price),
        ])
      : stock.lengths.map(({ length, price }): Cell[] => [
          'stock',
          stock.id,
          stock.name,
          '',
          length,
          null,
          orEmpty(price),
        ]),
  );
  const supply = (id: string, name: string, price: number): Cell[] => [
    'supply',
    id,
    name,
    '',
    null,
    null,
    orEmpty(prices[id] ?? price),
  ];
  const canned = (kind: string, id: string, name: string, own: Design['finishes'][number]['containers']) =>
    containers.map((can): Cell[] => [
      kind,
      id,
      name,
      can.id,
      null,
      null,
      orEmpty(own.find(({ container }) => container === can.id)?.price),
    ]);
  return [
    [...PRICES_HEAD],
    ...stocks,
    ...bought.map(({ id, name, price }) => supply(id, name, price)),
    ...tables.papers.map(({ id, name }) => supply(id, name, 0)),
    ...design.finishes.flatMap(({ id, name, containers: own }) => canned('paint', id, name, own)),
    ...canned('primer', '', '', primer),
  ];
}

/** What is on hand, in a list that is filled in and read back. */
export function shelfRows({ design, tables }: Listed): Cell[][] {
  const { owned } = design.supplies ?? NO_SUPPLIES;
  const { stocks } = lookup(tables, design.stocks);
  const screws = new Map(tables.screws.map(({ id, name }) => [id, name]));
  return [
    [...SHELF_HEAD],
    ...design.owned.map(({ stock, length, width, count, defects }): Cell[] => [
      'offcut',
      stock,
      stocks.get(stock)?.name ?? stock,
      length,
      width ?? null,
      count,
      null,
      defects.map(({ from, to }) => `${from}-${to}`).join(' '),
    ]),
    ...design.finishes.map(({ id, name, owned_l }): Cell[] => [
      'paint',
      id,
      name,
      null,
      null,
      null,
      owned_l,
      '',
    ]),
    ['primer', '', '', null, null, null, owned.primer_l, ''],
    ['glue', '', '', null, null, null, owned.glue_l, ''],
    ['tape', '', '', owned.tape, null, null, null, ''],
    ...owned.screws.map(({ screw, length, count }): Cell[] => [
      'screws',
      screw,
      screws.get(screw) ?? screw,
      length,
      null,
      count,
      null,
      '',
    ]),
  ];
}
