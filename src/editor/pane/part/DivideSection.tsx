import { memo, useState } from 'react';
import { usualStock } from '../../../design/defaults.ts';
import { SQUARE_ENDS } from '../../../design/ends.ts';
import { isBought } from '../../../design/made.ts';
import { divide } from '../../../layout/arrange/divide.ts';
import { namesFor, type SpaceNames, spaceBetween } from '../../../layout/arrange/space.ts';
import { Button } from '../../control/Button.tsx';
import { Fields } from '../../control/form/Fields.tsx';
import { arrangingOf, editsToArrange } from '../../edit/arrange.ts';
import { itemsOf } from '../../edit/movable.ts';
import { referenceName } from '../../edit/sentence.ts';
import { useCommit, useFace, useSelection, useSettled } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { BARE } from '../facts/choices.ts';
import { DIVISION_FIELDS, type Division, SIDE_FIELDS, SIDES } from './divideFields.ts';

/** Divides a space into columns and rows by strips that stay evenly spread when the space changes. */
export const DivideSection = memo(function DivideSection() {
  const t = useWords();
  const [open, setOpen] = useState(false);
  return (
    <details className="fold" open={open} onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary className="section-title">{t('divide.title')}</summary>
      {open ? <DivideFields /> : null}
    </details>
  );
});

/** Its lists name every part, so they are made only while they are looked at. */
function DivideFields() {
  const t = useWords();
  const shown = useSettled();
  const { design } = shown;
  const face = useFace();
  const commit = useCommit();
  const innermost = face.levels.at(-1)?.id ?? 'rim';
  const selection = useSelection();
  const chosenFor = selection.join();
  /** Chosen by hand; another selection starts from its own space again. */
  const [chosen, setChosen] = useState<{ names: Partial<SpaceNames>; by: string }>({ names: {}, by: '' });
  const usual = usualStock('strip', design.measure.unit) ?? 'pine-1x3';
  const [settings, setSettings] = useState<Omit<Division, 'across'> & Partial<Division>>({
    columns: 2,
    rows: 3,
    framed: true,
    through: 'up',
    upright: usual,
    finish: design.finishes[1]?.id ?? BARE,
  });
  /** Rails are of the same stock as the uprights until they are told otherwise. */
  const division: Division = { ...settings, across: settings.across ?? settings.upright };

  const things = [
    { value: 'face' },
    ...face.levels.map((l) => ({ value: `level:${l.id}`, group: t('on.levels') })),
    ...design.parts.filter((p) => !isBought(p)).map((p) => ({ value: p.id, group: t('parts.title') })),
  ];
  const places = things.map((thing) => ({ ...thing, label: referenceName(design, thing.value) }));
  const start = namesFor(arrangingOf(shown), itemsOf(design, selection));
  const mine = chosen.by === chosenFor ? chosen.names : {};
  /** A side that was not chosen is that of the face or level that another one was set to. */
  const whole =
    SIDES.map((side) => mine[side]).find((name) => name === 'face' || name?.startsWith('level:')) ??
    `level:${innermost}`;
  const of = (side: keyof SpaceNames): string => {
    const name = mine[side] ?? start?.[side];
    return name !== undefined && things.some((thing) => thing.value === name) ? name : whole;
  };
  const names = { left: of('left'), right: of('right'), bottom: of('bottom'), top: of('top') };

  const apply = () => {
    const arranging = arrangingOf(shown);
    const { on, ...edges } = spaceBetween(arranging, names);
    const { finish, ...rest } = division;
    const arranged = divide(arranging, {
      ...edges,
      ...rest,
      names: { upright: t('noun.stile'), across: t('noun.rail') },
      like: {
        on,
        finish: finish === BARE ? null : finish,
        fixing: { how: 'brads', glue: true },
        onEdge: false,
        ends: SQUARE_ENDS,
        fit: false,
        locked: false,
      },
    });
    const edits = editsToArrange(shown, arranged);
    if (edits.length === 0) return;
    const made = arranged.add.map((p) => p.id);
    commit(edits, t('did.divide', { name: referenceName(design, names.left) }), { selection: made });
    // The same space again, though what was made is selected now.
    setChosen({ names, by: made.join() });
  };

  return (
    <>
      <p className="note">{t('divide.lead')}</p>
      <div className="fields">
        <Fields
          of={SIDE_FIELDS}
          value={{ ...names, places }}
          onChange={(side) => setChosen({ names: { ...mine, ...side }, by: chosenFor })}
        />
        <Fields
          of={DIVISION_FIELDS}
          value={division}
          onChange={(change) => setSettings({ ...settings, ...change })}
        />
      </div>
      <div className="btn-row">
        <Button look="main" onClick={apply}>
          {t('divide.do')}
        </Button>
      </div>
    </>
  );
}
