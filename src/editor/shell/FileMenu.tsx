import { FolderOpen } from 'lucide-react';
import { useState } from 'react';
import { lazyPart } from '../control/lazyPart.tsx';
import { Menu, MenuItem, MenuLine } from '../control/Menu.tsx';
import { Guard } from '../frame/Guard.tsx';
import { openFile, saveFile } from '../kept/file.ts';
import { putAway } from '../state/commit.ts';
import { useStore } from '../state/hooks.ts';
import { goToSaw } from '../state/route.ts';
import { useWords } from '../words/t.ts';

const BesideDialog = lazyPart(() => import('../pane/beside/BesideDialog.tsx').then((m) => m.BesideDialog));
const EarlierDialog = lazyPart(() => import('./EarlierDialog.tsx').then((m) => m.EarlierDialog));

export function FileMenu() {
  const t = useWords();
  const store = useStore();
  const [shown, setShown] = useState<'beside' | 'earlier' | null>(null);
  const close = () => setShown(null);
  const Shown = shown === 'beside' ? BesideDialog : EarlierDialog;
  return (
    <>
      <Menu label={t('menu.file')} icon={FolderOpen}>
        <MenuItem label={t('file.open')} hint="Ctrl O" onSelect={() => void openFile(store)} />
        <MenuItem label={t('file.save')} hint="Ctrl S" onSelect={() => void saveFile(store)} />
        <MenuLine />
        <MenuItem label={t('bench.title')} onSelect={goToSaw} />
        <MenuItem label={t('earlier.open')} onSelect={() => setShown('earlier')} />
        <MenuItem label={t('beside.title')} onSelect={() => setShown('beside')} />
        <MenuItem label={t('file.other')} onSelect={() => putAway(store)} />
      </Menu>
      {shown ? (
        <Guard onLost={close}>
          <Shown onClose={close} />
        </Guard>
      ) : null}
    </>
  );
}
