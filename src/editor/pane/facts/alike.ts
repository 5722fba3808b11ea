import type { Check } from '../../../check/check.ts';
import { designPart } from '../../../layout/reference.ts';
import { grouped } from '../../../list/grouped.ts';
import { addUp, totalOf } from '../../../list/totals.ts';

/**
 * Checks that say the same of one thing, together: twelve battens against one sign are one message. Of a pair the part
 * counts that most checks of the code are about; members of an array count as the array. In the order given.
 */
export function alike(checks: readonly Check[]): Check[][] {
  const about = new Map<string, number>();
  const keysOf = ({ code, severity, parts }: Check) =>
    [...new Set(parts.map(designPart))].map((part) => `${severity}|${code}|${part}`);
  for (const key of checks.flatMap(keysOf)) addUp(about, key);
  const key = (check: Check) => {
    const [most] = keysOf(check).sort((a, b) => totalOf(about, b) - totalOf(about, a));
    return most ?? check;
  };
  return [...grouped(checks, key).values()];
}
