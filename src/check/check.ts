import type { Mm } from '../measure/units.ts';
import type { CheckCode } from './codes.ts';

/** `error` forbids a plan (the command exits with 1); `warning` and `note` do not. */
export type Severity = 'error' | 'warning' | 'note';

/** A problem as a value: what, how bad, which parts, where, and the figures its wording needs. */
export interface Check {
  readonly code: CheckCode;
  readonly severity: Severity;
  /** Ids of the parts, rules or stocks concerned, most important first. */
  readonly parts: readonly string[];
  /** Place on the face, where there is one. */
  readonly at?: { readonly x: Mm; readonly y: Mm } | undefined;
  /**
   * Figures for the message. Lengths are in millimeters and named `..._mm`, angles `..._deg`,
   * masses `..._kg`, forces `..._n`, areas `..._m2`; strings are names that a person gave or ids.
   */
  readonly figures: Readonly<Record<string, number | string>>;
}

const RANK: Record<Severity, number> = { error: 0, warning: 1, note: 2 };

/** Stable order: errors first, then by code, then by the parts concerned, then by place. */
export function orderChecks(checks: readonly Check[]): Check[] {
  return checks
    .map((check) => ({ check, key: `${RANK[check.severity]}|${check.code}|${check.parts.join(',')}` }))
    .sort((a, b) => {
      if (a.key !== b.key) return a.key < b.key ? -1 : 1;
      const [p, q] = [a.check.at, b.check.at];
      return (p?.y ?? 0) - (q?.y ?? 0) || (p?.x ?? 0) - (q?.x ?? 0);
    })
    .map(({ check }) => check);
}
