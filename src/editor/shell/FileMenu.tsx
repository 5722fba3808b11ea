import { FolderOpen } from 'lucide-react';
import { lazy, Suspense, useState } from 'react';
import { goToSaw } from '../bench/route.ts';
import { putAway } from '../state/commit.ts';
import { useStore } from '../state/hooks.ts';
import { openFile, saveFile } from '../storage/file.ts';
import { useWords } from '../words/t.ts';
import { Menu, MenuItem, MenuLine } from './Menu.tsx';

const EarlierDialog = lazy(() => import('./EarlierDialog.tsx').then((m) => ({ default: m.EarlierDialog })));

export function FileMenu() {
  const t = useWords();
  const store = useStore();
  const [earlier, setEarlier] = useState(false);
  return (
    <>
      <Menu label={t('menu.file')} icon={FolderOpen}>
        <MenuItem label={t('file.open')} hint="Ctrl O" onSelect={() => void openFile(store)} />
        <MenuItem label={t('file.save')} hint="Ctrl S" onSelect={() => void saveFile(store)} />
        <MenuLine />
        <MenuItem label={t('bench.open')} onSelect={goToSaw} />
        <MenuItem label={t('earlier.open')} onSelect={() => setEarlier(true)} />
        <MenuItem label={t('file.other')} onSelect={() => putAway(store)} />
      </Menu>
      {earlier ? (
        <Suspense fallback={null}>
          <EarlierDialog onClose={() => setEarlier(false)} />
        </Suspense>
      ) : null}
    </>
  );
}
