import { FolderOpen } from 'lucide-react';
import { goToSaw } from '../bench/route.ts';
import { useStore } from '../state/hooks.ts';
import { openFile, saveFile } from '../storage/file.ts';
import { useWords } from '../words/t.ts';
import { Menu, MenuItem, MenuLine } from './Menu.tsx';

export function FileMenu() {
  const t = useWords();
  const store = useStore();
  return (
    <Menu label={t('menu.file')} icon={FolderOpen}>
      <MenuItem label={t('file.open')} hint="Ctrl O" onSelect={() => void openFile(store)} />
      <MenuItem label={t('file.save')} hint="Ctrl S" onSelect={() => void saveFile(store)} />
      <MenuLine />
      <MenuItem label={t('bench.open')} onSelect={goToSaw} />
      <MenuItem label={t('file.other')} onSelect={() => store.setState({ designId: null })} />
    </Menu>
  );
}
