import { writeFileSync } from 'node:fs';
import { ownJsonSchema } from '../design/assembly/own.ts';
import { designJsonSchema } from '../design/jsonSchema.ts';
import { planJsonSchema } from '../output/json/planJson.ts';

for (const [name, schema] of [
  ['design', designJsonSchema()],
  ['assembly', ownJsonSchema()],
  ['plan', planJsonSchema()],
] as const) {
  const target = new URL(`../../assets/${name}.schema.json`, import.meta.url);
  writeFileSync(target, `${JSON.stringify(schema, null, 2)}\n`);
}
