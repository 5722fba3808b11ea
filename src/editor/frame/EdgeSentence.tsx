import type { Rule } from '../../design/schema.ts';
import { Typeset } from '../control/Typeset.tsx';
import type { Shown } from '../document/shown.ts';
import { withOtherEdge } from '../edit/otherEdge.ts';
import { edgeName, ruleInPieces } from '../edit/sentence.ts';
import { useWords } from '../words/t.ts';

interface EdgeSentenceProps {
  readonly shown: Shown;
  readonly rule: Rule;
  readonly onTake: (rule: Rule) => void;
}

/** A rule as a sentence; each edge in it that could as well be the other one of its part is a word to click. */
export function EdgeSentence({ shown, rule, onTake }: EdgeSentenceProps) {
  const t = useWords();
  const { design, layout } = shown;
  const state = layout.rules.find(({ id }) => id === rule.id);
  return ruleInPieces(design, rule, state).map(({ text, field }, i) => {
    const other = field === null ? null : withOtherEdge(rule, field, shown);
    // The places of the pieces are all that tells them apart.
    const key = i;
    if (!other) return <Typeset key={key} text={text} />;
    const label = t('rules.otherEdge', { edge: edgeName(design, other.edge, other.axis) });
    return (
      <button key={key} type="button" className="word" title={label} onClick={() => onTake(other.rule)}>
        {text}
      </button>
    );
  });
}
