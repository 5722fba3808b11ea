import type { StickMark, StoryStick } from '../../../marks/result.ts';
import type { Plan } from '../../../plan/types.ts';
import { Measure } from '../../control/Measure.tsx';
import { Section } from '../../control/Section.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { useCheckWords } from '../../control/useCheckWords.ts';
import { useSay } from '../../control/useSay.ts';
import { useWords } from '../../words/t.ts';
import { Figures } from '../facts/Figures.tsx';

/** More edges than this on one mark are counted, not read out. */
const NAMED = 4;

/** Story sticks as tables: every mark from its datum, and what stands there. */
export function Marks({ plan }: { plan: Plan }) {
  const t = useWords();
  const message = useCheckWords(plan.design);
  const sticks = plan.marks.sticks.filter((s) => s.marks.length > 0);
  if (sticks.length === 0) return <p className="note">{t('marks.none')}</p>;
  return (
    <Section id="fixing-marks" title="fixing.marks">
      <p className="note">{t('marks.lead')}</p>
      {plan.checks
        .filter(({ code }) => code === 'bed.datum')
        .map((check) => (
          <Typeset as="p" className="warn-text" key={check.figures.axis} text={message(check)} />
        ))}
      {sticks.map((stick) => (
        <Stick key={stick.axis} stick={stick} />
      ))}
    </Section>
  );
}

function Stick({ stick }: { stick: StoryStick }) {
  return (
    <Figures
      title={`marks.${stick.axis}`}
      count={stick.marks.length}
      columns={['marks.at', 'marks.edges']}
      className="stick"
    >
      {stick.marks.map((mark) => (
        <tr key={mark.at}>
          <th scope="row">
            <Measure mm={mark.shown} />
          </th>
          <td className="words">
            <Edges mark={mark} axis={stick.axis} />
          </td>
        </tr>
      ))}
    </Figures>
  );
}

function Edges({ mark, axis }: { mark: StickMark; axis: StoryStick['axis'] }) {
  const t = useWords();
  const say = useSay();
  const all = mark.edges.map(({ part, edge }) => t(`marks.edge.${axis}.${edge}`, { name: say.name(part) }));
  const named = all.slice(0, NAMED).join(', ');
  const more = all.length - NAMED;
  return <Typeset text={more > 0 ? `${named} ${t('lists.more', { count: more })}` : named} />;
}
