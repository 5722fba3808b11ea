import { focusPane } from '../control/regions.ts';
import { PANES } from '../pane/panes.ts';
import { useEditor, useStore } from '../state/hooks.ts';
import { showStep } from '../state/showStep.ts';
import { STEPS, type StepId } from '../state/steps.ts';
import { useWords } from '../words/t.ts';
import { useOpenChecks } from './useOpenChecks.ts';

/** The steps of the job, on a stick marked off like a rule. */
export function StepRail() {
  const t = useWords();
  const store = useStore();
  const step = useEditor((s) => s.step);
  const open = useOpenChecks();
  const openByKey = (id: StepId) => {
    showStep(store, id);
    // The parts and the tools stand between the steps and the pane.
    focusPane(store);
  };
  return (
    // A step's number opens it while the focus is among the steps.
    <nav
      className="rail"
      aria-label={t('steps.title')}
      onKeyDown={(e) => {
        const id = STEPS[Number(e.key) - 1];
        if (!id || e.altKey || e.ctrlKey || e.metaKey || !store.getState().singleKeys) return;
        e.preventDefault();
        openByKey(id);
      }}
    >
      <ol>
        {STEPS.map((id, i) => {
          const { icon: Icon } = PANES[id];
          return (
            <li key={id}>
              <button
                type="button"
                className="rail-step"
                aria-current={id === step ? 'step' : undefined}
                onClick={(e) => {
                  if (e.detail === 0) openByKey(id);
                  else showStep(store, id);
                }}
              >
                <span className="rail-number">{i + 1}</span>
                <Icon aria-hidden="true" />
                <span className="rail-name">{t(`step.${id}`)}</span>
                {id === 'checks' && open ? (
                  <>
                    <span className="rail-count" aria-hidden="true">
                      {open}
                    </span>
                    <span className="hidden-text">, {t('steps.open', { count: open })}</span>
                  </>
                ) : null}
              </button>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}
