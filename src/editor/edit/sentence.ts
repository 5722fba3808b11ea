import type { Axis, Design, Edge, Rule } from '../../design/schema.ts';
import type { RuleState } from '../../layout/laid.ts';
import { remembering } from '../../plan/memory.ts';
import type { Language } from '../../plan/words/languages.ts';
import { ruleSayFor } from '../../plan/words/say.ts';
import { PLAN_WORDS } from '../../plan/words/tables.ts';
import { ruleSentence as sentence } from '../../plan/words/words.ts';
import { stocksOf } from '../shipped/tables.ts';
import { spoken, t } from '../words/t.ts';
import { nameOf } from './movable.ts';
import { edgesHeldTo } from './otherEdge.ts';

/** What a rule can refer to, by name: the face, a level, a part. */
export function referenceName(design: Design, of: string): string {
  if (of === 'face') return t('edge.face');
  if (of.startsWith('level:')) return t(`level.${of.slice(6) as 'rim'}`);
  return nameOf(design, of);
}

/** Kept while it is asked of one design: it lists every part and rule, and a drag tells several rules at a time. */
const sayOf = remembering((design: Design, stocks: ReturnType<typeof stocksOf>, language: Language) =>
  ruleSayFor({ design, stocks, language }),
);

/** A rule as a person would say it at the bench, with what it comes to where the states of rules are known. */
export function ruleSentence(design: Design, rule: Rule, states: readonly RuleState[] = []): string {
  const language = spoken();
  const say = sayOf(design, stocksOf(design), language);
  const state = states.find(({ id }) => id === rule.id);
  return sentence(rule, state?.result ?? null, PLAN_WORDS[language], say);
}

/** An edge as rules name it, such as “left edge of Sign”. */
export const edgeName = (design: Design, edge: Edge, axis: Axis): string =>
  sayOf(design, stocksOf(design), spoken()).edge(edge, axis);

/** Before the edges in a sentence while it is made, by their order: letters of the private use area, which no text has. */
const FIRST_MARK = 0xe000;
const END = '\uF8FF';

/** The sentence of a rule in pieces, with the fields of the edges that it holds its parts to. */
export function ruleInPieces(
  design: Design,
  rule: Rule,
  state: RuleState | undefined,
): readonly { readonly text: string; readonly field: string | null }[] {
  const language = spoken();
  const say = sayOf(design, stocksOf(design), language);
  const held = edgesHeldTo(rule);
  const marked: typeof say.edge = (edge, axis) => {
    const text = say.edge(edge, axis);
    const at = held.findIndex((one) => one.edge === edge);
    return at < 0 ? text : String.fromCharCode(FIRST_MARK + at) + text + END;
  };
  const told = sentence(rule, state?.result ?? null, PLAN_WORDS[language], { ...say, edge: marked });
  return told
    .split(/([\uE000-\uF8FE][^\uF8FF]*\uF8FF)/)
    .filter((text) => text !== '')
    .map((text) => {
      const field = held[text.charCodeAt(0) - FIRST_MARK]?.field ?? null;
      return field === null ? { text, field } : { text: text.slice(1, -1), field };
    });
}
