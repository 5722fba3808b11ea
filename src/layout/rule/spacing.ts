import type { Spacing } from '../../design/schema.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';

/** Most members that a chosen largest gap may ask for. */
export const MOST_MEMBERS = 400;

export interface Spread {
  readonly count: number;
  /** Clear room between neighbors; negative where they do not fit. */
  readonly gap: Mm;
  /** Start of each member from the start of the span. */
  readonly starts: readonly Mm[];
}

/**
 * Where the members of one size stand in a span. Gaps, n members of size s in a span W:
 * gaps also at the ends (W - n s)/(n + 1); flush ends (W - n s)/(n - 1); half gaps at the ends
 * (W - n s)/n; centers a pitch p apart p - s. One member with flush ends stands in the middle.
 */
export function spread(span: Mm, size: Mm, spacing: Spacing): Spread {
  const count = countOf(span, size, spacing);
  const starts: Mm[] = [];
  for (let i = 0; i < count; i++) {
    const { share, offset } = startOfMember(i, count, size, spacing);
    starts.push(share * span + offset);
  }
  return { count, gap: gapOf(span, size, count, spacing), starts };
}

/** The least count whose gap is not over `most`; for the other modes the count as given. */
export function countOf(span: Mm, size: Mm, spacing: Spacing): number {
  if (spacing.mode !== 'most' || spacing.most === undefined) return spacing.count;
  const exact = (span - spacing.most) / (size + spacing.most);
  return Math.min(MOST_MEMBERS, Math.max(1, Math.ceil(exact - SAME_LENGTH)));
}

/**
 * Start of member `index` as `share` of the span plus `offset`: linear in the span, so that rules can
 * name the edges of single members.
 */
export function startOfMember(
  index: number,
  count: number,
  size: Mm,
  spacing: Spacing,
): { readonly share: number; readonly offset: Mm } {
  switch (spacing.mode) {
    case 'gaps':
    case 'most': {
      const share = (index + 1) / (count + 1);
      return { share, offset: index * size - share * count * size };
    }
    case 'flush': {
      if (count === 1) return { share: 0.5, offset: -size / 2 };
      const share = index / (count - 1);
      return { share, offset: index * size - share * count * size };
    }
    case 'half':
      return { share: (index + 0.5) / count, offset: -size / 2 };
    case 'centers': {
      if (spacing.pitch === undefined) return { share: (index + 0.5) / count, offset: -size / 2 };
      return { share: 0.5, offset: (index - (count - 1) / 2) * spacing.pitch - size / 2 };
    }
  }
}

function gapOf(span: Mm, size: Mm, count: number, spacing: Spacing): Mm {
  const left = span - count * size;
  switch (spacing.mode) {
    case 'gaps':
    case 'most':
      return left / (count + 1);
    case 'flush':
      return count === 1 ? left / 2 : left / (count - 1);
    case 'half':
      return left / count;
    case 'centers':
      return (spacing.pitch ?? span / count) - size;
  }
}

/**
 * How many panels, each about `near` wide, go between upright strips of width `strip`, when there is a
 * strip at both ends: the whole number nearest to (span - strip)/(near + strip).
 */
export function panelsNear(span: Mm, strip: Mm, near: Mm): number {
  return Math.max(1, Math.round((span - strip) / (near + strip)));
}
