import { FolderOpen, Plus } from 'lucide-react';
import { Children, type CSSProperties, type ReactNode, useEffect, useId, useMemo, useState } from 'react';
import { faceOf } from '../../bed/faceOf.ts';
import type { Design } from '../../design/schema.ts';
import { LANGUAGE_TAGS, LANGUAGES } from '../../plan/words/languages.ts';
import { Button } from '../control/Button.tsx';
import { Caution } from '../control/Caution.tsx';
import { Choices } from '../control/list/Choices.tsx';
import { Measure } from '../control/Measure.tsx';
import { freshDocument } from '../document/document.ts';
import { fitToBed, type MainMeasures } from '../edit/fitBed.ts';
import { openFile } from '../kept/file.ts';
import { bringIn } from '../kept/session.ts';
import { loadStarter, renamed, STARTER_THEMES, STARTERS, THEME_NAMES } from '../shipped/starters.ts';
import { useDesign, useStore } from '../state/hooks.ts';
import { asUsual, chooseLanguage, emptyDesign } from '../state/language.ts';
import { showStep } from '../state/showStep.ts';
import { useLanguage, useStarterNames, useWords } from '../words/t.ts';
import { FirstBed } from './FirstBed.tsx';
import { KeptDesigns, RemovedDesigns } from './KeptDesigns.tsx';
import { StarterCard } from './StarterCard.tsx';
import { useFitChecks } from './useFitChecks.ts';
import { useLetterPictures } from './useLetterPictures.ts';
import { useShelf } from './useShelf.ts';

/** The first page itself comes first. */
const AFTER_MS = 300;

interface Starter {
  readonly name: string;
  readonly design: Design;
}

/**
 * Nothing on the bench yet: measure the bed, then begin from a starter fitted to it, from the empty bed, or from
 * what was kept. Until something is chosen, the store's design is that empty bed.
 */
export default function FirstRun() {
  const t = useWords();
  const store = useStore();
  const starters = useStarters();
  const empty = useDesign();
  /** Which way the bed folds, of the person's own choice. */
  const [way, setWay] = useState<MainMeasures['pivotAlong']>(null);
  const [own, setOwn] = useState(false);
  const { mattress } = empty.bed;
  const { measure } = empty;

  const keep = (next: MainMeasures) => {
    const bed = { ...empty.bed, mattress: next.mattress, pivotAlong: next.pivotAlong ?? 'end' };
    store.setState({ edit: freshDocument({ ...empty, bed, measure: next.measure }) });
    setWay(next.pivotAlong);
  };
  const drop = () => {
    store.setState({ edit: freshDocument(emptyDesign(measure)) });
    setWay(null);
    setOwn(false);
  };

  const fitted = useMemo(
    () =>
      own
        ? starters.map(({ name, design }) => ({
            name,
            fitted: fitToBed(design, { mattress, pivotAlong: way, measure }),
          }))
        : null,
    [own, starters, mattress, way, measure],
  );
  const checks = useFitChecks(fitted);
  useBenchAtHand();
  const shown = useMemo(
    () => (fitted ? fitted.map((f) => f.fitted) : starters.map((s) => s.design)),
    [fitted, starters],
  );
  const shelf = useShelf();
  const { designs } = shelf;
  const pictured = useMemo(() => [...designs.values(), ...shown], [designs, shown]);
  const letters = useLetterPictures(pictured);

  const startEmpty = () => {
    bringIn(store, empty);
    showStep(store, 'bed');
  };
  const startFrom = async (starter: Design) => {
    // Not before it is needed: the cards show no names of parts.
    const { assembliesNamed } = await import('../edit/built.ts');
    bringIn(store, assembliesNamed({ ...asUsual(starter), measure }));
    store.setState({ step: 'layout', tab: 'step', sheetOpen: false });
  };

  return (
    <main className="first" tabIndex={-1}>
      <header className="first-head">
        <h1>Showface</h1>
        <LanguageSwitch />
        <p>{t('first.lead')}</p>
      </header>
      <KeptDesigns shelf={shelf} letters={letters} />
      <FirstBed
        measures={{ mattress, pivotAlong: way, measure }}
        own={own}
        onChange={(next) => {
          setOwn(true);
          keep(next);
        }}
        onUnit={(unit) => {
          if (own) keep({ mattress, pivotAlong: way, measure: unit });
          else store.setState({ edit: freshDocument(emptyDesign(unit)) });
        }}
        onDrop={drop}
      />
      <section aria-labelledby="first-begin">
        <h2 id="first-begin" className="tape">
          {t('first.begin')}
        </h2>
        <Caution of="short" />
        <div className="first-cards">
          <Theme title={t('first.theme.none')}>
            <EmptyCard bed={empty.bed} onOpen={startEmpty} />
          </Theme>
          {themesOf(starters).map(({ theme, starters }) => (
            <Theme key={theme} title={t(`first.theme.${theme}`)}>
              {starters.map(({ name, design }) => (
                <StarterCard
                  key={name}
                  design={design}
                  fitted={fitted?.find((f) => f.name === name)?.fitted ?? null}
                  checks={checks.get(name)}
                  letters={letters}
                  onOpen={(starter) => void startFrom(starter)}
                />
              ))}
            </Theme>
          ))}
        </div>
        <OpenFile />
      </section>
      <RemovedDesigns shelf={shelf} />
    </main>
  );
}

/** Starters of one kind of building, as many side by side as there is room for. */
function Theme({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  const id = useId();
  return (
    <section
      aria-labelledby={id}
      className="first-theme"
      style={{ '--cards': Children.count(children) } as CSSProperties}
    >
      <h3 id={id} className="section-title">
        {title}
      </h3>
      <ul>{children}</ul>
    </section>
  );
}

/** The starters that have come, by the kind of building that they have the face of. */
const themesOf = (starters: readonly Starter[]) =>
  THEME_NAMES.flatMap((theme) => {
    const names: readonly string[] = STARTER_THEMES[theme];
    const own = starters.filter(({ name }) => names.includes(name));
    return own.length > 0 ? [{ theme, starters: own }] : [];
  });

function useStarters(): readonly Starter[] {
  const names = useStarterNames();
  const [loaded, setLoaded] = useState<readonly Starter[]>([]);
  useEffect(() => {
    void Promise.all(
      STARTERS.map(async (name) => {
        const design = await loadStarter(name);
        return design ? [{ name, design }] : [];
      }),
    ).then((found) => setLoaded(found.flat()));
  }, []);
  return useMemo(
    () => loaded.map(({ name, design }) => ({ name, design: renamed(design, names) })),
    [loaded, names],
  );
}

/** The bench is at hand before a design is chosen: nothing that is done at once then finds it missing. */
function useBenchAtHand(): void {
  useEffect(() => {
    const timer = setTimeout(() => void import('./Bench.tsx'), AFTER_MS);
    return () => clearTimeout(timer);
  }, []);
}

function EmptyCard({ bed, onOpen }: { bed: Design['bed']; onOpen: () => void }) {
  const t = useWords();
  const { face } = useMemo(() => faceOf(bed), [bed]);
  return (
    <li className="first-item">
      <button type="button" className="first-card empty" onClick={onOpen}>
        <span className="first-blank" aria-hidden="true">
          <Plus />
        </span>
        <span className="first-name">{t('first.empty')}</span>
        <span className="first-size">
          {t('title.face')} <Measure mm={face.width} /> × <Measure mm={face.height} />
        </span>
        <span className="note">{t('first.emptyHint')}</span>
      </button>
    </li>
  );
}

function OpenFile() {
  const t = useWords();
  const store = useStore();
  return (
    <div className="first-open">
      <Button icon={FolderOpen} onClick={() => void openFile(store)}>
        {t('file.open')}
      </Button>
      <span className="note">{t('first.openHint')}</span>
    </div>
  );
}

/** The languages, each by its own name; for the first page, where there are no settings yet. */
function LanguageSwitch() {
  const t = useWords();
  const store = useStore();
  const language = useLanguage();
  return (
    <Choices
      className="switch first-languages"
      itemClass="btn"
      label={t('settings.language')}
      value={language}
      choices={LANGUAGE_TAGS.map((tag) => ({ id: tag, lang: tag, name: LANGUAGES[tag].name }))}
      onChoose={(tag) => void chooseLanguage(store, tag)}
    />
  );
}
