import type { ReactNode } from 'react';

/** Something wider than the pane: it scrolls inside itself, by hand and by keys. */
export function ScrollBox({ label, children }: { label: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: no set of fields, only a box that scrolls
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must take the arrow keys
    <div className="scroll-box" role="group" aria-label={label} tabIndex={0}>
      {children}
    </div>
  );
}
