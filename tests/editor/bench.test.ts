import fc from 'fast-check';
import jsQR from 'jsqr';
import { describe, expect, it } from 'vitest';
import { benchGroups, benchSteps, doneAmong, nextOpen } from '../../src/cutting/atSaw.ts';
import type { BoardCut, Cutting } from '../../src/cutting/result.ts';
import { ASSEMBLY_NAMES } from '../../src/design/assembly/table.ts';
import { newDesign } from '../../src/design/defaults.ts';
import { liveFacts, mergedJobs, saying } from '../../src/design/job/record.ts';
import type { Job } from '../../src/design/job/schema.ts';
import { editsToRemove } from '../../src/design/removal.ts';
import type { Design } from '../../src/design/schema.ts';
import { bytesOf, digitsOf } from '../../src/editor/saw/digits.ts';
import { isAddress, isOwnAddress, linkTo } from '../../src/editor/saw/link.ts';
import { codePath } from '../../src/editor/saw/qrPath.ts';
import { shorthand } from '../../src/editor/saw/shorthand.ts';
import { MOST_BYTES, packDesign, packJob, unpackDesign, unpackJob } from '../../src/editor/saw/transfer.ts';
import { cutSaying } from '../../src/job/acts.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { chanceOf, pick } from '../chance.ts';
import { pngPhoto } from '../lettering/photos.ts';
import { edited, madeOn, SKINNED } from '../plan/assembly/made.ts';
import { planOf, STARTERS, starter } from '../plan/starters.ts';
import { runs } from '../runs.ts';

const piece = (id: string): Piece => ({
  id,
  part: id,
  label: id.toUpperCase(),
  name: id,
  stock: 'pine-1x3',
  form: 'flat',
  length: 500,
  measured: { edge: 'left', from: 'square', to: 'square' },
  edges: { left: 500, right: 500 },
  overall: 500,
  margin: 0,
  width: 63.5,
  thickness: 19,
  ends: [square, square],
  fit: { inPlace: false, allowance: 0 },
  outline: [],
  holes: [],
  notches: [],
  placed: [],
  z0: 0,
  z1: 19,
  grain: 'any',
  shown: { length: 500, width: 63.5, edges: { left: 500, right: 500 } },
});
const square: Piece['ends'][0] = {
  cut: 'square',
  miter: 0,
  bevel: 0,
  long: 'both',
  with: null,
  second: null,
  nested: null,
};
const cut = (id: string, from: number): BoardCut => ({
  piece: id,
  from,
  to: from + 500,
  flipped: false,
  left: 0,
  right: 0,
});
const board = (cuts: readonly BoardCut[]): Cutting['boards'][0] => ({
  stock: 'pine-1x3',
  length: 2438,
  owned: null,
  cuts,
  offcut: 0,
  waste: 0,
  cost: 1,
});
const CUTTING: Cutting = {
  boards: [board([cut('c', 0), cut('a', 503)]), board([cut('b', 0)])],
  boardsBound: [],
  sheets: [
    {
      stock: 'mdf',
      length: 1200,
      width: 600,
      owned: null,
      placements: [{ piece: 'd', x: 0, y: 0, w: 300, h: 200, turned: false }],
      sequence: [
        { number: 1, kind: 'rip', of: { x: 0, y: 0, w: 1200, h: 600 }, fence: 200 },
        { number: 2, kind: 'cross', of: { x: 0, y: 0, w: 1200, h: 200 }, fence: 300 },
      ],
      offcuts: [],
      cost: 1,
    },
  ],
  sheetsBound: [],
  checks: [],
};

describe('the order at the saw', () => {
  const steps = benchSteps(CUTTING, ['a', 'b', 'c', 'd', 'e'].map(piece));

  it('is board by board as cut, then each sheet’s cuts and what they free, then what no board holds', () => {
    expect(steps.map((s) => (s.kind === 'sheet-cut' ? `cut ${s.cut.number}` : s.id))).toEqual([
      'c',
      'a',
      'b',
      'cut 1',
      'cut 2',
      'd',
      'e',
    ]);
    expect(benchGroups(steps).map((g) => g.steps.length)).toEqual([2, 1, 3, 1]);
  });

  it('names every step once, a cut by what it does', () => {
    expect(new Set(steps.map((s) => s.id)).size).toBe(steps.length);
    const [sheet] = CUTTING.sheets;
    const moved: Cutting = {
      ...CUTTING,
      sheets: sheet
        ? [{ ...sheet, sequence: sheet.sequence.map((c) => ({ ...c, fence: c.fence + 5 })) }]
        : [],
    };
    const before = new Set(steps.filter((s) => s.kind === 'sheet-cut').map((s) => s.id));
    const after = benchSteps(moved, ['a', 'b', 'c', 'd'].map(piece));
    expect(after.filter((s) => before.has(s.id))).toEqual([]);
  });

  it('goes on to the next that is not ticked, round the end, and stops when all are', () => {
    expect(nextOpen(steps, new Set(['a']), 0)).toBe(2);
    expect(nextOpen(steps, new Set(['e']), 5)).toBe(0);
    expect(nextOpen(steps, new Set(steps.map((s) => s.id)), 3)).toBeNull();
  });

  it('are done where they are ticked, cuts of a sheet also once all its pieces are', () => {
    const ids = steps.map((s) => s.id);
    const cuts = steps.filter((s) => s.kind === 'sheet-cut').map((s) => s.id);
    fc.assert(
      fc.property(fc.subarray(ids), (some) => {
        // The one sheet has the one piece, d.
        const expected = new Set([...some, ...(some.includes('d') ? cuts : [])]);
        expect(doneAmong(steps, new Set(some))).toEqual(expected);
      }),
    );
    expect(doneAmong(steps, new Set(['a', 'b', 'c', 'd', 'e'])).size).toBe(steps.length);
  });
});

describe('bytes as digits', () => {
  it('come back the same', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        const digits = digitsOf(bytes);
        expect(digits).toMatch(/^\d*$/);
        expect([...(bytesOf(digits) ?? [])]).toEqual([...bytes]);
        // 53 digits for 22 bytes: no more than 2.42 a byte and one block's rounding.
        expect(digits.length).toBeLessThanOrEqual(Math.ceil(bytes.length * (53 / 22)) + 1);
      }),
    );
  });

  it('are refused when no bytes give them', () => {
    expect(bytesOf('12a')).toBeNull();
    expect(bytesOf('9'.repeat(53))).toBeNull();
    expect(bytesOf('1')).toBeNull();
  });
});

describe('a design in a link', () => {
  it('is spelled again as it was, whatever its texts hold', () => {
    const { shorten, spell } = shorthand();
    fc.assert(
      fc.property(fc.dictionary(fc.string({ unit: 'binary' }), fc.json()), (value) => {
        const text = JSON.stringify({ ...value, parts: [{ kind: 'strip', name: '"kind":' }], kind: 'sign' });
        expect(spell(shorten(text))).toBe(text);
      }),
    );
  });

  it.each(STARTERS)('%s fits into one code and comes back', async (name) => {
    const design = starter(name);
    const { digits, bytes } = await packDesign(design);
    expect(await unpackDesign(digits)).toEqual(design);
    expect(bytes).toBeLessThanOrEqual(MOST_BYTES);
  });

  it('leaves photos out, and is a design all the same', async () => {
    const design = starter('lighthouse-keeper');
    const lying = { photo: 'photo-1', fit: 'cover', width: 10, shift: { x: 0, y: 0 } } as const;
    const photo = pngPhoto('photo-1', 200, 200, (x, y) => [(x * y * 7919) % 256, (x * 31) % 256, y]);
    const parts = design.parts.map((part) =>
      part.kind === 'sign' ? { ...part, lettering: { ...part.lettering, photos: [lying] } } : part,
    );
    expect(photo.data.length).toBeGreaterThan(MOST_BYTES);
    const { digits, bytes } = await packDesign({ ...design, parts, photos: [photo] });
    expect(await unpackDesign(digits)).toEqual(design);
    expect(bytes).toBeLessThanOrEqual(MOST_BYTES);
  });

  it('brings whatever a person altered of its building parts', async () => {
    for (let seed = 0; seed < runs(30); seed++) {
      const chance = chanceOf(seed);
      const box = { x: 90, y: 120, w: 500 + 200 * chance(), h: 700 + 300 * chance() };
      const { design } = madeOn(SKINNED, pick(ASSEMBLY_NAMES, chance), box);
      const altered = pick(design.parts, chance).id;
      const gone = pick(design.parts, chance).id;
      const next: Design = {
        ...edited(design, gone === altered ? [] : editsToRemove(design, [gone])),
        ...(chance() < 0.3 ? { finishes: [] } : {}),
      };
      const own: Design = {
        ...next,
        parts: next.parts.map((part) =>
          part.id === altered ? { ...part, name: 'Mine', finish: null, onChosen: true } : part,
        ),
        groups: next.groups.map((group) => (chance() < 0.5 ? group : { ...group, name: 'My own' })),
      };
      const { digits } = await packDesign(own);
      expect(await unpackDesign(digits), `${seed}`).toEqual(own);
    }
  });

  it('is not opened when what it tells of building parts is not so', async () => {
    const { design } = madeOn(SKINNED, 'panel-door', { x: 90, y: 120, w: 600, h: 900 });
    for (const told of [[0, 900, {}], [7, 1, {}], ['x', {}, 4], [0, 0, {}], null, [], 7]) {
      const parts = [...design.parts, told] as unknown as Design['parts'];
      const { digits } = await packDesign({ ...design, parts }).catch(() => ({ digits: '' }));
      expect(await unpackDesign(digits), JSON.stringify(told)).toBeNull();
    }
  });

  it('is not opened when it is damaged', async () => {
    const { digits } = await packDesign(newDesign());
    expect(await unpackDesign(digits.slice(0, -60))).toBeNull();
    expect(await unpackDesign(`${digits.slice(0, 100)}${digits.slice(101)}`)).toBeNull();
    expect(await unpackDesign('')).toBeNull();
    expect(await unpackDesign('not digits')).toBeNull();
  });

  it('is not unpacked to any size', async () => {
    const huge = new Blob([new Uint8Array(8_000_000)])
      .stream()
      .pipeThrough(new CompressionStream('deflate-raw'));
    const packed = new Uint8Array(await new Response(huge).arrayBuffer());
    expect(packed.length).toBeLessThan(20_000);
    expect(await unpackDesign(digitsOf(packed))).toBeNull();
  });
});

/** Dark modules of the drawn path, as pixels of a second library's reader. */
function readBack(d: string, size: number): string | null {
  const scale = 4;
  const pixels = new Uint8ClampedArray(size * scale * size * scale * 4).fill(255);
  for (const [, x, y, w] of d.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g)) {
    for (let row = Number(y) * scale; row < (Number(y) + 1) * scale; row++) {
      for (let column = Number(x) * scale; column < (Number(x) + Number(w)) * scale; column++) {
        pixels.fill(0, (row * size * scale + column) * 4, (row * size * scale + column) * 4 + 3);
      }
    }
  }
  return jsQR(pixels, size * scale, size * scale)?.data ?? null;
}

describe('the drawn code', () => {
  it('is read by another library as the address with its digits', async () => {
    const { digits } = await packDesign(starter('bread-shop'));
    const link = linkTo('http://192.168.1.20:4173/', '0f8a2c1e-1111-4222-8333-444455556666', digits);
    expect(link.fixed).toBe('http://192.168.1.20:4173/#bench&i=0f8a2c1e-1111-4222-8333-444455556666&d=');
    const { d, size } = codePath(link.fixed, link.digits);
    expect(readBack(d, size)).toBe(link.fixed + digits);
  });

  it('holds as much as is allowed', () => {
    const { d, size } = codePath(
      'http://192.168.100.200:41730/#bench&i=0f8a2c1e-1111-4222-8333-444455556666&d=',
      '7'.repeat(Math.ceil((MOST_BYTES * 53) / 22)),
    );
    // Version 40, the largest of ISO/IEC 18004: 177 modules, and a quiet border of 4 on each side.
    expect(size).toBe(177 + 8);
    expect(d).not.toBe('');
  });

  it('is a plain address where the design is too large', () => {
    const { d, size } = codePath('http://192.168.1.20:4173/#bench', '');
    expect(readBack(d, size)).toBe('http://192.168.1.20:4173/#bench');
  });
});

describe('addresses', () => {
  it('of this device alone are told from those of a network', () => {
    expect(['localhost', 'a.localhost', '127.0.0.1', '[::1]', '::1'].map(isOwnAddress)).toEqual(
      Array(5).fill(true),
    );
    expect(['192.168.1.20', 'shop.local', '10.0.0.127'].map(isOwnAddress)).toEqual(Array(3).fill(false));
    expect(['http://192.168.1.20:4173', 'https://shop.local/'].map(isAddress)).toEqual([true, true]);
    expect(['192.168.1.20', 'javascript:alert(1)', ''].map(isAddress)).toEqual([false, false, false]);
  });
});

describe('what is done, in links', () => {
  it('goes into as many codes as it takes, and is put together of them in any order', async () => {
    const plan = planOf('bread-shop');
    const steps = benchSteps(plan.cutting, plan.joinery.pieces);
    let job: Job | undefined;
    for (const step of steps) {
      const facts = liveFacts(job);
      const at = { cutting: plan.cutting, stocks: plan.stocks, shop: plan.design.shop, planned: [], facts };
      job = saying(job, cutSaying(step, at));
    }
    if (!job) throw new Error('nothing is said');
    const codes = await packJob(job);
    for (const { bytes } of codes) expect(bytes).toBeLessThanOrEqual(MOST_BYTES);
    const back = await Promise.all(codes.map(({ digits }) => unpackJob(digits)));
    const sorted = (of: Job | undefined) => [...(of?.facts ?? [])].sort((a, b) => (a.id < b.id ? -1 : 1));
    const merged = [...back]
      .reverse()
      .reduce<Job | undefined>((all, one) => mergedJobs(all, one ?? undefined), undefined);
    expect(sorted(merged)).toEqual(sorted(job));
    // What holds is made of nothing else.
    expect(await unpackJob('12345')).toBeNull();
    const { digits } = await packDesign(plan.design);
    expect(await unpackJob(digits)).toBeNull();
  });
});
