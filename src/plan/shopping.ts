import type { Cutting } from '../cutting/result.ts';
import type { Design } from '../design/schema.ts';
import type { FasteningPlan } from '../fastening/result.ts';
import { chooseContainers } from '../finish/containers.ts';
import type { FinishPlan } from '../finish/result.ts';
import type { Layout } from '../layout/laid.ts';
import type { Stock, Tables } from '../materials/types.ts';
import type { PatternSet } from '../patterns/result.ts';
import type { ShoppingLine } from './types.ts';

interface ShoppingInput {
  readonly design: Design;
  readonly tables: Tables;
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly layout: Layout;
  readonly cutting: Cutting;
  readonly finish: FinishPlan;
  readonly fastening: FasteningPlan;
  readonly patterns: readonly PatternSet[];
}

/**
 * Everything to get, in the order of the counters it is bought at. What is owned already stands in the list
 * with no price, so that the person sees that it is used.
 */
export function shoppingList(input: ShoppingInput): ShoppingLine[] {
  return [
    ...boards(input),
    ...sheets(input),
    ...fittings(input),
    ...paint(input),
    ...primer(input),
    ...fasteners(input),
    ...glue(input),
    ...tape(input),
    ...paper(input),
  ];
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

function fittings({ layout, design }: ShoppingInput): ShoppingLine[] {
  const names = new Map(design.parts.map((p) => [p.id, p.name]));
  return tally(
    layout.parts.filter((p) => p.kind === 'fitting'),
    (p) => `${names.get(p.part) ?? p.name}|${p.spec.price}|${p.box.w}|${p.box.h}`,
    (p) => ({
      kind: 'fitting',
      item: p.part,
      name: names.get(p.part) ?? p.name,
      size: { length_mm: p.box.h, width_mm: p.box.w },
      count: 1,
      each: p.spec.price,
      price: p.spec.price,
      owned: false,
      priced: p.spec.price > 0,
    }),
  );
}

function paint({ finish, design, tables }: ShoppingInput): ShoppingLine[] {
  const lines: ShoppingLine[] = [];
  for (const use of finish.uses) {
    const name = design.finishes.find((f) => f.id === use.finish)?.name ?? use.finish;
    for (const buy of use.buy) {
      const each = buy.price;
      lines.push({
        kind: 'paint',
        item: use.finish,
        name: `${name}, ${tables.containers.find((c) => c.id === buy.container)?.name ?? buy.container}`,
        size: { volume_l: buy.volume },
        count: buy.count,
        each,
        price: each * buy.count,
        owned: false,
        priced: each > 0,
      });
    }
  }
  return lines;
}

/** One primer serves under every finish; it is bought in the cans that leave least over. */
function primer({ finish, design, tables }: ShoppingInput): ShoppingLine[] {
  const need = finish.uses.reduce((sum, use) => sum + use.primer, 0);
  if (need === 0) return [];
  const offers = tables.containers
    .filter((c) => c.system === design.paint.containers)
    .map((c) => ({ container: c.id, volume: c.volume, price: null }));
  return chooseContainers(need, offers).map((buy) => ({
    kind: 'primer' as const,
    item: buy.container,
    name: tables.containers.find((c) => c.id === buy.container)?.name ?? buy.container,
    size: { volume_l: buy.volume },
    count: buy.count,
    each: buy.price,
    price: buy.price * buy.count,
    owned: false,
    priced: buy.price > 0,
  }));
}

/**
 * Brads and screws come in boxes; driven ones are counted per size, with a tenth more for bent ones. Brad
 * lengths that the design says are at hand are not bought.
 */
function fasteners({ fastening, design, tables }: ShoppingInput): ShoppingLine[] {
  return fastening.use.flatMap(({ fastener, length, count }) => {
    const brad = tables.brads.find((b) => b.id === fastener);
    const box = brad ?? tables.screws.find((s) => s.id === fastener);
    if (!box || count === 0) return [];
    const owned = brad !== undefined && design.fastening.lengths.includes(length);
    const boxes = Math.ceil((count * 1.1) / box.count);
    const each = owned ? 0 : box.price;
    const line: ShoppingLine = {
      kind: brad ? 'brads' : 'screws',
      item: fastener,
      name: box.name,
      size: { length_mm: length },
      count: boxes,
      each,
      price: boxes * each,
      owned,
      priced: owned || box.price > 0,
    };
    return [line];
  });
}

function glue({ fastening, tables }: ShoppingInput): ShoppingLine[] {
  const need = fastening.glue;
  const kind = tables.glues[0];
  if (need === 0 || !kind) return [];
  const count = Math.ceil(need / kind.volume);
  return [
    {
      kind: 'glue',
      item: kind.id,
      name: kind.name,
      size: { volume_l: kind.volume },
      count,
      each: kind.price,
      price: count * kind.price,
      owned: false,
      priced: kind.price > 0,
    },
  ];
}

function tape({ finish, tables }: ShoppingInput): ShoppingLine[] {
  const need = finish.uses.reduce((sum, use) => sum + use.tape, 0);
  const roll = tables.tapes[0];
  if (need === 0 || !roll) return [];
  const count = Math.ceil(need / roll.length);
  return [
    {
      kind: 'tape',
      item: roll.id,
      name: roll.name,
      size: { length_mm: roll.length, width_mm: roll.width },
      count,
      each: roll.price,
      price: count * roll.price,
      owned: false,
      priced: roll.price > 0,
    },
  ];
}

/** Sheets by the page; of a roll its length. */
function paper({ patterns, tables }: ShoppingInput): ShoppingLine[] {
  const byPaper = new Map<string, { pages: number; length: number }>();
  for (const set of patterns) {
    const before = byPaper.get(set.paper) ?? { pages: 0, length: 0 };
    const length = set.pages.reduce((sum, { drawing }) => sum + Math.max(drawing.width, drawing.height), 0);
    byPaper.set(set.paper, { pages: before.pages + set.pages.length, length: before.length + length });
  }
  return [...byPaper].flatMap(([id, { pages, length }]) => {
    const found = tables.papers.find((p) => p.id === id);
    if (!found || pages === 0) return [];
    const line: ShoppingLine = {
      kind: 'paper',
      item: id,
      name: found.name,
      size: { width_mm: found.width, length_mm: found.height ?? length },
      count: found.height === undefined ? 1 : pages,
      each: 0,
      price: 0,
      owned: false,
      priced: false,
    };
    return [line];
  });
}
