import type { Edge, Rule } from './schema.ts';

/** Edges that a rule measures from or places. */
export function edgesOfRule(rule: Rule): readonly Edge[] {
  switch (rule.kind) {
    case 'set':
      return [rule.edge, rule.from];
    case 'gap':
      return [rule.edge, rule.from, rule.likeEdge, rule.likeFrom];
    case 'center':
    case 'between':
    case 'even':
    case 'graded':
      return [rule.low, rule.high];
    case 'mirror':
      return [rule.about];
    case 'same':
    case 'reveal':
      return [];
  }
}

/** Parts that a rule lists by id. */
export function partsListedBy(rule: Rule): readonly string[] {
  switch (rule.kind) {
    case 'set':
    case 'gap':
      return [];
    case 'between':
      return [rule.part];
    case 'mirror':
      return [rule.part, rule.twin];
    case 'reveal':
      return [rule.part, ...partOfReference(rule.inside)];
    case 'center':
    case 'even':
    case 'same':
    case 'graded':
      return rule.parts;
  }
}

/** The part a reference names, if it names one: `p1` and `p1[2,0]` name `p1`; `face` and `level:rim` none. */
export function partOfReference(of: string): readonly string[] {
  if (of === 'face' || of.startsWith('level:')) return [];
  const bracket = of.indexOf('[');
  return [bracket < 0 ? of : of.slice(0, bracket)];
}

/** Every part that a rule has to do with, each once. */
export function partsOfRule(rule: Rule): readonly string[] {
  const named = [...partsListedBy(rule), ...edgesOfRule(rule).flatMap((edge) => partOfReference(edge.of))];
  return [...new Set(named)];
}
