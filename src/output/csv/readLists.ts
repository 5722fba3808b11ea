import { NO_SUPPLIES } from '../../design/defaults.ts';
import { ownCopy } from '../../design/ownCopy.ts';
import type { Design } from '../../design/schema.ts';
import { entryAt } from '../../list/at.ts';
import { totalOf } from '../../list/totals.ts';
import { lookup } from '../../materials/lookup.ts';
import { type Listed, PRICES_HEAD, SHELF_HEAD } from './lists.ts';
import { csvRows } from './readCsv.ts';

/** What is wrong with a row of a list; `line` is that of the spreadsheet, the head being 1. */
export interface ListProblem {
  readonly line: number;
  readonly column: string;
  readonly found: string;
}

/** A design with what a list says, or all that is wrong with the list: then nothing of it is taken. */
export type ListRead =
  | { readonly ok: true; readonly design: Design }
  | { readonly ok: false; readonly problems: readonly ListProblem[] };

type Offcut = Design['owned'][number];

/** A cell that a row does not have. */
const EMPTY = '';

/** A row by its columns; what is wrong with its cells is gathered. */
class Row<C extends string> {
  constructor(
    readonly line: number,
    private readonly cells: ReadonlyMap<string, string>,
    private readonly decimalMark: string,
    private readonly problems: ListProblem[],
  ) {}

  text(column: C): string {
    return this.cells.get(column) ?? EMPTY;
  }

  /** A figure of 0 or more, or whole and of 1 or more; null where there is none, or none that can be read. */
  figure(column: C, is: 'any' | 'size' | 'count' = 'any'): number | null {
    const found = this.text(column);
    if (found === '') return null;
    const plain = this.decimalMark === ',' ? found.replace(',', '.') : found;
    const value = /^\d+(\.\d+)?$/.test(plain) ? Number(plain) : Number.NaN;
    const fits =
      is === 'count'
        ? Number.isInteger(value) && value >= 1 && value <= 500
        : is === 'size'
          ? value > 0
          : value >= 0;
    if (fits && value <= 1e6) return value;
    this.wrong(column);
    return null;
  }

  /** A figure that must be there. */
  needed(column: C, is: 'any' | 'size' | 'count' = 'any'): number {
    if (this.text(column) === '') this.wrong(column);
    return this.figure(column, is) ?? 1;
  }

  /** One of the ids that are known. */
  known(column: C, ids: ReadonlySet<string>): string {
    const found = this.text(column);
    if (!ids.has(found)) this.wrong(column);
    return found;
  }

  wrong(column: C): void {
    this.problems.push({ line: this.line, column, found: this.text(column) });
  }
}

function rowsOf<C extends string>(text: string, head: readonly C[], problems: ListProblem[]): Row<C>[] {
  const { rows, decimalMark } = csvRows(text);
  const [first = [], ...others] = rows;
  const names = first.map((name) => name.trim());
  for (const column of head) {
    if (column !== 'name' && !names.includes(column))
      problems.push({ line: 1, column, found: names.join(' ') });
  }
  if (problems.length > 0) return [];
  return others.flatMap((cells, i) => {
    const named = new Map(names.map((name, k) => [name, (entryAt(cells, k) ?? EMPTY).trim()]));
    return cells.every((cell) => cell.trim() === '') ? [] : [new Row<C>(i + 2, named, decimalMark, problems)];
  });
}

const done = (problems: readonly ListProblem[], design: () => Design): ListRead =>
  problems.length > 0 ? { ok: false, problems } : { ok: true, design: design() };

const idsOf = (all: readonly { readonly id: string }[]): ReadonlySet<string> =>
  new Set(all.map(({ id }) => id));

/** A list with one entry changed or added. */
function withEntry<T>(list: readonly T[], is: (entry: T) => boolean, entry: T): T[] {
  return list.some(is) ? list.map((one) => (is(one) ? entry : one)) : [...list, entry];
}

/**
 * A design with the prices of a list: each row gives one, rows without a price and what no row names stay as they are.
 * A size that a stock is not sold in yet is added to it.
 */
export function withPrices({ design, tables }: Listed, text: string): ListRead {
  const problems: ListProblem[] = [];
  const { stocks } = lookup(tables, design.stocks);
  const known = {
    stock: new Set(stocks.keys()),
    supply: idsOf([...tables.brads, ...tables.screws, ...tables.glues, ...tables.tapes, ...tables.papers]),
    paint: idsOf(design.finishes),
    primer: new Set(['']),
  } as const;
  const cans = idsOf(tables.containers);
  const own = new Map<string, Design['stocks'][number]>();
  let { finishes, supplies = NO_SUPPLIES } = design;
  for (const row of rowsOf(text, PRICES_HEAD, problems)) {
    const kind = row.text('kind');
    if (kind !== 'stock' && kind !== 'supply' && kind !== 'paint' && kind !== 'primer') {
      row.wrong('kind');
      continue;
    }
    const id = row.known('id', known[kind]);
    const price = row.figure('price');
    if (price === null) continue;
    if (kind === 'supply') supplies = { ...supplies, prices: { ...supplies.prices, [id]: price } };
    else if (kind === 'stock') {
      const stock = stocks.get(id);
      if (!stock) continue;
      const length = row.needed('length_mm', 'size');
      const before = own.get(id) ?? ownCopy(stock);
      if (before.form === 'sheet') {
        const width = row.needed('width_mm', 'size');
        const is = (one: { length: number; width: number }) => one.length === length && one.width === width;
        own.set(id, { ...before, sizes: withEntry(before.sizes, is, { length, width, price }) });
      } else {
        const is = (one: { length: number }) => one.length === length;
        own.set(id, { ...before, lengths: withEntry(before.lengths, is, { length, price }) });
      }
    } else {
      const container = row.known('container', cans);
      const is = (one: { container: string }) => one.container === container;
      const entry = { container, price };
      if (kind === 'primer') supplies = { ...supplies, primer: withEntry(supplies.primer, is, entry) };
      else
        finishes = finishes.map((finish) =>
          finish.id === id ? { ...finish, containers: withEntry(finish.containers, is, entry) } : finish,
        );
    }
  }
  return done(problems, () => {
    // A stock whose prices are those it has stays the table's.
    const changed = [...own.values()].filter((stock) => {
      const before = stocks.get(stock.id);
      return before && JSON.stringify(ownCopy(before)) !== JSON.stringify(stock);
    });
    const kept = design.stocks.map((stock) => changed.find(({ id }) => id === stock.id) ?? stock);
    const added = changed.filter(({ id }) => !design.stocks.some((stock) => stock.id === id));
    return { ...design, stocks: [...kept, ...added], finishes, supplies };
  });
}

/** A design with what a list says is on hand: the whole shelf, so that what no row names is not there. */
export function withShelf({ design, tables }: Listed, text: string): ListRead {
  const problems: ListProblem[] = [];
  const { stocks } = lookup(tables, design.stocks);
  const [finishes, screwIds] = [idsOf(design.finishes), idsOf(tables.screws)];
  const owned: Omit<Offcut, 'id'>[] = [];
  const liters = new Map<string, number>();
  const screws: { screw: string; length: number; count: number }[] = [];
  let tape = 0;
  for (const row of rowsOf(text, SHELF_HEAD, problems)) {
    const kind = row.text('kind');
    if (kind === 'offcut') {
      const stock = row.known('id', new Set(stocks.keys()));
      const isSheet = stocks.get(stock)?.form === 'sheet';
      owned.push({
        stock,
        length: row.needed('length_mm', 'size'),
        ...(isSheet ? { width: row.needed('width_mm', 'size') } : {}),
        count: row.needed('count', 'count'),
        defects: defectsOf(row),
      });
    } else if (kind === 'paint') liters.set(row.known('id', finishes), row.figure('liters') ?? 0);
    else if (kind === 'primer' || kind === 'glue') liters.set(`/${kind}`, row.figure('liters') ?? 0);
    else if (kind === 'tape') tape = row.figure('length_mm') ?? 0;
    else if (kind === 'screws') {
      const screw = row.known('id', screwIds);
      screws.push({ screw, length: row.needed('length_mm', 'size'), count: row.needed('count') });
    } else row.wrong('kind');
  }
  return done(problems, () => ({
    ...design,
    owned: withIds(owned, design.owned),
    finishes: design.finishes.map((finish) => ({ ...finish, owned_l: totalOf(liters, finish.id) })),
    supplies: {
      ...(design.supplies ?? NO_SUPPLIES),
      owned: { primer_l: totalOf(liters, '/primer'), glue_l: totalOf(liters, '/glue'), tape, screws },
    },
  }));
}

/** The id that an offcut has already where it is the same, so that nothing else of the plan takes it for another. */
function withIds(offcuts: readonly Omit<Offcut, 'id'>[], before: readonly Offcut[]): Offcut[] {
  const taken = new Set<string>();
  const known = before.map(({ id, ...rest }) => ({ id, told: JSON.stringify(rest) }));
  const kept = offcuts.map((offcut) => {
    const told = JSON.stringify(offcut);
    const id = known.find((one) => one.told === told && !taken.has(one.id))?.id;
    if (id !== undefined) taken.add(id);
    return { offcut, id };
  });
  let n = 0;
  const free = (): string => {
    do n++;
    while (taken.has(`on-hand-${n}`));
    return `on-hand-${n}`;
  };
  return kept.map(({ offcut, id }) => ({ ...offcut, id: id ?? free() }));
}

/** `100-150 310.5-320`: stretches of a board from its left end. */
function defectsOf(row: Row<(typeof SHELF_HEAD)[number]>): { from: number; to: number }[] {
  const words = row.text('defects_mm').split(/\s+/).filter(Boolean);
  return words.flatMap((word) => {
    const found = /^(\d+(?:\.\d+)?)-(\d+(?:\.\d+)?)$/.exec(word);
    if (!found) {
      row.wrong('defects_mm');
      return [];
    }
    return [{ from: Number(found[1]), to: Number(found[2]) }];
  });
}
