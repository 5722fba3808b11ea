import { describe, expect, it } from 'vitest';
import { subtract, union } from '../../src/geometry/clip.ts';
import { boxOf, regionOfBox } from '../../src/geometry/region.ts';
import type { Box, Region } from '../../src/geometry/shape.ts';
import { letter } from '../../src/lettering/letter.ts';
import { leastCut } from '../../src/lettering/stencil/flow.ts';
import { sheetAround } from '../../src/lettering/stencil/sheet.ts';
import { stencil } from '../../src/lettering/stencil/stencil.ts';
import { chanceOf } from '../chance.ts';
import { runs } from '../runs.ts';
import { CHARACTERS, fontOf, SHIPPED } from './fonts.ts';
import { HoldGrid } from './holdGrid.ts';
import { lettering, stencilOptions } from './lettering.ts';

const box = (x: number, y: number, w: number, h: number): Region => regionOfBox({ x, y, w, h });

function make(letters: Region, changes: Parameters<typeof stencilOptions>[0] = {}) {
  const options = stencilOptions(changes);
  const sheet = sheetAround(boxOf(letters) as Box, options);
  return { ...stencil({ sign: 'board', letters, sheet, options }), sheet, options };
}

const lettersOf = (text: string, font: string, capHeight: number): Region =>
  letter({
    lettering: lettering(text, { font, capHeight }),
    font: fontOf(font),
    sign: { id: 's', w: 800, h: 400 },
  }).lettered.layers[0]?.whole ?? [];

describe('the least cut', () => {
  it('counts ways that share no tie, however many pieces a tie touches (twin: taking away every choice of ties)', () => {
    const chance = chanceOf(14);
    for (let run = 0; run < 400; run += 1) {
      const pieces = 2 + Math.floor(5 * chance());
      const ties = Array.from({ length: Math.floor(8 * chance()) }, () =>
        Array.from({ length: 2 + Math.floor(2 * chance()) }, () => Math.floor(pieces * chance())),
      );
      const { hold, near, far } = leastCut({ pieces, ties }, 1, 0, 99);
      expect(hold).toBe(fewestToPart(pieces, ties));
      expect([near(1), near(0), far(0), far(1)]).toEqual([true, false, true, false]);
    }
  });
});

/** Fewest ties without which piece 1 is not joined to piece 0, by trying every choice of them. */
function fewestToPart(pieces: number, ties: readonly (readonly number[])[]): number {
  let fewest = ties.length;
  for (let choice = 0; choice < 1 << ties.length; choice += 1) {
    const gone = ties.filter((_, i) => (choice >> i) & 1).length;
    if (gone >= fewest) continue;
    const joined = new Set([1]);
    for (let round = 0; round < pieces; round += 1) {
      ties.forEach((tie, i) => {
        if (!((choice >> i) & 1) && tie.some((p) => joined.has(p))) for (const p of tie) joined.add(p);
      });
    }
    if (!joined.has(0)) fewest = gone;
  }
  return fewest;
}

describe('islands tied to each other', () => {
  it('get a second bar out of their group (the A of a face with a shade line)', () => {
    const { stencil: made, checks } = make(lettersOf('A', 'rye', 70), { bridgeWidth: 4.7625, tongue: 2.38 });
    expect(made.islands.map(({ hold }) => hold)).toEqual([2, 2]);
    expect(made.bridges.filter(({ island }) => island === 0).length).toBeGreaterThanOrEqual(3);
    expect(checks).toEqual([]);
  });

  it('are told to hang on one where no second one fits, all of them, at the first', () => {
    // Two windows with a thin bar between, in a block whose only thin side is a stub below the left one.
    const letters = subtract(box(0, 0, 60, 30), union([box(8, 10, 20, 12), box(32, 10, 20, 12)]));
    const { stencil: made, checks } = make(letters, {
      placed: [
        { island: 0, angles: [-90, 0] },
        { island: 1, angles: [160] },
      ],
    });
    expect(made.bridges).toHaveLength(3);
    expect(made.islands.map(({ hold }) => hold)).toEqual([1, 1]);
    expect(made.single).toBe(2);
    expect(checks.map(({ code, severity, at, figures }) => ({ code, severity, at, figures }))).toEqual([
      {
        code: 'stencil.one-bridge',
        severity: 'warning',
        at: made.islands[0]?.at,
        figures: { count: 2, asked: 2 },
      },
    ]);
  });

  it('hang on one, as a note, where one was asked for', () => {
    const { stencil: made, checks } = make(lettersOf('BOB', 'lato', 80), { bridges: 1 });
    expect(made.loose).toBe(0);
    expect(made.bridges).toHaveLength(made.islands.length);
    expect(made.single).toBe(5);
    expect(checks.map(({ code, severity, figures }) => [code, severity, figures])).toEqual([
      ['stencil.one-bridge', 'note', { count: 5, asked: 1 }],
    ]);
  });

  it('in a place thinner than asked hold nothing there', () => {
    // An island of 12 mm with an arm of 1.5: the thinnest stroke is at the arm.
    const island = union([box(10, 10, 12, 20), box(22, 19, 20, 1.5)]);
    const { stencil: made } = make(subtract(box(0, 0, 46, 40), island), { tongue: 2 });
    const grid = new HoldGrid(
      subtract(box(0, 0, 46, 40), island),
      made,
      { x: -20, y: -20, w: 86, h: 80 },
      0.25,
      2,
    );
    expect(made.islands.map(({ hold, border }) => [hold, grid.holdOf(border)])).toEqual([[2, 2]]);
  });
});

/**
 * Letters of every font that ships, one in four, each with settings by chance: what the stencil says of each island
 * lies between what a grid finds with the limit a little wider and a little narrower, since a neck of just the
 * limit is either.
 */
describe.each(SHIPPED.map(({ id }) => id))('what islands hang on, %s', (id) => {
  it('is what flooding the sheet finds with every bar cut through in turn (twin)', () => {
    const chance = chanceOf(id.length * 31 + id.charCodeAt(0));
    const step = 0.3;
    const faults: string[] = [];
    let [islands, looked, turn] = [0, 0, id.length];
    for (const character of CHARACTERS) {
      const capHeight = 40 + 30 * chance();
      const tongue = 1 + 1.5 * chance();
      const changes = {
        tongue,
        bridgeWidth: 3.5 + 2 * chance(),
        bridges: 1 + Math.floor(3 * chance()),
        direction: (['thinnest', 'up', 'across'] as const)[Math.floor(3 * chance())] ?? 'up',
        frame: 8,
      };
      turn += 1;
      if (turn % 4 >= runs(1)) continue;
      const letters = lettersOf(character, id, capHeight);
      if (!letters.some(({ holes }) => holes.length > 0)) continue;
      const { stencil: made, sheet } = make(letters, changes);
      const [wide, narrow] = [2 * step, -2 * step].map(
        (by) => new HoldGrid(letters, made, sheet, step, Math.max(0, tongue + by)),
      );
      islands += made.islands.length;
      made.islands.forEach(({ hold, border }, i) => {
        const least = wide?.holdOf(border) ?? null;
        const most = narrow?.holdOf(border) ?? null;
        // All thin: no neck of it is told from the rest.
        if (least === null || most === null) return;
        looked += 1;
        if (hold < least || hold > most) {
          faults.push(`${character} ${i}: ${hold}, not ${least} to ${most} ${JSON.stringify(changes)}`);
        }
      });
    }
    expect(faults).toEqual([]);
    expect(looked).toBeGreaterThanOrEqual(0.6 * islands);
  }, 240_000);
});
