import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Fill } from '../../src/design/schema.ts';
import { areaOf } from '../../src/geometry/region.ts';
import type { Point, Region } from '../../src/geometry/shape.ts';
import type { Laid } from '../../src/layout/laid.ts';
import { plan } from '../../src/plan/plan.ts';
import type { Plan } from '../../src/plan/types.ts';
import { SUPPLIES } from './starters.ts';

/** A fill by itself on a face with a skin that takes brads anywhere. */
function planned(more: Partial<Fill>, of: Partial<Design> = {}): Plan {
  const design = newDesign();
  const box = { x: 100, y: 300, w: 520, h: 700 };
  const part: Fill = {
    ...newPart('fill', { id: 'fill', name: 'Fill', box, stock: 'lath-quarter' }),
    ...more,
  };
  const bed = { ...design.bed, skin: { thickness: 18, material: 'plywood' } };
  return plan({ ...design, bed, parts: [part], ...of }, SUPPLIES, { effort: { nodes: 50 } });
}

/** Whether a point lies within a convex region, by its sides; none of the tool's own code. */
const inConvex = (region: Region, p: Point): boolean =>
  region.every(({ outer }) =>
    outer.every((a, i) => {
      const b = outer[(i + 1) % outer.length] as Point;
      return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) > 0;
    }),
  );

/** Brads of the pieces of one layer, with the piece. */
const bradsOf = ({ layout, fastening }: Plan, over: boolean) => {
  const foot = Math.min(...layout.parts.map(({ z0 }) => z0));
  return layout.parts
    .filter((laid): laid is Laid<'fill'> => laid.kind === 'fill' && laid.z0 > foot === over)
    .map((laid) => ({ laid, at: fastening.parts.flatMap(({ part, at }) => (part === laid.id ? at : [])) }));
};

/** Whether the crossing of two laths, 38.1 mm wide, lies whole in both. */
function crossWhole(
  a: Laid<'fill'>,
  b: Laid<'fill'>,
  of: (laid: Laid<'fill'>) => Region = ({ region }) => region,
): boolean {
  const [u, v] = [a, b].map(({ leg }) => ({ x: leg.end.x - leg.start.x, y: leg.end.y - leg.start.y })) as [
    Point,
    Point,
  ];
  const [p, q] = [a.leg.start, b.leg.start];
  const s = ((q.x - p.x) * v.y - (q.y - p.y) * v.x) / (u.x * v.y - u.y * v.x);
  const middle = { x: p.x + s * u.x, y: p.y + s * u.y };
  const half = 19 / Math.hypot(u.x, u.y);
  // Laths of the two layers cross square.
  return [-half, half].every((m) =>
    [-half, half].every((n) => {
      const corner = { x: middle.x + m * u.x - n * u.y, y: middle.y + m * u.y + n * u.x };
      return inConvex(of(a), corner) && inConvex(of(b), corner);
    }),
  );
}

describe('courses with painted joints', () => {
  // Four by three of 200 by 60 mm, joints of 10 mm, on a board of just their size.
  const [w, h] = [4 * 210 - 10, 3 * 70 - 10];
  const made = planned({
    box: { x: 60, y: 300, w, h },
    stock: 'mdf-quarter',
    width: 60,
    gap: 10,
    angle: 0,
    start: 'low',
    finish: 'ground',
    pattern: { form: 'courses', length: 200, bond: 'stacked', joints: { finish: 'trim' } },
  });
  const use = (finish: string) => made.finish.uses.find((one) => one.finish === finish);

  it('are one board, painted in two colors', () => {
    expect(made.joinery.pieces.map(({ form, length, width }) => [form, length, width])).toEqual([
      ['sheet', w, h],
    ]);
    expect(made.cutting.sheets).toHaveLength(1);
    expect(use('ground')?.face).toBeCloseTo((12 * 200 * 60) / 1e6, 9);
    expect(use('trim')?.face).toBeCloseTo((w * h - 12 * 200 * 60) / 1e6, 9);
    // All of the board is painted in the color of the joints, with its edges.
    expect(use('trim')?.painted.face).toBeCloseTo((w * h) / 1e6, 9);
    expect(use('ground')?.painted.edge).toBe(0);
    expect(made.checks.filter(({ severity }) => severity !== 'note')).toEqual([]);
  });

  it('are taped along every joint, once on each side of it', () => {
    expect(use('ground')?.tape).toBeCloseTo(4 * 4 * 200 + 3 * 6 * 60, 3);
    expect(use('trim')?.tape).toBe(0);
  });

  it('are painted on the bench, the joints first, and marked from the datum', () => {
    const [board] = made.layout.parts.filter(({ kind }) => kind === 'fill');
    const before = made.marks.steps.filter(({ act }) => act === 'paint-before').flatMap(({ parts }) => parts);
    expect(before[0]).toBe(board?.id);
    expect(before).toHaveLength(13);
    const at = (axis: string) =>
      new Set(made.marks.marks.filter((one) => one.axis === axis).map((one) => Math.round(one.at)));
    expect([...at('x')]).toEqual([0, 200, 210, 410, 420, 620, 630, 830].map((mm) => mm + 60));
    expect([...at('y')]).toEqual([0, 60, 70, 130, 140, 200].map((mm) => mm + 300));
  });
});

describe('boards that are cut to a curve', () => {
  it('have a full-size pattern each kind, asked for or not; a saw cuts the others', () => {
    const box = { x: 100, y: 300, w: 520, h: 300 };
    const made = (shape: Fill['shape']) =>
      planned({
        box,
        shape,
        angle: 90,
        stock: 'pine-1x4',
        pattern: { form: 'planks', edge: 'square', lap: 0 },
      });
    const printed = (plan: Plan) => plan.patterns.filter((set) => set.for.startsWith('fill')).length;
    const arched = made({ form: 'arched', rise: 200 });
    // A circle from side to side cuts every board of it.
    expect(printed(arched)).toBe(new Set(arched.joinery.pieces.map(({ label }) => label)).size);
    expect(printed(made({ form: 'rectangle' }))).toBe(0);
    const gable = [0, 1].map((u) => ({ u, v: 0 }));
    expect(printed(made({ form: 'polygon', points: [...gable, { u: 0.5, v: 1 }] }))).toBe(0);
  });
});

describe('short pieces', () => {
  // A triangle of laths: pieces of every length down to nothing.
  const shape: Fill['shape'] = {
    form: 'polygon',
    points: [
      { u: 0, v: 0 },
      { u: 1, v: 0 },
      { u: 0.5, v: 1 },
    ],
  };
  const offcut = { stock: 'lath-quarter', count: 4, length: 300, defects: [] };
  const cut = (owned: Plan['design']['owned']) =>
    planned({ shape, angle: 0, finish: null }, { owned }).cutting.boards;

  it('come from offcuts on hand first, and from what longer pieces leave', () => {
    const [bought, mixed] = [cut([]), cut([{ id: 'rest', ...offcut }])];
    const costOf = (boards: typeof bought) => boards.reduce((sum, { cost }) => sum + cost, 0);
    const own = mixed.filter((board) => board.owned);
    // As many as save a bought board.
    expect(own.length).toBeGreaterThan(0);
    expect(costOf(own)).toBe(0);
    expect(costOf(mixed)).toBeLessThan(costOf(bought));
    // No bought board holds what would have gone whole onto what another one leaves.
    const kerf = 3.175;
    for (const board of mixed.filter((one) => !one.owned)) {
      const taken = board.cuts.reduce((sum, { from, to }) => sum + to - from + kerf, 0);
      for (const other of mixed) if (other !== board) expect(other.offcut).toBeLessThan(taken);
    }
  });
});

describe('slats', () => {
  const pine = SUPPLIES.tables.materials.find(({ id }) => id === 'pine')?.density ?? 0;
  const box = { x: 100, y: 300, w: 520, h: 400 };
  const slats = (tilt: number | undefined, more: Partial<Fill> = {}) =>
    planned({
      pattern: { form: 'louvers', lap: 6, ...(tilt && { tilt }) },
      angle: 0,
      box,
      finish: null,
      ...more,
    });

  it.each([undefined, 25])(
    'of tilt %s are whole, stand out as far as they lean, and weigh what they are',
    (tilt) => {
      const made = slats(tilt);
      const { pieces } = made.joinery;
      for (const { length, width, thickness, ends } of pieces) {
        expect([length, width, thickness]).toEqual([520, expect.closeTo(38.1, 6), 6.35]);
        expect(ends.map(({ cut }) => cut)).toEqual(['square', 'square']);
      }
      expect(new Set(pieces.map(({ label }) => label)).size).toBe(1);
      expect(made.load.added).toBeCloseTo((pieces.length * 520 * 38.1 * 6.35 * pine) / 1e9, 6);
      const [first, second] = made.layout.parts;
      const pitch = (second?.box.y ?? 0) - (first?.box.y ?? 0);
      const turn = tilt === undefined ? Math.asin(6.35 / pitch) : (tilt * Math.PI) / 180;
      const out = 38.1 * Math.sin(turn) + 6.35 * Math.cos(turn);
      for (const { z0, z1 } of made.layout.parts) expect(z1 - z0).toBeCloseTo(out, 9);
      expect(made.fold.floorSpace).toBeGreaterThan(0);
      expect(made.checks.map(({ code }) => code).includes('fill.between-stiles')).toBe(tilt !== undefined);
    },
  );

  it('lean on a starter strip that the person chose: ripped as wide as the lap, fixed before the boards', () => {
    const bare = slats(undefined);
    const code = (made: typeof bare) => made.checks.filter((one) => one.code === 'fill.starter').length;
    expect(code(bare)).toBe(1);
    const made = slats(undefined, { pattern: { form: 'louvers', lap: 6, starter: true } });
    expect(code(made)).toBe(0);
    expect(made.layout.parts).toHaveLength(bare.layout.parts.length + 1);
    const [first] = made.layout.parts;
    const [low, next] = bare.layout.parts;
    if (!first || !low || !next) throw new Error('no slats');
    // Behind the lowest board from its edge up to where a board below it would end: a pitch under that board's own top.
    const pitch = next.box.y - low.box.y;
    const tilt = Math.asin(6.35 / pitch);
    const high = 38.1 * Math.cos(tilt) + 6.35 * Math.sin(tilt);
    const width = high - pitch - 6.35 * Math.sin(tilt);
    expect(first.box.h).toBeCloseTo(width, 6);
    expect(first.z1 - first.z0).toBeCloseTo(6.35, 9);
    const strip = made.joinery.pieces.find(({ part }) => part === first.id);
    expect([strip?.length, strip?.width]).toEqual([520, expect.closeTo(width, 6)]);
    // All else is cut as it was; nothing of the strip is seen from the front.
    expect(made.joinery.pieces.filter(({ part }) => part !== first.id)).toHaveLength(
      bare.joinery.pieces.length,
    );
    expect(made.finish.shown.filter(({ part }) => part === first.id)).toEqual([]);
    const rounds = made.marks.steps.flatMap(({ parts }) => parts);
    expect(rounds.indexOf(first.id)).toBeLessThan(rounds.indexOf(low.id));
  });

  it('take brads where they lie on each other, which stay within the wood', () => {
    const made = slats(undefined);
    const all = made.fastening.parts;
    expect(all).toHaveLength(made.layout.parts.length);
    for (const one of all) {
      const laid = made.layout.parts.find(({ id }) => id === one.part);
      if (laid?.kind !== 'fill' || one.length === null) throw new Error('no brads');
      expect(one.at.length).toBeGreaterThanOrEqual(2);
      // The face of the slat over the back of it at the brad, by the line from its lower edge.
      const [low, high] = made.layout.parts.map(({ box: { y } }) => y);
      const tilt = Math.asin(6.35 / ((high ?? 0) - (low ?? 0)));
      for (const p of one.at) {
        const fall = (p.y - laid.box.y) * Math.tan(tilt);
        // 18 mm of skin beneath.
        expect(one.length).toBeLessThan(laid.z1 - laid.z0 - fall + 18);
      }
    }
    expect(slats(25).fastening.parts.every(({ at }) => at.length === 0)).toBe(true);
  });

  it('under a slope are cut at the compound setting of its line on the face', () => {
    const gable: Fill['shape'] = {
      form: 'polygon',
      points: [
        { u: 0, v: 0 },
        { u: 1, v: 0 },
        { u: 0.5, v: 1 },
      ],
    };
    const tilt = 30;
    const made = slats(tilt, { shape: gable });
    const slope = Math.atan2(box.h, box.w / 2);
    // By vectors: the slat runs along x; its face and its section lie turned by the tilt about x; the cut is upright to the face
    // of the bed and holds the line of the slope.
    const t = (tilt * Math.PI) / 180;
    const face = [0, Math.sin(t), Math.cos(t)];
    const over = [0, Math.cos(t), -Math.sin(t)];
    const plane = [Math.sin(slope), Math.cos(slope), 0];
    const dot = (a: number[], b: number[]): number => a.reduce((sum, v, i) => sum + v * (b[i] ?? 0), 0);
    const degrees = (angle: number): number => (angle * 180) / Math.PI;
    const bevel = degrees(Math.asin(Math.abs(dot(plane, face))));
    const miter = degrees(Math.atan2(Math.abs(dot(plane, over)), plane[0] ?? 0));
    const cut = made.joinery.pieces.flatMap(({ ends }) => ends).filter((end) => end.cut === 'miter');
    expect(cut.length).toBeGreaterThan(10);
    for (const end of cut) {
      expect(Math.abs(end.miter)).toBeCloseTo(miter, 6);
      expect(end.bevel).toBeCloseTo(bevel, 6);
    }
  });
});

describe('brads of pieces that lie over others', () => {
  it.each([
    [0, 40],
    [45, 40],
    [30, 70],
  ])(
    'hold every crossing of a lattice at %d degrees, gaps of %d mm, clear of those beneath',
    (angle, gap) => {
      const made = planned({ pattern: { form: 'lattice' }, angle, gap });
      const [lower, upper] = [bradsOf(made, false), bradsOf(made, true)];
      let crossings = 0;
      for (const { laid, at } of upper) {
        for (const beneath of lower) {
          const own = at.filter((p) => inConvex(beneath.laid.region, p));
          // Clipped by the outline, a crossing may be too small for any.
          if (!crossWhole(laid, beneath.laid)) continue;
          crossings++;
          expect(own.length, `${laid.id} over ${beneath.laid.id}`).toBeGreaterThanOrEqual(1);
          // Ten diameters of a brad of 18 gauge, along the grain (EN 1995-1-1, table 8.2).
          for (const p of own)
            for (const q of beneath.at) expect(Math.hypot(p.x - q.x, p.y - q.y)).toBeGreaterThan(10);
        }
      }
      expect(crossings).toBeGreaterThan(10);
      expect(made.checks.filter(({ code }) => code === 'fastening.few')).toEqual([]);
    },
  );

  it.each([
    [0, 40],
    [45, 60],
  ])('keep clear of the crossings of halved laths at %d degrees, gaps of %d mm', (angle, gap) => {
    const made = planned({ pattern: { form: 'lattice', halved: true }, angle, gap });
    const laths = bradsOf(made, false);
    const joints = made.joinery.joints.filter(({ kind }) => kind === 'half-lap');
    let crossings = 0;
    for (const a of laths.filter(({ laid }) => laid.member?.row === 0)) {
      for (const b of laths.filter(({ laid }) => laid.member?.row === 1)) {
        if (!crossWhole(a.laid, b.laid, ({ wood }) => wood)) continue;
        crossings++;
        const joint = joints.filter(({ parts }) => parts.includes(a.laid.id) && parts.includes(b.laid.id));
        expect(joint.map(({ through }) => through)).toEqual([b.laid.id]);
        // Half of the thickness of each, as wide as the other one.
        for (const { laid, at } of [a, b]) {
          for (const p of at) {
            const other = laid === a.laid ? b.laid : a.laid;
            expect(inConvex(other.wood, p)).toBe(false);
          }
        }
      }
    }
    expect(crossings).toBeGreaterThan(10);
    for (const { notches, thickness } of made.joinery.pieces)
      for (const { depth, miter } of notches) expect([depth, miter]).toEqual([thickness / 2, 0]);
    const notched = made.joinery.pieces.reduce((sum, { notches }) => sum + notches.length, 0);
    expect(notched).toBe(2 * joints.length);
    expect(made.checks.filter(({ severity }) => severity === 'error')).toEqual([]);
    // What is seen is wood once: its weight is that of one layer over it.
    const seen = made.layout.parts.reduce((sum, { region }) => sum + areaOf(region), 0);
    const pine = SUPPLIES.tables.materials.find(({ id }) => id === 'pine')?.density ?? 0;
    const bare = planned({ pattern: { form: 'lattice', halved: true }, angle, gap, finish: null });
    expect(bare.load.added).toBeCloseTo((seen * 6.35 * pine) / 1e9, 6);
  });

  it.each([6, 12])('hold battens on their boards beside every gap of %d mm, on both sides', (gap) => {
    const made = planned({
      pattern: { form: 'battened', stock: 'lath-quarter' },
      stock: 'pine-1x4',
      angle: 90,
      gap,
    });
    const battens = bradsOf(made, true);
    expect(battens.length).toBeGreaterThan(3);
    for (const { laid, at } of battens) {
      const middle = laid.box.x + laid.box.w / 2;
      for (const side of [-1, 1]) {
        const own = at.filter(({ x }) => (x - middle) * side > gap / 2);
        expect(own.length, laid.id).toBeGreaterThanOrEqual(2);
      }
    }
    expect(made.checks.filter(({ code }) => code.startsWith('fastening'))).toEqual([]);
  });
});
