import { useEffect, useMemo, useState } from 'react';
import type { Edit } from '../../design/edit/edit.ts';
import type { How, Touched } from '../../job/touched.ts';
import { Button } from '../control/Button.tsx';
import { Dialog } from '../control/Dialog.tsx';
import { Typeset } from '../control/Typeset.tsx';
import { useSay } from '../control/useSay.ts';
import { tried } from '../document/document.ts';
import { keepingDone, undoneBy } from '../edit/keepDone.ts';
import { commit } from '../state/commit.ts';
import { useEditor, usePlan, usePlanner, useStore } from '../state/hooks.ts';
import type { DoneQuestion } from '../state/store.ts';
import { useWords } from '../words/t.ts';
import '../words/deskWords.ts';
import '../words/sawWords.ts';

/** Asks what is to become of what is done before a change that touches it is taken. */
export function DoneDialog() {
  const question = useEditor((s) => s.doneQuestion);
  const design = useEditor((s) => s.edit.design);
  // Whatever else was done since has answered it.
  if (!question || question.from.design !== design) return null;
  return <Asked question={question} />;
}

/** A way to go on, with what of it is still to be paid, compared with now. */
interface Way {
  readonly edits: readonly Edit[];
  readonly held: ReadonlySet<string>;
}

function Asked({ question }: { question: DoneQuestion }) {
  const t = useWords();
  const store = useStore();
  const { from, edits, label, selection, held, touched, touching } = question;
  const named = ({ part, how }: Touched): string =>
    (how === 'unused' ? from.design.finishes : from.design.parts).find(({ id }) => id === part)?.name ?? part;
  const every = (...some: readonly How[]) => touched.every(({ how }) => some.includes(how));
  const onlyPaint = every('unused');
  const kept = useMemo<Way | null>(() => {
    const found = keepingDone(from, edits, touched, touching);
    return found && { edits: found, held: new Set([...(held ?? []), ...touched.map(({ part }) => part)]) };
  }, [from, edits, touched, touching, held]);
  const again = useMemo<Way>(
    () => ({ edits: [...edits, ...undoneBy(from, touched)], held: held ?? new Set() }),
    [from, edits, touched, held],
  );
  const close = () => store.setState({ doneQuestion: null, provisional: null });
  const take = ({ edits: all, held: hand }: Way) => {
    close();
    commit(store, all, label, { settled: true, held: hand, ...(selection ? { selection } : {}) });
  };
  return (
    <Dialog title={t('done.title')} className="done-dialog" onClose={close}>
      <p>{t('done.lead', { label })}</p>
      <ul className="done-list">
        {touched.map((one) => (
          <Typeset as="li" key={`${one.how} ${one.part}`} text={t(`done.${one.how}`, { name: named(one) })} />
        ))}
      </ul>
      {kept ? (
        <Choice
          way={kept}
          question={question}
          title={t('done.keep')}
          hint={t('done.keepHint')}
          onTake={() => take(kept)}
        />
      ) : (
        <p className="note">{t('done.noKeep')}</p>
      )}
      <Choice
        way={again}
        question={question}
        title={t(onlyPaint ? 'done.buyAgain' : every('gone') ? 'done.delete' : 'done.again')}
        hint={t(onlyPaint ? 'done.idleHint' : 'done.againHint')}
        onTake={() => take(again)}
      />
      <Button look="wide" onClick={close}>
        {t('done.leave')}
      </Button>
    </Dialog>
  );
}

interface ChoiceProps {
  readonly way: Way;
  readonly question: DoneQuestion;
  readonly title: string;
  readonly hint: string;
  readonly onTake: () => void;
}

function Choice({ way, question: { from }, title, hint, onTake }: ChoiceProps) {
  const t = useWords();
  const store = useStore();
  const cost = useCost(way, from);
  const show = () =>
    store.setState({ provisional: { shown: tried(from, way.edits, way.held), guides: [], live: false } });
  return (
    <div className="done-choice">
      <Button look="main wide" onFocus={show} onPointerEnter={show} onClick={onTake}>
        {title}
      </Button>
      <p className="note">{hint}</p>
      <p>{cost ?? t('done.costComing')}</p>
    </div>
  );
}

/** What a way costs against the plan as it is, in words; null until it is known. */
function useCost({ edits, held }: Way, from: DoneQuestion['from']): string | null {
  const t = useWords();
  const say = useSay();
  const planner = usePlanner();
  const { plan, of } = usePlan();
  const now = plan && of === from.design ? plan.total : null;
  const [cost, setCost] = useState<number | null | undefined>(undefined);
  useEffect(() => {
    let gone = false;
    void planner.cost(tried(from, edits, held).design).then((found) => {
      if (!gone) setCost(found);
    });
    return () => {
      gone = true;
    };
  }, [planner, from, edits, held]);
  if (cost === undefined) return null;
  if (cost === null || now === null) return t('done.costUnknown');
  const more = cost - now;
  if (Math.abs(more) < 0.005) return t('done.costSame');
  return t(more > 0 ? 'done.costMore' : 'done.costLess', { cost: say.money(Math.abs(more)) });
}
