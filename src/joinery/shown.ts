import { at, pick } from '../list/at.ts';
import { totalOf } from '../list/totals.ts';
import { roundLength, shareOut, stepOf } from '../measure/round.ts';
import type { MeasureStyle } from '../measure/style.ts';
import type { Mm } from '../measure/units.ts';
import { otherSide, TOUCH } from './bar.ts';
import type { Draft, Placed } from './draft.ts';
import { isSquareEnded } from './lengths.ts';
import type { Shown } from './piece.ts';
import { type Bars, spansOf, type Told, toldKey } from './spans.ts';

/**
 * Measures as told to a person, one rule for all pieces: those that fill a span together are rounded together,
 * so that their sum is the wood of the span, along every edge; all others are rounded by themselves. A longer
 * edge of a piece is never told shorter than its other edge, and equal edges are told alike.
 */
export function shownLengths(pieces: readonly Placed[], style: MeasureStyle, bars: Bars): Shown[] {
  const spans = spansOf(pieces, bars);
  const steps = new Steps(pieces, style);
  for (const span of spans) steps.fill(span);
  for (const span of spans) steps.order(span, spans);
  return pieces.map(({ draft }, piece) => steps.shown(draft, piece));
}

/** Measures of a piece that shares no span. */
export function roundedAlone({ length, width, edges }: Shown, style: MeasureStyle): Shown {
  const told = (mm: Mm | null): Mm | null => mm && roundLength(mm, style);
  return {
    length: roundLength(length, style),
    width: roundLength(width, style),
    edges: { left: told(edges.left), right: told(edges.right) },
  };
}

/** Measures in whole steps of the style, as far as spans have decided them. */
class Steps {
  private readonly decided = new Map<string, number>();
  private readonly step: Mm;

  constructor(
    private readonly pieces: readonly Placed[],
    private readonly style: MeasureStyle,
  ) {
    this.step = stepOf(style);
  }

  /** Shares a span out among its measures that no earlier span has decided. */
  fill(span: readonly Told[]): void {
    const whole = Math.round(span.reduce((sum, told) => sum + this.exact(told), 0) / this.step);
    const open = span.filter((told) => !this.decided.has(toldKey(told)));
    const taken = span.reduce((sum, told) => sum + totalOf(this.decided, toldKey(told)), 0);
    const lengths = open.map((told) => this.exact(told));
    const shares = shareOut(Math.max(0, whole - taken) * this.step, lengths, this.step);
    open.forEach((told, i) => {
      this.decided.set(toldKey(told), Math.round(at(shares, i) / this.step));
    });
  }

  /** Moves single steps along the spans until no edge of the span's pieces is told shorter than a shorter one. */
  order(span: readonly Told[], spans: readonly (readonly Told[])[]): void {
    for (const told of span) {
      const other = this.otherEdge(told);
      if (!other || !this.isWrong(told, other)) continue;
      const home = spans.find((s) => s.some((t) => toldKey(t) === toldKey(other)));
      if (this.pass(told, span, 1) || (home && this.pass(other, home, -1))) continue;
      this.decided.set(toldKey(told), this.of(other));
    }
  }

  /** Rounded measures of a piece, undecided ones by themselves but in the order of the exact ones. */
  shown(draft: Draft, piece: number): Shown {
    const alone = roundedAlone(draft, this.style);
    const told = (of: Told['of'], otherwise: Mm): Mm => {
      const steps = this.decided.get(toldKey({ piece, of }));
      return steps === undefined ? otherwise : roundLength(steps * this.step, this.style);
    };
    const length = told('length', alone.length);
    const width = told('width', alone.width);
    if (this.pieces[piece]?.kind === 'panel') {
      const along = (edge: Mm | null, exact: Mm | null) =>
        exact !== null && Math.abs(exact - draft.length) <= TOUCH ? length : edge;
      const { left, right } = draft.edges;
      return {
        length,
        width,
        edges: { left: along(alone.edges.left, left), right: along(alone.edges.right, right) },
      };
    }
    if (isSquareEnded(draft)) return { length, width, edges: { left: length, right: length } };
    const edges = this.edgesInOrder(draft, piece, alone);
    const { edge } = draft.measured;
    return { length: edge === 'left' || edge === 'right' ? (edges[edge] ?? length) : length, width, edges };
  }

  private edgesInOrder(draft: Draft, piece: number, alone: Shown): Shown['edges'] {
    const { left, right } = draft.edges;
    if (left === null || right === null) return alone.edges;
    const of = (side: 'left' | 'right'): Mm =>
      roundLength(this.of({ piece, of: side }) * this.step, this.style);
    const [l, r] = [of('left'), of('right')];
    if (left - right > TOUCH ? l >= r : right - left > TOUCH ? r >= l : l === r) return { left: l, right: r };
    // One of the two belongs to a span and stays.
    const kept = this.decided.has(toldKey({ piece, of: 'left' })) ? l : r;
    return { left: kept, right: kept };
  }

  private exact({ piece, of }: Told): Mm {
    const { draft } = pick(this.pieces, piece);
    return of === 'left' || of === 'right' ? (draft.edges[of] ?? 0) : draft[of];
  }

  private of(told: Told): number {
    return (
      this.decided.get(toldKey(told)) ?? Math.round(roundLength(this.exact(told), this.style) / this.step)
    );
  }

  private otherEdge({ piece, of }: Told): Told | null {
    if (of !== 'left' && of !== 'right') return null;
    const other = otherSide(of);
    return this.pieces[piece]?.draft.edges[other] == null ? null : { piece, of: other };
  }

  /** Whether an edge is told shorter than the other one and is not, or alike where they are not. */
  private isWrong(told: Told, other: Told): boolean {
    const over = this.exact(told) - this.exact(other);
    return over >= -TOUCH && this.of(told) < this.of(other);
  }

  /** Gives a measure one step more or less, and takes it from or gives it to another one of its span. */
  private pass(told: Told, span: readonly Told[], by: 1 | -1): boolean {
    const giver = span.find((one) => {
      if (toldKey(one) === toldKey(told)) return false;
      const off = this.of(one) * this.step - this.exact(one);
      const other = this.otherEdge(one);
      const after = this.of(one) - by;
      const over = other ? this.exact(one) - this.exact(other) : 0;
      const fits =
        !other ||
        (by > 0 ? over < -TOUCH || after >= this.of(other) : over > TOUCH || after <= this.of(other));
      return off * by > 0 && fits;
    });
    if (!giver) return false;
    this.decided.set(toldKey(told), this.of(told) + by);
    this.decided.set(toldKey(giver), this.of(giver) - by);
    return true;
  }
}
