import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_BED, newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Part } from '../../src/design/schema.ts';
import { planJson } from '../../src/output/json/planJson.ts';
import { plan } from '../../src/plan/plan.ts';
import type { Plan } from '../../src/plan/types.ts';
import { runs } from '../runs.ts';
import { planOf, STARTERS, SUPPLIES } from './starters.ts';

/*
 * No two brads closer than the wood stands: over random faces the distances are recomputed from plan.json alone,
 * from the places of its brads and the outlines and heights of its parts.
 *
 * EN 1995-1-1, table 8.2 (LVL Handbook Europe 2025, table 5.1), nails of diameter d, undrilled, softwood: 10 d
 * along the grain, 5 d across it, 10 d to an end, 5 d to an edge; drilled: 3 d to an edge.
 */
const ALONG = 10;
const EDGE_DRILLED = 3;
/** plan.json is rounded to thousandths, each of two coordinates of two points. */
const ROUNDED = 0.002;

const DIAMETERS = new Map(SUPPLIES.tables.brads.map((b) => [b.id, b.diameter]));

type Pair = readonly [number, number];

interface Told {
  readonly parts: readonly {
    readonly id: string;
    readonly kind: string;
    readonly outline_mm: readonly { readonly outer: readonly Pair[]; readonly holes: readonly Pair[][] }[];
    readonly z_mm: Pair;
  }[];
  readonly fastening: readonly {
    readonly part: string;
    readonly how: string;
    readonly fastener: string | null;
    readonly length_mm: number | null;
    readonly at_mm: readonly Pair[];
  }[];
  readonly checks: readonly { readonly code: string; readonly parts: readonly string[] }[];
}

const toldOf = (made: Plan): Told => JSON.parse(planJson(made, { check: (c) => c.code, step: (s) => s.act }));
const told = (design: Design): Told => toldOf(plan(design, SUPPLIES, { effort: { nodes: 200 } }));

const apartOf = (a: Pair, b: Pair): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

function toSegment(p: Pair, a: Pair, b: Pair): number {
  const size = (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2;
  const along = size === 0 ? 0 : ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / size;
  const t = Math.min(1, Math.max(0, along));
  return apartOf(p, [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]);
}

/** Distance of a place from the nearest edge of its part. */
function toEdge(p: Pair, outlines: Told['parts'][number]['outline_mm']): number {
  const rings = outlines.flatMap(({ outer, holes }) => [outer, ...holes]);
  return Math.min(
    ...rings.flatMap((ring) => ring.map((a, i) => toSegment(p, a, ring[(i + 1) % ring.length] ?? a))),
  );
}

/** What is wrong with the brads of a plan, as sentences; and how many pairs in the same wood were held apart. */
function faults({ parts, fastening, checks }: Told) {
  const found: string[] = [];
  let pairs = 0;
  const brads = fastening.flatMap((f) => {
    const part = parts.find(({ id }) => id === f.part);
    const d = DIAMETERS.get(f.fastener ?? '');
    if (f.how !== 'brads' || !part || d === undefined || f.length_mm === null) return [];
    const [, top] = part.z_mm;
    const tip = top - f.length_mm;
    return f.at_mm.map((at) => ({ part, at, top, tip, d }));
  });
  for (const [i, a] of brads.entries()) {
    for (const b of brads.slice(0, i)) {
      if (a.part !== b.part && (a.tip > b.top - ROUNDED || b.tip > a.top - ROUNDED)) continue;
      const apart = apartOf(a.at, b.at);
      if (apart < 2 * ALONG * a.d) pairs++;
      if (apart < ALONG * Math.max(a.d, b.d) - ROUNDED)
        found.push(`${a.part.id} ${b.part.id} ${apart} apart`);
    }
    const edge = toEdge(a.at, a.part.outline_mm);
    if (edge < EDGE_DRILLED * a.d - ROUNDED) found.push(`${a.part.id} ${edge} from its edge`);
  }
  // What hardware is screwed on with is drilled first: brads in the same wood keep away from it too.
  const screws = fastening.flatMap((f) => {
    const part = parts.find(({ id }) => id === f.part);
    if (part?.kind !== 'fitting' || f.length_mm === null) return [];
    const [low] = part.z_mm;
    return f.at_mm.map((at) => ({ part, at, top: low, tip: low - (f.length_mm ?? 0) }));
  });
  for (const a of brads)
    for (const b of screws) {
      const apart = apartOf(a.at, b.at);
      if (a.tip <= b.top - ROUNDED && b.tip <= a.top - ROUNDED && apart < ALONG * a.d - ROUNDED)
        found.push(`${a.part.id} ${apart} from a screw of ${b.part.id}`);
    }
  for (const f of fastening) {
    if (f.how !== 'brads') continue;
    const count = fastening.filter((g) => g.part === f.part).flatMap((g) => g.at_mm).length;
    const said = checks.some((c) => c.code.startsWith('fastening.') && c.parts.includes(f.part));
    if (count < 2 && !said) found.push(`${f.part} hangs on ${count}, and nothing is said`);
  }
  return { found, pairs, brads };
}

const whole = (min: number, max: number) => fc.integer({ min, max });
const SHAPES = [
  { form: 'rectangle' },
  { form: 'round' },
  {
    form: 'polygon',
    points: [
      { u: 0, v: 0 },
      { u: 1, v: 0 },
      { u: 0.3, v: 1 },
    ],
  },
] as const;

const onePart = fc.record({
  x: whole(0, 800),
  y: whole(0, 1600),
  w: whole(8, 260),
  h: whole(8, 420),
  shape: fc.constantFrom(...SHAPES),
  opening: fc.boolean(),
  stock: fc.constantFrom(
    'pine-1x2',
    'pine-1x4',
    'lath-quarter',
    'square-half',
    'stop-three-eighths',
    'mdf-half',
  ),
  lie: fc.constantFrom('across', 'up', 'rising'),
  glue: fc.boolean(),
  /** Negative: on the skin. */
  on: whole(-4, 6),
});

const oneFace = fc.record({
  parts: fc.array(onePart, { minLength: 2, maxLength: 9 }),
  brad: fc.constantFrom('pin-23', 'brad-18', 'nail-16', 'nail-15'),
  spacing: whole(20, 300),
  fromEdge: whole(3, 25),
  shortOfFar: whole(1, 5),
});

type Face = typeof oneFace extends fc.Arbitrary<infer F> ? F : never;

const BED = { ...DEFAULT_BED, skin: { thickness: 12.7, material: 'plywood' } };

/** Parts side by side on a flush skin, stacked on each other, and crossing: strips that cross are half-lapped. */
function faceOf({ parts, brad, spacing, fromEdge, shortOfFar }: Face): Design {
  const base = newDesign(BED);
  const laid = parts.map((p, i): Part => {
    const given = { id: `p${i}`, name: `p${i}`, box: { x: p.x, y: p.y, w: p.w, h: p.h }, stock: p.stock };
    const under = p.on >= 0 && i > 0 ? p.on % i : -1;
    const below = parts[under];
    const onto = below ? { x: below.x + (p.x % 60) - 20, y: below.y + (p.y % 60) - 20 } : {};
    const fixed = {
      box: { ...given.box, ...onto },
      on: below ? `p${under}` : 'skin',
      fixing: { how: 'brads', glue: p.glue } as const,
    };
    if (p.stock !== 'mdf-half') return { ...newPart('strip', given), lie: p.lie, ...fixed };
    const margin = { left: p.w / 4, right: p.w / 4, bottom: p.h / 4, top: p.h / 4 };
    const opening = { id: 'o', shape: SHAPES[0], margin };
    return {
      ...newPart('panel', given),
      ...fixed,
      shape: p.shape,
      openings: p.opening && p.w > 100 && p.h > 100 ? [opening] : [],
    };
  });
  const strips = laid.filter((p) => p.kind === 'strip' && p.on === 'skin');
  const laps = strips.flatMap((a, i) =>
    strips.slice(0, i).map((b) => ({
      id: `${a.id}-${b.id}`,
      parts: [a.id, b.id] as [string, string],
      kind: 'half-lap' as const,
      through: a.id,
    })),
  );
  return {
    ...base,
    parts: laid,
    joints: laps,
    pages: { ...base.pages, also: [] },
    fastening: { ...base.fastening, brad, spacing, fromEdge, shortOfFar, screwOver_kg: 1000 },
  };
}

describe('no two brads closer than the wood stands', () => {
  it('on random faces, whatever parts they hold: recomputed from plan.json', () => {
    let brads = 0;
    let pairs = 0;
    fc.assert(
      fc.property(oneFace, (face) => {
        const judged = faults(told(faceOf(face)));
        expect(judged.found).toEqual([]);
        brads += judged.brads.length;
        pairs += judged.pairs;
      }),
      { numRuns: runs(30), seed: 1413 },
    );
    expect(brads).toBeGreaterThan(7 * runs(30));
    expect(pairs).toBeGreaterThan(0.5 * runs(30));
  });

  it.each(STARTERS)('on the starter %s', (name) => {
    const judged = faults(toldOf(planOf(name)));
    expect(judged.found).toEqual([]);
    expect(judged.brads.length).toBeGreaterThan(50);
  });
});

describe('rows of a narrow sheet', () => {
  const panel = (w: number, h: number, shape: (typeof SHAPES)[number] = SHAPES[0]): Design => {
    const box = { x: 100, y: 300, w, h };
    const part = { ...newPart('panel', { id: 'p', name: 'P', box, stock: 'mdf-half' }), on: 'skin', shape };
    return { ...newDesign(BED), parts: [part] };
  };
  const at = (design: Design) => told(design).fastening.flatMap((f) => f.at_mm);

  it('are one down its middle, as on a strip: 26 by 500 mm at 8 in takes four', () => {
    // 500 less half an inch at either end is 474.6: three gaps of at most 203.2.
    const places = at(panel(26, 500));
    expect(places.map(([, y]) => y).sort((a, b) => a - b)).toEqual([312.7, 470.9, 629.1, 787.3]);
    for (const [x] of places) expect(x).toBeCloseTo(113, 1);
  });

  it('are two where it is wider than such a strip', () => {
    const across = new Set(at(panel(80, 500)).map(([x]) => Math.round(x)));
    expect(across.size).toBeGreaterThanOrEqual(2);
  });

  it.each([
    [26, 30],
    [34, 38],
    [50, 50],
    [50, 54],
  ])('are two brads on %s by %s mm, with nothing to warn of', (w, h) => {
    const { fastening, checks } = told(panel(w, h));
    expect(fastening.flatMap((f) => f.at_mm)).toHaveLength(2);
    expect(checks.filter((c) => c.code.startsWith('fastening.'))).toEqual([]);
  });

  it('say so where one brad is all that finds room, and where none does', () => {
    const few = (w: number, h: number) =>
      plan(panel(w, h), SUPPLIES).checks.flatMap((c) =>
        c.code === 'fastening.few' ? [c.figures.count] : [],
      );
    expect([few(20, 20), few(6, 20)]).toEqual([[], [0]]);
    expect(few(14, 14)).toEqual([1]);
  });
});
