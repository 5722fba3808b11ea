import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Joint, Part } from '../../src/design/schema.ts';
import { planJson } from '../../src/output/json/planJson.ts';
import { plan } from '../../src/plan/plan.ts';
import type { Plan } from '../../src/plan/types.ts';
import { type Chance, chanceOf, pick } from '../chance.ts';
import { planOf, STARTERS, SUPPLIES } from '../plan/starters.ts';
import { runs } from '../runs.ts';

// The order of work held against plan.json alone: outlines, heights and steps. What lies under what is found
// by points in polygons, which shares no code with the plan.

type Pair = [number, number];
interface Told {
  readonly parts: {
    id: string;
    kind: string;
    outline_mm: { outer: Pair[]; holes: Pair[][] }[];
    z_mm: Pair;
  }[];
  readonly steps: { number: number; act: string; parts: string[] }[];
  readonly checks: { code: string; parts: string[] }[];
}

const told = (design: Design) => toldOf(plan(design, SUPPLIES, { effort: { nodes: 200 } }));

function toldOf(made: Plan): { json: Told; halved: readonly (readonly [string, string])[] } {
  const json = JSON.parse(planJson(made, { check: () => '', step: () => '' })) as Told;
  const halved = made.joinery.joints.filter((j) => j.kind === 'half-lap').map((j) => j.parts);
  return { json, halved };
}

/** Crossings of a ray to the right, even and odd. */
function inside(part: Told['parts'][number], x: number, y: number): boolean {
  let odd = false;
  for (const { outer, holes } of part.outline_mm) {
    for (const ring of [outer, ...holes]) {
      ring.forEach(([x1, y1], i) => {
        const [x2, y2] = ring[(i + 1) % ring.length] as Pair;
        if (y1 > y !== y2 > y && x < x1 + ((y - y1) * (x2 - x1)) / (y2 - y1)) odd = !odd;
      });
    }
  }
  return odd;
}

/** Whether two outlines share a point of a grid, 4.6 mm wide so that it falls on no edge of the designs. */
function share(a: Told['parts'][number], b: Told['parts'][number]): boolean {
  const range = (axis: 0 | 1) => {
    const of = (p: Told['parts'][number]) => p.outline_mm.flatMap(({ outer }) => outer.map((c) => c[axis]));
    return [
      Math.max(Math.min(...of(a)), Math.min(...of(b))),
      Math.min(Math.max(...of(a)), Math.max(...of(b))),
    ];
  };
  const [[left = 0, right = 0], [low = 0, high = 0]] = [range(0), range(1)];
  for (let x = left + 2.3; x < right; x += 4.6) {
    for (let y = low + 2.3; y < high; y += 4.6) if (inside(a, x, y) && inside(b, x, y)) return true;
  }
  return false;
}

const FIXES = ['fix', 'bend', 'measure-in-place', 'assemble', 'fit-hardware'];

/** Where in the order each part is fixed: its step, and its place in the list of a step that assembles. */
function placesOf({ steps }: Told): Map<string, number> {
  const places = new Map<string, number>();
  for (const { number, act, parts } of steps) {
    if (!FIXES.includes(act)) continue;
    parts.forEach((id, i) => {
      expect(places.has(id)).toBe(false);
      places.set(id, number + (act === 'assemble' ? (i + 1) / 1000 : 0));
    });
  }
  return places;
}

/** Holds the whole order; returns how many pairs lie over each other. */
function holdOrder(json: Told, halved: readonly (readonly [string, string])[]): number {
  const places = placesOf(json);
  // Letters without a board are painted, and fixed by nothing.
  const bodies = json.parts.filter((p) => p.kind !== 'painted' && p.kind !== 'lettering');
  expect([...places.keys()].sort()).toEqual(bodies.map((p) => p.id).sort());
  let pairs = 0;
  for (const low of bodies) {
    for (const high of bodies) {
      if (low.z_mm[1] > high.z_mm[0] + 1e-3 || high.z_mm[1] - low.z_mm[0] < 1e-2 || !share(low, high))
        continue;
      pairs++;
      expect(places.get(low.id), `${low.id} lies under ${high.id}`).toBeLessThan(places.get(high.id) ?? 0);
    }
  }
  const apart = json.checks.filter((c) => c.code === 'order.circle').flatMap((c) => c.parts);
  const stepOf = (id: string) => Math.floor(places.get(id) ?? 0);
  for (const [a, b] of halved) {
    if (!apart.includes(a) && !apart.includes(b))
      expect(stepOf(a), `${a} and ${b} are halved`).toBe(stepOf(b));
  }
  return pairs;
}

/** A face of up to twelve strips and panels, laid on one another at random, some strips on edge or turned. */
function randomFace(chance: Chance): Design {
  const base = newDesign();
  const whole = (from: number, to: number, by: number) =>
    from + by * Math.floor((chance() * (to - from)) / by);
  const parts: Part[] = [];
  const count = 3 + Math.floor(chance() * 10);
  for (let i = 0; i < count; i++) {
    const given = { id: `p${i}`, name: `P${i}`, finish: 'trim' };
    const box = {
      x: whole(100, 500, 20),
      y: whole(200, 700, 20),
      w: whole(100, 400, 20),
      h: whole(100, 400, 20),
    };
    const on = parts.length > 0 && chance() < 0.45 ? pick(parts, chance).id : 'skin';
    if (chance() < 0.25) {
      parts.push({ ...newPart('panel', { ...given, box }), on });
      continue;
    }
    const lie = pick(['across', 'up', 'across', 'up', 'turned'] as const, chance);
    const strip = newPart('strip', {
      ...given,
      box,
      stock: pick(['pine-1x2', 'pine-1x3', 'pine-1x3', 'lath-quarter'], chance),
    });
    parts.push({
      ...strip,
      on,
      lie,
      length: box.w,
      angle: whole(-80, 80, 15),
      onEdge: chance() < 0.2,
      fit: chance() < 0.1,
    });
  }
  const strips = parts.filter((p) => p.kind === 'strip').map((p) => p.id);
  const joints = Array.from({ length: strips.length > 1 ? Math.floor(chance() * 8) : 0 }, (_, i): Joint => {
    const pair = [pick(strips, chance), pick(strips, chance)] as [string, string];
    return {
      id: `j${i}`,
      parts: pair,
      kind: pick(['half-lap', 'half-lap', 'miter', 'cope', 'butt'], chance),
    };
  }).filter(({ parts: [a, b] }) => a !== b);
  return { ...base, bed: { ...base.bed, skin: { thickness: 12.7, material: 'plywood' } }, parts, joints };
}

describe('order of work, from outlines and heights in plan.json', () => {
  it('nothing is fixed before what lies under it, halves are glued at once: random stacks', () => {
    const seen = { pairs: 0, halved: 0, assembled: 0 };
    const stacks = runs(25);
    for (let seed = 0; seed < stacks; seed++) {
      const { json, halved } = told(randomFace(chanceOf(seed)));
      seen.pairs += holdOrder(json, halved);
      seen.halved += halved.length;
      seen.assembled += json.steps.filter((s) => s.act === 'assemble').length;
    }
    expect(seen.pairs, JSON.stringify(seen)).toBeGreaterThan(2 * stacks);
    expect(seen.halved).toBeGreaterThan(0.1 * stacks);
    expect(seen.assembled).toBeGreaterThan(0.1 * stacks);
  }, 120_000);

  it('a post halved with a board under a sheet and one over it is told of, and goes in one by one', () => {
    const base = newDesign();
    const at = (x: number, y: number, w: number, h: number) => ({ x, y, w, h });
    const board = (id: string, y: number, on: string): Part => ({
      ...newPart('strip', { id, name: id, box: at(100, y, 400, 63.5) }),
      on,
    });
    const post: Part = {
      ...newPart('strip', { id: 'post', name: 'post', box: at(150, 300, 19.05, 500) }),
      lie: 'up',
      onEdge: true,
      on: 'field',
    };
    const sheet: Part = {
      ...newPart('panel', { id: 'sheet', name: 'sheet', box: at(200, 390, 100, 200) }),
      on: 'low',
    };
    const half = (id: string): Joint => ({ id, parts: ['post', id], kind: 'half-lap' });
    const { json, halved } = told({
      ...base,
      parts: [board('low', 400, 'field'), sheet, board('high', 500, 'sheet'), post],
      joints: [half('low'), half('high')],
    });
    expect(halved).toHaveLength(2);
    expect(holdOrder(json, halved)).toBe(2);
    const circles = json.checks.filter((c) => c.code === 'order.circle').map((c) => c.parts.toSorted());
    expect(circles).toEqual([['high', 'low', 'post']]);
  });

  it.each(STARTERS)('holds for %s', (name) => {
    const { json, halved } = toldOf(planOf(name));
    expect(holdOrder(json, halved)).toBeGreaterThan(2);
  });
});
