import { useMemo } from 'react';
import type { Check } from '../../check/check.ts';
import type { Design } from '../../design/schema.ts';
import { sayFor } from '../../plan/words/say.ts';
import { PLAN_WORDS } from '../../plan/words/tables.ts';
import { checkMessage } from '../../plan/words/words.ts';
import { stocksOf } from '../shipped/tables.ts';
import { useLanguage } from '../words/t.ts';

/** The message of a check, with names and measures of the design. */
export function useCheckWords(design: Design): (check: Check) => string {
  const language = useLanguage();
  return useMemo(() => {
    const say = sayFor({ design, stocks: stocksOf(design), language });
    return (check: Check) => checkMessage(check, PLAN_WORDS[language], say);
  }, [design, language]);
}
