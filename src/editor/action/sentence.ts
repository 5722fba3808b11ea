import type { Design, Rule } from '../../design/schema.ts';
import type { RuleState } from '../../layout/laid.ts';
import { ruleSayFor } from '../../plan/words/say.ts';
import { PLAN_WORDS } from '../../plan/words/tables.ts';
import { ruleSentence as sentence } from '../../plan/words/words.ts';
import { stocksOf } from '../state/tables.ts';
import { spoken, t } from '../words/t.ts';
import { nameOf } from './movable.ts';

/** What a rule can refer to, by name: the face, a level, a part. */
export function referenceName(design: Design, of: string): string {
  if (of === 'face') return t('edge.face');
  if (of.startsWith('level:')) return t(`level.${of.slice(6) as 'rim'}`);
  return nameOf(design, of);
}

/** A rule as a person would say it at the bench. */
export function ruleSentence(design: Design, rule: Rule, state: RuleState | undefined): string {
  const language = spoken();
  const say = ruleSayFor({ design, stocks: stocksOf(design), language });
  return sentence(rule, state?.result ?? null, PLAN_WORDS[language], say);
}
