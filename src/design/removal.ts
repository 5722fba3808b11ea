import type { Edit } from './edit/edit.ts';
import { edgesOfRule, partOfReference } from './references.ts';
import type { Design, Part, Rule } from './schema.ts';

/**
 * The edits that take parts (or keep-clears) out of a design together with what only makes sense with
 * them: rules that would be left without a part, joints, memberships of groups. Parts that lay on a
 * removed part lie on the face afterwards.
 */
export function editsToRemove(design: Design, ids: readonly string[]): Edit[] {
  const gone = new Set(ids);
  const edits: Edit[] = [];
  for (const rule of design.rules) {
    const kept = withoutParts(rule, gone);
    if (kept === null) edits.push({ kind: 'remove', list: 'rules', id: rule.id });
    else if (kept !== rule) edits.push({ kind: 'replace', list: 'rules', id: rule.id, item: kept });
  }
  for (const joint of design.joints) {
    if (joint.parts.some((p) => partOfReference(p).some((id) => gone.has(id)))) {
      edits.push({ kind: 'remove', list: 'joints', id: joint.id });
    }
  }
  for (const group of design.groups) {
    const parts = group.parts.filter((p) => !gone.has(p));
    if (parts.length === 0 && group.parts.length > 0)
      edits.push({ kind: 'remove', list: 'groups', id: group.id });
    else if (parts.length < group.parts.length) {
      edits.push({ kind: 'replace', list: 'groups', id: group.id, item: { ...group, parts } });
    }
  }
  for (const part of design.parts) {
    if (gone.has(part.id)) edits.push({ kind: 'remove', list: 'parts', id: part.id });
    else if (partOfReference(part.on).some((id) => gone.has(id))) {
      const item: Part = { ...part, on: 'face', onChosen: undefined };
      edits.push({ kind: 'replace', list: 'parts', id: part.id, item });
    }
  }
  for (const keep of design.keepClears) {
    if (gone.has(keep.id)) edits.push({ kind: 'remove', list: 'keepClears', id: keep.id });
  }
  return edits;
}

/** The rule without the parts that go: itself, a smaller rule, or null when nothing useful is left. */
function withoutParts(rule: Rule, gone: ReadonlySet<string>): Rule | null {
  if (edgesOfRule(rule).some((edge) => partOfReference(edge.of).some((id) => gone.has(id)))) return null;
  switch (rule.kind) {
    case 'set':
    case 'gap':
      return rule;
    case 'between':
      return gone.has(rule.part) ? null : rule;
    case 'mirror':
      return gone.has(rule.part) || gone.has(rule.twin) ? null : rule;
    case 'reveal':
      return [rule.part, ...partOfReference(rule.inside)].some((id) => gone.has(id)) ? null : rule;
    case 'graded': {
      const keep = rule.parts.map((id) => !gone.has(id));
      if (keep.every(Boolean)) return rule;
      const parts = rule.parts.filter((_, i) => keep[i]);
      const ratio = rule.ratio.filter((_, i) => keep[i]);
      return parts.length > 0 && ratio.length > 0 ? { ...rule, parts, ratio } : null;
    }
    case 'center':
    case 'even':
    case 'same': {
      const parts = rule.parts.filter((id) => !gone.has(id));
      if (parts.length === rule.parts.length) return rule;
      return parts.length >= (rule.kind === 'same' ? 2 : 1) ? { ...rule, parts } : null;
    }
  }
}
