import type { Edit } from '../../design/edit/edit.ts';
import { partOfReference } from '../../design/references.ts';
import type { Axis, Design, Rule } from '../../design/schema.ts';

/** Rules that decide where a part stands along an axis and that a drag does not simply re-measure. */
export function rulesThatHold(design: Design, id: string, axis: Axis): Rule[] {
  return design.rules.filter((rule) => holds(rule, id, axis));
}

function holds(rule: Rule, id: string, axis: Axis): boolean {
  switch (rule.kind) {
    case 'reveal':
      return rule.part === id;
    case 'center':
    case 'even':
    case 'graded':
      return rule.axis === axis && rule.parts.includes(id);
    case 'mirror':
      return rule.axis === axis && rule.twin === id;
    case 'set':
    case 'between':
    case 'same':
      return false;
  }
}

/** The edits that let parts go from every rule that places them along an axis. */
export function editsToLoosen(design: Design, ids: ReadonlySet<string>, axis: Axis): Edit[] {
  const edits: Edit[] = [];
  for (const rule of design.rules) {
    const kept = loosened(rule, ids, axis);
    if (kept === null) edits.push({ kind: 'remove', list: 'rules', id: rule.id });
    else if (kept !== rule) edits.push({ kind: 'replace', list: 'rules', id: rule.id, item: kept });
  }
  return edits;
}

function loosened(rule: Rule, ids: ReadonlySet<string>, axis: Axis): Rule | null {
  if (rule.kind !== 'reveal' && rule.axis !== axis) return rule;
  switch (rule.kind) {
    case 'reveal':
    case 'between':
      return ids.has(rule.part) ? null : rule;
    case 'set':
      return partOfReference(rule.edge.of).some((id) => ids.has(id)) ? null : rule;
    case 'mirror':
      return ids.has(rule.twin) ? null : rule;
    case 'same':
      return rule;
    case 'center':
    case 'even': {
      const parts = rule.parts.filter((id) => !ids.has(id));
      return parts.length === rule.parts.length ? rule : parts.length === 0 ? null : { ...rule, parts };
    }
    case 'graded':
      return rule.parts.some((id) => ids.has(id)) ? null : rule;
  }
}
