import { describe, expect, it } from 'vitest';
import type { Check } from '../../src/check/check.ts';
import { CHECK_CODES, type CheckCode } from '../../src/check/codes.ts';
import { newPart } from '../../src/design/defaults.ts';
import type { Design, Part, Rule } from '../../src/design/schema.ts';
import { createPlanner } from '../../src/plan/plan.ts';
import { EN } from '../../src/plan/words/en.ts';
import { sayFor } from '../../src/plan/words/say.ts';
import { checkMessage } from '../../src/plan/words/words.ts';
import { pngPhoto } from '../lettering/photos.ts';
import { kiosk, SUPPLIES } from './starters.ts';

const box = (x: number, y: number, w: number, h: number) => ({ x, y, w, h });
const base = kiosk();

const withParts = (...parts: Part[]): Design => ({ ...base, parts: [...base.parts, ...parts] });
const withRules = (...rules: Rule[]): Design => ({ ...base, rules: [...base.rules, ...rules] });
const changed = (id: string, change: (p: Part) => Part): Design => ({
  ...base,
  parts: base.parts.map((p) => (p.id === id ? change(p) : p)),
});
const strip = (id: string, x: number, y: number, w = 200): Extract<Part, { kind: 'strip' }> =>
  newPart('strip', {
    id,
    name: `Strip ${id}`,
    box: box(x, y, w, 38.1),
    stock: 'pine-1x2',
    finish: 'sailcloth',
  });
const sign = (lettering: object): Design =>
  changed('sign', (p) => (p.kind === 'sign' ? { ...p, lettering: { ...p.lettering, ...lettering } } : p));
const stenciled = (options: object): Design =>
  changed('sign', (p) =>
    p.kind === 'sign'
      ? { ...p, lettering: { ...p.lettering, stencil: { ...p.lettering.stencil, ...options } } }
      : p,
  );
const bed = (change: Partial<Design['bed']>): Design => ({ ...base, bed: { ...base.bed, ...change } });
const measured = (rim: NonNullable<Design['bed']['measured']>['rim']): Design =>
  bed({ measured: { rim, field: {}, keep: 'bottom', rise: 0, border: 'square' } });
const edge = (of: string, side: 'low' | 'mid' | 'high') => ({ of, side });

/** Hard to reach through a whole design; `tests/lettering/stencil.test.ts` sets them off. */
type InItsRoom = 'stencil.loose-island' | 'stencil.one-bridge' | 'stencil.thin-tongue';

const LYING = { photo: 'photo-1', fit: 'cover', width: 200, shift: { x: 0, y: 0 } } as const;

/** For each code, a design in which it appears: a check that nothing can set off is a check that never warns. */
const SETS_OFF: { readonly [C in Exclude<CheckCode, InItsRoom>]: () => Design } = {
  'part.off-face': () => withParts(strip('wide', 900, 1000, 400)),
  'part.unsupported': () => withParts({ ...strip('floating', 0, 500, 1000), on: 'pull-left' }),
  'part.overlap': () =>
    withParts(
      newPart('panel', { id: 'second', name: 'Second', box: box(150, 300, 200, 200), finish: 'sailcloth' }),
    ),
  'part.keep-clear': () => ({
    ...base,
    keepClears: [{ id: 'latch', name: 'Latch', why: 'latch', box: box(300, 220, 100, 60), height: 30 }],
  }),
  'part.no-size': () =>
    withParts({ ...newPart('panel', { id: 'flat', name: 'Flat', box: box(200, 300, 0, 0) }) }),
  'part.unknown-stock': () => withParts({ ...strip('odd', 200, 900), stock: 'driftwood' }),
  'part.unknown-finish': () => sign({ finish: 'tar' }),
  'part.unknown-support': () => withParts({ ...strip('lost', 200, 900), on: 'nothing-there' }),
  'part.support-cycle': () =>
    withParts({ ...strip('one', 200, 900), on: 'two' }, { ...strip('two', 200, 900), on: 'one' }),
  'part.ripped': () => {
    const design = measured({ top: 1060 });
    const up = (id: string, x: number): Part => ({
      ...strip(id, x, 400),
      stock: 'pine-1x3',
      lie: 'up',
      on: 'rim',
      box: box(x, 400, 63.5, 600),
    });
    return {
      ...design,
      bed: { ...design.bed, measured: design.bed.measured && { ...design.bed.measured, border: 'along' } },
      parts: [up('edge', 990.6), up('filler', 927.1), up('inner', 863.6)],
      rules: [],
      joints: [],
      groups: [],
    };
  },
  'end.not-met': () =>
    withParts({
      ...strip('short', 200, 900),
      ends: { start: { cut: 'square' }, end: { cut: 'stop', at: 'nothing-there' } },
    }),
  'run.no-room': () =>
    withParts({
      ...newPart('run', { id: 'arch', name: 'Arch', box: box(200, 900, 100, 300), stock: 'pine-1x4' }),
      path: { form: 'arched', rise: 50, band: { stock: 'mdf-three-quarter', pieces: 2 } },
      side: 'inside',
    }),
  'run.head-not-flush': () =>
    withParts({
      ...newPart('run', { id: 'arch', name: 'Arch', box: box(200, 900, 600, 600), stock: 'pine-1x2' }),
      path: { form: 'arched', rise: 150, segments: 6, band: { stock: 'mdf-half', pieces: 3 } },
      side: 'inside',
    }),
  'run.bent-tight': () =>
    withParts({
      ...newPart('run', { id: 'arch', name: 'Arch', box: box(200, 900, 600, 600), stock: 'lath-quarter' }),
      path: { form: 'arched', rise: 150, segments: 6, band: { stock: null, pieces: 1 } },
      onEdge: true,
    }),
  'fill.between-stiles': () =>
    withParts({
      ...newPart('fill', { id: 'wall', name: 'Wall', box: box(200, 900, 300, 200), stock: 'pine-1x3' }),
      pattern: { form: 'louvers', lap: 5, tilt: 25 },
    }),
  'part.measures-eased': () =>
    withParts({
      ...newPart('panel', { id: 'door', name: 'Door', box: box(200, 900, 300, 200) }),
      // Four centers: lower arcs of 100 leave no upper ones that reach a crown so low.
      shape: { form: 'four-centered', rise: 40, radius: 149 },
    }),
  'fill.starter': () =>
    withParts({
      ...newPart('fill', { id: 'wall', name: 'Wall', box: box(200, 900, 300, 200), stock: 'lath-quarter' }),
      pattern: { form: 'louvers', lap: 5 },
    }),
  'fill.uncovered': () =>
    withParts({
      ...newPart('fill', { id: 'wall', name: 'Wall', box: box(200, 900, 300, 200), stock: 'pine-1x3' }),
      pattern: { form: 'battened', stock: 'square-half' },
      gap: 5,
    }),
  'rule.impossible': () =>
    withRules({
      id: 'no',
      kind: 'set',
      axis: 'y',
      edge: edge('plinth', 'low'),
      from: edge('level:field', 'low'),
      distance: 40,
    }),
  'rule.unknown-part': () =>
    withRules({
      id: 'lost',
      kind: 'set',
      axis: 'y',
      edge: edge('nobody', 'low'),
      from: edge('face', 'low'),
      distance: 4,
    }),
  'rule.gap-negative': () => ({
    ...withParts(strip('a', 0, 900, 700), strip('b', 300, 900, 700)),
    rules: [
      ...base.rules,
      { id: 'wa', kind: 'set', axis: 'x', edge: edge('a', 'high'), from: edge('a', 'low'), distance: 700 },
      { id: 'wb', kind: 'set', axis: 'x', edge: edge('b', 'high'), from: edge('b', 'low'), distance: 700 },
      {
        id: 'tight',
        kind: 'even',
        axis: 'x',
        parts: ['a', 'b'],
        low: edge('face', 'low'),
        high: edge('face', 'high'),
        mode: 'gaps',
      },
    ],
  }),
  'rule.gap-over-most': () => ({
    ...withParts(strip('a', 100, 900, 100), strip('b', 500, 900, 100)),
    rules: [
      ...base.rules,
      {
        id: 'loose',
        kind: 'even',
        axis: 'x',
        parts: ['a', 'b'],
        low: edge('face', 'low'),
        high: edge('face', 'high'),
        mode: 'most',
        most: 50,
      },
    ],
  }),
  'array.count': () =>
    changed('battens', (p) => (p.kind === 'array' ? { ...p, across: { mode: 'gaps', count: 60 } } : p)),
  'fastening.few': () =>
    withParts({
      ...newPart('panel', { id: 'small', name: 'Small', box: box(450, 900, 14, 14), finish: 'sailcloth' }),
      stock: 'mdf-half',
    }),
  'bed.no-room': () => bed({ cleats: { ...base.bed.cleats, below: 400 } }),
  'bed.not-closing': () =>
    measured({ bottom: 1094, top: 1054.1, left: 1981.2, right: 1981.2, rising: 2244.2, falling: 2244.2 }),
  'bed.out-of-square': () => measured({ rising: 2250 }),
  'bed.bowed': () => measured({ middle: 1060 }),
  'bed.edge': () => measured({ bows: { left: { middle: 3 } } }),
  'bed.datum': () => measured({ rising: 2300 }),
  'bed.corner': () => measured({ top: 1010 }),
  'bed.legs': () => bed({ legs: { ...base.bed.legs, length: 100 } }),
  'joint.not-made': () => ({
    ...base,
    joints: [{ id: 'lost', parts: ['plinth', 'nobody'], kind: 'miter' }],
  }),
  'joint.overlap': () => withParts({ ...strip('over', 100, 220), on: 'field' }),
  'joint.stops': () =>
    withParts(newPart('run', { id: 'arch', name: 'Arch', box: box(200, 900, 300, 400), stock: 'pine-1x2' }), {
      ...strip('out', 300, 940),
      lie: 'up',
      box: box(320, 940, 38.1, 600),
      length: 600,
    }),
  'joint.over-saw': () => ({ ...base, shop: { ...base.shop, saw: { miter: 40, bevel: 45 } } }),
  'joint.bevel-over-saw': () => ({
    ...withParts({
      ...newPart('run', { id: 'crown', name: 'Crown', box: box(200, 400, 400, 300), stock: 'cornice-45' }),
      on: 'casing',
    }),
    shop: { ...base.shop, saw: { miter: 44, bevel: 20 } },
  }),
  'piece.nothing-left': () =>
    withParts({
      ...strip('cut-away', 200, 900, 40),
      ends: { start: { cut: 'miter', angle: 50 }, end: { cut: 'miter', angle: -50 } },
    }),
  'piece.too-long': () => ({
    ...changed('plinth', (p) => (p.kind === 'strip' ? { ...p, stock: 'stub' } : p)),
    stocks: [
      {
        form: 'flat',
        id: 'stub',
        name: 'Stub',
        material: 'pine',
        width: 139.7,
        thickness: 19.05,
        lengths: [{ length: 300, price: 1 }],
      },
    ],
  }),
  'piece.too-big': () => ({
    ...changed('sign', (p) => (p.kind === 'sign' ? { ...p, stock: 'scrap' } : p)),
    stocks: [
      {
        form: 'sheet',
        id: 'scrap',
        name: 'Scrap',
        material: 'mdf',
        thickness: 12.7,
        grain: false,
        sizes: [{ length: 300, width: 300, price: 1 }],
      },
    ],
  }),
  'piece.too-short': () => withParts({ ...strip('short', 90, 400, 30), on: 'field' }),
  'piece.measured-in-place': () => changed('nosing', (p) => (p.kind === 'strip' ? { ...p, fit: true } : p)),
  // No piece is shorter across its diagonal than it is wide.
  'piece.not-as-read': () =>
    changed('nosing', (p) =>
      p.kind === 'strip'
        ? { ...p, fit: true, read: { diagonal: 5, of: 500, slant: 'end', moves: 'nothing' } }
        : p,
    ),
  'cutting.not-proved': () => ({
    ...base,
    parts: [
      ...base.parts,
      ...Array.from({ length: 60 }, (_, i) => ({
        ...strip(`n${i}`, 90, 220, 301.7 + ((i * 37) % 53) * 7.3),
        on: 'field',
      })),
    ],
  }),
  'lettering.missing-glyph': () => sign({ lines: [{ text: 'A☂' }] }),
  'lettering.unknown-font': () => sign({ font: 'nobody-sans' }),
  'lettering.off-sign': () => sign({ fit: 'none', capHeight: 300 }),
  // Over the edge of the sign's own board.
  'lettering.crosses': () => {
    const on = base.parts.find((p) => p.kind === 'sign');
    if (on?.kind !== 'sign') throw new Error('no sign');
    const { id: _, box: own, lettering } = on;
    const words = newPart('lettering', { id: 'words', name: 'Words', box: { ...own, y: own.y - own.h / 2 } });
    return withParts({ ...words, lettering });
  },
  'lettering.no-room': () => sign({ margin: 90 }),
  // Up and down at 76 degrees each: the way turns by 152 in the middle.
  'lettering.corner': () =>
    sign({
      ...{ along: 'path', fit: 'none', capHeight: 12, lines: [{ text: 'M' }] },
      path: [
        { u: 0.4, v: 0.1 },
        { u: 0.5, v: 0.9 },
        { u: 0.6, v: 0.1 },
      ],
    }),
  'lettering.photo': () => sign({ make: 'printed', photos: [{ ...LYING, photo: 'gone' }] }),
  'lettering.photo-coarse': () => ({
    ...sign({ make: 'printed', photos: [LYING] }),
    photos: [pngPhoto('photo-1', 40, 30, () => [200, 90, 40])],
  }),
  'lettering.script': () => sign({ lines: [{ text: 'HARBOR שלום' }] }),
  'stencil.letter-lost': () => stenciled({ bridgeWidth: 40 }),
  'stencil.placed-lost': () => stenciled({ placed: [{ island: 400, angles: [0, 180] }] }),
  'lettering.low-contrast': () => sign({ finish: 'harbor-blue' }),
  'patterns.too-many-pages': () => ({
    ...base,
    pages: {
      ...base.pages,
      paper: 'a5',
      also: ['face'],
      margin: { left: 30, right: 30, top: 30, bottom: 30 },
    },
  }),
  'patterns.unknown-paper': () => ({ ...base, pages: { ...base.pages, paper: 'napkin' } }),
  'patterns.no-margin': () => ({
    ...base,
    pages: { ...base.pages, margin: { left: 12, right: 0, top: 12, bottom: 12 } },
  }),
  'patterns.no-room': () => ({
    ...base,
    pages: { ...base.pages, margin: { left: 120, right: 120, top: 120, bottom: 120 } },
  }),
  'finish.primer-hides': () => ({
    ...base,
    finishes: base.finishes.map((f) => ({ ...f, kind: 'stain', primer: { coats: 1, rate_m2_l: 8 } })),
  }),
  'finish.no-containers': () => ({
    ...base,
    finishes: base.finishes.map((f) => ({ ...f, containers: [{ container: 'thimble', price: 1 }] })),
  }),
  'fold.hits-floor': () => withParts({ ...tall('foot', 1, 208), on: 'casing' }),
  'fold.hits-wall': () =>
    withParts({
      ...newPart('panel', { id: 'skirt', name: 'Skirt', box: box(100, -220, 400, 230), stock: 'mdf-half' }),
      on: 'rim',
    }),
  'fold.hits-ceiling': () => bed({ ceiling: 2205 }),
  'fold.hits-legs': () => withParts(tall('lamp', 900, 300)),
  'fold.hits-side': () => ({
    ...withParts(strip('wide', 900, 1000, 400)),
    bed: { ...base.bed, beside: { left: null, right: 20 } },
  }),
  'fold.tight': () => bed({ ceiling: 2214 }),
  'load.heavy': () => ({ ...base, load: { ...base.load, warnAdded_kg: 1 } }),
  'load.lift': () => ({ ...base, load: { ...base.load, warnLift_n: 1 } }),
  'load.no-density': () => ({
    ...withParts({ ...strip('moon', 90, 900), stock: 'moon' }),
    stocks: [
      {
        form: 'flat',
        id: 'moon',
        name: 'Moon',
        material: 'moon-dust',
        width: 38,
        thickness: 19,
        lengths: [{ length: 2400, price: 1 }],
      },
    ],
  }),
  'fastening.through': () => ({ ...base, fastening: { ...base.fastening, lengths: [90] } }),
  'fastening.no-brad': () => ({ ...base, fastening: { ...base.fastening, lengths: [12.7], bite: 12 } }),
  'fastening.nothing-solid': () => withParts({ ...strip('beyond', 1100, 900), on: 'rim' }),
  'fastening.loose-edge': () => ({
    ...withParts(
      newPart('panel', { id: 'flap', name: 'Flap', box: box(150, 900, 500, 500), finish: 'sailcloth' }),
    ),
    keepClears: [{ id: 'rail', name: 'Rail', why: 'other', box: box(140, 890, 60, 520), height: 0 }],
  }),
  'fastening.screws': () => ({ ...base, fastening: { ...base.fastening, screwOver_kg: 0.2 } }),
  'fastening.lever': () => ({
    ...withParts({ ...strip('shelf', 200, 880, 600), stock: 'plank', onEdge: true }),
    stocks: [
      {
        form: 'flat',
        id: 'plank',
        name: 'Plank',
        material: 'pine',
        width: 140,
        thickness: 19,
        lengths: [{ length: 2400, price: 1 }],
      },
    ],
    fastening: { ...base.fastening, screwOver_kg: 2 },
  }),
  'fastening.unknown': () => ({ ...base, fastening: { ...base.fastening, brad: 'thorn' } }),
  'order.circle': () => {
    // The post crosses both boards, one under the sheet and one over it: the three cannot be glued at once.
    const board = (id: string, y: number, on: string) => ({ ...strip(id, 100, y), on, stock: 'pine-1x3' });
    const post = { ...strip('post', 150, 300), box: box(150, 300, 19.05, 500), lie: 'up' as const };
    const half = (with_: string) => ({
      id: with_,
      parts: ['post', with_] as const,
      kind: 'half-lap' as const,
    });
    return {
      ...base,
      parts: [
        board('low', 400, 'field'),
        {
          ...newPart('panel', { id: 'sheet', name: 'Sheet', box: box(200, 390, 100, 200) }),
          on: 'low',
        },
        board('high', 500, 'sheet'),
        { ...post, stock: 'pine-1x3', on: 'field', onEdge: true },
      ],
      groups: [],
      rules: [],
      joints: [half('low'), half('high')],
    };
  },
  'limit.parts': () =>
    changed('battens', (p) =>
      p.kind === 'array'
        ? {
            ...p,
            memberSize: { w: 1, h: 1 },
            across: { mode: 'gaps', count: 46 },
            up: { mode: 'gaps', count: 46 },
            member: painted,
          }
        : p,
    ),
  'limit.rules': () => ({
    ...base,
    rules: [
      ...base.rules,
      ...Array.from(
        { length: 5001 },
        (_, i): Rule => ({
          id: `again${i}`,
          kind: 'set',
          axis: 'y',
          edge: edge('plinth', 'low'),
          from: edge('level:field', 'low'),
          distance: 0,
        }),
      ),
    ],
  }),
  'limit.letters': () =>
    sign({ lines: [{ text: 'I'.repeat(400) }, { text: 'I'.repeat(120) }], make: 'trace' }),
};

const painted = { kind: 'painted', finish: null, shape: { form: 'rectangle' } } as const;

/** A fitting that stands far out of the face. */
function tall(id: string, y: number, depth: number): Part {
  return {
    ...newPart('fitting', { id, name: `Fitting ${id}`, box: box(400, y, 60, 60) }),
    depth,
    on: 'field',
  };
}

describe('every check', () => {
  // What a design shares with the one before it is not worked out again.
  const planner = createPlanner();
  const codes = CHECK_CODES.filter((code): code is keyof typeof SETS_OFF => code in SETS_OFF);

  it('but those of the stencil maker, which are set off in its own room, has a design here', () => {
    expect(CHECK_CODES.filter((code) => !(code in SETS_OFF)).sort()).toEqual([
      'stencil.loose-island',
      'stencil.one-bridge',
      'stencil.thin-tongue',
    ]);
  });

  it.each(codes)('%s appears, and speaks a whole sentence', (code) => {
    const p = planner(SETS_OFF[code](), SUPPLIES, { effort: { nodes: 200 } });
    const found = p.checks.find((c: Check) => c.code === code);
    expect(
      found,
      `${code}: found only ${[...new Set(p.checks.map((c) => c.code))].join(', ')}`,
    ).toBeDefined();
    if (!found) return;
    const message = checkMessage(found, EN, sayFor(p));
    expect(message).toMatch(/^[A-Z0-9“].*[.]$/);
    expect(message).not.toMatch(/undefined|NaN|\[object/);
  });
});
