import type { Design } from '../../../design/schema.ts';
import { TextField } from '../../control/TextField.tsx';
import { useCommit } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { ArrangeSection } from './ArrangeSection.tsx';
import { SelectionSize } from './SelectionSize.tsx';

export function GroupFields({ group }: { group: Design['groups'][number] }) {
  const t = useWords();
  const commit = useCommit();
  return (
    <>
      <TextField
        label={t('part.name')}
        value={group.name}
        onCommit={(name) =>
          commit(
            [{ kind: 'replace', list: 'groups', id: group.id, item: { ...group, name } }],
            t('did.rename', { name }),
          )
        }
      />
      <p className="note">{t('group.holds', { count: group.parts.length })}</p>
      <SelectionSize />
      <ArrangeSection />
    </>
  );
}
