import { expect } from 'vitest';
import type { CuttingInput } from '../../src/cutting/cutting.ts';
import type { CutSheet, Cutting } from '../../src/cutting/result.ts';
import type { Piece } from '../../src/joinery/piece.ts';

/** Plays a sheet's sequence of cuts, one after another, on a sheet of its own. */

interface Rect {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

const NEAR = 1e-5;
const same = (a: Rect, b: Rect): boolean =>
  Math.abs(a.x - b.x) < NEAR &&
  Math.abs(a.y - b.y) < NEAR &&
  Math.abs(a.w - b.w) < NEAR &&
  Math.abs(a.h - b.h) < NEAR;
const area = (r: Rect): number => r.w * r.h;

/** The parts that a sheet's cuts leave. */
export function playSheet(sheet: CutSheet, kerf: number): { parts: Rect[]; dust: number } {
  let parts: Rect[] = [{ x: 0, y: 0, w: sheet.length, h: sheet.width }];
  let dust = 0;
  sheet.sequence.forEach((cut, i) => {
    expect(cut.number).toBe(i + 1);
    const block = parts.find((p) => same(p, cut.of));
    expect(block, `cut ${cut.number} cuts something that is not there`).toBeDefined();
    if (!block) return;
    const rip = cut.kind === 'rip';
    const whole = rip ? block.h : block.w;
    expect(cut.fence).toBeGreaterThanOrEqual(0);
    expect(cut.fence).toBeLessThan(whole);
    const blade = Math.min(kerf, whole - cut.fence);
    const rest = whole - cut.fence - blade;
    dust += blade * (rip ? block.w : block.h);
    const low = rip ? { ...block, h: cut.fence } : { ...block, w: cut.fence };
    const high = rip
      ? { ...block, y: block.y + cut.fence + blade, h: rest }
      : { ...block, x: block.x + cut.fence + blade, w: rest };
    parts = [...parts.filter((p) => p !== block), ...[low, high].filter((p) => p.w > NEAR && p.h > NEAR)];
  });
  return { parts, dust };
}

export function verifySheets(input: CuttingInput, plan: Cutting): void {
  const pieces = new Map(input.pieces.map((p) => [p.id, p]));
  const refused = new Set(plan.checks.filter((c) => c.code === 'piece.too-big').map((c) => c.figures.piece));
  const due = input.pieces.filter((p) => p.form === 'sheet' && !refused.has(p.id)).map((p) => p.id);
  expect(plan.sheets.flatMap((s) => s.placements.map((p) => p.piece)).sort()).toEqual(due.sort());
  for (const owned of input.owned) {
    expect(plan.sheets.filter((s) => s.owned === owned.id).length).toBeLessThanOrEqual(owned.count);
  }
  for (const sheet of plan.sheets) verifySheet(input, sheet, pieces);
}

function verifySheet(input: CuttingInput, sheet: CutSheet, pieces: ReadonlyMap<string, Piece>): void {
  const { parts, dust } = playSheet(sheet, input.shop.sheetKerf);
  // Every piece and every offcut is a part that the sequence leaves, and no part is two of them.
  const named: Rect[] = [...sheet.placements, ...sheet.offcuts];
  for (const r of named)
    expect(
      parts.filter((p) => same(p, r)),
      'not cut free',
    ).toHaveLength(1);
  for (const p of parts) expect(named.filter((r) => same(p, r)).length).toBeLessThanOrEqual(1);
  const waste = parts.filter((p) => !named.some((r) => same(p, r))).reduce((sum, p) => sum + area(p), 0);
  const used = named.reduce((sum, r) => sum + area(r), 0);
  expect(used + waste + dust).toBeCloseTo(sheet.length * sheet.width, 2);
  const stock = input.stocks.get(sheet.stock);
  const trim = sheet.owned === null ? input.shop.edgeTrim : 0;
  for (const place of sheet.placements) {
    const piece = pieces.get(place.piece);
    if (!piece) throw new Error(`no piece ${place.piece}`);
    const round = [Math.max(...piece.outline.map((p) => p.x)), Math.max(...piece.outline.map((p) => p.y))];
    // With square corners a piece is cut as it is told, else from the rectangle around it.
    const told = piece.overall === piece.length && piece.margin === 0;
    const [w = 0, h = 0] = told ? [piece.shown.length, piece.shown.width] : round;
    expect(place.w).toBeCloseTo(place.turned ? h : w, 6);
    expect(place.h).toBeCloseTo(place.turned ? w : h, 6);
    if (stock?.form === 'sheet' && stock.grain && piece.grain !== 'any') {
      expect(place.turned).toBe(piece.grain === 'across');
    }
    expect(place.x).toBeGreaterThanOrEqual(trim - NEAR);
    expect(place.y).toBeGreaterThanOrEqual(trim - NEAR);
    expect(place.x + place.w).toBeLessThanOrEqual(sheet.length - trim + NEAR);
    expect(place.y + place.h).toBeLessThanOrEqual(sheet.width - trim + NEAR);
  }
}
