import { Trash2 } from 'lucide-react';
import { removing } from '../../../design/edit/make.ts';
import type { Plan } from '../../../plan/types.ts';
import { Button } from '../../control/Button.tsx';
import { Section } from '../../control/Section.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { ruleSentence } from '../../edit/sentence.ts';
import { useCommit } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { voiced } from '../../words/voiced.ts';

/** Rules that cannot hold, each with the rules it fights; letting any one of them go may free the rest. */
export function BrokenRules({ plan }: { plan: Plan }) {
  const t = useWords();
  const commit = useCommit();
  const { design, layout } = plan;
  const broken = layout.rules.filter((state) => !state.holds && design.rules.some((r) => r.id === state.id));
  if (broken.length === 0) return null;
  const say = (id: string): string => {
    const rule = design.rules.find((r) => r.id === id);
    if (!rule) return id;
    return ruleSentence(design, rule, layout.rules);
  };
  const drop = (id: string) => commit([removing('rules', id)], t('did.dropRule', { rule: say(id) }));
  return (
    <Section id="checks-rules" title="checks.rules" count={broken.length}>
      <p className="note">{t('checks.rulesLead')}</p>
      <ul className="broken-rules">
        {broken.map(({ id, fights }) => (
          <li key={id}>
            <RuleLine text={say(id)} label={t('rules.drop', { rule: say(id) })} onDrop={() => drop(id)} />
            {fights.length > 0 ? (
              <>
                <p className="caption">{t('checks.fights')}</p>
                <ul>
                  {fights.map((other) => (
                    <li key={other}>
                      <RuleLine
                        text={say(other)}
                        label={t('checks.dropOther', { rule: say(other) })}
                        onDrop={() => drop(other)}
                      />
                    </li>
                  ))}
                </ul>
              </>
            ) : null}
          </li>
        ))}
      </ul>
    </Section>
  );
}

function RuleLine({ text, label, onDrop }: { text: string; label: string; onDrop: () => void }) {
  const t = useWords();
  return (
    <div className="rule-line">
      <Typeset as="span" text={text} />
      <Button icon={Trash2} look="small" label={voiced(label)} onClick={onDrop}>
        {t('rules.letGo')}
      </Button>
    </div>
  );
}
