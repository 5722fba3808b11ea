import { useWords } from '../words/t.ts';

export type Hazard = 'wood' | 'saw' | 'swing' | 'weight' | 'fastening' | 'pages';

/** What can hurt, or spoil the work, at this step of the job: one line where the hand is. */
export function Caution({ of }: { of: Hazard }) {
  const t = useWords();
  return (
    <p className="caution" data-hazard={of}>
      {t(`caution.${of}`)}
    </p>
  );
}
