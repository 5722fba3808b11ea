import { Download } from 'lucide-react';
import { EXPORTS } from '../export.ts';
import { usePlan, useStore } from '../state/hooks.ts';
import { say } from '../state/store.ts';
import { saveBytes } from '../storage/file.ts';
import { useWords } from '../words/t.ts';
import { Menu, MenuItem } from './Menu.tsx';

/** Everything that the command writes, one line each; absent while there is nothing that can be written. */
export function ExportMenu() {
  const t = useWords();
  const store = useStore();
  const { plan } = usePlan();
  if (EXPORTS.length === 0) return null;
  return (
    <Menu label={t('menu.export')} icon={Download}>
      {EXPORTS.map((entry) => (
        <MenuItem
          key={entry.id}
          label={t(entry.words)}
          disabled={plan === null}
          onSelect={async () => {
            if (!plan) return;
            for (const file of await entry.write(plan)) await saveBytes(file.name, file.type, file.bytes);
            say(store, t('say.exported', { name: t(entry.words) }));
          }}
        />
      ))}
    </Menu>
  );
}
