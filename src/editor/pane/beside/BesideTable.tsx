import type { ReactNode } from 'react';
import type { FaceFigures } from '../../../output/packet/sideBySide.ts';
import { useWords } from '../../words/t.ts';
import type { Choice, Found } from './useBeside.ts';

interface BesideTableProps {
  readonly chosen: readonly Choice[];
  readonly found: ReadonlyMap<string, Found>;
}

const figuresIn = (found: Found | undefined): FaceFigures | null =>
  found && 'figures' in found ? found.figures : null;

/** Pictures in a row, and under each the same figures. */
export function BesideTable({ chosen, found }: BesideTableProps) {
  const t = useWords();
  if (chosen.length === 0) return null;
  const figures = chosen.map(({ key }) => figuresIn(found.get(key)));
  const first = figures.find((one) => one !== null);
  const row = (term: string, cellOf: (of: FaceFigures) => ReactNode) => (
    <tr key={term}>
      <th scope="row">{term}</th>
      {chosen.map(({ key }, i) => {
        const own = figures[i];
        return <td key={key}>{own ? cellOf(own) : null}</td>;
      })}
    </tr>
  );
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: wider than the page, it scrolls, and keys must reach it
    <section className="beside-faces" aria-label={t('beside.title')} tabIndex={0}>
      <table>
        <thead>
          <tr>
            <td />
            {chosen.map(({ key, name }) => (
              <th key={key} scope="col">
                <Picture found={found.get(key)} name={name} />
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {first?.rows.map(({ term }, i) => row(term, ({ rows }) => rows[i]?.words))}
          {first
            ? row(t('beside.paints'), ({ paints }) => (
                <ul>
                  {paints.map(({ color, words, price }) => (
                    <li key={words}>
                      <span className="chip" style={{ background: color ?? 'transparent' }} />
                      {words}, {price}
                    </li>
                  ))}
                </ul>
              ))
            : null}
          {figures.some((own) => own && own.notes.length > 0)
            ? row(t('beside.notes'), ({ notes }) => notes.join(' '))
            : null}
        </tbody>
      </table>
    </section>
  );
}

function Picture({ found, name }: { readonly found: Found | undefined; readonly name: string }) {
  const t = useWords();
  if (!found)
    return (
      <span className="beside-picture">
        <progress aria-label={t('beside.planning', { name })} />
      </span>
    );
  if ('failed' in found) return <span className="beside-picture note">{t(`beside.${found.failed}`)}</span>;
  return (
    <span className="beside-picture">
      <img src={found.picture} alt="" />
    </span>
  );
}
