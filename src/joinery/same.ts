import { boxOfPoints } from '../geometry/ring.ts';
import type { Point } from '../geometry/shape.ts';
import { pick } from '../list/at.ts';
import { sameValue } from '../list/sameValue.ts';
import type { ShapedStock, Stock } from '../materials/types.ts';
import type { Draft } from './draft.ts';
import type { Notch, PieceEnd, Scribed } from './piece.ts';

/** Pieces that differ by no more than this, in millimeters or degrees, are sawn alike. */
export const SAWN_ALIKE = 0.02;

/**
 * Whether two pieces are the same to the saw: size, outline, bend, openings, notches, end cuts, grain and
 * allowance. A
 * piece may be turned end for end with its show face up, unless its section or an end has a hand; it is
 * never turned over, so that mirrored pieces stay two different pieces.
 */
export function sameCut(a: Draft, b: Draft, stock: Stock | null): boolean {
  if (!sameSize(a, b)) return false;
  return matches(a, b) || (mayTurn(a, stock) && matches(a, turned(b)));
}

const near = (a: number, b: number): boolean => Math.abs(a - b) <= SAWN_ALIKE;

const sameSize = (a: Draft, b: Draft): boolean =>
  near(a.overall, b.overall) &&
  near(a.width, b.width) &&
  near(a.thickness, b.thickness) &&
  near(a.bent?.radius ?? 0, b.bent?.radius ?? 0) &&
  a.grain === b.grain &&
  a.fit.inPlace === b.fit.inPlace &&
  near(a.fit.allowance, b.fit.allowance) &&
  sameValue(a.fit.read, b.fit.read) &&
  a.holes.length === b.holes.length &&
  a.notches.length === b.notches.length;

function matches(a: Draft, b: Draft): boolean {
  return (
    sameEnd(a.ends[0], b.ends[0]) &&
    sameEnd(a.ends[1], b.ends[1]) &&
    sameRing(a.outline, b.outline) &&
    sameRings(a.holes, b.holes) &&
    a.notches.every((notch) => b.notches.some((other) => sameNotch(notch, other))) &&
    sameScribed(a.scribed ?? [], b.scribed ?? [])
  );
}

/** Two notches of one piece never lie in the same place, so that each finds its own. */
const sameNotch = (a: Notch, b: Notch): boolean =>
  a.side === b.side && near(a.depth, b.depth) && sameRing(a.outline, b.outline);

const sameScribed = (a: readonly Scribed[], b: readonly Scribed[]): boolean =>
  a.length === b.length &&
  a.every((one) =>
    b.some(
      (two) =>
        one.edge === two.edge &&
        one.line.length === two.line.length &&
        one.line.every((p, i) => near(p.x, pick(two.line, i).x) && near(p.y, pick(two.line, i).y)),
    ),
  );

/** Cuts that only differ in their name, such as square and butt, are one setting of the saw. */
function sameEnd(a: PieceEnd, b: PieceEnd): boolean {
  const special = (end: PieceEnd) => (end.cut === 'cope' || end.cut === 'return' ? end.cut : 'plain');
  return (
    special(a) === special(b) &&
    sameSetting(a, b) &&
    sameSetting(a.second, b.second) &&
    sameSetting(a.nested, b.nested)
  );
}

type Setting = { readonly miter: number; readonly bevel: number } | null;

function sameSetting(a: Setting, b: Setting): boolean {
  if (a === null || b === null) return a === b;
  return near(a.miter, b.miter) && near(a.bevel, b.bevel);
}

/** The same ring, wherever it starts. */
function sameRing(a: readonly Point[], b: readonly Point[]): boolean {
  if (a.length !== b.length) return false;
  return b.some((_, shift) =>
    a.every((p, i) => {
      const q = b[(i + shift) % b.length];
      return q !== undefined && near(p.x, q.x) && near(p.y, q.y);
    }),
  );
}

function sameRings(a: readonly (readonly Point[])[], b: readonly (readonly Point[])[]): boolean {
  const left = [...b];
  return a.every((ring) => {
    const found = left.findIndex((other) => sameRing(ring, other));
    if (found >= 0) left.splice(found, 1);
    return found >= 0;
  });
}

/** Molding may be turned only when its section is the same from both edges. */
export function mayTurn(piece: Draft, stock: Stock | null): boolean {
  return piece.form !== 'shaped' || stock?.form !== 'shaped' || isSymmetric(stock);
}

const isSymmetric = (stock: ShapedStock): boolean =>
  stock.spring === undefined &&
  stock.section.every((p) => stock.section.some((q) => near(q.x, stock.width - p.x) && near(q.y, p.y)));

/** The piece turned end for end, its show face still toward the reader. */
export function turned(piece: Draft): Draft {
  const { x, y, w, h } = boxOfPoints(piece.outline);
  const turn = (p: Point): Point => ({ x: 2 * x + w - p.x, y: 2 * y + h - p.y });
  return {
    ...piece,
    ends: [turnedEnd(piece.ends[1]), turnedEnd(piece.ends[0])],
    outline: piece.outline.map(turn),
    holes: piece.holes.map((ring) => ring.map(turn)),
    notches: piece.notches.map((notch) => ({ ...notch, outline: notch.outline.map(turn) })),
    ...(piece.scribed && {
      scribed: piece.scribed.map(({ edge, most, at, line }) => ({
        ...{ edge: edge === 'left' ? ('right' as const) : ('left' as const), most, at: w - at },
        line: line.map(turn).reverse(),
      })),
    }),
  };
}

/** The left edge becomes the right one, so miters change their sign, and the cuts of a point their order. */
function turnedEnd(end: PieceEnd): PieceEnd {
  if (end.second) {
    return {
      ...end,
      miter: -end.second.miter,
      second: { miter: -end.miter, bevel: end.second.bevel },
    };
  }
  return {
    ...end,
    miter: -end.miter,
    nested: end.nested && { ...end.nested, miter: -end.nested.miter },
  };
}
