import { TriangleAlert } from 'lucide-react';
import { removing, replacing } from '../../../design/edit/make.ts';
import { partsOfRule } from '../../../design/references.ts';
import type { Part, Rule } from '../../../design/schema.ts';
import { Button } from '../../control/Button.tsx';
import { Remove } from '../../control/Remove.tsx';
import { Section } from '../../control/Section.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { placesPart } from '../../edit/loosen.ts';
import { ruleSentence } from '../../edit/sentence.ts';
import { EdgeSentence } from '../../frame/EdgeSentence.tsx';
import { useCommit, useDesign, useShown } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { voiced } from '../../words/voiced.ts';
import { AddRule } from './AddRule.tsx';
import { RuleFields } from './RuleFields.tsx';

/** The rules of a part, as sentences; each can be measured anew or let go. */
export function RuleList({ part }: { part: Part }) {
  const t = useWords();
  const design = useDesign();
  const named = design.rules.filter((r) => partsOfRule(r).includes(part.id));
  const rules = named.filter((r) => placesPart(r, part.id));
  const leading = named.filter((r) => !placesPart(r, part.id));
  return (
    <Section id="rules-title" className="rules" title="rules.title">
      {rules.length === 0 ? <p className="note">{t('rules.none')}</p> : null}
      <ul>
        {rules.map((rule) => (
          <RuleItem key={rule.id} rule={rule} />
        ))}
      </ul>
      <AddRule key={part.id} part={part} />
      {leading.length > 0 ? (
        <details className="fold">
          <summary>{t('rules.leading', { count: leading.length })}</summary>
          <ul>
            {leading.map((rule) => (
              <RuleItem key={rule.id} rule={rule} />
            ))}
          </ul>
        </details>
      ) : null}
    </Section>
  );
}

function RuleItem({ rule }: { rule: Rule }) {
  const t = useWords();
  const shown = useShown();
  const { design, layout } = shown;
  const commit = useCommit();
  const state = layout.rules.find((r) => r.id === rule.id);
  const sentence = ruleSentence(design, rule, layout.rules);
  const drop = (id: string, text: string) =>
    commit([removing('rules', id)], t('did.dropRule', { rule: text }));
  const take = (item: Rule) =>
    commit([replacing('rules', item)], t('did.rule'), {
      say: t('did.addRule', { rule: ruleSentence(design, item) }),
    });
  return (
    <li className={state && !state.holds ? 'rule-item broken' : 'rule-item'}>
      <p>
        <EdgeSentence shown={shown} rule={rule} onTake={take} />
      </p>
      <Remove
        label={voiced(t('rules.drop', { rule: sentence }))}
        title={t('rules.dropShort')}
        onClick={() => drop(rule.id, sentence)}
      />
      <RuleFields rule={rule} />
      {state && !state.holds ? (
        <div className="rule-fight">
          <p>
            <TriangleAlert aria-hidden="true" /> {t('rules.cannot')}
          </p>
          <ul>
            {state.fights.map((id) => {
              const other = design.rules.find((r) => r.id === id);
              if (!other) return null;
              const text = ruleSentence(design, other, layout.rules);
              return (
                <li key={id}>
                  <Typeset text={text} /> <Button onClick={() => drop(id, text)}>{t('rules.letGo')}</Button>
                </li>
              );
            })}
          </ul>
        </div>
      ) : null}
    </li>
  );
}
