import { Check } from 'lucide-react';
import { type BenchGroup, type BenchStep, benchGroups } from '../../cutting/atSaw.ts';
import { wayOf } from '../../cutting/sheets/way.ts';
import { Measure } from '../control/Measure.tsx';
import { fromName } from '../control/stepName.ts';
import { Typeset } from '../control/Typeset.tsx';
import { usePlan } from '../state/hooks.ts';
import { useWords } from '../words/t.ts';

interface BenchListProps {
  readonly steps: readonly BenchStep[];
  readonly done: ReadonlySet<string>;
  readonly at: number;
  readonly onChoose: (index: number) => void;
}

/** Everything to be cut, board by board, with what is done. */
export function BenchList({ steps, done, at, onChoose }: BenchListProps) {
  return (
    <div className="saw-list">
      {benchGroups(steps).map((group) => (
        <section key={group.steps[0]?.step.id}>
          <GroupHead group={group} done={done} />
          <ol>
            {group.steps.map(({ step, index }) => (
              <li key={step.id}>
                <button
                  type="button"
                  className="saw-row"
                  aria-current={index === at ? 'step' : undefined}
                  onClick={() => onChoose(index)}
                >
                  <span className={done.has(step.id) ? 'saw-mark done' : 'saw-mark'}>
                    {done.has(step.id) ? <Done /> : null}
                  </span>
                  <RowText step={step} />
                </button>
              </li>
            ))}
          </ol>
        </section>
      ))}
    </div>
  );
}

function Done() {
  const t = useWords();
  return (
    <>
      <Check aria-hidden="true" />
      <span className="hidden-text">{t('bench.ticked')}</span>
    </>
  );
}

function GroupHead({ group, done }: { group: BenchGroup; done: ReadonlySet<string> }) {
  const t = useWords();
  const { plan } = usePlan();
  const { from, steps } = group;
  const count = steps.filter(({ step }) => done.has(step.id)).length;
  const stock = from?.wood.stock ?? '';
  return (
    <h2>
      <span>{fromName(from, t, 'bench.others')}</span>
      <Typeset as="span" className="note" text={plan?.stocks.get(stock)?.name ?? stock} />
      <span className="count">
        {count}/{steps.length}
      </span>
    </h2>
  );
}

function RowText({ step }: { step: BenchStep }) {
  const t = useWords();
  if (step.kind === 'sheet-cut') {
    return (
      <>
        <strong>{t('bench.cutNumber', { number: step.cut.number })}</strong>
        <span>{t(wayOf(step.cut) === 'rip' ? 'wood.rip' : 'wood.cross')}</span>
        <Measure mm={step.cut.fence} />
      </>
    );
  }
  const { piece } = step;
  return (
    <>
      <strong>{piece.label}</strong>
      <span>{piece.name}</span>
      <span>
        <Measure mm={piece.shown.length} />
        {piece.form === 'sheet' ? (
          <>
            {' × '}
            <Measure mm={piece.shown.width} />
          </>
        ) : null}
      </span>
    </>
  );
}
