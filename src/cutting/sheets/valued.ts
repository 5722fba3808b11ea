import type { Mm } from '../../measure/units.ts';
import type { Made } from './made.ts';

/** A kind of rectangle and what one of it is worth. */
export interface ValuedType {
  readonly w: Mm;
  readonly h: Mm;
  readonly value: number;
  /** Most copies; absent: as many as there is room for. */
  readonly max?: number | undefined;
}

export interface ValuedPlacement {
  readonly type: number;
  readonly x: Mm;
  readonly y: Mm;
  readonly w: Mm;
  readonly h: Mm;
  readonly turned: boolean;
}

export interface ValuedLayout {
  readonly value: number;
  /** The pattern as it is put together, its items the types; null when nothing fits. */
  readonly made: Made | null;
  readonly layout: readonly ValuedPlacement[];
  /** No guillotine pattern is worth more. */
  readonly proved: boolean;
}

/** An orientation in which a type fits the sheet. */
export interface Way {
  readonly type: number;
  readonly w: Mm;
  readonly h: Mm;
  readonly turned: boolean;
}

/** The pieces of a pattern, from its lower left corner. */
export function placementsOf(made: Made | null): ValuedPlacement[] {
  const out: ValuedPlacement[] = [];
  const walk = (m: Made, x: Mm, y: Mm): void => {
    if ('item' in m) {
      out.push({ type: m.item, x, y, w: m.w, h: m.h, turned: m.turned });
      return;
    }
    walk(m.low, x, y);
    walk(m.high, m.kind === 'cross' ? x + m.low.w : x, m.kind === 'cross' ? y : y + m.low.h);
  };
  if (made) walk(made, 0, 0);
  return out;
}

/** Two patterns side by side, or one upon the other. */
export const madeOf = (kind: 'rip' | 'cross', low: Made, high: Made): Made =>
  kind === 'cross'
    ? { w: low.w + high.w, h: Math.max(low.h, high.h), kind, low, high }
    : { w: Math.max(low.w, high.w), h: low.h + high.h, kind, low, high };
