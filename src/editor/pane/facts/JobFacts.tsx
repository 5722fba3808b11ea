import { useDesign, useEditor, usePlan } from '../../state/hooks.ts';
import { useCheckWords } from '../../words/checks.ts';
import { useWords } from '../../words/t.ts';

/** The checks of the design as they stand. */
export default function JobFacts() {
  const t = useWords();
  const step = useEditor((s) => s.step);
  const design = useDesign();
  const { plan, stale } = usePlan();
  const message = useCheckWords(design);
  if (!plan) return <p className="note">{t(stale ? 'plan.coming' : 'plan.none')}</p>;
  return (
    <div className="pane-stack">
      <p className="note">{t(`step.${step}`)}</p>
      <ul className="checks">
        {plan.checks.map((c) => (
          <li key={`${c.code}|${c.parts.join()}`} className={`check-row ${c.severity}`}>
            {message(c)}
          </li>
        ))}
      </ul>
    </div>
  );
}
