import { Download } from 'lucide-react';
import { useState } from 'react';
import type { Plan } from '../../plan/types.ts';
import { EXPORTS, type ExportEntry } from '../export/exports.ts';
import { usePlan, useStore } from '../state/hooks.ts';
import { say } from '../state/store.ts';
import { saveBytes } from '../storage/file.ts';
import { useWords } from '../words/t.ts';
import { Menu, MenuItem } from './Menu.tsx';

/** Everything that the command writes, one line each, and a picture. */
export function ExportMenu() {
  const t = useWords();
  const store = useStore();
  const { plan } = usePlan();
  const [working, setWorking] = useState<{ done: number; of: number } | null>(null);

  const write = async (entry: ExportEntry, from: Plan) => {
    const name = t(entry.words);
    try {
      const files = await entry.write(from, (done, of) => setWorking({ done: done + 1, of }));
      for (const file of files) await saveBytes(file.name, file.type, file.bytes);
      say(store, t('say.exported', { name }));
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      store.setState({ notice: { tone: 'bad', text: t('export.failed', { name, why }) } });
    }
    setWorking(null);
  };

  const label = working
    ? t('export.working', { done: String(Math.min(working.done, working.of)), of: String(working.of) })
    : t('menu.export');
  return (
    <Menu label={label} icon={Download}>
      {EXPORTS.map((entry) => (
        <MenuItem
          key={entry.id}
          label={t(entry.words)}
          disabled={plan === null || working !== null}
          onSelect={() => {
            if (plan) void write(entry, plan);
          }}
        />
      ))}
    </Menu>
  );
}
