import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Piece } from '../../src/joinery/piece.ts';
import { boxStrip, joint, panel, piecesOf, plan, sheet, strip } from './make.ts';

/** Sums of rounded measures: what is told of the pieces of one span adds up to the span, to the step. */
const inch = { unit: 'in', fraction: '16' } as const;
const STEP = 25.4 / 16;
const stocks = [sheet('mdf', false)];
// Hundredths of a millimeter, as a caliper shows.
const size = (min: number, max: number) =>
  fc.integer({ min: min * 100, max: max * 100 }).map((hundredths) => hundredths / 100);
const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
const toStep = (mm: number): number => Math.round(mm / STEP) * STEP;

const flatPanel = (id: string, x: number, y: number, w: number, h: number) =>
  panel(id, { x, y, w, h }, { stock: 'mdf' });

/** What is told of a panel across and up the face. */
function told(piece: Piece): { readonly x: number; readonly y: number } {
  const xs = piece.placed.flatMap(({ outer }) => outer.map((p) => p.x));
  const alongX = Math.abs(Math.max(...xs) - Math.min(...xs) - piece.length) < 1e-6;
  const { length, width } = piece.shown;
  return alongX ? { x: length, y: width } : { x: width, y: length };
}

/** No figure strays from its exact length by two steps, and none stands in the wrong order. */
function expectSound(piece: Piece): void {
  const { left, right } = piece.edges;
  const { edges, length } = piece.shown;
  expect(Math.abs(length - piece.length)).toBeLessThan(STEP + 1e-6);
  if (left === null || right === null || edges.left === null || edges.right === null) return;
  if (left > right + 0.01) expect(edges.left).toBeGreaterThanOrEqual(edges.right);
  if (right > left + 0.01) expect(edges.right).toBeGreaterThanOrEqual(edges.left);
  if (Math.abs(left - right) <= 0.01) expect(edges.left).toBe(edges.right);
}

describe('rounded sizes of panels', () => {
  it('side by side add up to their span: ten over 41 1/2 in', () => {
    const panels = Array.from({ length: 10 }, (_, i) => flatPanel(`p${i}`, i * 105.41, 0, 105.41, 600));
    const widths = plan(panels, { measure: inch, stocks }).pieces.map((piece) => piece.shown.width);
    expect(sum(widths)).toBeCloseTo(41.5 * 25.4, 6);
    expect(new Set(widths.map((w) => Math.round(w / STEP)))).toEqual(new Set([66, 67]));
  });

  it('in a grid add up both ways, with or without sticks between them', () => {
    const parts = fc.array(size(40, 400), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(parts, parts, fc.constantFrom(0, 19.05, 38.1), (columns, rows, stick) => {
        const at = (list: readonly number[], i: number) => sum(list.slice(0, i)) + i * stick;
        const panels = rows.flatMap((h, r) =>
          columns.map((w, c) => flatPanel(`${c}-${r}`, at(columns, c), at(rows, r), w, h)),
        );
        const [w, h] = [at(columns, columns.length), at(rows, rows.length)];
        const ups = columns
          .slice(1)
          .map((_, i) => boxStrip(`u${i}`, at(columns, i + 1) - stick, 0, stick, h));
        const overs = rows.slice(1).map((_, i) => boxStrip(`o${i}`, 0, at(rows, i + 1) - stick, w, stick));
        const sticks = stick === 0 ? [] : [...ups, ...overs];
        const joinery = plan([...panels, ...sticks], { measure: inch, stocks });
        const of = (c: number, r: number) => told(piecesOf(joinery, `${c}-${r}`)[0] as Piece);
        rows.forEach((_, r) => {
          expect(sum(columns.map((__, c) => of(c, r).x))).toBeCloseTo(toStep(sum(columns)), 6);
        });
        columns.forEach((_, c) => {
          expect(sum(rows.map((__, r) => of(c, r).y))).toBeCloseTo(toStep(sum(rows)), 6);
        });
      }),
      { numRuns: 60, endOnFailure: true },
    );
  });
});

describe('rounded lengths of sticks', () => {
  it('add up along both edges of a slanted rail that stiles cut in pieces, in order', () => {
    const gaps = fc.array(size(120, 400), { minLength: 2, maxLength: 6 });
    let slanted = 0;
    fc.assert(
      fc.property(
        gaps,
        size(-35, 35),
        size(10, 60),
        fc.integer({ min: -12, max: 12 }),
        (list, lean, width, tilt) => {
          const stiles = [0, ...list].map((_, i) => {
            const x = sum(list.slice(0, i)) + i * 25;
            // Every other stile leans, so that the two edges between them differ.
            const off = i % 2 === 0 ? 0 : 600 * Math.tan((tilt * Math.PI) / 180);
            return strip(`s${i}`, { x: x - off, y: -600 }, { x: x + off, y: 600 }, 25);
          });
          const far = sum(list) + list.length * 25;
          const rise = Math.tan((lean * Math.PI) / 180);
          const rail = strip('rail', { x: 0, y: 0 }, { x: far, y: far * rise * 0.5 }, width);
          const joints = stiles.map((stile) => joint(['rail', stile.id], 'butt', stile.id));
          const pieces = piecesOf(plan([...stiles, rail], { measure: inch, joints }), 'rail');
          for (const piece of pieces) expectSound(piece);
          if (pieces.length !== list.length) return;
          slanted++;
          for (const edge of ['left', 'right'] as const) {
            const exact = sum(pieces.map((piece) => piece.edges[edge] ?? Number.NaN));
            expect(sum(pieces.map((piece) => piece.shown.edges[edge] ?? Number.NaN))).toBeCloseTo(
              toStep(exact),
              6,
            );
          }
        },
      ),
      { numRuns: 150, endOnFailure: true },
    );
    expect(slanted).toBeGreaterThan(75);
  });
});
