import { z } from 'zod';
import { designSchema } from './schema.ts';

/** The JSON Schema (draft 2020-12) of a design file, generated from the code. */
export function designJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(designSchema, { io: 'input' }) as Record<string, unknown>;
  return { $id: 'showface-design-1', title: 'Showface design file, format 1', ...schema };
}
