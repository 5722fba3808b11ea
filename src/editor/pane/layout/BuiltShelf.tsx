import { Fragment, useEffect, useMemo, useRef, useState } from 'react';
import { ASSEMBLIES, ASSEMBLY_NAMES, type AssemblyName } from '../../../design/assembly/table.ts';
import { newDesign } from '../../../design/defaults.ts';
import { applyEdits } from '../../../design/edit/edit.ts';
import type { Design } from '../../../design/schema.ts';
import { under } from '../../../list/at.ts';
import { remembering } from '../../../plan/memory.ts';
import { useRoving } from '../../control/list/rove.ts';
import { shownFrom } from '../../document/shown.ts';
import { createAssembly } from '../../edit/built.ts';
import { loadOwned } from '../../kept/own.ts';
import { useEditor, useSettledDesign, useStore } from '../../state/hooks.ts';
import { builtTool } from '../../state/tools.ts';
import { useWords } from '../../words/t.ts';
import { BuiltCard } from './BuiltCard.tsx';
import { BuiltPicture, type Pictured } from './BuiltPicture.tsx';
import { OwnCard } from './OwnCard.tsx';
import { useLifting } from './useLifting.ts';
import '../../style/built.css';

const THEMES = ['doors', 'windows', 'walls', 'signs'] as const;

/** Where each stands on the shelf. */
const THEME: Readonly<Record<AssemblyName, (typeof THEMES)[number]>> = {
  'panel-door': 'doors',
  'door-pair': 'doors',
  'ledged-door': 'doors',
  'sliding-door': 'doors',
  'letter-plate': 'doors',
  window: 'windows',
  porthole: 'windows',
  hatch: 'windows',
  shutter: 'windows',
  shelves: 'walls',
  wainscot: 'walls',
  'stall-riser': 'walls',
  'bench-slats': 'walls',
  cornice: 'walls',
  pilaster: 'walls',
  'clock-face': 'signs',
  'sign-board': 'signs',
  awning: 'signs',
};

/**
 * Doors, windows and such by themes, and those of the person's own, each with its picture: one is chosen and drawn on
 * the face as a part is, or carried onto it.
 */
export function BuiltShelf() {
  const t = useWords();
  const store = useStore();
  const owned = useEditor((s) => s.owned);
  const [sought, seek] = useState('');
  const list = useRef<HTMLDivElement>(null);
  const roving = useRoving(list, 'both');
  useLifting(list);
  useEffect(() => void loadOwned(store), [store]);

  const isSought = (...names: string[]): boolean =>
    names.some((name) => name.toLocaleLowerCase().includes(sought.trim().toLocaleLowerCase()));
  const themes = THEMES.flatMap((theme) => {
    const title = t(`built.theme.${theme}`);
    const names = ASSEMBLY_NAMES.filter(
      (name) => THEME[name] === theme && isSought(title, t(`built.${name}`)),
    );
    return names.length > 0 ? [{ theme, title, names }] : [];
  });
  const own = [...owned]
    .filter(([, { name }]) => isSought(t('own.title'), name))
    .sort(([, a], [, b]) => a.name.localeCompare(b.name));
  const isFound = themes.length > 0 || own.length > 0;
  return (
    <>
      <input
        type="search"
        className="built-search"
        aria-label={t('built.search')}
        placeholder={t('built.search')}
        value={sought}
        onChange={(e) => seek(e.currentTarget.value)}
      />
      {isFound ? null : <p className="note">{t('built.noneFound')}</p>}
      <div ref={list} role="toolbar" className="builts" aria-label={t('built.title')} {...roving}>
        {own.length > 0 ? <h4 className="built-theme">{t('own.title')}</h4> : null}
        {own.map(([id, one]) => (
          <OwnCard key={id} id={id} own={one} />
        ))}
        {themes.map(({ theme, title, names }) => (
          <Fragment key={theme}>
            <h4 className="built-theme">{title}</h4>
            {names.map((name) => (
              <BuiltCard key={name} tool={builtTool(name)} name={t(`built.${name}`)}>
                <UsualPicture name={name} />
              </BuiltCard>
            ))}
          </Fragment>
        ))}
      </div>
      {owned.size > 0 ? null : <p className="note">{t('own.none')}</p>}
    </>
  );
}

/** An assembly of usual size, drawn from its own layout in the colors of the design. */
function UsualPicture({ name }: { readonly name: AssemblyName }) {
  const { bed, stocks, finishes, measure } = useSettledDesign();
  const { size, parts } = under(PICTURED, name)(bed, stocks, finishes, measure);
  const of = useMemo(() => ({ size, parts, finishes }), [size, parts, finishes]);
  return <BuiltPicture of={of} />;
}

/** Each assembly laid out, kept while the pane is away: it goes and comes with every selection. */
const PICTURED = new Map(
  ASSEMBLY_NAMES.map((name) => [
    name,
    remembering((...[bed, stocks, finishes, measure]: Shape): Omit<Pictured, 'finishes'> => {
      const bare: Design = { ...newDesign(bed), stocks, finishes, measure };
      const size = ASSEMBLIES[name].usual;
      const made = applyEdits(bare, createAssembly(bare, name, { x: 0, y: 0, ...size }).edits);
      return { parts: made.ok ? shownFrom(made.design).layout.parts : [], size };
    }),
  ]),
);

/** What of a design shows in the pictures. */
type Shape = [Design['bed'], Design['stocks'], Design['finishes'], Design['measure']];
