import { usePlan } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import type { ExportJob } from './useExport.ts';

/** How far an export has come, and a way to cancel it; over the drawing, so that nothing moves for it. */
export function ExportStatus({ job }: { job: ExportJob }) {
  const t = useWords();
  const { progress } = usePlan();
  const { entry, files, cancel } = job;
  const name = t(entry.words);
  return (
    <div className="notice news export-status" role="status">
      <div>
        <p>{files ? t('export.working', { name, ...files }) : t('export.waiting', { name })}</p>
        <progress
          aria-label={t('menu.export')}
          max={1}
          value={files ? (files.done - 1) / files.of : progress?.share}
        />
      </div>
      <button type="button" className="btn" onClick={cancel}>
        {t('act.cancel')}
      </button>
    </div>
  );
}
