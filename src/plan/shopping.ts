import { USUAL_SPARE } from '../design/defaults.ts';
import { isBought } from '../design/made.ts';
import type { Laid } from '../layout/laid.ts';
import { grouped } from '../list/grouped.ts';
import { wholeUp } from '../measure/round.ts';
import { supplyLines } from './supplyLines.ts';
import type { ShoppingInput, ShoppingKind, ShoppingLine } from './types.ts';
import { PLAN_WORDS } from './words/tables.ts';

/**
 * Everything to get, in the order of the counters it is bought at. What is owned already stands in the list
 * with no price, so that the person sees that it is used.
 */
export function shoppingList(input: ShoppingInput): ShoppingLine[] {
  const needed = [...boards(input), ...sheets(input), ...fittings(input), ...supplyLines(input)];
  const spare = spareLines(needed, input);
  if (spare.length === 0) return needed;
  const kinds = new Set(needed.map((line) => line.kind));
  return [...kinds].flatMap((kind) => [...needed, ...spare].filter((line) => line.kind === kind));
}

/** What of a kind is bought once more: boards and sheets that any piece comes out of, else the least. */
const SPARED: { readonly [K in ShoppingKind]: 'largest' | 'smallest' | null } = {
  ...{ board: 'largest', sheet: 'largest', fitting: null, paint: 'smallest', primer: 'smallest' },
  ...{ brads: 'smallest', screws: 'smallest', glue: null, tape: null, paper: null },
};

const sizeOf = ({ size: { length_mm = 1, width_mm = 1, volume_l = 1 } }: ShoppingLine): number =>
  length_mm * width_mm * volume_l;

/**
 * What is bought over what is needed, by the person's choice: a share of the boards of a stock and of the sheets, or one
 * of each kind. Lines of their own, so that what pieces are cut from is told as it is cut. A share of brads and screws is
 * in their boxes, one of paint in its waste.
 */
function spareLines(needed: readonly ShoppingLine[], { design, language }: ShoppingInput): ShoppingLine[] {
  const { boards, sheets, one } = design.supplies?.spare ?? USUAL_SPARE;
  const shares = new Map<ShoppingKind, number>([
    ['board', boards],
    ['sheet', sheets],
  ]);
  const bought = needed.filter((line) => !line.owned && SPARED[line.kind] !== null);
  return [...grouped(bought, ({ kind, item }) => `${kind} ${item}`).values()].flatMap((lines) => {
    const line = lines.reduce((a, b) => ((SPARED[a.kind] === 'largest') === sizeOf(b) > sizeOf(a) ? b : a));
    const share = shares.get(line.kind);
    const count = Math.max(
      share === undefined ? 0 : wholeUp(share * lines.reduce((sum, l) => sum + l.count, 0)),
      one ? 1 : 0,
    );
    const name = PLAN_WORDS[language].spare(line.name);
    return count === 0 ? [] : [{ ...line, name, count, price: count * line.each }];
  });
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
