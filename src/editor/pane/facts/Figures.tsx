import type { ReactNode } from 'react';
import { useWords, type WordKey } from '../../words/t.ts';
import { ScrollBox } from './ScrollBox.tsx';

interface FiguresProps {
  readonly title: WordKey;
  /** Told behind the title, how many there are. */
  readonly count?: number;
  /** The title is read out only: it stands over the table already. */
  readonly quiet?: boolean;
  /** The title tells of a fault. */
  readonly bad?: boolean;
  /** Heads of the columns, where they do not speak for themselves. */
  readonly columns?: readonly WordKey[];
  /** The heads are read out only: all of them, or the first. */
  readonly quietHeads?: 'all' | 'first';
  /** Wider than the pane: it scrolls inside itself. */
  readonly scrolls?: boolean;
  readonly className?: string;
  /** Its rows. */
  readonly children: ReactNode;
}

/** A table of figures under its title. */
export function Figures(props: FiguresProps) {
  const { title, count, quiet, bad, columns = [], quietHeads, scrolls, className, children } = props;
  const t = useWords();
  const table = (
    <table className={className ? `figures ${className}` : 'figures'}>
      <caption className={quiet ? 'hidden-text' : bad ? 'bad-text' : undefined}>
        {t(title)}
        {count === undefined ? null : ' '}
        {count === undefined ? null : <span className="count">{count}</span>}
      </caption>
      {columns.length > 0 ? (
        <thead className={quietHeads === 'all' ? 'hidden-text' : undefined}>
          <tr>
            {columns.map((column, i) => (
              <th
                key={column}
                scope="col"
                className={quietHeads === 'first' && i === 0 ? 'hidden-text' : undefined}
              >
                {t(column)}
              </th>
            ))}
          </tr>
        </thead>
      ) : null}
      <tbody>{children}</tbody>
    </table>
  );
  return scrolls ? <ScrollBox label={t(title)}>{table}</ScrollBox> : table;
}
