import { useEffect, useMemo, useState } from 'react';
import colorSets from '../../../../assets/color-sets.json';
import type { Opened } from '../../../design/open.ts';
import type { ColorSet } from '../../../finish/colorSet.ts';
import { Button } from '../../control/Button.tsx';
import { Dialog } from '../../control/Dialog.tsx';
import { fileName, saveBytes } from '../../kept/file.ts';
import { listEarlier, listKept, readEarlier, readKept } from '../../kept/shelf.ts';
import { useEditor, useSettledDesign } from '../../state/hooks.ts';
import { spoken, useWords, type WordKey } from '../../words/t.ts';
import { BesideTable } from './BesideTable.tsx';
import { repainted } from './repainted.ts';
import { type Choice, useBeside } from './useBeside.ts';
import '../../style/beside.css';

const MOST = 6;
/** Shown at first beside the face as it is. */
const FIRST = 2;

interface Group {
  readonly title: WordKey;
  readonly choices: readonly Choice[];
}

const read = async (opened: Promise<Opened | null>) => {
  const found = await opened.catch(() => null);
  return found?.ok ? found.design : null;
};

/** Everything that can stand beside the open face: it in other colors, as it was, and the other faces on this device. */
function useChoices(): readonly Group[] {
  const t = useWords();
  const design = useSettledDesign();
  const id = useEditor((s) => s.designId);
  const [kept, setKept] = useState<readonly Group[]>([]);
  useEffect(() => {
    const list = async (): Promise<Group[]> => {
      const [times, others] = [id ? await listEarlier(id) : [], await listKept()];
      return [
        {
          title: 'beside.earlier',
          choices: times.map((at) => ({
            key: `earlier:${at}`,
            name: new Date(at).toLocaleString(spoken()),
            design: () => read(readEarlier(id ?? '', at)),
          })),
        },
        {
          title: 'beside.kept',
          choices: others
            .filter((other) => other.id !== id)
            .map((other) => ({
              key: `kept:${other.id}`,
              name: other.name || t('first.unnamed'),
              design: () => read(readKept(other.id)),
            })),
        },
      ];
    };
    // Where the device keeps nothing there is nothing else to choose.
    void list().then(setKept, () => undefined);
  }, [id, t]);
  return useMemo(() => {
    const own: Choice = { key: 'now', name: t('beside.now'), design: async () => design };
    const sets = (colorSets as readonly ColorSet[]).map((set): Choice => {
      const name = t(`sets.${set.id}` as WordKey);
      const finishes = repainted(design.finishes, set, name);
      return { key: `set:${set.id}`, name, design: async () => ({ ...design, finishes }) };
    });
    return [
      { title: 'beside.own' as const, choices: [own, ...sets] },
      ...kept.filter(({ choices }) => choices.length > 0),
    ];
  }, [t, design, kept]);
}

/** Two to six faces side by side, each with its picture, its paint and what it costs, and the sheet of them. */
export function BesideDialog({ onClose }: { onClose: () => void }) {
  const t = useWords();
  const { name } = useSettledDesign();
  const groups = useChoices();
  const all = groups.flatMap(({ choices }) => choices);
  const [keys, setKeys] = useState(() => all.slice(0, FIRST + 1).map(({ key }) => key));
  const [warnings, setWarnings] = useState<readonly string[]>([]);
  const chosen = useMemo(() => all.filter(({ key }) => keys.includes(key)), [all, keys]);
  const { found, isDone, sheet } = useBeside(chosen);
  const toggle = (key: string) =>
    setKeys((before) => (before.includes(key) ? before.filter((k) => k !== key) : [...before, key]));
  const save = async () => {
    const made = await sheet().catch(() => null);
    setWarnings(made ? made.warnings : [t('beside.failed')]);
    if (made) await saveBytes(`${fileName(name)}-side-by-side.pdf`, 'application/pdf', made.bytes);
  };
  return (
    <Dialog title={t('beside.title')} className="beside" onClose={onClose}>
      <p className="note">{t('beside.lead')}</p>
      {groups.map(({ title, choices }) => (
        <fieldset key={title} className="beside-choices">
          <legend>{t(title)}</legend>
          {choices.map((choice) => {
            const isOn = keys.includes(choice.key);
            return (
              <Button
                key={choice.key}
                aria-pressed={isOn}
                disabled={!isOn && keys.length >= MOST}
                onClick={() => toggle(choice.key)}
              >
                {choice.name}
              </Button>
            );
          })}
        </fieldset>
      ))}
      <BesideTable chosen={chosen} found={found} />
      {warnings.map((warning) => (
        <p key={warning} className="caution">
          {warning}
        </p>
      ))}
      <div className="btn-row">
        <Button disabled={chosen.length < 2 || !isDone} onClick={() => void save()}>
          {t('beside.save')}
        </Button>
      </div>
    </Dialog>
  );
}
