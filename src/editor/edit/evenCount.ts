import type { Edit } from '../../design/edit/edit.ts';
import { replacing } from '../../design/edit/make.ts';
import { editsToRemove } from '../../design/removal.ts';
import type { RuleOf } from '../../design/schema.ts';
import { recounted } from '../../layout/arrange/recount.ts';
import { lastOf } from '../../list/at.ts';
import type { Shown } from '../document/shown.ts';
import { arrangingOf, editsToArrange } from './arrange.ts';

/** The edits that give an even rule another number of parts, as one step; copies join the group of the last part. */
export function editsToRecount(shown: Shown, rule: RuleOf<'even'>, count: number): Edit[] {
  const { design } = shown;
  const { arranged, rule: item, gone } = recounted(arrangingOf(shown), rule, count);
  const kept: Edit = replacing('rules', item);
  if (gone.length > 0) return [kept, ...editsToRemove(design, gone).filter((edit) => !concerns(edit, rule))];
  const last = lastOf(rule.parts);
  const added = arranged.add.map((part) => part.id);
  const groups = design.groups
    .filter((group) => group.parts.includes(last))
    .map((group) => replacing('groups', { ...group, parts: [...group.parts, ...added] }));
  return editsToArrange(shown, arranged, [kept, ...groups]);
}

const concerns = (edit: Edit, rule: RuleOf<'even'>): boolean =>
  edit.kind !== 'set' && edit.kind !== 'insert' && edit.list === 'rules' && edit.id === rule.id;
