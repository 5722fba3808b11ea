import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { benchSteps } from '../../src/cutting/atSaw.ts';
import type { Edit } from '../../src/design/edit/edit.ts';
import { applyEdits } from '../../src/design/edit/edit.ts';
import { liveFacts, saying } from '../../src/design/job/record.ts';
import type { Design, Owned } from '../../src/design/schema.ts';
import { freshDocument } from '../../src/editor/document/document.ts';
import { createTouching } from '../../src/editor/document/touching.ts';
import { takenReading } from '../../src/editor/edit/stockReading.ts';
import type { Point } from '../../src/geometry/shape.ts';
import { cutSaying, doneSteps } from '../../src/job/acts.ts';
import { batchesOf, comeOutOf, cutOfThem, partsThatFit } from '../../src/job/reading.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { designPart } from '../../src/layout/reference.ts';
import { grouped } from '../../src/list/grouped.ts';
import type { Stock } from '../../src/materials/types.ts';
import { inches } from '../../src/measure/units.ts';
import type { Plan } from '../../src/plan/types.ts';
import { planned, starter } from '../plan/starters.ts';
import { runs } from '../runs.ts';

const NEAR = 1e-6;

const edited = (design: Design, edits: readonly Edit[]): Design => {
  const done = applyEdits(design, edits);
  if (!done.ok) throw new Error(JSON.stringify(done.problem));
  return done.design;
};

/** How wide a straight piece is, by the corners of its outline alone. */
const across = (outline: readonly Point[]): number => {
  const ys = outline.map(({ y }) => y);
  return Math.max(...ys) - Math.min(...ys);
};

const ownedOf = (id: string, stock: string, length: number, count: number): Owned => ({
  ...{ id, stock, length, count, defects: [] },
});

function supplyOf(plan: Plan, stock: Stock, wood: readonly Owned[]) {
  const own = plan.joinery.pieces.filter((piece) => piece.stock === stock.id);
  const pieces = grouped(own, (piece) => designPart(piece.part));
  return { stock, pieces, wood, shop: plan.design.shop };
}

/** What a person with saw and boards would see: each piece lies on one board, beside the others with a kerf between. */
function expectSawn(plan: Plan, stock: string, kerf: number): void {
  const pieces = new Map(plan.joinery.pieces.map((piece) => [piece.id, piece]));
  const own = plan.joinery.pieces.filter((piece) => piece.stock === stock);
  const boards = plan.cutting.boards.filter((board) => board.stock === stock);
  expect(boards.flatMap(({ cuts }) => cuts.map(({ piece }) => piece)).sort()).toEqual(
    own.map(({ id }) => id).sort(),
  );
  for (const { cuts, length, owned, cost } of boards) {
    expect(owned, 'nothing of a reading is bought').not.toBeNull();
    expect(cost).toBe(0);
    const sorted = [...cuts].sort((a, b) => a.from - b.from);
    sorted.forEach(({ piece, from, to }, i) => {
      const square = pieces.get(piece)?.ends.every(({ miter }) => miter === 0) ?? false;
      expect(to - from).toBeCloseTo(pieces.get(piece)?.overall ?? 0, 4);
      expect(from).toBeGreaterThanOrEqual(-NEAR);
      expect(to).toBeLessThanOrEqual(length + NEAR);
      const next = sorted[i + 1];
      if (next && square) expect(next.from - to).toBeGreaterThanOrEqual(kerf - NEAR);
    });
  }
}

describe('a stock as a rule reads it', () => {
  const touching = createTouching();

  it('moves what follows from the width, of the parts made of those boards alone: rails between stiles by hand', () => {
    const bare = starter('orchard-barn-door');
    const plan = planned(bare);
    const stock = plan.stocks.get('pine-1x4');
    if (stock?.form !== 'flat') throw new Error('no 1x4');
    const rail = plan.joinery.pieces.find(({ part }) => part === 'left-top');
    expect(rail?.length).toBeCloseTo(457.2, 6);
    const of = plan.joinery.pieces.filter((piece) => piece.stock === stock.id);
    const stiles = new Set(
      of.filter(({ part }) => /^left-(stile|left|right)/.test(part)).map(({ part }) => part),
    );
    expect(stiles.size).toBe(2);
    const design = { ...bare, owned: [ownedOf('hand', stock.id, 2438.4, 2)] };
    const doc = freshDocument(design);
    const read = { width: stock.width + inches(1 / 8), thickness: stock.thickness - inches(1 / 32) };
    const batches = batchesOf(design, stock.id);
    expect(batches).toHaveLength(1);
    const as = { id: 'read-1', name: 'Wider' };
    const next = edited(design, takenReading(doc, { stock, ...read, as, batches, parts: stiles }, touching));
    const after = planned(next);
    const now = (part: string) => after.joinery.pieces.find((piece) => piece.part === part);
    for (const stile of stiles) {
      expect(across(now(stile)?.outline ?? [])).toBeCloseTo(read.width, 6);
      expect(now(stile)?.thickness).toBeCloseTo(read.thickness, 6);
    }
    // Worked by hand: the outside of the door stays, each stile takes an eighth of an inch of the rail.
    expect(now('left-top')?.length).toBeCloseTo(457.2 - 2 * inches(1 / 8), 4);
    expect(across(now('left-top')?.outline ?? [])).toBeCloseTo(stock.width, 6);
    expectSawn(after, 'read-1', next.shop.boardKerf);
    expect(next.owned[0]?.stock).toBe('read-1');
  });

  it('gives to boards whole parts that come out of them, and no piece to boards of two readings', () => {
    const [bare] = [starter('orchard-barn-door')];
    const plan = planned(bare);
    const stock = plan.stocks.get('pine-1x4');
    if (stock?.form !== 'flat') throw new Error('no 1x4');
    fc.assert(
      fc.property(
        fc.array(
          fc.record({ length: fc.integer({ min: 500, max: 3000 }), count: fc.integer({ min: 1, max: 2 }) }),
          {
            minLength: 1,
            maxLength: 3,
          },
        ),
        fc.integer({ min: -3, max: 4 }).filter((n) => n !== 0),
        fc.nat(7),
        (hand, wider, mask) => {
          const owned = hand.map(({ length, count }, i) => ownedOf(`hand-${i}`, stock.id, length, count));
          const design = { ...bare, owned };
          const doc = freshDocument(design);
          const all = batchesOf(design, stock.id);
          const batches = all.filter((_, i) => ((mask + 1) >> i) % 2 === 1);
          const supply = supplyOf(
            plan,
            stock,
            batches.flatMap(({ left }) => left),
          );
          const parts = partsThatFit(supply, new Set(), new Map());
          expect(comeOutOf(supply, [...parts])).toBe(true);
          // One more never fits: what can be made of the boards is.
          for (const part of supply.pieces.keys())
            if (!parts.has(part)) expect(comeOutOf(supply, [...parts, part])).toBe(false);
          const width = stock.width + inches(wider / 32);
          const as = { id: 'read-1', name: 'Read' };
          const next = edited(
            design,
            takenReading(doc, { stock, width, thickness: stock.thickness, as, batches, parts }, touching),
          );
          const after = planned(next);
          const pieces = grouped(after.joinery.pieces, (piece) => designPart(piece.part));
          for (const [part, own] of pieces) {
            const wide = parts.has(part) ? width : null;
            for (const piece of own.filter(
              ({ form, stock: of }) => form === 'flat' && (of === 'read-1' || of === stock.id),
            ))
              expect(piece.stock === 'read-1').toBe(wide !== null);
          }
          if (!after.checks.some(({ code }) => code === 'piece.too-long'))
            expectSawn(after, 'read-1', bare.shop.boardKerf);
        },
      ),
      { numRuns: runs(2) },
    );
  });

  it('leaves what is cut of those boards cut, and tells parts that are cut of others too', () => {
    const bare = starter('orchard-barn-door');
    const first = planned(bare);
    const stock = first.stocks.get('pine-1x4');
    if (stock?.form !== 'flat') throw new Error('no 1x4');
    let job = bare.job;
    const steps = benchSteps(first.cutting, first.joinery.pieces).filter(
      (step) => step.kind === 'board-piece' && step.piece.stock === stock.id,
    );
    const [one] = steps;
    if (one?.kind !== 'board-piece') throw new Error('nothing to cut');
    const ofIt = steps.filter((step) => step.from === one.from);
    const at = () => ({
      ...{
        cutting: first.cutting,
        stocks: first.stocks,
        shop: bare.shop,
        planned: [],
        facts: liveFacts(job),
      },
    });
    for (const step of ofIt) job = saying(job, cutSaying(step, at()));
    const design = { ...bare, ...(job ? { job } : {}) };
    const batches = batchesOf(design, stock.id);
    expect(batches).toHaveLength(1);
    const boards = new Set(batches.flatMap((batch) => batch.boards));
    const { of, alsoOfOthers } = cutOfThem(liveFacts(job), boards, designPart);
    expect(of).toEqual(new Set(ofIt.map((step) => designPart('piece' in step ? step.piece.part : ''))));
    expect(alsoOfOthers.size).toBe(0);
    const doc = freshDocument(design);
    const reading = { stock, width: stock.width + 1.5, thickness: stock.thickness, batches, parts: of };
    const next = edited(
      design,
      takenReading(doc, { ...reading, as: { id: 'read-1', name: 'Read' } }, touching),
    );
    const after = planned(next);
    const done = doneSteps(benchSteps(after.cutting, after.joinery.pieces), {
      facts: liveFacts(next.job),
      stocks: after.stocks,
    });
    // As long as they were, a little wider: the same wood.
    const same = (piece: Piece) => {
      const was = first.joinery.pieces.find(({ id }) => id === piece.id);
      return was !== undefined && Math.abs(was.overall - piece.overall) < 0.01;
    };
    const cut = after.joinery.pieces.filter(({ id }) => ofIt.some((step) => step.id === id));
    expect(cut.length).toBe(ofIt.length);
    expect([...done].sort()).toEqual(
      cut
        .filter(same)
        .map(({ id }) => id)
        .sort(),
    );
    expect(done.size).toBeGreaterThan(0);
    // And so for all boards of the stock.
    const whole = edited(design, takenReading(doc, { ...reading, batches: [], as: null }, touching));
    const every = planned(whole);
    expect(
      every.joinery.pieces
        .filter((piece) => piece.stock === stock.id)
        .every(({ width }) => Math.abs(width - reading.width) < NEAR),
    ).toBe(true);
    const still = doneSteps(benchSteps(every.cutting, every.joinery.pieces), {
      facts: liveFacts(whole.job),
      stocks: every.stocks,
    });
    const kept = every.joinery.pieces.filter(({ id }) => ofIt.some((step) => step.id === id)).filter(same);
    expect([...still].sort()).toEqual(kept.map(({ id }) => id).sort());
  });
});
