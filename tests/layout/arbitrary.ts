import fc from 'fast-check';
import { newPart } from '../../src/design/defaults.ts';
import type { Edge, Part, Rule } from '../../src/design/schema.ts';
import type { Box } from '../../src/geometry/shape.ts';
import { at, panel, run, strip } from './sample.ts';

const IDS = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'];

const box = fc
  .tuple(fc.nat(800), fc.nat(1800), fc.integer({ min: 10, max: 200 }), fc.integer({ min: 10, max: 200 }))
  .map(([x, y, w, h]) => at(x, y, w, h));

const part = (id: string): fc.Arbitrary<Part> =>
  fc
    .tuple(
      fc.constantFrom('panel', 'up', 'across', 'run', 'array'),
      box,
      fc.oneof({ arbitrary: fc.constant('face'), weight: 3 }, fc.constantFrom(...IDS)),
    )
    .map(([kind, b, on]) => ({ ...make(kind, id, b), on }));

function make(kind: string, id: string, b: Box): Part {
  if (kind === 'panel') return panel(id, b);
  if (kind === 'run') return run(id, { ...b, w: b.w + 100, h: b.h + 100 });
  if (kind === 'array') return newPart('array', { id, name: id, box: { ...b, w: b.w + 200 }, stock: 'lath' });
  return strip(id, b, kind === 'up' ? 'up' : 'across');
}

export const somePart: fc.Arbitrary<Part> = fc.constantFrom(...IDS).chain(part);
export const allParts: fc.Arbitrary<Part[]> = fc.tuple(...IDS.map(part));

const id = fc.constantFrom(...IDS);
const ids = (min: number) => fc.uniqueArray(id, { minLength: min, maxLength: 4 });
const edge: fc.Arbitrary<Edge> = fc.record({
  of: fc.oneof({ arbitrary: fc.constant('face'), weight: 2 }, { arbitrary: id, weight: 3 }),
  side: fc.constantFrom('low' as const, 'mid' as const, 'high' as const),
});
const end = (side: 'low' | 'high') => fc.oneof(fc.constant<Edge>({ of: 'face', side }), edge);
const axis = fc.constantFrom('x' as const, 'y' as const);
const distance = fc.integer({ min: -80, max: 400 }).map((n) => (n * 25.4) / 16);

const body: fc.Arbitrary<Rule extends infer R ? (R extends Rule ? Omit<R, 'id'> : never) : never> = fc.oneof(
  fc.record({ kind: fc.constant('set' as const), axis, edge, from: edge, distance }),
  fc.record({ kind: fc.constant('gap' as const), axis, edge, from: edge, likeEdge: edge, likeFrom: edge }),
  fc.record({
    kind: fc.constant('center' as const),
    axis,
    parts: ids(1),
    low: end('low'),
    high: end('high'),
  }),
  fc.record({
    kind: fc.constant('between' as const),
    axis,
    part: id,
    low: end('low'),
    high: end('high'),
    insetLow: distance,
    insetHigh: distance,
  }),
  fc.record({
    kind: fc.constant('even' as const),
    axis,
    parts: ids(1),
    low: end('low'),
    high: end('high'),
    mode: fc.constantFrom(
      'gaps' as const,
      'flush' as const,
      'half' as const,
      'centers' as const,
      'most' as const,
    ),
  }),
  fc
    .tuple(axis, ids(2), edge)
    .map(([a, two, about]) => ({ kind: 'mirror' as const, axis: a, part: two[0]!, twin: two[1]!, about })),
  fc.record({ kind: fc.constant('same' as const), axis, parts: ids(2) }),
  fc.record({
    kind: fc.constant('reveal' as const),
    part: id,
    inside: fc.oneof(fc.constant('face'), id),
    inner: fc.constant(false),
    margin: distance,
  }),
  fc.record({
    kind: fc.constant('graded' as const),
    axis,
    parts: ids(2),
    low: end('low'),
    high: end('high'),
    ratio: fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 4, maxLength: 4 }),
    gap: fc.nat(20),
  }),
);

/** Any rule, often one that names itself or that nothing can satisfy. */
export const someRule = (name: string): fc.Arbitrary<Rule> => body.map((b) => ({ ...b, id: name }) as Rule);

export const someRules = (most: number): fc.Arbitrary<Rule[]> =>
  fc.array(body, { maxLength: most }).map((all) => all.map((b, i) => ({ ...b, id: `r${i}` }) as Rule));
