import { z } from 'zod';
import { FORMS } from './fileWords.ts';
import { FARTHEST, LEAST_CAP_HEIGHT, LEVEL_IDS } from './limits.ts';

// What the fields of a design are made of.

// Validation without code made from strings: the page's content policy forbids that, and the probe for it too.
z.config({ jitless: true });

export const length = z.number().min(-FARTHEST).max(FARTHEST);
export const size = z.number().positive().max(FARTHEST);
export const sizeOrZero = z.number().min(0).max(FARTHEST);
export const id = z
  .string()
  .min(1)
  .max(80)
  .regex(/^[A-Za-z0-9][A-Za-z0-9_.-]*$/, FORMS.id)
  .refine((s) => !['__proto__', 'constructor', 'prototype'].includes(s), FORMS.unreserved);
/** The name of the face where a rule, a joint or a part names what it means; no part's id. */
const FACE = 'face';
/** A part that a rule moves, names or lists: the face and levels stand where the bed puts them. */
export const partId = id.refine((s) => s !== FACE, FORMS.part);
export const label = z.string().max(200);
/** How many pictures can have a character of their own: those for private use in Unicode's first plane. */
export const MOST_PICTURES = 6399;
/** Its number tells the character that stands for it in a text (`design/picture.ts`). */
export const pictureId = id.refine((s) => {
  const [, number] = /^picture-([1-9]\d{0,3})$/.exec(s) ?? [];
  return number !== undefined && Number(number) <= MOST_PICTURES;
}, FORMS.picture);
export const color = z.string().regex(/^#[0-9a-f]{6}$/i, FORMS.color);
export const capHeight = z.number().min(LEAST_CAP_HEIGHT).max(FARTHEST);
export const money = z.number().min(0).max(1_000_000);

/** What a rule, a joint or a part can name: the face, a level that beds have, a part, a member of an array. */
export const thing = z
  .string()
  .min(1)
  .max(120)
  .regex(
    new RegExp(
      `^(level:(${LEVEL_IDS.join('|')})|(?!(__proto__|constructor|prototype)(\\[|$))[A-Za-z0-9][A-Za-z0-9_.-]{0,79}(\\[\\d{1,3},\\d{1,3}\\])?)$`,
    ),
    FORMS.thing,
  );

/**
 * An edge that a rule can name, along the rule's axis: `low` is left or bottom, `high` right or top,
 * `mid` the center line. `of`: `face`, a level (`level:field`), or a part's id; a member of an array is
 * `id[column,row]`. `inner` takes the inside edge of a run or of a level's opening.
 */
export const edgeSchema = z.strictObject({
  of: thing,
  side: z.enum(['low', 'mid', 'high']),
  inner: z.boolean().optional(),
});

export const axis = z.enum(['x', 'y']);

export type Immutable<T> = T extends object ? { readonly [K in keyof T]: Immutable<T[K]> } : T;
export type Edge = Immutable<z.infer<typeof edgeSchema>>;
export type Axis = 'x' | 'y';
