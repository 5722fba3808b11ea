import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BenchStep, benchSteps } from '../../src/cutting/atSaw.ts';
import { planCutting } from '../../src/cutting/cutting.ts';
import type { CutSheet, Cutting } from '../../src/cutting/result.ts';
import { factsOf, liveFacts, type Saying, saying } from '../../src/design/job/record.ts';
import type { Fact, Job } from '../../src/design/job/schema.ts';
import type { Shop } from '../../src/design/schema.ts';
import { boardSaying, cutSaying, doneSteps, spoiledSaying } from '../../src/job/acts.ts';
import { boardIds } from '../../src/job/ids.ts';
import { cutRest } from '../../src/job/rest.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { sheet, sheetPiece, shop, stockMap } from '../cutting/make.ts';
import { playSheet } from '../cutting/verifySheets.ts';
import { runs } from '../runs.ts';

/**
 * Jobs on sheets, stopped half way. The twin keeps the real sheets as a person sees them: how large each is, and which
 * rectangles were sawn out of it. It knows nothing of how the rest is planned; where a rest lies on its sheet it reads
 * from what was written down when the sheet was begun.
 */

interface Rect {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

const KERF = 3;
const NEAR = 1e-3;
const [LENGTH, WIDTH] = [2440, 1220];

interface World {
  readonly stock: ReturnType<typeof sheet>;
  readonly shop: Shop;
  pieces: readonly Piece[];
  /** Sawn out of real sheets: of good pieces and of spoiled ones. */
  readonly out: { readonly on: string; readonly at: Rect; readonly piece: string; readonly good: boolean }[];
  /** What the tape reads of a sheet, where it was read. */
  readonly real: Map<string, { w: number; h: number }>;
  job: Job | undefined;
  planned: readonly Fact[];
}

function planOf(world: World): Cutting {
  const { stock, pieces, job } = world;
  world.planned = liveFacts(job);
  const rest = cutRest({
    ...{ stock, pieces, owned: [], shop: world.shop, facts: liveFacts(job) },
    solve: (open, onHand) =>
      planCutting({
        ...{
          pieces: open,
          stocks: stockMap(stock),
          owned: onHand,
          shop: world.shop,
          effort: { nodes: 3000 },
        },
      }),
  });
  return { ...rest.cutting, basis: { [stock.id]: rest.basis } };
}

const atSaw = (world: World, cutting: Cutting) => ({
  ...{ cutting, stocks: stockMap(world.stock), shop: world.shop },
  ...{ planned: world.planned, facts: liveFacts(world.job) },
});

const say = (world: World, said: readonly Saying[]) => {
  world.job = saying(world.job, said);
};

/** The real sheet that a sheet of the plan is or is a rest of, and where it begins on it. */
function rootOf(
  id: string,
  facts: readonly Fact[],
): { readonly root: string; readonly x: number; readonly y: number } {
  const fact = factsOf(facts, 'board').find((board) => board.id === id);
  const of = fact ? (fact.got === 'short' ? fact.of : null) : id;
  const slash = of?.lastIndexOf('/') ?? -1;
  if (of === null || slash < 0) return { root: id, x: 0, y: 0 };
  const [parent, name] = [of.slice(0, slash), of.slice(slash + 1)];
  const lay = factsOf(facts, 'board').find((board) => board.id === parent)?.lay;
  const number = Number(name.slice(1));
  const [x, y] = name.startsWith('l')
    ? (name.slice(1).split(':').map(Number) as [number, number])
    : name.startsWith('r')
      ? (lay?.offcuts[number] ?? [0, 0])
      : (lay?.places[number]?.box ?? [0, 0]);
  const from = rootOf(parent, facts);
  return { root: from.root, x: from.x + x, y: from.y + y };
}

function onRoot(wood: CutSheet, id: string, facts: readonly Fact[], place: Rect): { on: string; at: Rect } {
  const { root, x, y } = rootOf(wood.owned?.includes('/') ? wood.owned : id, facts);
  return { on: root, at: { x: x + place.x, y: y + place.y, w: place.w, h: place.h } };
}

const apart = (a: Rect, b: Rect): boolean =>
  a.x + a.w + KERF <= b.x + NEAR ||
  b.x + b.w + KERF <= a.x + NEAR ||
  a.y + a.h + KERF <= b.y + NEAR ||
  b.y + b.h + KERF <= a.y + NEAR;

function verify(world: World, cutting: Cutting): void {
  const facts = liveFacts(world.job);
  const ids = boardIds(cutting, facts);
  const refused = new Set(
    cutting.checks.filter(({ code }) => code === 'piece.too-big').map(({ figures }) => figures.piece),
  );
  const due = world.pieces.filter(({ id }) => !refused.has(id)).map(({ id }) => id);
  expect(cutting.sheets.flatMap(({ placements }) => placements.map(({ piece }) => piece)).sort()).toEqual(
    due.sort(),
  );
  const lies = new Map<string, { on: string; at: Rect }>();
  for (const wood of cutting.sheets) {
    const id = ids.get(wood) ?? '';
    // The sequence can be sawn, and sets each piece free.
    const { parts } = playSheet(wood, KERF);
    for (const place of wood.placements) {
      const free = place.from ?? place;
      expect(
        parts.some(
          (part) =>
            Math.abs(part.x - free.x) < NEAR &&
            Math.abs(part.y - free.y) < NEAR &&
            Math.abs(part.w - free.w) < NEAR &&
            Math.abs(part.h - free.h) < NEAR,
        ),
        `${place.piece} is sawn free`,
      ).toBe(true);
      lies.set(place.piece, onRoot(wood, id, facts, place));
    }
  }
  const good = new Set(world.out.filter((one) => one.good).map(({ piece }) => piece));
  for (const { piece, on, at, good: isGood } of world.out) {
    // What is cut lies where it was cut.
    if (isGood && world.pieces.some(({ id }) => id === piece))
      expect(lies.get(piece), piece).toEqual({ on, at });
  }
  const open = [...lies].filter(([piece]) => !good.has(piece)).map(([, lie]) => lie);
  open.forEach((a, i) => {
    const size = world.real.get(a.on) ?? { w: LENGTH, h: WIDTH };
    const trim = world.shop.edgeTrim;
    expect(a.at.x).toBeGreaterThanOrEqual(trim - NEAR);
    expect(a.at.y).toBeGreaterThanOrEqual(trim - NEAR);
    expect(a.at.x + a.at.w, 'on wood that is there').toBeLessThanOrEqual(size.w + NEAR);
    expect(a.at.y + a.at.h, 'on wood that is there').toBeLessThanOrEqual(size.h + NEAR);
    for (const b of open.slice(i + 1))
      if (a.on === b.on) expect(apart(a.at, b.at), 'a kerf between').toBe(true);
    for (const b of world.out)
      if (a.on === b.on) expect(apart(a.at, b.at), 'not of wood that is gone').toBe(true);
  });
  const spent = cutting.sheets.reduce((sum, { cost }) => sum + cost, 0);
  for (const wood of cutting.sheets) expect(wood.cost === 0).toBe(wood.owned !== null);
  const [bound] = cutting.sheetsBound;
  expect(bound?.lowerCost ?? 0).toBeLessThanOrEqual(spent + NEAR);
  // What is there never makes the rest dearer than buying all that is open anew.
  const left = world.pieces.filter(({ id }) => !good.has(id));
  if (left.length > 0) {
    const anew = planCutting({
      ...{
        pieces: left,
        stocks: stockMap(world.stock),
        owned: [],
        shop: world.shop,
        effort: { nodes: 3000 },
      },
    });
    expect(spent).toBeLessThanOrEqual(anew.sheets.reduce((sum, { cost }) => sum + cost, 0) + NEAR);
  }
}

type PieceStep = Extract<BenchStep, { kind: 'sheet-piece' }>;

function act(world: World, cutting: Cutting, what: string, step: PieceStep, share: number): boolean {
  const facts = liveFacts(world.job);
  const { wood } = step.from;
  const id = boardIds(cutting, world.planned).get(wood) ?? '';
  const lie = onRoot(wood, id, facts, step.place);
  const begun = world.out.some(({ on }) => on === lie.on);
  if (what === 'cut') {
    say(world, cutSaying(step, atSaw(world, cutting)));
    world.out.push({ ...lie, piece: step.piece.id, good: true });
  } else if (what === 'ruined') {
    const said = spoiledSaying(step, null, atSaw(world, cutting));
    if ('problem' in said) return false;
    say(world, said);
    world.out.push({ ...lie, piece: step.piece.id, good: false });
  } else if (what === 'size') {
    if (wood.owned?.includes('/')) return false;
    const far = world.out.filter(({ on }) => on === lie.on).map(({ at }) => [at.x + at.w, at.y + at.h]);
    const w = Math.max(LENGTH - Math.round(120 * share), ...far.map(([x]) => x ?? 0));
    const h = Math.max(WIDTH - Math.round(80 * share), ...far.map(([, y]) => y ?? 0));
    say(world, [
      ...boardSaying(wood, atSaw(world, cutting), begun),
      { is: 'size', id: `size:${id}`, board: id, length: w, width: h },
    ]);
    world.real.set(lie.on, { w, h });
  } else {
    // The design has it otherwise by now.
    const other = sheetPiece(
      step.piece.id,
      Math.round(step.piece.length * (0.6 + 0.7 * share)),
      step.piece.width,
    );
    world.pieces = world.pieces.map((piece) => (piece.id === other.id ? other : piece));
  }
  return true;
}

describe('sheets of a job stopped half way', () => {
  it.each([0, 10])(
    'are laid out again from the rectangles that are left, edges trimmed by %i mm',
    (edgeTrim) => {
      let again = 0;
      let rests = 0;
      fc.assert(
        fc.property(
          fc.array(
            fc.record({
              ...{ w: fc.integer({ min: 200, max: 1100 }), h: fc.integer({ min: 150, max: 700 }) },
              count: fc.integer({ min: 1, max: 3 }),
            }),
            { minLength: 2, maxLength: 4 },
          ),
          fc.array(
            fc.record({
              what: fc.constantFrom('cut', 'cut', 'cut', 'ruined', 'size', 'design'),
              which: fc.nat(1000),
              share: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
            }),
            { minLength: 3, maxLength: 9 },
          ),
          (items, steps) => {
            const world: World = {
              stock: sheet([{ length: LENGTH, width: WIDTH, price: 30 }]),
              shop: shop({ sheetKerf: KERF, edgeTrim, keepOffcut: 200 }),
              pieces: items.flatMap(({ w, h, count }, i) =>
                Array.from({ length: count }, (_, k) => sheetPiece(`p${i}-${k}`, w, h)),
              ),
              ...{ out: [], real: new Map(), job: undefined, planned: [] },
            };
            let cutting = planOf(world);
            for (const { what, which, share } of steps) {
              const good = new Set(world.out.filter((one) => one.good).map(({ piece }) => piece));
              const open = benchSteps(cutting, world.pieces).filter(
                (one): one is PieceStep => one.kind === 'sheet-piece' && !good.has(one.piece.id),
              );
              const now = open[which % Math.max(1, open.length)];
              if (!now) break;
              const before = cutting;
              if (!act(world, cutting, what, now, share)) continue;
              cutting = planOf(world);
              verify(world, cutting);
              const placed = (plan: Cutting) =>
                plan.sheets
                  .map(({ placements }) => placements.map(({ piece, x, y }) => `${piece}@${x},${y}`).sort())
                  .sort();
              if (what === 'cut') expect(placed(cutting)).toEqual(placed(before));
              else again++;
              if (cutting.sheets.some(({ owned }) => owned?.includes('/'))) rests++;
              const done = doneSteps(benchSteps(cutting, world.pieces), atSaw(world, cutting));
              const cut = world.out.filter((one) => one.good).map(({ piece }) => piece);
              expect([...done].sort()).toEqual(cut.sort());
            }
          },
        ),
        { numRuns: runs(25) },
      );
      expect(again).toBeGreaterThan(runs(12));
      expect(rests).toBeGreaterThan(0);
    },
  );
});
