import { z } from 'zod';
import { axis, edgeSchema, type Immutable, id, partId } from '../field.ts';
import type { RuleShape } from './kind.ts';

/** `twin` is the mirror image of `part` about a line. */
export const mirrorSchema = z.strictObject({
  id,
  kind: z.literal('mirror'),
  axis,
  part: partId,
  twin: partId,
  about: edgeSchema,
});

export const mirrorShape: RuleShape<Immutable<z.infer<typeof mirrorSchema>>> = {
  both: true,
  pulled: 'place',
  squeezes: true,
  slots: {
    part: { is: 'part', role: 'lead' },
    twin: { is: 'part', role: 'follow', by: 'part' },
    about: { is: 'edge', role: 'lead' },
  },
};
