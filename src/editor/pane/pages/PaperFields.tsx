import { LEFT_OUT } from '../../../design/defaults.ts';
import { PACKET_SECTIONS, type PacketSection } from '../../../design/limits.ts';
import type { Pages } from '../../../design/schema.ts';
import { PACKET_WORDS } from '../../../output/packet/words/words.ts';
import { namesOf } from '../../control/ChoiceField.tsx';
import { FieldGrid, Fields } from '../../control/form/Fields.tsx';
import { type FormField, named, within } from '../../control/form/formField.ts';
import { Section } from '../../control/Section.tsx';
import { tables } from '../../shipped/tables.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { useLanguage, useWords } from '../../words/t.ts';
import { useChange } from '../facts/useChange.ts';

const ALSO = ['story-sticks', 'face', 'parts', 'drilling'] as const;

const paperOf = ({ paper }: Pages) => tables().papers.find(({ id }) => id === paper);

const PAPER_FIELDS: readonly FormField<Pages>[] = [
  { is: 'choice', label: 'pages.paperSize', field: 'paper', of: () => namesOf(tables().papers) },
  {
    is: 'length',
    label: 'pages.rollWidth',
    min: 100,
    when: (pages) => {
      const paper = paperOf(pages);
      return paper !== undefined && paper.height === undefined;
    },
    get: (pages) => pages.rollWidth ?? paperOf(pages)?.width ?? 0,
    put: (rollWidth) => ({ rollWidth }),
  },
  { is: 'choice', label: 'pages.join', field: 'join', of: named('pages.join', ['overlap', 'butt']) },
  { is: 'length', label: 'pages.overlap', field: 'overlap', when: ({ join }) => join === 'overlap' },
  { is: 'switch', label: 'pages.wholeLetters', field: 'wholeLetters', place: 'wide' },
];

const MARGIN_FIELDS = within<Pages, 'margin'>('margin', [
  { is: 'length', label: 'pages.margin.left', field: 'left' },
  { is: 'length', label: 'pages.margin.right', field: 'right' },
  { is: 'length', label: 'pages.margin.top', field: 'top' },
  { is: 'length', label: 'pages.margin.bottom', field: 'bottom' },
]);

const ALSO_FIELDS = ALSO.map(
  (what): FormField<Pages> => ({
    is: 'switch',
    label: `pages.also.${what}`,
    get: ({ also }) => also.includes(what),
    put: (on, { also }) => ({ also: ALSO.filter((one) => (one === what ? on : also.includes(one))) }),
  }),
);

/** A switch for each section of the packet, by the title that it has there. */
const sectionFields = (titles: Readonly<Record<PacketSection, string>>): FormField<Pages>[] =>
  PACKET_SECTIONS.map((section) => ({
    is: 'switch',
    label: { name: titles[section] },
    get: ({ without = LEFT_OUT }) => !without.includes(section),
    put: (on, { without = LEFT_OUT }) => ({
      without: PACKET_SECTIONS.filter((one) => (one === section ? !on : without.includes(one))),
    }),
  }));

/** On what paper, how pages join, and what is printed besides the signs. */
export function PaperFields() {
  const t = useWords();
  const language = useLanguage();
  const { pages } = useSettledDesign();
  const { set } = useChange();
  const put = (fields: Partial<Pages>) => set('pages', { ...pages, ...fields }, t('pages.paper'));
  return (
    <>
      <Section id="pages-paper" title="pages.paper">
        <FieldGrid of={PAPER_FIELDS} value={pages} onChange={put} />
      </Section>
      <Section id="pages-margin" title="pages.margin">
        <FieldGrid of={MARGIN_FIELDS} value={pages} onChange={put} />
      </Section>
      <Section id="pages-also" title="pages.also">
        <Fields of={ALSO_FIELDS} value={pages} onChange={put} />
      </Section>
      <Section id="pages-packet" title="pages.packet">
        <p className="note">{t('pages.packetLead')}</p>
        <Fields of={sectionFields(PACKET_WORDS[language].titles)} value={pages} onChange={put} />
      </Section>
    </>
  );
}
