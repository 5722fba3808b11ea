import { createElement, Fragment, type ReactNode, useState } from 'react';
import type { Plan } from '../../../plan/types.ts';
import { Tabs } from '../../control/list/Tabs.tsx';
import { useWords, type WordKey } from '../../words/t.ts';
import { WithPlan } from './WithPlan.tsx';

/** A tab by its words, and what it shows. */
export type SubTab = readonly [words: WordKey, content: () => ReactNode];

/** Which tab each pane was left at, as long as the page lives. */
const left = new Map<WordKey, WordKey>();

const CLASSES = ['sub-tabs', 'sub-list', 'sub-tab', 'pane-stack sub-body'] as const;

/** The parts of a pane that holds more than one thing to do. */
export function SubTabs({ of, tabs }: { of: WordKey; tabs: readonly SubTab[] }) {
  const t = useWords();
  const [chosen, choose] = useState(() => left.get(of) ?? tabs[0]?.[0] ?? of);
  return (
    <Tabs
      classes={CLASSES}
      label={t(of)}
      value={chosen}
      tabs={tabs.map(([id, content]) => ({ id, label: t(id), content }))}
      onChoose={(id) => {
        left.set(of, id);
        choose(id);
      }}
    />
  );
}

/** Tabs by their words, each with the parts of which it is made. */
export type PlanTabs = readonly (readonly [
  words: WordKey,
  ...parts: ((props: { readonly plan: Plan }) => ReactNode)[],
])[];

interface PlanPaneProps {
  readonly of: WordKey;
  readonly tabs: PlanTabs;
  /** What stands over the tabs. */
  readonly children?: ReactNode;
}

/** A pane of what follows from the plan, by a table of its tabs. */
export function PlanPane({ of, tabs, children }: PlanPaneProps) {
  const shown = (plan: Plan) =>
    tabs.map(([words, ...parts]): SubTab => {
      const made = parts.map((part) => createElement(part, { plan }));
      return [words, () => createElement(Fragment, null, ...made)];
    });
  return (
    <WithPlan>
      {(plan) => (
        <>
          {children}
          <SubTabs of={of} tabs={shown(plan)} />
        </>
      )}
    </WithPlan>
  );
}
