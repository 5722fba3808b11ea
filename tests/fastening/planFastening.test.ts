import { describe, expect, it } from 'vitest';
import { faceOf } from '../../src/bed/faceOf.ts';
import type { FasteningInput } from '../../src/fastening/input.ts';
import { fastenParts, planFastening } from '../../src/fastening/planFastening.ts';
import { offset } from '../../src/geometry/clip.ts';
import { containsPointInRegion, regionOfBox, regionOfRing } from '../../src/geometry/region.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import type { LaidPart, Leg } from '../../src/layout/laid.ts';
import type { Brad, Glue, Screw, Stock } from '../../src/materials/types.ts';
import { inches } from '../../src/measure/units.ts';
import { sampleBed } from '../bed/sample.ts';
import { blockInInches } from '../bed/solids.ts';
import { fittingOf, panelOf, stripOf } from './laidAs.ts';

/*
 * The sample bed: field 3 1/4 in behind the rim with 1/2 in of platform, ledge 1 3/4 in behind it with 2 in
 * of cleat and platform, rim with 7 1/4 in of frame. Rim 1 1/2 in wide, ledge as much.
 */
const bed = sampleBed();
const { face } = faceOf(bed);
const listed = [0.625, 0.75, 1, 1.25, 1.5, 2].map(inches);
const brad: Brad = {
  id: 'brad18',
  name: '',
  diameter: 1.21,
  lengths: listed,
  price: 0,
  count: 1000,
  source: '',
};
const screw: Screw = {
  id: 'no8',
  name: '',
  thread: 'wood',
  diameter: 4.17,
  lengths: [0.75, 1, 1.25, 1.5, 2, 2.5].map(inches),
  price: 0,
  count: 100,
  source: '',
};
const glue: Glue = { id: 'wood', name: '', system: 'us', volume: 0.5, price: 0, bead_mm2: 7, source: '' };
const settings: FasteningInput['settings'] = {
  brad: 'brad18',
  lengths: [],
  spacing: inches(6),
  fromEdge: inches(0.5),
  shortOfFar: inches(0.125),
  bite: inches(0.25),
  screw: 'no8',
  screwOver_kg: 6,
};
const input = (more: Partial<FasteningInput>): FasteningInput => ({
  bed,
  face,
  keepClears: [],
  parts: [],
  solids: [],
  pieces: [],
  stocks: [],
  masses: [],
  settings,
  brad,
  screw,
  screws: [],
  glue,
  ...more,
});
const BRADS = { how: 'brads', glue: false } as const;
/** Distance of the two that stand nearest to each other. */
function nearest(at: readonly { x: number; y: number }[]): number {
  let least = Number.POSITIVE_INFINITY;
  at.forEach((p, i) => {
    for (const q of at.slice(0, i)) least = Math.min(least, Math.hypot(p.x - q.x, p.y - q.y));
  });
  return least;
}
const inInches = (mm: number | null | undefined) => +((mm ?? Number.NaN) / 25.4).toFixed(6);
const first = (more: Partial<FasteningInput>) => {
  const plan = planFastening(fastenParts(input(more)));
  const part = plan.parts[plan.parts.length - 1];
  if (!part) throw new Error('nothing fastened');
  return { plan, part };
};

describe('brad length, by hand', () => {
  const on = (z: number, box: [number, number, number, number], thickness = 0.75) => {
    const solid = blockInInches('strip', box, [z, z + thickness]);
    return first({ solids: [solid], parts: [stripOf(solid, BRADS)] });
  };

  it('3/4 in on the field: 1 1/4 in to the mattress, so 1 in', () => {
    const { part, plan } = on(-3.25, [5, 20, 30, 2.5]);
    expect([inInches(part.length), inInches(part.depth), inInches(part.bite)]).toEqual([1, 1.25, 0.25]);
    expect(part.fastener).toBe('brad18');
    expect(plan.checks).toEqual([]);
  });

  it('3/4 in on the ledge: 2 3/4 in, so the longest listed', () => {
    const { part } = on(-1.75, [1.5, 20, 1.5, 30]);
    expect([inInches(part.length), inInches(part.depth)]).toEqual([2, 2.75]);
  });

  it('3/4 in on the rim: the frame is deeper than any brad', () => {
    const { part } = on(0, [0, 20, 1.5, 30]);
    expect([inInches(part.length), inInches(part.depth)]).toEqual([2, 8]);
  });

  it('a length that stops short by exactly the margin is taken', () => {
    // 7/8 + 1/2 = 1 3/8, less 1/8: 1 1/4.
    expect(inInches(on(-3.25, [5, 20, 30, 2.5], 0.875).part.length)).toBe(1.25);
  });

  it('counts what lies between: 1/4 in over 3/4 in over the field', () => {
    const under = blockInInches('under', [5, 20, 30, 20], [-3.25, -2.5]);
    const over = blockInInches('over', [8, 25, 20, 2.5], [-2.5, -2.25]);
    const { part } = first({ solids: [under, over], parts: [panelOf(under, BRADS), stripOf(over, BRADS)] });
    expect([inInches(part.length), inInches(part.depth)]).toEqual([1.25, 1.5]);
  });

  it('only the lengths at hand', () => {
    const solid = blockInInches('strip', [5, 20, 30, 2.5], [-3.25, -2.5]);
    const own = { ...settings, lengths: [inches(1.5), inches(1.0625)] };
    const { part } = first({ solids: [solid], parts: [stripOf(solid, BRADS)], settings: own });
    expect(inInches(part.length)).toBe(1.0625);
  });

  it('half round: driven in at its crown, wide of it there is less wood', () => {
    const n = 180;
    const section = Array.from({ length: n + 1 }, (_, i) => ({
      x: 10 + 10 * Math.cos((Math.PI * i) / n),
      y: 10 * Math.sin((Math.PI * i) / n),
    }));
    const stock: Stock = {
      form: 'shaped',
      id: 'half-round',
      name: '',
      material: '',
      width: 20,
      thickness: 10,
      girth: 0,
      section,
      lengths: [],
    };
    const solid = {
      ...blockInInches('bead', [0, 0, 1, 1], [0, 1], { stock: 'half-round' }),
      region: regionOfBox({ x: 300, y: 500, w: 20, h: 400 }),
      z0: inches(-3.25),
      z1: inches(-3.25) + 10,
    };
    const { part } = first({ solids: [solid], parts: [stripOf(solid, BRADS)], stocks: [stock] });
    // Crown 10 and platform 12.7, less what the brad's own width takes off the crown.
    expect(part.depth).toBeLessThan(22.7);
    expect(part.depth).toBeGreaterThan(22.6);
    expect(inInches(part.length)).toBe(0.75);
  });
});

describe('when no listed length will do', () => {
  it('no room to bite: 1/16 in of wood short of the far side', () => {
    const solid = blockInInches('strip', [5, 20, 30, 2.5], [-3.25, -2.5]);
    const deep = { ...settings, bite: inches(0.5) };
    const { plan, part } = first({ solids: [solid], parts: [stripOf(solid, BRADS)], settings: deep });
    expect([part.length, part.at]).toEqual([null, []]);
    expect(plan.checks.map((c) => [c.code, c.severity, c.parts])).toEqual([
      ['fastening.no-brad', 'warning', ['strip']],
    ]);
    expect(inInches(Number(plan.checks[0]?.figures.room_mm))).toBe(1.125);
    expect(inInches(Number(plan.checks[0]?.figures.need_mm))).toBe(1.25);
  });

  it('all at hand are longer than there is wood: they would come out', () => {
    const solid = blockInInches('strip', [5, 20, 30, 2.5], [-3.25, -2.5]);
    const long = { ...settings, lengths: [inches(2), inches(1.5)] };
    const { plan, part } = first({ solids: [solid], parts: [stripOf(solid, BRADS)], settings: long });
    expect(part.at).toEqual([]);
    expect(plan.checks.map((c) => [c.code, c.figures.fastener])).toEqual([['fastening.through', 'brad']]);
    expect(inInches(Number(plan.checks[0]?.figures.length_mm))).toBe(1.5);
  });

  it('nothing solid: a strip that hangs over the recess', () => {
    const solid = blockInInches('strip', [5, 20, 30, 2.5], [0, 0.75]);
    const { plan } = first({ solids: [solid], parts: [stripOf(solid, BRADS)] });
    expect(plan.checks.map((c) => [c.code, c.severity])).toEqual([['fastening.nothing-solid', 'warning']]);
    expect(inInches(plan.checks[0]?.at?.x)).toBe(20);
  });

  it('a lamp is nothing solid', () => {
    const lamp = blockInInches('lamp', [5, 20, 30, 10], [-3.25, 0], { kind: 'fitting' });
    const solid = blockInInches('strip', [5, 20, 30, 2.5], [0, 0.75]);
    const { plan } = first({ solids: [lamp, solid], parts: [fittingOf(lamp), stripOf(solid, BRADS)] });
    expect(plan.checks.map((c) => [c.code, c.parts])).toEqual([['fastening.nothing-solid', ['strip']]]);
  });

  it('glue alone wants something solid too, and a part fixed by nothing does not', () => {
    const solid = blockInInches('strip', [5, 20, 30, 2.5], [0, 0.75]);
    const by = (how: 'glue' | 'none') =>
      first({ solids: [solid], parts: [stripOf(solid, { how, glue: false })] }).plan.checks.length;
    expect([by('glue'), by('none')]).toEqual([1, 0]);
  });
});

describe('places', () => {
  it('down the middle of a strip, ends in, none farther apart than the spacing', () => {
    const solid = blockInInches('strip', [5, 20, 30, 2.5], [-3.25, -2.5]);
    const { part } = first({ solids: [solid], parts: [stripOf(solid, BRADS)] });
    // 29 in between the outermost, five gaps of 5.8.
    expect(part.at.map((p) => inInches(p.x))).toEqual([5.5, 11.3, 17.1, 22.9, 28.7, 34.5]);
    expect(new Set(part.at.map((p) => inInches(p.y)))).toEqual(new Set([21.25]));
  });

  it('two rows on a wide strip', () => {
    const solid = blockInInches('board', [5, 20, 30, 5], [-3.25, -2.5]);
    const { part } = first({ solids: [solid], parts: [stripOf(solid, BRADS)] });
    expect(new Set(part.at.map((p) => inInches(p.y)))).toEqual(new Set([20.5, 24.5]));
    expect(part.at).toHaveLength(12);
  });

  it('a batten narrower than twice the edge distance keeps its middle and its ends clear', () => {
    const solid = blockInInches('batten', [5, 20, 0.5, 30], [-3.25, -2.5]);
    const { part } = first({ solids: [solid], parts: [stripOf(solid, BRADS)] });
    expect(new Set(part.at.map((p) => inInches(p.x)))).toEqual(new Set([5.25]));
    const ys = part.at.map((p) => p.y / 25.4);
    expect(Math.min(...ys)).toBeCloseTo(20.5, 3);
    expect(Math.max(...ys)).toBeCloseTo(49.5, 3);
  });

  it('a batten over two rails is held at the rails and nowhere between', () => {
    const rails = [20, 60].map((y, i) => blockInInches(`rail${i}`, [4, y, 32, 2.5], [-3.25, -2.5]));
    const batten = blockInInches('batten', [18, 20, 1.5, 42.5], [-2.5, -1.75]);
    const { part, plan } = first({
      solids: [...rails, batten],
      parts: [...rails.map((r) => stripOf(r, BRADS)), stripOf(batten, BRADS)],
    });
    expect(plan.checks).toEqual([]);
    expect(part.at.length).toBeGreaterThanOrEqual(2);
    for (const p of part.at) {
      const y = p.y / 25.4;
      expect((y > 20 && y < 22.5) || (y > 60 && y < 62.5)).toBe(true);
    }
    expect(part.at.some((p) => p.y / 25.4 > 60) && part.at.some((p) => p.y / 25.4 < 23)).toBe(true);
  });

  it('a strip whose middle hangs over the recess is held along the side that lies on the rim', () => {
    const solid = blockInInches('casing', [0, 20, 4, 30], [0, 0.75]);
    const { part } = first({ solids: [solid], parts: [stripOf(solid, BRADS)] });
    expect(part.at.length).toBeGreaterThan(3);
    for (const p of part.at) expect(p.x / 25.4).toBeLessThan(1.5);
  });

  it('around the edges of a panel and over its middle, clear of edges and openings', () => {
    const whole = blockInInches('panel', [5, 10, 30, 40], [-3.25, -3]);
    const [outer] = whole.region;
    const [hole] = regionOfBox({ x: inches(12), y: inches(20), w: inches(10), h: inches(10) });
    if (!outer || !hole) throw new Error('no region');
    const solid = {
      ...whole,
      region: [{ outer: outer.outer, holes: [[...hole.outer].reverse()] }],
    };
    const { part } = first({
      solids: [solid],
      parts: [panelOf(solid, BRADS)],
      settings: { ...settings, bite: inches(0.125) },
    });
    const clear = offset(solid.region, -(settings.fromEdge - 0.05), 'miter');
    for (const p of part.at) expect(containsPointInRegion(clear, p)).toBe(true);
    for (const corner of [
      [5.5, 10.5],
      [34.5, 10.5],
      [5.5, 49.5],
      [34.5, 49.5],
    ] as const) {
      const near = part.at.some((p) => Math.hypot(p.x / 25.4 - corner[0], p.y / 25.4 - corner[1]) < 0.01);
      expect(near).toBe(true);
    }
    const inMiddle = part.at.filter(
      (p) => p.x / 25.4 > 8 && p.x / 25.4 < 32 && p.y / 25.4 > 32 && p.y / 25.4 < 47,
    );
    expect(inMiddle.length).toBeGreaterThan(1);
  });

  it('clear of keep-clears', () => {
    const solid = blockInInches('strip', [5, 20, 30, 2.5], [-3.25, -2.5]);
    const box = { x: inches(10), y: inches(15), w: inches(10), h: inches(10) };
    const keepClears = [{ id: 'k', name: 'hinge', why: 'hinge' as const, box, height: 20 }];
    const { part } = first({ solids: [solid], parts: [stripOf(solid, BRADS)], keepClears });
    expect(part.at.map((p) => inInches(p.x))).toEqual([5.5, 22.9, 28.7, 34.5]);
  });

  it('a mitered frame: each piece by itself, clear of the miters', () => {
    const at = (x: number, y: number) => ({ x: inches(x), y: inches(y) });
    const corners = [at(5, 20), at(35, 20), at(35, 50), at(5, 50)];
    const inner = [at(7, 22), at(33, 22), at(33, 48), at(7, 48)];
    const middle = [at(6, 21), at(34, 21), at(34, 49), at(6, 49)];
    const next = <T>(list: readonly T[], i: number): T => list[(i + 1) % list.length] as T;
    const legs = middle.map(
      (start, i): Leg => ({
        start,
        end: next(middle, i),
        width: inches(2),
        thickness: inches(0.75),
        angle: 0,
      }),
    );
    const placed = corners.map((c, i) =>
      regionOfRing([c, next(corners, i), next(inner, i), inner[i] as typeof c]),
    );
    const pieces = placed.map(
      (region, i) => ({ id: `p${i}`, part: 'frame', placed: region }) as unknown as Piece,
    );
    const band = { outer: corners, holes: [[...inner].reverse()] };
    const solid = {
      ...blockInInches('frame', [5, 20, 30, 30], [-3.25, -2.5], { kind: 'run' }),
      region: [band],
    };
    const laid = {
      ...panelOf(solid, BRADS),
      kind: 'run',
      legs,
      closed: true,
      spec: {},
    } as unknown as LaidPart;
    const { part } = first({ solids: [solid], parts: [laid], pieces });
    for (const p of part.at) {
      const home = placed.filter((region) =>
        containsPointInRegion(offset(region, -(settings.fromEdge - 0.05), 'miter'), p),
      );
      expect(home).toHaveLength(1);
    }
    // 30 in outside and 26 inside: 28 less the miters' margin on the center line, five gaps on each side.
    expect(part.at).toHaveLength(24);
  });
});

describe('screws and glue', () => {
  const heavy = blockInInches('door', [5, 20, 30, 40], [-3.25, -2.5]);
  const door = (more: Partial<FasteningInput> = {}) =>
    first({ solids: [heavy], parts: [panelOf(heavy, BRADS)], masses: [{ part: 'door', mass: 8 }], ...more });

  it('a heavy part takes screws from behind, so that nothing shows', () => {
    const { plan, part } = door();
    expect([part.how, part.fastener, part.from]).toEqual(['screws', 'no8', 'back']);
    // 1/2 in of platform and 3/4 in of door less 1/8: at most 1 1/8; seven shanks (29 mm) cannot be had.
    expect([inInches(part.length), inInches(part.bite), inInches(part.depth)]).toEqual([1, 0.5, 1.25]);
    expect(plan.checks.map((c) => [c.code, c.severity, c.figures.mass_kg])).toEqual([
      ['fastening.screws', 'note', 8],
    ]);
  });

  it('the least length with seven shank diameters of thread where there is room', () => {
    const thick = blockInInches('door', [5, 20, 30, 40], [-3.25, -1.25]);
    const { part } = first({
      solids: [thick],
      parts: [panelOf(thick, { how: 'screws', glue: false })],
      masses: [],
    });
    // 1/2 in through the platform and 7 x 4.17 = 29.2 mm of thread: 1.65 in, so 2.
    expect([part.from, inInches(part.length)]).toEqual(['back', 2]);
  });

  it('over the frame, where no screw reaches from behind, from the front', () => {
    const rail = blockInInches('rail', [0, 20, 1.5, 30], [0, 0.75]);
    const { part } = first({ solids: [rail], parts: [stripOf(rail, { how: 'screws', glue: false })] });
    expect([part.from, inInches(part.length), inInches(part.bite)]).toEqual(['front', 2, 1.25]);
  });

  it('where some of it lies over the frame, brads there, beside the screws from behind', () => {
    const skinned = sampleBed({ skin: { thickness: inches(0.5), material: 'plywood' } });
    const { width } = faceOf(skinned).face;
    const fascia = blockInInches('fascia', [0, 20, width / 25.4, 16], [0, 0.5]);
    const plan = planFastening(
      fastenParts(
        input({
          bed: skinned,
          face: faceOf(skinned).face,
          solids: [fascia],
          parts: [panelOf(fascia, { how: 'brads', glue: true })],
          masses: [{ part: 'fascia', mass: 8 }],
        }),
      ),
    );
    const [screws, brads] = plan.parts;
    expect(plan.parts.map((p) => [p.part, p.how, p.from])).toEqual([
      ['fascia', 'screws', 'back'],
      ['fascia', 'brads', 'front'],
    ]);
    expect(brads?.glue).toBe(0);
    for (const p of screws?.at ?? []) {
      expect(p.x).toBeGreaterThan(skinned.frame.thickness);
      expect(p.x).toBeLessThan(width - skinned.frame.thickness);
    }
    // Along both ends, and none where a screw holds already: 9 in around each.
    for (const at of [inches(0.5), width - inches(0.5)]) {
      expect((brads?.at ?? []).filter((p) => Math.abs(p.x - at) < 0.1).length).toBeGreaterThanOrEqual(2);
    }
    for (const p of brads?.at ?? []) {
      for (const q of screws?.at ?? []) expect(Math.hypot(p.x - q.x, p.y - q.y)).toBeGreaterThan(inches(9));
    }
    expect(plan.checks.map((c) => c.code)).toEqual(['fastening.screws']);
    expect(plan.use.map((u) => u.how).sort()).toEqual(['brads', 'screws']);
  });

  it('says when every screw that bites comes out', () => {
    const { plan } = door({ screw: { ...screw, lengths: [inches(2)] } });
    expect(plan.checks.map((c) => [c.code, c.figures.fastener])).toEqual(
      [
        ['fastening.screws', undefined],
        ['fastening.through', 'screw'],
      ].reverse(),
    );
  });

  it('a light part that stands out far from a low base takes screws too', () => {
    // A shelf 6 in deep and 3/4 in high: 2 kg x 3 / 0.75 pull at its upper fasteners as 8 kg do.
    const shelf = blockInInches('shelf', [5, 20, 30, 0.75], [-3.25, 2.75]);
    const with2kg = (screwOver_kg: number) =>
      first({
        solids: [shelf],
        parts: [stripOf(shelf, BRADS)],
        masses: [{ part: 'shelf', mass: 2 }],
        settings: { ...settings, screwOver_kg },
      });
    const { part, plan } = with2kg(7.9);
    expect(part.how).toBe('screws');
    const lever = plan.checks.find((c) => c.code === 'fastening.lever');
    expect(lever?.severity).toBe('note');
    expect(lever?.figures.out_mm).toBeCloseTo(inches(6), 9);
    expect(lever?.figures.base_mm).toBeCloseTo(inches(0.75), 9);
    expect(with2kg(8.1).part.how).toBe('brads');
  });

  it('a light part keeps its brads', () => {
    expect(door({ masses: [{ part: 'door', mass: 6 }] }).part.how).toBe('brads');
  });

  it('a fitting brings its own', () => {
    const lamp = blockInInches('lamp', [10, 30, 5, 5], [-3.25, 0], { kind: 'fitting' });
    const { part, plan } = first({ solids: [lamp], parts: [fittingOf(lamp)] });
    expect([part.how, part.fastener, part.at, part.glue]).toEqual(['screws', null, [], 0]);
    expect(plan.checks).toEqual([]);
    expect(plan.use).toEqual([]);
  });

  it('glue by the bead: one along a strip, several under a sheet', () => {
    const strip = blockInInches('strip', [5, 20, 30, 2.5], [-3.25, -2.5]);
    const glued = { how: 'brads', glue: true } as const;
    // 30 in of a 7 mm2 bead.
    expect(first({ solids: [strip], parts: [stripOf(strip, glued)] }).part.glue).toBeCloseTo(
      (7 * 762) / 1e6,
      9,
    );
    const sheet = blockInInches('sheet', [5, 20, 30, 40], [-3.25, -2.5]);
    const { part, plan } = first({ solids: [sheet], parts: [panelOf(sheet, { how: 'glue', glue: false })] });
    // 30 in across holds ten beads of 40 in.
    expect(part.glue).toBeCloseTo((7 * 10 * 1016) / 1e6, 9);
    expect(plan.glue).toBe(part.glue);
    expect(first({ solids: [strip], parts: [stripOf(strip, BRADS)] }).part.glue).toBe(0);
  });

  it('counts what the whole face takes, by length', () => {
    const a = blockInInches('a', [5, 20, 30, 2.5], [-3.25, -2.5]);
    const b = blockInInches('b', [5, 30, 30, 2.5], [-3.25, -2.5]);
    const c = blockInInches('c', [1.5, 20, 1.5, 30], [-1.75, -1]);
    const plan = planFastening(
      fastenParts(input({ solids: [a, b, c], parts: [a, b, c].map((s) => stripOf(s, BRADS)) })),
    );
    expect(plan.use.map((u) => [u.how, u.fastener, inInches(u.length), u.count])).toEqual([
      ['brads', 'brad18', 1, 12],
      ['brads', 'brad18', 2, 6],
    ]);
  });

  it('a spacing that nobody drives stays within what the wood takes: ten diameters', () => {
    const strip = blockInInches('strip', [5, 20, 30, 2.5], [-3.25, -2.5]);
    const sheet = blockInInches('sheet', [5, 30, 30, 40], [-3.25, -2.5]);
    const close = { ...settings, spacing: 1e-9 };
    // EN 1995-1-1, table 8.2: 10 d are 12.1 mm, and 29 in of row are 60 times that, so 61 brads.
    const row = first({ solids: [strip], parts: [stripOf(strip, BRADS)], settings: close }).part.at;
    expect(row).toHaveLength(61);
    const field = first({ solids: [sheet], parts: [panelOf(sheet, BRADS)], settings: close }).part.at;
    expect(field.length).toBeGreaterThan(500);
    expect(field.length).toBeLessThan(3000);
    for (const at of [row, field]) expect(nearest(at)).toBeGreaterThanOrEqual(10 * brad.diameter - 1e-6);
  });
});

describe('a brad or screw that no table lists', () => {
  const strips = ['one', 'two'].map((id, i) => blockInInches(id, [5, 20 + 10 * i, 30, 2.5], [-3.25, -2.5]));
  const parts = (how: 'brads' | 'screws') => strips.map((s) => stripOf(s, { how, glue: false }));

  it.each([
    ['brads', 'brad', 'brad18', { brad: null }],
    ['screws', 'screw', 'no8', { screw: null }],
  ] as const)(
    '%s: told once, as an error, with the name that the design gives',
    (how, fastener, id, more) => {
      const plan = planFastening(fastenParts(input({ solids: strips, parts: parts(how), ...more })));
      expect(plan.checks).toEqual([
        { code: 'fastening.unknown', severity: 'error', parts: ['one', 'two'], figures: { fastener, id } },
      ]);
      expect(plan.parts.every((p) => p.length === null && p.at.length === 0)).toBe(true);
    },
  );

  it('matters only where something is driven by it', () => {
    expect(
      planFastening(fastenParts(input({ solids: strips, parts: parts('brads'), screw: null }))).checks,
    ).toEqual([]);
  });
});

describe('two boards that abut', () => {
  // Stiles of 3 in side by side on the field, their joint at x = 20; a strip up over the joint.
  const stile = (id: string, x: number) => blockInInches(id, [x, 10, 3, 50], [-3.25, -2.5]);
  const stiles = [stile('left', 17), stile('right', 20)];
  const over = (width: number, extra: object = {}) => {
    const bead = blockInInches('bead', [20 - width / 2, 10, width, 50], [-2.5, -2]);
    const solids = [...stiles, bead];
    const parts = [...stiles.map((s) => panelOf(s, BRADS)), stripOf(bead, BRADS)];
    return first({ solids, parts, ...extra }).part.at;
  };

  it.each([0.75, 1, 1.5, 2.5, 3.5])('a strip %s in wide has no brad in their joint', (width) => {
    const at = over(width);
    expect(at.length).toBeGreaterThan(7);
    for (const { x } of at) {
      const off = Math.abs(x - inches(20));
      expect(off).toBeGreaterThanOrEqual(2 * brad.diameter - 0.02);
      expect(off).toBeLessThanOrEqual(inches(width / 2) - 2 * brad.diameter + 0.02);
    }
  });

  it('a bead takes one row, all on the same board', () => {
    const sides = new Set(over(0.75).map(({ x }) => Math.sign(x - inches(20))));
    expect(sides.size).toBe(1);
  });

  it('a panel over them keeps the edge distance on both sides of the joint', () => {
    const sheet = blockInInches('sheet', [17, 10, 6, 50], [-2.5, -2]);
    const solids = [...stiles, sheet];
    const { part } = first({ solids, parts: solids.map((s) => panelOf(s, BRADS)) });
    expect(part.at.length).toBeGreaterThan(10);
    for (const { x } of part.at) {
      expect(Math.abs(x - inches(20))).toBeGreaterThanOrEqual(inches(0.5) - 0.02);
    }
  });
});

describe('keep-clears that take nearly all places of a part', () => {
  const hinge = (x: number, w: number) => {
    const box = { x: inches(x), y: inches(15), w: inches(w), h: inches(10) };
    return { id: `k${x}`, name: 'hinge', why: 'hinge' as const, box, height: 20 };
  };
  // A strip from 10 to 20 has places at 10.5, 15 and 19.5.
  const strip = blockInInches('strip', [10, 20, 10, 2.5], [-3.25, -2.5]);
  const drive = (keepClears: FasteningInput['keepClears']) =>
    first({ solids: [strip], parts: [stripOf(strip, BRADS)], keepClears }).part.at.map((p) => inInches(p.x));

  it('move the places along where there is room', () => {
    expect(drive([])).toEqual([10.5, 15, 19.5]);
    const moved = drive([hinge(10, 1), hinge(14, 2)]);
    // Clear of the hinges by the edge distance: from 11.5 to 13.5 and from 16.5 on.
    expect(moved[0]).toBeGreaterThanOrEqual(11.5 - 0.001);
    expect(moved.length).toBeGreaterThanOrEqual(2);
    for (const x of moved) expect((x >= 11.5 && x <= 13.5) || x >= 16.5).toBe(true);
  });

  it('stand nearer to the hinge where there is no more room', () => {
    const moved = drive([hinge(9, 9.75), hinge(19.25, 2)]);
    // Half an inch is left between the hinges: enough for two brads side by side, with no edge distance.
    expect(moved).toEqual([19, 19]);
  });

  it('and leave them out where two others stay', () => {
    expect(drive([hinge(14, 2)])).toEqual([10.5, 19.5]);
  });
});
