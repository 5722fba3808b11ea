import { Download } from 'lucide-react';
import { Suspense } from 'react';
import { lazyPart } from '../control/lazyPart.tsx';
import { Menu, MenuItem } from '../control/Menu.tsx';
import { Guard } from '../frame/Guard.tsx';
import { ExportStatus } from '../kept/export/ExportStatus.tsx';
import { EXPORTS } from '../kept/export/exports.ts';
import { useExport } from '../kept/export/useExport.ts';
import { useWords } from '../words/t.ts';

const DoubtDialog = lazyPart(() => import('./DoubtDialog.tsx').then((m) => m.DoubtDialog));

/** Everything that the command writes, one line each, and a picture. */
export function ExportMenu() {
  const t = useWords();
  const { job, doubt, write, drop } = useExport();
  return (
    <>
      <Menu label={t('menu.export')} icon={Download} keys="Control+P Meta+P" caution="export">
        {EXPORTS.map((entry) => (
          <MenuItem
            key={entry.id}
            label={t(entry.words)}
            disabled={job !== null}
            onSelect={() => void write(entry, false)}
          />
        ))}
      </Menu>
      {job ? <ExportStatus job={job} /> : null}
      {doubt ? (
        <Guard onLost={drop}>
          <Suspense fallback={null}>
            <DoubtDialog doubt={doubt} onWrite={() => void write(doubt.entry, true)} onClose={drop} />
          </Suspense>
        </Guard>
      ) : null}
    </>
  );
}
