import type { Plan } from '../../../plan/types.ts';
import { Caution } from '../../control/Caution.tsx';
import { useWords } from '../../words/t.ts';
import { PlanPane, type PlanTabs } from '../facts/SubTabs.tsx';
import { PaperFields } from './PaperFields.tsx';
import { PrinterFields } from './PrinterFields.tsx';
import { SetPreview } from './SetPreview.tsx';
import '../../style/pages.css';
import '../../words/pagesWords.ts';

function Preview({ plan }: { plan: Plan }) {
  const t = useWords();
  const { patterns, design, tables } = plan;
  if (patterns.length === 0) return <p className="note">{t('pages.none')}</p>;
  const paper = tables.papers.find((p) => p.id === design.pages.paper)?.name ?? design.pages.paper;
  const pages = patterns.reduce((sum, set) => sum + set.pages.length, 0);
  // Titles name finishes by their ids, as the printed pages do; on screen a color has its name.
  const titleOf = ({ title, pages: [first] }: Plan['patterns'][number]) => {
    const named = design.finishes.reduce((words, f) => words.replace(`: ${f.id}`, `: ${f.name}`), title);
    // Sheets of story sticks have one title and a number each.
    const alike = patterns.filter((set) => set.title === title).length > 1;
    return alike && first ? `${named} ${first.name}` : named;
  };
  return (
    <>
      <Caution of="pages" />
      <p className="pages-total">
        <strong>{t('pages.total', { pages, paper })}</strong>
        <span className="note">{t('pages.print')}</span>
      </p>
      {patterns.map((set, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: several patterns may be for one sign, one for each color
        <SetPreview key={`${set.for}|${i}`} plan={plan} set={set} title={titleOf(set)} />
      ))}
    </>
  );
}

const TABS: PlanTabs = [
  ['step.pages', Preview],
  ['pages.paper', PaperFields],
  ['pages.printer', PrinterFields],
];

/** Full-size patterns on ordinary paper: what will be printed, on what, and true to size. */
export default function PagesPane() {
  return <PlanPane of="pages.tabs" tabs={TABS} />;
}
