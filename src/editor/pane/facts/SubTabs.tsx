import { Tabs } from 'radix-ui';
import { type ReactNode, useState } from 'react';

export interface SubTab {
  readonly id: string;
  readonly label: string;
  readonly content: () => ReactNode;
}

/** Which tab each pane was left at, as long as the page lives. */
const left = new Map<string, string>();

/** The parts of a pane that holds more than one thing to do. */
export function SubTabs({ name, label, tabs }: { name: string; label: string; tabs: readonly SubTab[] }) {
  const [chosen, choose] = useState(() => left.get(name) ?? tabs[0]?.id ?? '');
  return (
    <Tabs.Root
      className="sub-tabs"
      value={chosen}
      onValueChange={(id) => {
        left.set(name, id);
        choose(id);
      }}
    >
      <Tabs.List className="sub-list" aria-label={label}>
        {tabs.map((tab) => (
          <Tabs.Trigger key={tab.id} value={tab.id} className="sub-tab">
            {tab.label}
          </Tabs.Trigger>
        ))}
      </Tabs.List>
      {tabs.map((tab) => (
        <Tabs.Content key={tab.id} value={tab.id} className="pane-stack sub-body" tabIndex={-1}>
          {tab.id === chosen ? tab.content() : null}
        </Tabs.Content>
      ))}
    </Tabs.Root>
  );
}
