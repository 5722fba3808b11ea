import { isBought } from '../design/made.ts';
import type { Laid } from '../layout/laid.ts';
import { supplyLines } from './supplyLines.ts';
import type { ShoppingInput, ShoppingLine } from './types.ts';

/**
 * Everything to get, in the order of the counters it is bought at. What is owned already stands in the list
 * with no price, so that the person sees that it is used.
 */
export function shoppingList(input: ShoppingInput): ShoppingLine[] {
  return [...boards(input), ...sheets(input), ...fittings(input), ...supplyLines(input)];
}

/** Counts equal things: `key` tells what is equal, `line` makes the line of the first of them. */
function tally<T>(
  things: readonly T[],
  key: (thing: T) => string,
  line: (thing: T) => ShoppingLine,
): ShoppingLine[] {
  const lines = new Map<string, ShoppingLine>();
  for (const thing of things) {
    const k = key(thing);
    const before = lines.get(k);
    const count = (before?.count ?? 0) + 1;
    const first = before ?? line(thing);
    lines.set(k, { ...first, count, price: count * first.each });
  }
  return [...lines.values()];
}

function boards({ cutting, stocks }: ShoppingInput): ShoppingLine[] {
  return tally(
    cutting.boards,
    (b) => `${b.stock}|${b.length}|${b.owned !== null}|${b.cost}`,
    (b) => ({
      kind: 'board',
      item: b.stock,
      name: stocks.get(b.stock)?.name ?? b.stock,
      size: { length_mm: b.length },
      count: 1,
      each: b.cost,
      price: b.cost,
      owned: b.owned !== null,
      priced: b.owned !== null || b.cost > 0,
    }),
  );
}

function sheets({ cutting, stocks }: ShoppingInput): ShoppingLine[] {
  return tally(
    cutting.sheets,
    (s) => `${s.stock}|${s.length}|${s.width}|${s.owned !== null}|${s.cost}`,
    (s) => ({
      kind: 'sheet',
      item: s.stock,
      name: stocks.get(s.stock)?.name ?? s.stock,
      size: { length_mm: s.length, width_mm: s.width },
      count: 1,
      each: s.cost,
      price: s.cost,
      owned: s.owned !== null,
      priced: s.owned !== null || s.cost > 0,
    }),
  );
}

/** Hardware of the table by its name there, what is of its own by the name of the part. */
function fittings({ layout, design, tables }: ShoppingInput): ShoppingLine[] {
  const names = new Map(design.parts.map((p) => [p.id, p.name]));
  const told = new Map(tables.hardware.map(({ id, name }) => [id, name]));
  const nameOf = (p: Laid<'fitting'>) => told.get(p.spec.sold?.entry ?? '') ?? names.get(p.part) ?? p.name;
  return tally(
    layout.parts.filter((p) => isBought(p)),
    (p) => `${nameOf(p)}|${p.spec.price}|${p.spec.sold ? '' : `${p.box.w}|${p.box.h}`}`,
    (p) => ({
      kind: 'fitting',
      item: p.spec.sold?.entry ?? p.part,
      name: nameOf(p),
      size: { length_mm: p.box.h, width_mm: p.box.w },
      count: 1,
      each: p.spec.price,
      price: p.spec.price,
      owned: false,
      priced: p.spec.price > 0,
    }),
  );
}
