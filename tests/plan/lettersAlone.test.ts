import { difference, type Geom, intersection, union } from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import { readSupplies } from '../../src/command/supplies.ts';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Lettering, Part, PartOf } from '../../src/design/schema.ts';
import { flatten } from '../../src/drawing/walk.ts';
import { boxOfPath } from '../../src/geometry/path.ts';
import { areaOf, boxOf, ringOfBox, translateRegion } from '../../src/geometry/region.ts';
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

  it('in the color of any one thing that they lie across are told as unreadable there (WCAG 2.x: 1 to 1)', () => {
    const ratios = (...parts: readonly Part[]) =>
      planned(...parts)
        .checks.filter(({ code }) => code === 'lettering.low-contrast')
        .map(({ figures }) => figures.ratio);
    const words = lettered({ finish: 'trim' });
    expect(ratios(...PARTS, words)).toEqual([]);
    // The ledge, under the last letters, in their own color; the boards beside it are not.
    const same = PARTS.map((part) => (part.id === 'ledge' ? { ...part, finish: 'trim' } : part));
    expect(ratios(...same, words)).toEqual([1]);
    // Beneath what no letter touches, nothing is told.
    const away = same.map((part) => (part.id === 'ledge' ? { ...part, box: at(745, 600, 50, 90) } : part));
    expect(ratios(...away, words)).toEqual([]);
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

  /** A printed notice of 160 by 110 with two blocks on it, or where else they are put. */
  const notice = (blocks: readonly { id: string; x: number; y: number; on?: string }[]) => {
    const sign = newPart('sign', { id: 'notice', name: 'Notice', box: at(300, 500, 160, 110) });
    const own = {
      ...sign.lettering,
      make: 'printed' as const,
      lines: [{ text: 'FRESH EGGS' }],
      capHeight: 16,
    };
    return planned(
      { ...sign, finish: 'ground', lettering: { ...own, shift: { x: 0, y: 30 } } },
      ...blocks.map(
        ({ id, x, y, on = 'notice' }): PartOf<'lettering'> => ({
          ...lettered({ make: 'printed', lines: [{ text: id }], capHeight: 9 }, at(x, y, 140, 22)),
          ...{ id, name: id, on },
        }),
      ),
    );
  };
  const drawn = (p: Plan) =>
    p.patterns.flatMap((set) => set.pages).flatMap(({ drawing }) => flatten(drawing.items).paths);
  const glued = (p: Plan) => p.fastening.parts.filter(({ how }) => how === 'glue').map(({ part }) => part);

  it('several on a printed notice are one print on one paper: one line to trim, glued once, mounted once', () => {
    const bare = notice([]);
    const p = notice([
      { id: 'price', x: 310, y: 540 },
      { id: 'hours', x: 310, y: 508 },
    ]);
    expect(p.checks.filter(({ severity }) => severity === 'error')).toEqual([]);
    const sets = p.patterns.filter((set) => ['notice', 'price', 'hours', 'prints'].includes(set.for));
    expect(sets.map((set) => [set.for, set.pages.length])).toEqual([['notice', 1]]);
    expect(drawn(p).filter(({ layer }) => layer === 'trim')).toHaveLength(1);
    const papers = drawn(p).filter(({ layer, item }) => layer === 'ground' && item.fill !== undefined);
    expect(
      papers.map(({ path }) => boxOfPath(path)).map(({ w, h }) => [Math.round(w), Math.round(h)]),
    ).toEqual([[166, 116]]);
    // All that the blocks say is printed: as much more ink than without them as they have.
    const inks = (one: Plan) => one.signs.reduce((sum, { lettered: { ink_mm2 } }) => sum + ink_mm2, 0);
    expect(inks(p)).toBeGreaterThan(inks(bare));
    const letters = (one: Plan) => drawn(one).filter(({ layer }) => layer === 'fill').length;
    expect(letters(p)).toBe(letters(bare) + 2);
    // No glue for paper on paper, and one step for all of it.
    expect(p.fastening.glue).toBeCloseTo(bare.fastening.glue, 12);
    expect(glued(p)).toEqual(glued(bare));
    const steps = p.marks.steps.filter(({ act }) => act === 'mount-print');
    expect(steps.flatMap(({ parts }) => parts)).toEqual(['notice']);
    expect(p.shopping.filter(({ kind }) => kind === 'paper')).toEqual(
      bare.shopping.filter(({ kind }) => kind === 'paper'),
    );
  });

  it('are papers of their own apart on wood, and one where they meet, glued under what both cover', () => {
    const glueOf = (p: Plan) => p.fastening.glue;
    const one = (x: number, y: number, id: string) => ({ id, x, y, on: 'field' });
    const [first, apart, meeting] = [
      notice([one(600, 500, 'price')]),
      notice([one(600, 500, 'price'), one(600, 540, 'hours')]),
      notice([one(600, 500, 'price'), one(670, 511, 'hours')]),
    ];
    const trims = (p: Plan) => drawn(p).filter(({ layer }) => layer === 'trim').length;
    expect([first, apart, meeting].map((p) => trims(p))).toEqual([2, 3, 2]);
    const bare = glueOf(notice([]));
    const sheet = glueOf(first) - bare;
    expect((glueOf(apart) - bare) / sheet).toBeCloseTo(2, 9);
    // By the other library: what two boxes of 140 x 22 cover that are 70 and 11 apart.
    const box = (x: number, y: number): Geom => geom([{ outer: ringOfBox(at(x, y, 140, 22)), holes: [] }]);
    const both = other(union(box(600, 500), box(670, 511)));
    expect(both).toBeCloseTo(2 * 140 * 22 - 70 * 11, 6);
    expect((glueOf(meeting) - bare) / sheet).toBeCloseTo(both / (140 * 22), 6);
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
