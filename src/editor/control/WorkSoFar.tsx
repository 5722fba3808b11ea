import { useMemo } from 'react';
import type { Count, Work } from '../../job/work.ts';
import type { Plan } from '../../plan/types.ts';
import { sayFor } from '../../plan/words/say.ts';
import { stepSentence } from '../../plan/words/words.ts';
import { useWords, type WordKey } from '../words/t.ts';
import { fromName, sizeName } from './stepName.ts';
import { Typeset } from './Typeset.tsx';
import { useSay } from './useSay.ts';
import '../style/work.css';
import '../words/sawWords.ts';

const COUNTS = ['cut', 'painted', 'fastened'] as const;

/** How far the work is, what comes next with which setting, and what can be done while paint dries. */
export function WorkSoFar({ plan, work }: { plan: Plan; work: Work }) {
  const t = useWords();
  const say = useSay();
  const told = useMemo(() => sayFor(plan), [plan]);
  const { next, meanwhile, atSaw } = work;
  const sentence = (step: Plan['marks']['steps'][number]) => stepSentence(step, say.words, told);
  const tool = next === null ? null : toolOf(next.act);
  return (
    <div className="work">
      <dl className="work-counts">
        {COUNTS.map((what) => (
          <Bar key={what} title={`work.${what}`} count={work[what]} />
        ))}
      </dl>
      {next ? (
        <div className="work-next">
          <p className="work-title">{t('work.next')}</p>
          <Typeset as="p" text={sentence(next)} />
          {atSaw ? <Typeset as="p" className="work-setting" text={settingOf(atSaw, say, t)} /> : null}
          {tool ? <p className="note">{t(tool)}</p> : null}
        </div>
      ) : (
        <p className="good-text">{t('work.all')}</p>
      )}
      {work.wet.length > 0 ? (
        <div className="work-next">
          <p className="work-title">{t('work.meanwhile')}</p>
          {meanwhile.length > 0 ? (
            <ul>
              {meanwhile.slice(0, 4).map((step) => (
                <Typeset as="li" key={step.number} text={`${step.number}. ${sentence(step)}`} />
              ))}
            </ul>
          ) : (
            <p>{t('work.wait')}</p>
          )}
          <p className="note">{t('work.dry')}</p>
        </div>
      ) : null}
    </div>
  );
}

function Bar({ title, count: { done, all } }: { title: WordKey; count: Count }) {
  const t = useWords();
  if (all === 0) return null;
  return (
    <div>
      <dt>{t(title)}</dt>
      <dd>
        <progress aria-label={t(title)} max={all} value={done} />
        <span>{t('work.of', { done, all })}</span>
      </dd>
    </div>
  );
}

type Act = Plan['marks']['steps'][number]['act'];

/** With what it is done, where its sentence does not say it. */
const TOOLS: Partial<Record<Act, WordKey>> = {
  'cut-boards': 'work.tool.miterSaw',
  'cut-sheets': 'work.tool.sheetSaw',
  notch: 'work.tool.notch',
  groove: 'work.tool.groove',
  mark: 'work.tool.mark',
  fix: 'work.tool.fasten',
  assemble: 'work.tool.clamp',
  'paint-before': 'work.tool.paint',
  'paint-ground': 'work.tool.paint',
  'paint-after': 'work.tool.paint',
  'last-coat': 'work.tool.paint',
  'prime-backs': 'work.tool.paint',
  'fit-hardware': 'work.tool.drill',
};
const toolOf = (act: Act): WordKey | null => TOOLS[act] ?? null;

type AtSaw = NonNullable<Work['atSaw']>;

/** The board and the setting that the next piece is cut with. */
function settingOf(step: AtSaw, say: ReturnType<typeof useSay>, t: ReturnType<typeof useWords>): string {
  const where = fromName(step.from, t);
  if (step.kind === 'sheet-cut')
    return `${where}, ${t('bench.cutNumber', { number: step.cut.number })}: ${t('bench.fence')} ${say.short(step.cut.fence)}`;
  const { piece } = step;
  const turns = piece.ends.map((end) =>
    [
      `${t('end.angle')} ${say.angle(Math.abs(end.miter))}`,
      ...(end.bevel === 0 ? [] : [`${t('bench.bevel')} ${say.angle(Math.abs(end.bevel))}`]),
    ].join(', '),
  );
  const ends =
    piece.form === 'sheet' ? [] : [`${t('wood.startEnd')}: ${turns[0]}`, `${t('wood.endEnd')}: ${turns[1]}`];
  return [`${where}, ${t('bench.piece', { label: piece.label })}: ${sizeName(piece, say)}`, ...ends].join(
    '. ',
  );
}
