import { z } from 'zod';
import { axis, edgeSchema, type Immutable, id, length, partId, size, sizeOrZero, thing } from '../field.ts';
import { EVEN_MODES } from '../limits.ts';

// What a rule of each kind says, as its file has it; what the kinds are stands in files of their own, without the library
// for schemas, which only a file that is opened needs.

/** `edge` stands `distance` beyond `from` (positive: right or up). */
const set = z.strictObject({
  id,
  kind: z.literal('set'),
  axis,
  edge: edgeSchema,
  from: edgeSchema,
  distance: length,
});

/** `edge` stands as far beyond `from` as `likeEdge` beyond `likeFrom`: the gap that a row has, once more. */
const gap = z.strictObject({
  id,
  kind: z.literal('gap'),
  axis,
  edge: edgeSchema,
  from: edgeSchema,
  likeEdge: edgeSchema,
  likeFrom: edgeSchema,
});

/** The parts, as one block, have their middle halfway between `low` and `high`. */
const center = z.strictObject({
  id,
  kind: z.literal('center'),
  axis,
  parts: z.array(partId).min(1).max(500),
  low: edgeSchema,
  high: edgeSchema,
});

/** The part runs from `low` to `high`, held back by an inset at each end. */
const between = z.strictObject({
  id,
  kind: z.literal('between'),
  axis,
  part: partId,
  low: edgeSchema,
  high: edgeSchema,
  insetLow: length,
  insetHigh: length,
});

/** The parts, in this order, spread between two edges. */
const even = z.strictObject({
  id,
  kind: z.literal('even'),
  axis,
  parts: z.array(partId).min(1).max(500),
  low: edgeSchema,
  high: edgeSchema,
  mode: z.enum(EVEN_MODES),
  /** `centers` only: the pitch. */
  pitch: size.optional(),
  /** `most` only: a gap over this is a check. */
  most: size.optional(),
});

/** `twin` is the mirror image of `part` about a line. */
const mirror = z.strictObject({
  id,
  kind: z.literal('mirror'),
  axis,
  part: partId,
  twin: partId,
  about: edgeSchema,
});

/** All the same width (axis x) or height (axis y). */
const same = z.strictObject({
  id,
  kind: z.literal('same'),
  axis,
  parts: z.array(partId).min(2).max(500),
});

/** The same margin on all four sides inside something. */
const reveal = z.strictObject({
  id,
  kind: z.literal('reveal'),
  part: partId,
  inside: thing,
  inner: z.boolean(),
  margin: length,
});

/** Sizes along the axis in the given ratio, filling from `low` to `high` with `gap` between. */
const graded = z.strictObject({
  id,
  kind: z.literal('graded'),
  axis,
  parts: z.array(partId).min(1).max(100),
  low: edgeSchema,
  high: edgeSchema,
  ratio: z.array(z.number().positive().max(1000)).min(1).max(100),
  gap: sizeOrZero,
});

export const ruleSchema = z.discriminatedUnion('kind', [
  set,
  gap,
  center,
  between,
  even,
  mirror,
  same,
  reveal,
  graded,
]);

export type Rule = Immutable<z.infer<typeof ruleSchema>>;
export type RuleKind = Rule['kind'];
export type RuleOf<K extends RuleKind> = Extract<Rule, { readonly kind: K }>;
