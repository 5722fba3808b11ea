import { Plus } from 'lucide-react';
import type { Edit } from '../../../design/edit/edit.ts';
import { replacing } from '../../../design/edit/make.ts';
import { isLettered } from '../../../design/made.ts';
import { textTold } from '../../../design/picture.ts';
import type { LetteredPart, Lettering } from '../../../design/schema.ts';
import { pick } from '../../../list/at.ts';
import type { Plan } from '../../../plan/types.ts';
import { Button } from '../../control/Button.tsx';
import { placeInMiddle } from '../../gesture/draw.ts';
import { useCommit, useSelection, useSettledDesign, useStore } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { SubTabs } from '../facts/SubTabs.tsx';
import { showParts } from '../facts/showPlace.ts';
import { WithPlan } from '../facts/WithPlan.tsx';
import { LookStep } from './LookFields.tsx';
import { MakeFields } from './MakeFields.tsx';
import { Preview } from './Preview.tsx';
import { Reading } from './Reading.tsx';
import { TextFields } from './TextFields.tsx';
import type { Kept } from './useBridges.ts';
import '../../style/lettering.css';
import '../../words/letteringWords.ts';

/** What the signs say, in which letters, and how they get onto the board. */
export default function LetteringPane() {
  return <WithPlan>{(plan) => <Signs plan={plan} />}</WithPlan>;
}

function Signs({ plan }: { plan: Plan }) {
  const t = useWords();
  const store = useStore();
  const selection = useSelection();
  const design = useSettledDesign();
  const signs = design.parts.filter(isLettered);
  const part = signs.find((s) => selection.includes(s.id)) ?? signs[0];
  if (!part) {
    return (
      <>
        <p className="note">{t('letters.none')}</p>
        <div className="btn-row spaced">
          <Button icon={Plus} look="main" onClick={() => placeInMiddle(store, 'sign')}>
            {t('letters.addSign')}
          </Button>
          <Button icon={Plus} onClick={() => placeInMiddle(store, 'lettering')}>
            {t('letters.addLettering')}
          </Button>
        </div>
      </>
    );
  }
  return (
    <>
      {signs.length > 1 ? (
        <ul className="sign-list" aria-label={t('letters.signs')}>
          {signs.map((s) => (
            <li key={s.id}>
              <Button aria-pressed={s.id === part.id} onClick={() => showParts(store, [s.id])}>
                {textTold(pick(s.lettering.lines, 0).text, design.pictures) || s.name}
              </Button>
            </li>
          ))}
        </ul>
      ) : null}
      <SignStep key={part.id} plan={plan} part={part} />
    </>
  );
}

function SignStep({ plan, part }: { plan: Plan; part: LetteredPart }) {
  const t = useWords();
  const commit = useCommit();
  const sign = plan.signs.find((s) => s.id === part.id);
  const change = (fields: Partial<Lettering>, { label, merge }: Kept = {}, more: readonly Edit[] = []) =>
    commit(
      [...more, replacing('parts', { ...part, lettering: { ...part.lettering, ...fields } })],
      label ?? t('did.change', { name: part.name }),
      merge ? { merge } : {},
    );
  const fields = {
    lettering: part.lettering,
    onChange: (next: Partial<Lettering>) => change(next),
    onChangeAfter: (more: readonly Edit[], next: Partial<Lettering>) => change(next, {}, more),
  };
  return (
    <>
      {sign ? (
        <Preview plan={plan} part={part} sign={sign} onPlace={(stencil, kept) => change({ stencil }, kept)} />
      ) : null}
      <SubTabs
        of="letters.tabs"
        tabs={[
          ['letters.text', () => <TextFields {...fields} missing={sign?.lettered.missing ?? []} />],
          ['letters.look', () => <LookStep part={part} onChange={change} />],
          ['letters.make', () => <MakeFields {...fields} sign={sign} board={part} />],
          ['letters.reading', () => (sign ? <Reading plan={plan} part={part} sign={sign} /> : null)],
        ]}
      />
    </>
  );
}
