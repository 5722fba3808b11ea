import { TriangleAlert } from 'lucide-react';
import { useDesign, useLayout } from '../../state/hooks.ts';
import { useCheckWords } from '../../words/checks.ts';

/** What the checks say about one part. */
export function PartChecks({ part }: { part: string }) {
  const layout = useLayout();
  const design = useDesign();
  const message = useCheckWords(design);
  const checks = layout.checks.filter((c) => c.parts.some((id) => id === part || id.startsWith(`${part}[`)));
  if (checks.length === 0) return null;
  return (
    <ul className="checks">
      {checks.map((c) => (
        <li key={`${c.code}|${c.parts.join()}`} className={`check-row ${c.severity}`}>
          <TriangleAlert aria-hidden="true" />
          <span>{message(c)}</span>
        </li>
      ))}
    </ul>
  );
}
