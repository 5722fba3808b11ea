import type { Bed } from '../../../design/schema.ts';
import type { Mm } from '../../../measure/units.ts';
import { t } from '../../words/t.ts';
import { BED_SECTIONS } from './bedFields.ts';

/** Each measure in which two beds differ: what it is now, and by how much it changed. */
export function changedMeasures(was: Bed, now: Bed, length: (mm: Mm) => string): string[] {
  return BED_SECTIONS.flatMap((section) => section.fields).flatMap((field) => {
    const change = field.get(now) - field.get(was);
    if (change === 0) return [];
    const figures = { what: t(field.words), to: length(field.get(now)), by: length(Math.abs(change)) };
    return [t(change < 0 ? 'bed.less' : 'bed.more', figures)];
  });
}
