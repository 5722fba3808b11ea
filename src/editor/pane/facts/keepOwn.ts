import { putOwn } from '../../kept/own.ts';
import { type EditorStore, say } from '../../state/store.ts';
import { t } from '../../words/t.ts';

/** Makes a building part of what is selected, and keeps it on the shelf of this device. */
export async function keepOwn(store: EditorStore): Promise<void> {
  const { ownOf } = await import('../../edit/ownMake.ts');
  const { edit, owned } = store.getState();
  const { design, selection, shown } = edit;
  const [only, ...more] = design.groups.filter(({ id }) => selection.includes(id));
  const called = only && more.length === 0 && selection.length === 1 ? only.name : t('own.usual');
  const taken = new Set([...owned.values()].map(({ name }) => name));
  const stem = called.replace(/ \d+$/, '');
  let name = stem;
  for (let n = 2; taken.has(name); n++) name = `${stem} ${n}`;
  const own = ownOf(shown, selection, name);
  if (!own) return;
  await putOwn(store, own);
  say(store, t('own.kept', { name }));
  store.setState({ tab: 'step' });
}
