import { z } from 'zod';
import { axis, type Immutable, id, partId } from '../field.ts';
import type { RuleShape } from './kind.ts';

/** All the same width (axis x) or height (axis y). */
export const sameSchema = z.strictObject({
  id,
  kind: z.literal('same'),
  axis,
  parts: z.array(partId).min(2).max(500),
});

export const sameShape: RuleShape<Immutable<z.infer<typeof sameSchema>>> = {
  pulled: 'size',
  squeezes: true,
  slots: { parts: { is: 'parts', role: 'share', least: 2, carried: 'all' } },
};
