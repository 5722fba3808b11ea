import { ShieldAlert } from 'lucide-react';
import { useWords } from '../../words/t.ts';

const CAUTIONS = ['anchor', 'latch', 'children', 'protect', 'lead', 'codes'] as const;

/** What a wall bed can do to people, and what to do about it. */
export function Cautions() {
  const t = useWords();
  return (
    <section className="cautions" aria-labelledby="cautions-title">
      <h3 id="cautions-title">
        <ShieldAlert aria-hidden="true" />
        {t('caution.title')}
      </h3>
      <ul>
        {CAUTIONS.map((key) => (
          <li key={key}>{t(`caution.${key}`)}</li>
        ))}
      </ul>
    </section>
  );
}
