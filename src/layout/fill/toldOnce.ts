import type { Check, Severity } from '../../check/check.ts';
import { isBoards } from '../../design/made.ts';
import type { Part } from '../../design/schema.ts';
import { pick } from '../../list/at.ts';
import { designPart } from '../reference.ts';

const WORSE: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 };

/**
 * What is found of many pieces of one fill is told once, of the fill, by the worst and first of them: a person decides on
 * the fill, not on three hundred bricks. What is found of a single piece stays told of it.
 */
export function toldOnce(checks: readonly Check[], parts: readonly Part[]): readonly Check[] {
  const fills = new Set(parts.filter(isBoards).map((part) => part.id));
  if (fills.size === 0) return checks;
  const groups = new Map<string, Check[]>();
  const found = checks.map((check) => {
    const fill = check.parts[0] === undefined ? undefined : designPart(check.parts[0]);
    if (fill === undefined || !fills.has(fill)) return [check];
    const key = `${check.code} ${fill}`;
    const known = groups.get(key);
    if (known) {
      known.push(check);
      return [];
    }
    const group = [check];
    groups.set(key, group);
    return group;
  });
  return found.flatMap((group) => {
    const [first] = group;
    if (!first || group.length === 1) return group;
    const worst = group.reduce((a, b) => (WORSE[b.severity] < WORSE[a.severity] ? b : a));
    return [{ ...worst, parts: [designPart(pick(worst.parts, 0)), ...worst.parts.slice(1)] }];
  });
}
