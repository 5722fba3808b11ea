import type { Design } from '../schema.ts';
import type { Edit, EditOf, EditResult } from './kinds.ts';

/** Sets a whole field. */
export function set(design: Design, edit: EditOf<'set'>): EditResult {
  const inverse = { kind: 'set', field: edit.field, value: design[edit.field] } as Edit;
  return { ok: true, design: { ...design, [edit.field]: edit.value }, inverse };
}
