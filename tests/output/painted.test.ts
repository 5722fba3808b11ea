import { describe, expect, it } from 'vitest';
import { newDesign, newFinish, newPart } from '../../src/design/defaults.ts';
import type { Design, Part } from '../../src/design/schema.ts';
import type { Region } from '../../src/geometry/shape.ts';
import type { Solid } from '../../src/joinery/piece.ts';
import { planJson } from '../../src/output/json/planJson.ts';
import { plan } from '../../src/plan/plan.ts';
import type { Plan } from '../../src/plan/types.ts';
import { type Chance, chanceOf, pick } from '../chance.ts';
import { planOf, STARTERS, SUPPLIES, starter } from '../plan/starters.ts';
import { runs } from '../runs.ts';

// A twin of what is painted: the steps in plan.json say what is painted when, and areas are counted again from
// outlines and heights, on a grid of points and by walking along borders. It shares no code with the plan.

interface Paint {
  readonly part: string;
  readonly finish: string;
  readonly of: string;
  readonly face_m2: number;
  readonly edge_m2: number;
  readonly back_m2: number;
  readonly primed_m2: number;
  readonly coats: number;
  readonly primer_coats: number;
}
interface Told {
  readonly steps: { readonly act: string; readonly parts: string[]; readonly paints: Paint[] }[];
  readonly finishes: {
    readonly finish: string;
    readonly volume_l: number;
    readonly primer_l: number;
    readonly painted_face_m2: number;
  }[];
}

const GRID = 3;
/** Paint ends 1/16 in inside of what is glued on. */
const MARGIN = 25.4 / 16;

interface Place {
  readonly x: number;
  readonly y: number;
}
interface Shape {
  readonly rings: readonly (readonly Place[])[];
  readonly box: readonly [number, number, number, number];
  /** The sides that reach into each of so many bands from the foot to the top: letters have thousands. */
  readonly bands: readonly (readonly (readonly [Place, Place])[])[];
}
const BANDS = 256;
const bandOf = ([, foot, , top]: Shape['box'], y: number): number =>
  Math.min(BANDS - 1, Math.floor(((y - foot) / (top - foot)) * BANDS));

function shapeOf(region: Region): Shape {
  const rings = region.flatMap(({ outer, holes }) => [outer, ...holes]);
  const all = rings.flat();
  const [xs, ys] = [all.map((p) => p.x), all.map((p) => p.y)];
  const box = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] as const;
  const bands = Array.from({ length: BANDS }, (): [Place, Place][] => []);
  for (const [p, q] of rings.flatMap((ring) => ring.map((p, i) => [p, ring.at(i - 1) ?? p] as const))) {
    for (let n = bandOf(box, Math.min(p.y, q.y)); n <= bandOf(box, Math.max(p.y, q.y)); n++) {
      bands[n]?.push([p, q]);
    }
  }
  return { rings, box, bands };
}

function inside({ box, bands }: Shape, x: number, y: number): boolean {
  if (x < box[0] || y < box[1] || x > box[2] || y > box[3]) return false;
  let odd = false;
  for (const [p, q] of bands[bandOf(box, y)] ?? []) {
    if (p.y > y !== q.y > y && x < p.x + ((y - p.y) * (q.x - p.x)) / (q.y - p.y)) odd = !odd;
  }
  return odd;
}

const RIM = Array.from({ length: 8 }, (_, i) => (i * Math.PI) / 4).map((a) => ({
  x: MARGIN * Math.cos(a),
  y: MARGIN * Math.sin(a),
}));
/** Farther inside than the margin: a circle of that radius about the point lies in the shape. */
const wellInside = (shape: Shape, x: number, y: number): boolean =>
  inside(shape, x, y) && RIM.every((rim) => inside(shape, x + rim.x, y + rim.y));

/** Shares spread evenly: on a plain grid all borders that lie along it would be off the same way. */
const spread = (n: number): number => (n * 0.6180339887498949) % 1;

/** Square meters of the shape at whose points nothing else counts, a point in each cell of a grid. */
function area(shape: Shape, taken: (x: number, y: number) => boolean, grid = GRID): number {
  const [left, foot, right, top] = shape.box;
  let count = 0;
  for (let i = 0; left + i * grid < right; i++) {
    for (let j = 0; foot + j * grid < top; j++) {
      const x = left + (i + spread(i * 7 + j * 13)) * grid;
      const y = foot + (j + spread(i * 29 + j * 3)) * grid;
      if (inside(shape, x, y) && !taken(x, y)) count++;
    }
  }
  return (count * grid * grid) / 1e6;
}

const around = (shape: Shape): number =>
  shape.rings.reduce(
    (sum, ring) => sum + ring.reduce((s, p, i) => s + dist(p, ring[(i + 1) % ring.length] ?? p), 0),
    0,
  );
/** All around the first, where it comes near the second at all. */
const aroundIn = (a: Shape, b: Shape): number => (meets(a, b) ? around(a) : 0);
const meets = ({ box: a }: Shape, { box: b }: Shape, slack = 0): boolean =>
  a[0] < b[2] + slack && b[0] < a[2] + slack && a[1] < b[3] + slack && b[1] < a[3] + slack;
/** Those that a point of the shape, or one just outside of it, may lie in. */
const nearby = <B extends { readonly shape: Shape }>(of: readonly B[], shape: Shape): B[] =>
  of.filter((one) => meets(one.shape, shape, 1));
const dist = (p: Place, q: Place) => Math.hypot(q.x - p.x, q.y - p.y);

interface Body {
  readonly solid: Solid;
  readonly shape: Shape;
}
const near = (a: number, b: number) => Math.abs(a - b) < 1e-3;

/** Square meters of the walls around a body that nothing of the others stands against. */
function walls({ solid, shape }: Body, others: readonly { shape: Shape; z0: number; z1: number }[]): number {
  let sum = 0;
  for (const ring of shape.rings) {
    for (let i = 0; i < ring.length; i++) {
      const [p, q] = [ring[i], ring[(i + 1) % ring.length]];
      if (!p || !q) continue;
      const length = dist(p, q);
      const steps = Math.ceil(length / 2);
      for (let k = 0; k < steps; k++) {
        const t = (k + 0.5) / steps;
        const [ux, uy] = [(q.x - p.x) / length, (q.y - p.y) / length];
        const [x, y] = [p.x + t * (q.x - p.x) + 0.02 * uy, p.y + t * (q.y - p.y) - 0.02 * ux];
        const here = others.filter((o) => inside(o.shape, x, y));
        let free = 0;
        for (let n = 0; n < 40; n++) {
          const z = solid.z0 + ((n + 0.5) / 40) * (solid.z1 - solid.z0);
          if (!here.some((o) => o.z0 < z && z < o.z1)) free += (solid.z1 - solid.z0) / 40;
        }
        sum += (free * length) / steps;
      }
    }
  }
  return sum / 1e6;
}

/** Holds every face that the steps paint, and paint and primer of every finish; returns how many faces. */
function hold(made: Plan): number {
  const json = JSON.parse(planJson(made, { check: () => '', step: () => '' })) as Told;
  const bodies = made.joinery.solids
    .filter((s) => s.kind !== 'painted' && s.region.length > 0)
    .map((solid): Body => ({ solid, shape: shapeOf(solid.region) }));
  const laid = new Map(made.layout.parts.map((p) => [p.id, p]));
  const glued = bodies.filter(({ solid: { part, kind } }) => {
    const fixing = laid.get(part)?.fixing;
    return kind !== 'fitting' && (fixing?.how === 'glue' || (fixing?.glue === true && fixing.how !== 'none'));
  });
  const letters = made.sawnLetters.map((s) => ({ solid: s, shape: shapeOf(s.region) }));
  const levels = made.face.levels.map((l) => ({ shape: shapeOf(l.region), z0: -1e6, z1: l.z }));
  const bareAt = (z: number, on: Shape) => {
    const own = nearby([...glued, ...letters], on).filter(({ solid }) => near(solid.z0, z));
    return (x: number, y: number) => own.some(({ shape }) => wellInside(shape, x, y));
  };
  const coverAt = (z: number, on: Shape) => {
    const own = nearby([...bodies, ...letters], on).filter(({ solid }) => solid.z1 > z + 1e-3);
    return (x: number, y: number) => own.some(({ shape }) => inside(shape, x, y));
  };
  const isGlued = (id: string) => glued.some(({ solid }) => solid.part === id);
  const joints = made.joinery.joints.filter(({ parts: [a, b] }) => a !== b && (isGlued(a) || isGlued(b)));
  let faces = 0;
  const painted = json.steps.flatMap(({ act, paints }) => paints.map((p) => ({ ...p, act })));
  for (const p of painted) {
    const solid = made.joinery.solids.find((s) => s.part === p.part);
    if (p.of !== 'part') holdLetters(made, p);
    if (!solid || p.of !== 'part' || p.act === 'prime-backs') continue;
    const shape = shapeOf(solid.region);
    const early = p.act === 'paint-before' || p.act === 'paint-ground';
    const taken = early ? bareAt(solid.z1, shape) : coverAt(solid.z1, shape);
    const under = [...levels, ...bodies.map((b) => ({ shape: b.shape, z1: b.solid.z1 }))];
    const level = nearby(under, shape).filter((l) => near(l.z1, solid.z1));
    const wood = (x: number, y: number) =>
      solid.kind !== 'painted' || level.some((l) => inside(l.shape, x, y));
    const expected = area(shape, (x, y) => !wood(x, y) || taken(x, y));
    const borders =
      around(shape) +
      [...bodies, ...letters]
        .filter(({ solid: o }) => o.z1 > solid.z1)
        .reduce((sum, o) => sum + aroundIn(o.shape, shape), 0);
    const slack = (borders * GRID * 0.2 + 300) / 1e6;
    expect(
      Math.abs(p.face_m2 - expected),
      `${p.act} ${p.part}: ${p.face_m2}, counted ${expected}`,
    ).toBeLessThan(slack);
    faces++;
    const shaped = made.stocks.get(solid.stock ?? '')?.form === 'shaped';
    if (solid.kind === 'painted' || shaped) continue;
    const partners = joints.flatMap(({ parts: [a, b] }) => (a === p.part ? [b] : b === p.part ? [a] : []));
    const others = bodies
      .filter((b) => b.solid.part !== p.part && (!early || partners.includes(b.solid.part)))
      .map((b) => ({ shape: b.shape, z0: b.solid.z0, z1: b.solid.z1 }));
    const edges = walls({ solid, shape }, nearby(early ? others : [...others, ...levels], shape));
    expect(
      Math.abs(p.edge_m2 - edges),
      `edges, ${p.act} ${p.part}: ${p.edge_m2}, counted ${edges}`,
    ).toBeLessThan(1e-4 + 0.03 * edges);
  }
  holdLiters(made.design, json, painted);
  return faces;
}

/** Letters: through a stencil all that it opens, traced what is seen, sawn out their faces and edges. */
function holdLetters(made: Plan, p: Paint & { act: string }): void {
  const sign = made.signs.find(({ id }) => id === p.part);
  const board = made.joinery.solids.find(({ part }) => part === p.part);
  const layer = sign?.lettered.layers.find(({ role }) => role === p.of);
  if (!sign || !board || !layer) throw new Error(`${p.part} has no ${p.of}`);
  if (p.act === 'mount-letters') {
    const sawn = made.sawnLetters.filter(({ part }) => part === p.part);
    const shapes = sawn.map(({ region }) => shapeOf(region));
    const faces = shapes.reduce((sum, shape) => sum + area(shape, () => false), 0);
    expect(p.face_m2 / faces).toBeCloseTo(1, 1);
    const thick = (sawn[0]?.z1 ?? 0) - (sawn[0]?.z0 ?? 0);
    const edges = shapes.reduce((sum, shape) => sum + around(shape) * thick, 0) / 1e6;
    expect(p.edge_m2 / edges).toBeCloseTo(1, 3);
    return;
  }
  const opened = sign.stencils?.layers.find(({ role }) => role === p.of)?.stencil.cut ?? layer.region;
  const shape = shapeOf(opened);
  // Letters without a board lie on all that is beneath.
  const wood = board.kind === 'lettering' ? null : shapeOf(board.region);
  const missed = (x: number, y: number) => wood !== null && !inside(wood, x + sign.at.x, y + sign.at.y);
  const seen = area(shape, missed, GRID / 3);
  const more = p.act === 'paint-around-letters' ? (around(shape) * MARGIN) / 1e6 : 0;
  const slack = (around(shape) * GRID * 0.03) / 1e6;
  expect(p.face_m2, `${p.of} of ${p.part}, counted ${seen}`).toBeGreaterThan(seen - slack);
  expect(p.face_m2, `${p.of} of ${p.part}, counted ${seen}`).toBeLessThan(seen + more + slack);
}

/** Liters of every finish are its steps' areas times coats, by its rates and the waste. */
function holdLiters(
  { finishes, paint }: Design,
  json: Told,
  painted: readonly (Paint & { act: string })[],
): void {
  for (const use of json.finishes) {
    const finish = finishes.find((f) => f.id === use.finish);
    const own = painted.filter((p) => p.finish === use.finish);
    const coated = own.reduce((sum, p) => sum + (p.face_m2 + p.edge_m2 + p.back_m2) * p.coats, 0);
    expect(use.volume_l).toBeCloseTo((coated / (finish?.rate_m2_l ?? 0)) * (1 + paint.waste), 4);
    const primed = own.reduce((sum, p) => sum + p.primed_m2 * p.primer_coats, 0);
    expect(use.primer_l).toBeCloseTo(
      finish?.primer ? (primed / finish.primer.rate_m2_l) * (1 + paint.waste) : 0,
      4,
    );
    // The coats of every area add up to what the finish asks for: none is given twice, none left out.
    const first = own.filter(
      (p) => p.act === 'paint-before' && p.of === 'part' && p.coats < (finish?.coats ?? 0),
    );
    for (const one of first) {
      expect(own.filter((p) => p.act === 'last-coat' && p.part === one.part)).toHaveLength(1);
    }
  }
}

/** Panels on a flush skin and on one another, painted shapes on either, finishes of two coats and of one. */
function randomFace(chance: Chance): Design {
  const base = newDesign();
  const whole = (from: number, to: number) => from + 10 * Math.floor((chance() * (to - from)) / 10);
  const parts: Part[] = [];
  const count = 3 + Math.floor(chance() * 5);
  for (let i = 0; i < count; i++) {
    const under = parts.length > 0 && chance() < 0.6 ? pick(parts, chance).box : null;
    const on = parts.find((p) => p.box === under)?.id ?? 'skin';
    const [w, h] = under ? [under.w / 2, under.h / 3] : [whole(100, 400), whole(100, 400)];
    const [x, y] = under
      ? [under.x + whole(0, under.w / 2), under.y + whole(0, under.h / 2)]
      : [whole(40, 600), whole(40, 1400)];
    const given = { id: `p${i}`, name: `P${i}`, box: { x, y, w, h } };
    const finish = pick(['ground', 'trim', 'thin', null], chance);
    if (chance() < 0.3) parts.push({ ...newPart('painted', { ...given, finish }), on });
    else {
      const fixing = pick(
        [
          { how: 'brads', glue: true },
          { how: 'brads', glue: false },
          { how: 'glue', glue: false },
        ] as const,
        chance,
      );
      parts.push({ ...newPart('panel', { ...given, finish }), on, fixing });
    }
  }
  const finishes = [...base.finishes, { ...newFinish('thin', 'Thin', '#805030'), coats: 1, primer: null }];
  return {
    ...base,
    bed: { ...base.bed, skin: { thickness: 12.7, material: 'plywood' } },
    finishes,
    parts,
  };
}

/** Panels that lie in each other's wood are an error, and what is painted there is anyone's guess. */
const sound = ({ checks }: Plan): boolean =>
  checks.every(({ severity, code }) => severity !== 'error' && code !== 'part.unsupported');

describe('what the steps paint, counted again', () => {
  it.each(STARTERS)(
    'every face and edge of %s',
    (name) => {
      expect(hold(planOf(name))).toBeGreaterThan(20);
    },
    120_000,
  );

  it.each(['trace', 'cut-out'] as const)(
    'every color of a shaded sign made by %s',
    (make) => {
      const base = starter('bread-shop');
      const parts = base.parts.map((p) =>
        p.kind === 'sign' ? { ...p, lettering: { ...p.lettering, make } } : p,
      );
      const made = plan({ ...base, parts }, SUPPLIES, { effort: { nodes: 200 } });
      const acts = made.marks.steps.flatMap(({ paints }) =>
        paints.filter((p) => p.of !== 'part').map((p) => p.act),
      );
      expect(acts).toEqual(
        make === 'trace' ? ['letter', 'letter'] : ['paint-around-letters', 'mount-letters'],
      );
      hold(made);
    },
    120_000,
  );

  it('every face and edge of random faces', () => {
    let [held, faces] = [0, 0];
    for (let seed = 0; held < runs(6) && seed < 6 * runs(6); seed++) {
      const made = plan(randomFace(chanceOf(seed)), SUPPLIES, { effort: { nodes: 200 } });
      if (!sound(made)) continue;
      held++;
      faces += hold(made);
    }
    expect(held).toBe(runs(6));
    expect(faces).toBeGreaterThan(2 * held);
  }, 240_000);
});
