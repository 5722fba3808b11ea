import { type ReactNode, useState } from 'react';
import { Tabs } from '../../control/list/Tabs.tsx';

export interface SubTab {
  readonly id: string;
  readonly label: string;
  readonly content: () => ReactNode;
}

/** Which tab each pane was left at, as long as the page lives. */
const left = new Map<string, string>();

const CLASSES = ['sub-tabs', 'sub-list', 'sub-tab', 'pane-stack sub-body'] as const;

/** The parts of a pane that holds more than one thing to do. */
export function SubTabs({ name, label, tabs }: { name: string; label: string; tabs: readonly SubTab[] }) {
  const [chosen, choose] = useState(() => left.get(name) ?? tabs[0]?.id ?? '');
  return (
    <Tabs
      classes={CLASSES}
      label={label}
      value={chosen}
      tabs={tabs}
      onChoose={(id) => {
        left.set(name, id);
        choose(id);
      }}
    />
  );
}
