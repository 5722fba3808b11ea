import { writeFileSync } from 'node:fs';
import { designJsonSchema } from '../design/jsonSchema.ts';

const target = new URL('../../assets/design.schema.json', import.meta.url);
writeFileSync(target, `${JSON.stringify(designJsonSchema(), null, 2)}\n`);
