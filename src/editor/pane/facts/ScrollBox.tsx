import type { ReactNode } from 'react';

/** Something wider than the pane: it scrolls inside itself, by hand and by keys. */
export function ScrollBox({ label, children }: { label: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must take the arrow keys
    <section className="scroll-box" aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
