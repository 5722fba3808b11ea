import type { RuleOf } from '../../../design/schema.ts';
import { countFor } from '../../../layout/arrange/recount.ts';
import type { Mm } from '../../../measure/units.ts';
import { Button } from '../../control/Button.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { arrangingOf } from '../../edit/arrange.ts';
import { editsToRecount } from '../../edit/evenCount.ts';
import { useCommit, useSettled } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { lengthText } from '../../words/text.ts';

/** How many parts a largest gap asks for, where it is not as many as there are, and one step that sees to it. */
export function EvenCount({ rule, most }: { readonly rule: RuleOf<'even'>; readonly most: Mm }) {
  const t = useWords();
  const shown = useSettled();
  const { design } = shown;
  const commit = useCommit();
  const have = rule.parts.length;
  const found = countFor(arrangingOf(shown), rule, most);
  if (found?.count === have) return null;
  if (!found)
    return (
      <Typeset as="p" className="note wide" text={t('even.noCount', { most: lengthText(design, most) })} />
    );
  const { count, gap } = found;
  const words = count > have ? 'even.addSome' : 'even.takeSome';
  const label = t(words, { count: Math.abs(count - have) });
  return (
    <div className="wide">
      <Typeset
        as="p"
        className="note"
        text={t('even.needed', {
          count,
          have,
          most: lengthText(design, most),
          gap: lengthText(design, gap),
        })}
      />
      <Button onClick={() => commit(editsToRecount(shown, rule, count), t('did.count', { count }))}>
        {label}
      </Button>
    </div>
  );
}
