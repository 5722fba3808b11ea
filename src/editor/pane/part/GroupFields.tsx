import { replacing } from '../../../design/edit/make.ts';
import type { Group } from '../../../design/schema.ts';
import { Fields } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { useCommit } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { ArrangeSection } from './ArrangeSection.tsx';
import { BuiltFields } from './BuiltFields.tsx';
import { SelectionSize } from './SelectionSize.tsx';

const FIELDS: readonly FormField<Group>[] = [{ is: 'text', label: 'part.name', field: 'name' }];

export function GroupFields({ group }: { group: Group }) {
  const t = useWords();
  const commit = useCommit();
  return (
    <>
      <Fields
        of={FIELDS}
        value={group}
        onChange={(change) => {
          const item = { ...group, ...change };
          commit([replacing('groups', item)], t('did.rename', { name: item.name }));
        }}
      />
      <p className="note">{t('group.holds', { count: group.parts.length })}</p>
      <BuiltFields group={group} />
      <SelectionSize />
      <ArrangeSection />
    </>
  );
}
