import { useMemo } from 'react';
import type { Check } from '../../check/check.ts';
import type { Design } from '../../design/schema.ts';
import { EN } from '../../plan/words/en.ts';
import { sayFor } from '../../plan/words/say.ts';
import { checkMessage } from '../../plan/words/words.ts';
import { stocksOf } from '../state/tables.ts';

/** The message of a check, with names and measures of the design. */
export function useCheckWords(design: Design): (check: Check) => string {
  return useMemo(() => {
    const say = sayFor({ design, stocks: stocksOf(design) });
    return (check: Check) => checkMessage(check, EN, say);
  }, [design]);
}
