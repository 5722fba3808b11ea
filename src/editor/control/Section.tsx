import type { ReactNode } from 'react';
import { useWords, type WordKey } from '../words/t.ts';

interface SectionProps {
  /** Of the title, by which the section is then called; unique on the page. */
  readonly id?: string;
  readonly title: WordKey;
  /** Told beside the title, how many there are. */
  readonly count?: ReactNode;
  readonly className?: string;
  readonly children: ReactNode;
}

/** A part of a pane under its title. */
export function Section({ id, title, count, className, children }: SectionProps) {
  const t = useWords();
  return (
    <section aria-labelledby={id} className={className}>
      <h3 id={id} className="section-title">
        {t(title)}
        {count === undefined ? null : ' '}
        {count === undefined ? null : <span className="count">{count}</span>}
      </h3>
      {children}
    </section>
  );
}
