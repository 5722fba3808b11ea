import { USUAL_SPARE } from '../design/defaults.ts';
import { factsOf, liveFacts } from '../design/job/record.ts';
import { isBought } from '../design/made.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { finishOfPaint, type Had, hadOf } from '../job/bought.ts';
import { firstNamed } from '../job/ids.ts';
import type { Laid } from '../layout/laid.ts';
import { grouped } from '../list/grouped.ts';
import { wholeUp } from '../measure/round.ts';
import { gotLine, supplyLines } from './supplyLines.ts';
import type { ShoppingInput, ShoppingKind, ShoppingLine } from './types.ts';
import { PLAN_WORDS } from './words/tables.ts';

/**
 * Everything to get, in the order of the counters it is bought at. What is owned already stands in the list
 * with no price, so that the person sees that it is used, and so does what is bought by now, used or not.
 */
export function shoppingList(input: ShoppingInput): ShoppingLine[] {
  const all = hadOf(liveFacts(input.design.job));
  const had = all.filter(({ fact }) => !fact.spare);
  const needed = [
    ...boards(input),
    ...sheets(input),
    ...fittings(input, had),
    ...supplyLines({ ...input, had }),
  ];
  const used = new Set(needed.map(({ got }) => got?.ids));
  const idle = had.filter(({ ids }) => !used.has(ids)).map(gotLine);
  const spare = spareLines(
    needed,
    all.filter(({ fact }) => fact.spare),
    input,
  );
  if (spare.length === 0 && idle.length === 0) return needed;
  const kinds = new Set([...needed, ...idle, ...spare].map((line) => line.kind));
  return [...kinds].flatMap((kind) => [...needed, ...idle, ...spare].filter((line) => line.kind === kind));
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
function spareLines(
  needed: readonly ShoppingLine[],
  had: readonly Had[],
  { design, language }: ShoppingInput,
): ShoppingLine[] {
  const { boards, sheets, one } = design.supplies?.spare ?? USUAL_SPARE;
  const shares = new Map<ShoppingKind, number>([
    ['board', boards],
    ['sheet', sheets],
  ]);
  const bought = needed.filter((line) => (!line.owned || line.got) && SPARED[line.kind] !== null);
  const serves = ({ fact }: Had) =>
    fact.kind === 'paint' ? (finishOfPaint(fact, design.finishes)?.id ?? null) : fact.item;
  const more = [...grouped(bought, ({ kind, item }) => `${kind} ${item}`).values()].flatMap((lines) => {
    const line = lines.reduce((a, b) => ((SPARED[a.kind] === 'largest') === sizeOf(b) > sizeOf(a) ? b : a));
    const { got, owned: _, ...thing } = line;
    const share = shares.get(line.kind);
    const count = Math.max(
      share === undefined ? 0 : wholeUp(share * lines.reduce((sum, l) => sum + l.count, 0)),
      one ? 1 : 0,
    );
    const there = had
      .filter((one) => one.fact.kind === line.kind && serves(one) === line.item)
      .reduce((sum, one) => sum + one.count, 0);
    const left = count - there;
    const name = PLAN_WORDS[language].spare(line.name);
    const each = got?.each ?? line.each;
    const price = { each, price: left * each, priced: each > 0, owned: false };
    return left <= 0 ? [] : [{ ...thing, ...price, name, count: left, spare: true as const }];
  });
  return [...had.map(gotLine), ...more];
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

/** What was paid for the boards and sheets that are bought by now, by their names. */
function paidFor({ design }: ShoppingInput): (owned: string | null) => Pick<ShoppingLine, 'got'> {
  const bought = factsOf(liveFacts(design.job), 'board').filter(({ got }) => got === 'bought');
  const paid = new Map(bought.map((fact) => [fact.id, fact.paid]));
  return (owned) => {
    const each = paid.get(firstNamed(owned ?? ''));
    return each === undefined ? {} : { got: { each, ids: new Set() } };
  };
}

function boards(input: ShoppingInput): ShoppingLine[] {
  const { cutting, stocks } = input;
  const paid = paidFor(input);
  return tally(
    cutting.boards,
    (b) => `${b.stock}|${b.length}|${b.owned !== null}|${b.cost}|${paid(b.owned).got?.each}`,
    (b) => ({
      ...paid(b.owned),
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

function sheets(input: ShoppingInput): ShoppingLine[] {
  const { cutting, stocks } = input;
  const paid = paidFor(input);
  return tally(
    cutting.sheets,
    (s) => `${s.stock}|${s.length}|${s.width}|${s.owned !== null}|${s.cost}|${paid(s.owned).got?.each}`,
    (s) => ({
      ...paid(s.owned),
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
function fittings({ layout, design, tables }: ShoppingInput, had: readonly Had[]): ShoppingLine[] {
  const names = new Map(design.parts.map((p) => [p.id, p.name]));
  const told = new Map(tables.hardware.map(({ id, name }) => [id, name]));
  const nameOf = (p: Laid<'fitting'>) => told.get(p.spec.sold?.entry ?? '') ?? names.get(p.part) ?? p.name;
  const needed = tally(
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
  // A part may be named anew, or another of its kind stand first.
  const isSuch = ({ kind, item, name, size }: ShoppingLine, { fact }: Had) =>
    fact.kind === kind &&
    (fact.item === item || fact.name === name) &&
    sameSize(fact.size.length_mm, size.length_mm) &&
    sameSize(fact.size.width_mm, size.width_mm);
  return needed.flatMap((line) => {
    const got = had.filter((one) => needed.find((other) => isSuch(other, one)) === line).map(gotLine);
    const count = line.count - got.reduce((sum, one) => sum + one.count, 0);
    return [...got, ...(count > 0 ? [{ ...line, count, price: count * line.each }] : [])];
  });
}

const sameSize = (a = 0, b = 0): boolean => Math.abs(a - b) < SAME_LENGTH;
