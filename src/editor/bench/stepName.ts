import type { useWords } from '../words/t.ts';
import type { BenchStep } from './steps.ts';

/** A step in a few words, for buttons and announcements. */
export function stepName(step: BenchStep, t: ReturnType<typeof useWords>): string {
  return step.kind === 'sheet-cut'
    ? t('bench.sheetCut', { sheet: step.from.number, number: step.cut.number })
    : t('bench.piece', { label: step.piece.label });
}
