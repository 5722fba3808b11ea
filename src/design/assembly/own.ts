import { z } from 'zod';
import { LISTS } from '../edit/kinds.ts';
import { stopsAt } from '../ends.ts';
import { type Immutable, label, partId, size } from '../field.ts';
import { ENGLISH_FILE, type FileWords, FORMS } from '../fileWords.ts';
import { MOST_PHOTOS } from '../limits.ts';
import { type Opening, openedBy, versionProblem } from '../open.ts';
import { mentionsOf, partOfReference } from '../references.ts';
import { designSchema, partSchema, photoSchema, pictureSchema, ruleSchema } from '../schema.ts';

/** Format of the files of assemblies of a person's own. */
const ASSEMBLY_VERSION = 1;

/** How long it is along an axis as it was made, and the least that it fits into; null: it keeps its length. */
const fit = z.strictObject({ size, least: size.nullable() });

/**
 * An assembly of a person's own: parts whose rules place all of them within one of them, their ground, which takes the
 * place of the whole; with what they are made of. It names nothing that it does not bring along.
 */
const ownAssemblySchema = z
  .strictObject({
    /** Format version. */
    showfaceAssembly: z.literal(ASSEMBLY_VERSION),
    name: label.min(1),
    ground: partId,
    across: fit,
    up: fit,
    parts: z.array(partSchema).min(1).max(500),
    rules: z.array(ruleSchema).max(5000),
    groups: designSchema.shape.groups,
    joints: designSchema.shape.joints,
    finishes: designSchema.shape.finishes,
    stocks: designSchema.shape.stocks,
    fonts: designSchema.shape.fonts,
    pictures: pictureSchema.array().max(60),
    photos: photoSchema.array().max(MOST_PHOTOS).default([]),
  })
  .superRefine(({ ground, parts, rules, groups, joints }, context) => {
    const own = new Set(parts.map(({ id }) => id));
    const isOwn = (of: string): boolean => partOfReference(of).some((id) => own.has(id));
    const within = (named: readonly string[], ...path: (string | number)[]): void => {
      if (!named.every(isOwn)) context.addIssue({ code: 'custom', path, message: FORMS.own });
    };
    within([ground], 'ground');
    parts.forEach((part, i) => {
      within(partOfReference(part.on), 'parts', i, 'on');
      if (stopsAt(part, (at) => !isOwn(at))) within([''], 'parts', i);
    });
    rules.forEach((rule, i) => {
      const { lead, follow } = mentionsOf(rule);
      within([...lead, ...follow], 'rules', i);
    });
    groups.forEach((group, i) => {
      within([...group.parts, ...Object.values(group.assembly?.parts ?? {})], 'groups', i);
    });
    joints.forEach((joint, i) => {
      within([...joint.parts, ...(joint.through === undefined ? [] : [joint.through])], 'joints', i);
    });
  });

export type OwnAssembly = Immutable<z.infer<typeof ownAssemblySchema>>;

/** Whether plain data is of a file of such an assembly, of whatever version, and not of a design. */
export const isOwnAssembly = (data: unknown): data is object =>
  typeof data === 'object' && data !== null && Object.hasOwn(data, 'showfaceAssembly');

/** Opens plain data of such a file by the door of designs: it is refused with every problem named, or mended. */
export function openOwn(data: object, words: FileWords = ENGLISH_FILE): Opening<OwnAssembly> {
  const { showfaceAssembly: version } = data as { showfaceAssembly: unknown };
  if (version === ASSEMBLY_VERSION) return openedBy(ownAssemblySchema, { ...data }, words);
  const why = typeof version === 'number' && version > ASSEMBLY_VERSION ? 'newer' : 'unknown-version';
  const problem = versionProblem(why, version, words, 'showfaceAssembly', ASSEMBLY_VERSION);
  return { ok: false, problems: [problem] };
}

export const saveOwn = (own: OwnAssembly): string => `${JSON.stringify(own, null, 2)}\n`;

/** The JSON Schema (draft 2020-12) of such a file, generated from the code; its lists are those of a design file. */
export function ownJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(ownAssemblySchema, { io: 'input' });
  const properties = Object.entries(schema.properties ?? {}).map(([name, property]) => {
    const list = (LISTS as readonly string[]).includes(name)
      ? (property as z.core.JSONSchema.ArraySchema)
      : null;
    if (!list) return [name, property];
    const { minItems, maxItems } = list;
    return [name, { $ref: `showface-design-1#/properties/${name}`, minItems, maxItems }];
  });
  return {
    $id: 'showface-assembly-1',
    title: 'Showface file of a building part of one’s own, format 1',
    ...schema,
    properties: Object.fromEntries(properties),
  };
}
