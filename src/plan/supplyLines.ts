import { NO_SUPPLIES, USUAL_SPARE } from '../design/defaults.ts';
import type { Finish } from '../design/schema.ts';
import { type ContainerOffer, chooseContainers } from '../finish/containers.ts';
import type { ContainerBuy } from '../finish/result.ts';
import { finishOfPaint, type Had } from '../job/bought.ts';
import type { Mm, Money } from '../measure/units.ts';
import { benchPaper, coverSheets } from '../patterns/cover.ts';
import type { ShoppingInput, ShoppingKind, ShoppingLine } from './types.ts';
import { PLAN_WORDS } from './words/tables.ts';

const MM_PER_METER = 1000;
/** Of a figure that its size has not. */
const NOT_SOLD_SO = 0;
/** Nobody reads a difference of length below this. */
const SAME: Mm = 0.01;

type Input = Pick<ShoppingInput, 'design' | 'language' | 'tables' | 'finish' | 'fastening' | 'patterns'> & {
  /** What is bought by now, beside what is bought over what is needed. */
  readonly had: readonly Had[];
};

const suppliesOf = ({ design }: Input) => design.supplies ?? NO_SUPPLIES;

/** What the person pays for an entry of a table. */
const priceOf = (input: Input, entry: { readonly id: string; readonly price: Money }): Money =>
  suppliesOf(input).prices[entry.id] ?? entry.price;

/** What is used up from the shed, as a line without a price; none where nothing is taken. */
const fromShed = (
  kind: ShoppingKind,
  item: string,
  name: string,
  taken: number,
  size: ShoppingLine['size'],
): ShoppingLine[] =>
  taken > 0 ? [{ kind, item, name, size, count: 1, each: 0, price: 0, owned: true, priced: true }] : [];

const bought = (
  kind: ShoppingKind,
  item: string,
  name: string,
  size: ShoppingLine['size'],
  count: number,
  each: Money,
): ShoppingLine => ({
  kind,
  item,
  name,
  size,
  count,
  each,
  price: count * each,
  owned: false,
  priced: each > 0,
});

/** What is bought by now of a thing: its lines, and how much it comes to. */
function there(
  { had }: Input,
  is: (fact: Had['fact']) => boolean,
  holds: keyof ShoppingLine['size'],
): { readonly lines: ShoppingLine[]; readonly sum: number } {
  const some = had.filter(({ fact }) => is(fact));
  return {
    lines: some.map(gotLine),
    sum: some.reduce((sum, { fact, count }) => sum + count * (fact.size[holds] ?? NOT_SOLD_SO), 0),
  };
}

/** What is bought by now, as a line with nothing more to pay. */
export const gotLine = ({ fact, count, ids }: Had): ShoppingLine => ({
  ...{ kind: fact.kind, item: fact.item, name: fact.name, size: definedOf(fact.size), count },
  ...{ each: 0, price: 0, owned: true, priced: true, got: { each: fact.paid, ids } },
  ...(fact.spare ? { spare: true as const } : {}),
});

const definedOf = ({ length_mm, width_mm, volume_l, pieces }: Had['fact']['size']): ShoppingLine['size'] => ({
  ...(length_mm === undefined ? {} : { length_mm }),
  ...(width_mm === undefined ? {} : { width_mm }),
  ...(volume_l === undefined ? {} : { volume_l }),
  ...(pieces === undefined ? {} : { pieces }),
});

/** Cans of one size, named by what is in them and by their size. */
const canOf = (
  tables: Input['tables'],
  kind: ShoppingKind,
  item: string,
  name: string,
  { container, volume, count, price }: ContainerBuy,
): ShoppingLine => {
  const can = tables.containers.find((c) => c.id === container)?.name ?? container;
  return bought(kind, item, `${name}, ${can}`, { volume_l: volume }, count, price);
};

/** What is bought by can, box, bottle, roll and page: as much as is needed over what the shed holds. */
export function supplyLines(input: Input): ShoppingLine[] {
  return [
    ...paint(input),
    ...primer(input),
    ...fasteners(input),
    ...glue(input),
    ...tape(input),
    ...paper(input),
  ];
}

function paint(input: Input): ShoppingLine[] {
  const { finish, design, tables } = input;
  return finish.uses.flatMap((use) => {
    const own = design.finishes.find((f) => f.id === use.finish);
    const name = own?.name ?? use.finish;
    const taken = Math.min(use.volume, own?.owned_l ?? 0);
    return [
      ...fromShed('paint', use.finish, name, taken, { volume_l: taken }),
      ...there(input, (fact) => isFor(fact, use.finish, design.finishes), 'volume_l').lines,
      ...use.buy.map((buy) => canOf(tables, 'paint', use.finish, name, buy)),
    ];
  });
}

const isFor = (fact: Had['fact'], finish: string, finishes: readonly Finish[]): boolean =>
  fact.kind === 'paint' && finishOfPaint(fact, finishes)?.id === finish;

/** One primer serves under every finish. */
function primer(input: Input): ShoppingLine[] {
  const { finish, design, tables, language } = input;
  const need = finish.uses.reduce((sum, use) => sum + use.primer, 0);
  if (need === 0) return [];
  const supplies = suppliesOf(input);
  const name = PLAN_WORDS[language].shopping.primer;
  const taken = Math.min(need, supplies.owned.primer_l);
  const sold = tables.containers.filter((c) => c.system === design.paint.containers);
  const named = sold.flatMap(({ id, volume }): ContainerOffer[] => {
    const offer = supplies.primer.find((entry) => entry.container === id);
    return offer ? [{ container: id, volume, price: offer.price }] : [];
  });
  const all = sold.map(({ id, volume }) => ({ container: id, volume, price: null }));
  const bought = there(input, ({ kind }) => kind === 'primer', 'volume_l');
  return [
    ...fromShed('primer', 'primer', name, taken, { volume_l: taken }),
    ...bought.lines,
    ...chooseContainers(need - taken - bought.sum, named.length > 0 ? named : all).map((buy) =>
      canOf(tables, 'primer', buy.container, name, buy),
    ),
  ];
}

/**
 * Brads and screws by the box, the spare share more than are driven. Brad lengths that the design says are at hand are
 * not bought; of screws as many are taken off as the shed holds of that length.
 */
function fasteners(input: Input): ShoppingLine[] {
  const { fastening, design, tables } = input;
  const { owned, spare = USUAL_SPARE } = suppliesOf(input);
  return fastening.use.flatMap(({ fastener, length, count }) => {
    const brad = tables.brads.find((b) => b.id === fastener);
    const box = brad ?? tables.screws.find((s) => s.id === fastener);
    if (!box || count === 0) return [];
    const kind = brad ? ('brads' as const) : ('screws' as const);
    const need = Math.ceil(count * (1 + spare.fasteners));
    const held = brad
      ? design.fastening.lengths.includes(length)
        ? need
        : 0
      : owned.screws
          .filter((s) => s.screw === fastener && Math.abs(s.length - length) < SAME)
          .reduce((sum, s) => sum + s.count, 0);
    const taken = Math.min(need, held);
    const isSuch = ({ item, size }: Had['fact']) =>
      item === fastener && Math.abs((size.length_mm ?? 0) - length) < SAME;
    const got = there(input, (fact) => fact.kind === kind && isSuch(fact), 'pieces');
    const boxes = Math.ceil((need - taken - got.sum) / box.count);
    const size = { length_mm: length, pieces: box.count };
    return [
      ...fromShed(kind, fastener, box.name, taken, { length_mm: length, pieces: taken }),
      ...got.lines,
      ...(boxes > 0 ? [bought(kind, fastener, box.name, size, boxes, priceOf(input, box))] : []),
    ];
  });
}

/** The cheapest sizes that are enough, priced or not. */
function cheapest<T extends { readonly id: string; readonly price: Money }>(
  input: Input,
  entries: readonly T[],
  need: number,
  holds: (entry: T) => number,
): { readonly entry: T; readonly buy: ContainerBuy }[] {
  const offers = entries.map((entry) => ({
    container: entry.id,
    volume: holds(entry),
    price: priceOf(input, entry),
  }));
  return chooseContainers(need, offers).flatMap((buy) => {
    const entry = entries.find((e) => e.id === buy.container);
    return entry ? [{ entry, buy }] : [];
  });
}

function glue(input: Input): ShoppingLine[] {
  const { fastening, tables, design, language } = input;
  const need = fastening.glue;
  const taken = Math.min(need, suppliesOf(input).owned.glue_l);
  const sold = tables.glues.filter((g) => g.system === design.paint.containers);
  if (need === 0) return [];
  const got = there(input, ({ kind }) => kind === 'glue', 'volume_l');
  const bottles = cheapest(input, sold, need - taken - got.sum, (g) => g.volume).map(({ entry, buy }) =>
    bought('glue', entry.id, entry.name, { volume_l: entry.volume }, buy.count, buy.price),
  );
  const name = PLAN_WORDS[language].shopping.glue;
  return [...fromShed('glue', 'glue', name, taken, { volume_l: taken }), ...got.lines, ...bottles];
}

function tape(input: Input): ShoppingLine[] {
  const { finish, tables, design, language } = input;
  const need = finish.uses.reduce((sum, use) => sum + use.tape, 0);
  const taken = Math.min(need, suppliesOf(input).owned.tape);
  const sold = tables.tapes.filter((t) => t.system === design.paint.containers);
  if (need === 0) return [];
  const got = there(input, ({ kind }) => kind === 'tape', 'length_mm');
  const rolls = cheapest(
    input,
    sold,
    (need - taken - got.sum) / MM_PER_METER,
    (t) => t.length / MM_PER_METER,
  ).map(({ entry, buy }) =>
    bought(
      'tape',
      entry.id,
      entry.name,
      { length_mm: entry.length, width_mm: entry.width },
      buy.count,
      buy.price,
    ),
  );
  const name = PLAN_WORDS[language].shopping.tape;
  return [...fromShed('tape', 'tape', name, taken, { length_mm: taken }), ...got.lines, ...rolls];
}

/** Sheets by the page, those of the patterns' cover among them; of a roll its length, and the price of the roll. */
function paper(input: Input): ShoppingLine[] {
  const { patterns, tables, design } = input;
  const byPaper = new Map<string, { pages: number; length: number }>();
  const add = (id: string, pages: number, length: Mm) => {
    const before = byPaper.get(id) ?? { pages: 0, length: 0 };
    byPaper.set(id, { pages: before.pages + pages, length: before.length + length });
  };
  for (const { paper, pages } of patterns) {
    const length = pages.reduce((sum, { drawing }) => sum + Math.max(drawing.width, drawing.height), 0);
    add(paper, pages.length, length);
  }
  add(benchPaper(design.pages.paper), coverSheets(patterns), 0);
  return [...byPaper].flatMap(([id, { pages, length }]) => {
    const found = tables.papers.find((p) => p.id === id);
    if (!found || pages === 0) return [];
    const size = { width_mm: found.width, length_mm: found.height ?? length };
    const isSuch = ({ kind, item }: Had['fact']) => kind === 'paper' && item === id;
    const got = there(input, isSuch, 'length_mm').lines;
    // A roll is bought whole, whatever is printed on it.
    const count = (found.height === undefined ? 1 : pages) - got.reduce((sum, line) => sum + line.count, 0);
    if (count <= 0) return got;
    return [...got, bought('paper', id, found.name, size, count, priceOf(input, { id, price: 0 }))];
  });
}
