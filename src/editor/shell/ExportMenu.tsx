import { Download } from 'lucide-react';
import { lazyPart } from '../control/lazyPart.tsx';
import { Menu, MenuItem } from '../control/Menu.tsx';
import { Guard } from '../frame/Guard.tsx';
import { ExportStatus } from '../kept/export/ExportStatus.tsx';
import { EXPORTS, SHARED } from '../kept/export/exports.ts';
import { canShare } from '../kept/export/share.ts';
import { useExport } from '../kept/export/useExport.ts';
import { useWords } from '../words/t.ts';

const DoubtDialog = lazyPart(() => import('./DoubtDialog.tsx').then((m) => m.DoubtDialog));

const ShareDialog = lazyPart(() => import('./ShareDialog.tsx').then((m) => m.ShareDialog));

/** Sharing too where the system has a board for it; that does not come and go while the page stands. */
const OFFERED = canShare() ? [...EXPORTS, SHARED] : EXPORTS;

/** Everything that the command writes, one line each, and a picture. */
export function ExportMenu() {
  const t = useWords();
  const { job, doubt, toShare, write, drop } = useExport();
  return (
    <>
      <Menu label={t('menu.export')} icon={Download} keys="Control+P Meta+P" caution="export">
        {OFFERED.map((entry) => (
          <MenuItem
            key={entry.id}
            label={t(entry.words)}
            disabled={job !== null}
            onSelect={() => void write(entry, false)}
          />
        ))}
      </Menu>
      {job ? <ExportStatus job={job} /> : null}
      {doubt || toShare ? (
        <Guard onLost={drop}>
          {doubt ? (
            <DoubtDialog doubt={doubt} onWrite={() => void write(doubt.entry, true)} onClose={drop} />
          ) : null}
          {toShare ? <ShareDialog files={toShare} onClose={drop} /> : null}
        </Guard>
      ) : null}
    </>
  );
}
