import { designPart } from '../../../layout/reference.ts';
import { Typeset } from '../../control/Typeset.tsx';
import { useCheckWords } from '../../control/useCheckWords.ts';
import { useDesign, useLayout } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { ICONS } from '../facts/CheckList.tsx';

/** What the checks say about one part. */
export function PartChecks({ part }: { part: string }) {
  const t = useWords();
  const layout = useLayout();
  const design = useDesign();
  const message = useCheckWords(design);
  const checks = layout.checks.filter((c) => c.parts.some((id) => designPart(id) === part));
  if (checks.length === 0) return null;
  return (
    <ul className="checks">
      {checks.map((c) => {
        const Icon = ICONS[c.severity];
        return (
          <li key={`${c.code}|${c.parts.join()}`} className={`check-row ${c.severity}`}>
            <Icon role="img" aria-label={t(`checks.one.${c.severity}`)} />
            <Typeset as="span" text={message(c)} />
          </li>
        );
      })}
    </ul>
  );
}
