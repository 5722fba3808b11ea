import type { Axis, Design, Edge, Rule } from '../../design/schema.ts';
import type { RuleState } from '../../layout/laid.ts';
import { ruleSayFor } from '../../plan/words/say.ts';
import { PLAN_WORDS } from '../../plan/words/tables.ts';
import { ruleSentence as sentence } from '../../plan/words/words.ts';
import { stocksOf } from '../state/tables.ts';
import { spoken, t } from '../words/t.ts';
import { nameOf } from './movable.ts';
import { type EdgePlace, edgesHeldTo } from './otherEdge.ts';

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

/** An edge as rules name it, such as “left edge of Sign”. */
export const edgeName = (design: Design, edge: Edge, axis: Axis): string =>
  ruleSayFor({ design, stocks: stocksOf(design), language: spoken() }).edge(edge, axis);

/** Around the edges in a sentence while it is made: letters of the private use area, which no text has. */
const MARKS: Readonly<Record<EdgePlace, string>> = { from: '\uE000', low: '\uE001', high: '\uE002' };
const END = '\uE003';

/** The sentence of a rule in pieces, with the edges that it holds its parts to. */
export function ruleInPieces(
  design: Design,
  rule: Rule,
  state: RuleState | undefined,
): readonly { readonly text: string; readonly end: EdgePlace | null }[] {
  const language = spoken();
  const say = ruleSayFor({ design, stocks: stocksOf(design), language });
  const held = Object.entries(edgesHeldTo(rule)) as [EdgePlace, Edge][];
  const marked: typeof say.edge = (edge, axis) => {
    const text = say.edge(edge, axis);
    const place = held.find(([, one]) => one === edge)?.[0];
    return place ? MARKS[place] + text + END : text;
  };
  const told = sentence(rule, state?.result ?? null, PLAN_WORDS[language], { ...say, edge: marked });
  return told
    .split(/([\uE000-\uE002][^\uE003]*\uE003)/)
    .filter((text) => text !== '')
    .map((text) => {
      const place = held.find(([end]) => text.startsWith(MARKS[end]))?.[0] ?? null;
      return place ? { text: text.slice(1, -1), end: place } : { text, end: null };
    });
}
