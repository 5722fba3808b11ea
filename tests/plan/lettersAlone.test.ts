import { difference, type Geom, intersection, union } from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import { readSupplies } from '../../src/command/supplies.ts';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Lettering, Part, PartOf } from '../../src/design/schema.ts';
import { flatten } from '../../src/drawing/walk.ts';
import { boxOfPath } from '../../src/geometry/path.ts';
import { areaOf, boxOf, translateRegion } from '../../src/geometry/region.ts';
import type { Region } from '../../src/geometry/shape.ts';
import { isLetterOf } from '../../src/plan/letters.ts';
import { createPlanner, plan } from '../../src/plan/plan.ts';
import type { Plan } from '../../src/plan/types.ts';

const QUICK = { effort: { nodes: 500 } };
const at = (x: number, y: number, w: number, h: number) => ({ x, y, w, h });
const board = (id: string, x: number, w: number, more: Partial<PartOf<'panel'>> = {}): PartOf<'panel'> => ({
  ...newPart('panel', { id, name: id, box: at(x, 600, w, 400), finish: 'ground', stock: 'mdf-half' }),
  on: 'field',
  ...more,
});
/** Two panels side by side, a thinner strip of sheet over the second, and a knob. */
const PARTS: readonly Part[] = [
  board('west', 200, 300),
  board('east', 500, 300),
  { ...board('ledge', 650, 60), on: 'east', stock: 'mdf-quarter' },
];
const knob: Part = {
  ...newPart('fitting', { id: 'knob', name: 'Knob', box: at(330, 780, 40, 40) }),
  on: 'west',
};

const lettered = (changes: Partial<Lettering> = {}, box = at(230, 700, 540, 200)): PartOf<'lettering'> => {
  const part = newPart('lettering', { id: 'words', name: 'Words', box, finish: 'trim' });
  const lettering = { ...part.lettering, lines: [{ text: 'HARBOR' }], capHeight: 120, ...changes };
  return { ...part, on: 'west', lettering };
};
const design = (...parts: readonly Part[]): Design => ({ ...newDesign(), parts: [...parts] });
const SUPPLIES = readSupplies(design(lettered()));
const planned = (...parts: readonly Part[]): Plan => plan(design(...parts), SUPPLIES, QUICK);

const inkOf = ({ signs }: Plan): Region =>
  signs.flatMap(({ lettered: { glyphs }, at: { x, y } }) =>
    glyphs.flatMap(({ region }) => translateRegion(region, x, y)),
  );
const lettersSeen = (p: Plan) =>
  p.finish.shown.filter(({ part, finish }) => part === 'words' && finish === 'trim');
const areaSeen = (p: Plan): number => lettersSeen(p).reduce((sum, { region }) => sum + areaOf(region), 0);
const painted = (p: Plan): number =>
  p.finish.jobs.filter(({ part }) => part === 'words').reduce((sum, { face }) => sum + face, 0) * 1e6;

/** The other library's word for an area: it cuts in decimals without end. */
const geom = (region: Region): Geom =>
  region.map(({ outer, holes }) =>
    [outer, ...holes].map((ring) => ring.map(({ x, y }): [number, number] => [x, y])),
  );
const other = (multi: ReturnType<typeof union>): number =>
  multi.reduce(
    (sum, rings) =>
      sum +
      rings.reduce((area, ring, i) => {
        const own = Math.abs(
          ring.reduce((twice, [x, y], k) => {
            const [nx, ny] = ring[(k + 1) % ring.length] ?? [x, y];
            return twice + x * ny - nx * y;
          }, 0) / 2,
        );
        return area + (i === 0 ? own : -own);
      }, 0),
    0,
  );
const crossing = (p: Plan) => p.checks.filter(({ code }) => code === 'lettering.crosses');

describe('letters without a board', () => {
  it('are painted on whatever is beneath, at every height, once, as a second library finds it', () => {
    const p = planned(...PARTS, lettered());
    const area = other(union(geom(inkOf(p))));
    expect(areaSeen(p) / area).toBeCloseTo(1, 6);
    expect(painted(p) / area).toBeCloseTo(1, 6);
    const heights = new Set(lettersSeen(p).map(({ z }) => z));
    expect(heights.size).toBe(2);
    const ledge = p.layout.parts.find(({ id }) => id === 'ledge');
    const raised = lettersSeen(p).filter(({ z }) => z === ledge?.z1);
    expect(raised.reduce((sum, { region }) => sum + areaOf(region), 0)).toBeCloseTo(
      other(intersection(geom(inkOf(p)), geom(ledge?.region ?? []))),
      3,
    );
  });

  it('take nothing away from what is seen in all, and nothing of what is beneath but themselves', () => {
    const [bare, p] = [planned(...PARTS), planned(...PARTS, lettered())];
    const seen = (of: Plan, finish: string | null) =>
      of.finish.shown.filter((s) => s.finish === finish).reduce((sum, { region }) => sum + areaOf(region), 0);
    expect(seen(p, 'ground')).toBeCloseTo(seen(bare, 'ground') - areaSeen(p), 3);
    expect(p.load.added).toEqual(bare.load.added);
    expect(p.joinery.pieces).toHaveLength(bare.joinery.pieces.length);
    expect(p.fastening.use).toEqual(bare.fastening.use);
    expect(p.checks.filter(({ code }) => code === 'part.overlap')).toEqual([]);
  });

  it('are not painted where something bought is, and say so', () => {
    const p = planned(...PARTS, knob, lettered());
    const square = geom(p.layout.parts.find(({ id }) => id === 'knob')?.region ?? []);
    expect(areaSeen(p)).toBeCloseTo(other(difference(geom(inkOf(p)), square)), 3);
    expect(p.checks.filter(({ code }) => code === 'lettering.off-sign')).toMatchObject([
      { severity: 'warning', parts: ['words'], figures: { by: 'cover' } },
    ]);
  });

  it('tell which of them cross a joint and which an edge, and how high it is', () => {
    const p = planned(...PARTS, lettered());
    const letters = (...edges: readonly number[]) =>
      (p.signs[0]?.lettered.glyphs ?? []).flatMap(({ character, region }) => {
        const box = boxOf(region);
        const low = (box?.x ?? 0) + 230;
        return edges.some((x) => low < x && x < low + (box?.w ?? 0)) ? [character] : [];
      });
    const step = 6.35;
    const edge = letters(650, 710);
    const joint = letters(500).filter((character) => !edge.includes(character));
    expect(edge.length).toBeGreaterThan(0);
    expect(crossing(p).map(({ severity, figures }) => ({ severity, ...figures }))).toEqual([
      {
        severity: 'warning',
        by: 'edge',
        characters: [...new Set(edge)].join(' '),
        step_mm: expect.closeTo(step, 1),
        make: 'pounce',
      },
      ...(joint.length > 0
        ? [{ severity: 'note', by: 'joint', characters: joint.join(' '), step_mm: 0, make: 'pounce' }]
        : []),
    ]);
    expect(crossing(planned(...PARTS, lettered({ capHeight: 40 }, at(220, 650, 250, 100))))).toEqual([]);
  });

  it('have the edges that they cross on their pattern, where these are', () => {
    const p = planned(...PARTS, lettered());
    const upright = (p.seams.get('words') ?? []).filter(([a, b]) => Math.abs(a.x - b.x) < 1e-6);
    expect([...new Set(upright.map(([a]) => Math.round(a.x)))].sort((a, b) => a - b)).toEqual([
      500, 650, 710,
    ]);
    const set = p.patterns.find((one) => one.for === 'words');
    expect(JSON.stringify(set?.pages[0]?.drawing)).toContain('joints beneath');
  });

  it('are lettered once all is fastened and painted', () => {
    const steps = planned(...PARTS, lettered()).marks.steps;
    const place = (act: string) => steps.findLastIndex((step) => step.act === act);
    const letter = place('letter');
    expect(steps[letter]?.parts).toEqual(['words']);
    for (const act of ['fix', 'paint-before', 'last-coat', 'paint-after'])
      expect(place(act)).toBeLessThan(letter);
  });

  it('stand on a ground of their own where that has a finish, painted in place', () => {
    const p = planned(...PARTS, {
      ...lettered(),
      finish: 'trim',
      lettering: { ...lettered().lettering, finish: 'ground' },
    });
    const ground = p.finish.shown.filter(({ part, finish }) => part === 'words' && finish === 'trim');
    const seen = ground.reduce((sum, { region }) => sum + areaOf(region), 0);
    const room = geom(p.layout.parts.find(({ id }) => id === 'words')?.region ?? []);
    expect(seen).toBeCloseTo(other(difference(room, geom(inkOf(p)))), 2);
    expect(p.finish.jobs.filter(({ part }) => part === 'words').map(({ act }) => act)).toEqual([
      'paint-after',
      'letter',
    ]);
  });

  it('are sawn and glued on one by one where they are cut out, their glue counted', () => {
    const p = planned(
      ...PARTS,
      lettered({ make: 'cut-out', stock: 'mdf-quarter', capHeight: 60 }, at(220, 650, 250, 100)),
    );
    const letters = p.joinery.pieces.filter((piece) => isLetterOf('words', piece));
    const west = p.layout.parts.find(({ id }) => id === 'west');
    expect(letters).toHaveLength(6);
    for (const letter of letters) expect(letter.z0).toBe(west?.z1);
    expect(p.fastening.parts.find(({ part }) => part === 'words')).toMatchObject({ how: 'glue' });
    expect(p.fastening.glue).toBeGreaterThan(planned(...PARTS).fastening.glue);
    expect(p.marks.steps.filter(({ act }) => act === 'mount-letters').map(({ parts }) => parts)).toEqual([
      ['words'],
    ]);
  });

  it('reach past the face only with an error', () => {
    const far = planned(...PARTS, lettered({ capHeight: 700 }));
    expect(far.checks.filter(({ code }) => code === 'lettering.off-sign')).toMatchObject([
      { severity: 'error', figures: { by: 'face' } },
    ]);
  });

  it('come out the same from a planner that remembers what was beneath', () => {
    const planner = createPlanner();
    planner(design(...PARTS, lettered()), SUPPLIES, QUICK);
    const moved = design(
      ...PARTS.map((p) => (p.id === 'ledge' ? { ...p, box: { ...p.box, x: 600 } } : p)),
      lettered(),
    );
    const [again, anew] = [planner(moved, SUPPLIES, QUICK), plan(moved, SUPPLIES, QUICK)];
    expect(again.finish.uses).toEqual(anew.finish.uses);
    expect(again.seams).toEqual(anew.seams);
    expect(again.checks).toEqual(anew.checks);
  });

  it('lie on strips, and on what is put together of strips and panels, each counted once', () => {
    const slat = (id: string, y: number): Part => ({
      ...newPart('strip', { id, name: id, box: at(200, y, 600, 80), finish: 'ground' }),
      on: 'field',
    });
    const base = design(
      slat('top', 700),
      slat('foot', 780),
      lettered({ capHeight: 100 }, at(220, 690, 560, 180)),
    );
    const door: Design = { ...base, groups: [{ id: 'door', name: 'Door', parts: ['top', 'foot'] }] };
    const p = plan(door, SUPPLIES, QUICK);
    const strips = p.layout.parts
      .filter(({ id }) => id === 'top' || id === 'foot')
      .map(({ region }) => region);
    const onStrips = other(intersection(geom(inkOf(p)), geom(strips.flat())));
    const top = p.layout.parts.find(({ id }) => id === 'top')?.z1 ?? Number.NaN;
    const raised = lettersSeen(p).filter(({ z }) => Math.abs(z - top) < 1e-6);
    expect(raised.reduce((sum, { region }) => sum + areaOf(region), 0)).toBeCloseTo(onStrips, 2);
    expect(painted(p) / other(union(geom(inkOf(p))))).toBeCloseTo(1, 6);
  });

  it('stand several to a board, each a block of its own, and are painted and located one by one', () => {
    const block = (id: string, y: number, changes: Partial<Lettering>): PartOf<'lettering'> => ({
      ...lettered({ capHeight: 40, ...changes }, at(220, y, 260, 80)),
      id,
      name: id,
    });
    const p = planned(
      ...PARTS,
      block('words', 880, { lines: [{ text: 'MENU' }] }),
      block('list', 700, {
        lines: [
          { text: 'Tea', mark: 'bullet' },
          { text: 'Rolls', mark: 'bullet' },
        ],
        capHeight: 20,
      }),
    );
    expect(p.signs.map(({ id }) => id)).toEqual(['words', 'list']);
    for (const sign of p.signs) {
      const ink = sign.lettered.glyphs.flatMap(({ region }) => translateRegion(region, sign.at.x, sign.at.y));
      const jobs = p.finish.jobs.filter(({ part }) => part === sign.id);
      const area = jobs.reduce((sum, { face }) => sum + face, 0) * 1e6;
      expect(area / other(union(geom(ink)))).toBeCloseTo(1, 5);
      expect(p.patterns.some((set) => set.for === sign.id)).toBe(true);
    }
    expect(p.marks.steps.filter(({ act }) => act === 'letter').flatMap(({ parts }) => parts)).toEqual([
      'words',
      'list',
    ]);
  });

  it('run along the outline of a shape that is not painted, as a path for them', () => {
    const ring = { ...lettered({ capHeight: 30, along: 'outside', margin: 5 }, at(250, 680, 180, 180)) };
    const p = planned(...PARTS, { ...ring, shape: { form: 'round' } });
    const middle = { x: 250 + 90, y: 680 + 90 };
    const far = inkOf(p).flatMap(({ outer }) =>
      outer.map(({ x, y }) => Math.hypot(x - middle.x, y - middle.y)),
    );
    expect(Math.min(...far)).toBeGreaterThan(94);
    expect(Math.max(...far)).toBeLessThan(95 + 32);
    expect(areaSeen(p) / other(union(geom(inkOf(p))))).toBeCloseTo(1, 5);
    expect(p.finish.shown.some(({ part, finish }) => part === 'words' && finish !== 'trim')).toBe(false);
  });

  it('stand several on a printed notice, each a print of its own on a shared page, none over another', () => {
    const sign = newPart('sign', { id: 'notice', name: 'Notice', box: at(300, 500, 160, 110) });
    const own = {
      ...sign.lettering,
      make: 'printed' as const,
      lines: [{ text: 'FRESH EGGS' }],
      capHeight: 16,
    };
    const notice = { ...sign, finish: 'ground', lettering: { ...own, shift: { x: 0, y: 30 } } };
    const block = (id: string, y: number, text: string): PartOf<'lettering'> => ({
      ...lettered({ make: 'printed', lines: [{ text }], capHeight: 9 }, at(310, y, 140, 22)),
      ...{ id, name: id, on: 'notice' },
    });
    const p = planned(notice, block('price', 540, 'A DOZEN 4'), block('hours', 508, 'EIGHT TO FIVE'));
    expect(p.checks.filter(({ severity }) => severity === 'error')).toEqual([]);
    const sets = p.patterns.filter((set) => set.for === 'prints');
    expect(sets.map((set) => set.pages.length)).toEqual([1]);
    const papers = sets
      .flatMap((set) => set.pages)
      .flatMap(({ drawing }) => flatten(drawing.items).paths)
      .filter(({ layer, item }) => layer === 'ground' && item.fill !== undefined)
      .map(({ path }) => boxOfPath(path));
    // Sizes of the boxes with a bleed of 1/8 in all around.
    const sizes = papers.map(({ w, h }) => [Math.round(w), Math.round(h)]).sort(([a = 0], [b = 0]) => a - b);
    expect(sizes).toEqual([
      [146, 28],
      [146, 28],
      [166, 116],
    ]);
    const corners = papers.map(
      ({ x, y, w, h }): Geom => [
        [
          [x, y],
          [x + w, y],
          [x + w, y + h],
          [x, y + h],
        ],
      ],
    );
    const [first = [], ...others] = corners;
    expect(other(union(first, ...others))).toBeCloseTo(2 * 146.35 * 28.35 + 166.35 * 116.35, 2);
    // Seen where they were put: each block's ink lies on the notice, and within its own box.
    for (const [id, low] of [
      ['price', 540],
      ['hours', 508],
    ] as const) {
      const one = p.signs.find((made) => made.id === id);
      const ink = boxOf(one?.lettered.glyphs.flatMap(({ region }) => region) ?? []);
      expect((ink?.y ?? 0) + (one?.at.y ?? 0)).toBeGreaterThan(low);
      expect((ink?.y ?? 0) + (ink?.h ?? 0) + (one?.at.y ?? 0)).toBeLessThan(low + 22);
    }
    expect(p.fastening.parts.filter(({ how }) => how === 'glue').map(({ part }) => part)).toEqual([
      'price',
      'hours',
    ]);
  });

  it('that are printed count their pages, the cover of the patterns, and the glue under them on the shopping list', () => {
    const room = at(220, 650, 250, 100);
    const [traced, printed] = (['trace', 'printed'] as const).map((make) =>
      planned(...PARTS, lettered({ make, capHeight: 40 }, room)),
    );
    if (!traced || !printed) throw new Error('two plans expected');
    const paper = (p: Plan) =>
      p.shopping.filter(({ kind }) => kind === 'paper').reduce((sum, { count }) => sum + count, 0);
    const pages = (p: Plan) => p.patterns.reduce((sum, set) => sum + set.pages.length, 0);
    expect(pages(printed)).toBeGreaterThan(0);
    expect(paper(printed)).toBe(pages(printed) + 1);
    const glue = printed.fastening.glue - traced.fastening.glue;
    expect(glue).toBeGreaterThan(0);
    expect(printed.fastening.parts.find(({ part }) => part === 'words')).toMatchObject({ how: 'glue', glue });
    expect(printed.shopping.some(({ kind }) => kind === 'glue')).toBe(true);
  });
});
