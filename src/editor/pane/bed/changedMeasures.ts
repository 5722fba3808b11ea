import type { Bed } from '../../../design/schema.ts';
import type { Mm } from '../../../measure/units.ts';
import { labelText, shownIn } from '../../control/form/formField.ts';
import { t } from '../../words/t.ts';
import { BED_SECTIONS } from './bedFields.ts';

/** Each measure in which two beds differ: what it is now, and by how much it changed. */
export function changedMeasures(was: Bed, now: Bed, length: (mm: Mm) => string): string[] {
  return BED_SECTIONS.flatMap((section) => section.fields).flatMap((field) => {
    if (field.is !== 'length') return [];
    const to = shownIn(field, now) as Mm;
    const change = to - (shownIn(field, was) as Mm);
    if (change === 0) return [];
    const figures = { what: labelText(field.label), to: length(to), by: length(Math.abs(change)) };
    return [t(change < 0 ? 'bed.less' : 'bed.more', figures)];
  });
}
