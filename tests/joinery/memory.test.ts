import { describe, expect, it } from 'vitest';
import type { Joint } from '../../src/design/schema.ts';
import type { JoineryInput } from '../../src/joinery/joinery.ts';
import { KeptResults } from '../../src/layout/kept.ts';
import type { LaidPart } from '../../src/layout/laid.ts';
import { type Chance, chanceOf, pick } from '../chance.ts';
import { runs } from '../runs.ts';
import { boxStrip, brace, flat, frame, joint, panel, plan, run, type Setup, shaped, strip } from './make.ts';

const EDITS = 8;
const KINDS: readonly Joint['kind'][] = ['miter', 'butt', 'cope', 'cope', 'half-lap'];
const CUTS = [
  { cut: 'square' },
  { cut: 'return' },
  { cut: 'miter', angle: 20 },
] as const satisfies readonly object[];
/** Stock is made thinner and thicker again: strips stay, what they and their neighbors are made of does not. */
const ROUNDER = [
  ...[
    { x: 0, y: 0 },
    { x: 60, y: 0 },
    { x: 60, y: 15 },
  ],
  ...[
    { x: 40, y: 15 },
    { x: 0, y: 2 },
  ],
];
const STOCKS = [[], [flat('lath', 50, 12)], [shaped('casing', 60, { section: ROUNDER })]];
const SHOPS: readonly JoineryInput['shop'][] = [
  { saw: { miter: 50, bevel: 45 }, fitAllowance: 12 },
  { saw: { miter: 30, bevel: 45 }, fitAllowance: 12 },
  { saw: { miter: 50, bevel: 45 }, fitAllowance: 20 },
];
const MEASURES: readonly JoineryInput['measure'][] = [
  { unit: 'mm', fraction: '16' },
  { unit: 'in', fraction: '16' },
];

const whole = (low: number, high: number, chance: Chance) => low + Math.floor(chance() * (high - low + 1));

/** A strip, brace, frame, open run or panel, so placed that many meet, cross, touch and lie in each other. */
function anyPart(id: string, chance: Chance): LaidPart {
  const at = () => 50 * whole(0, 12, chance);
  const [x, y, w, h] = [at(), at(), 200 + at(), 200 + at()];
  const stock = pick(['lath', 'lath', 'casing', 'none'], chance);
  const ends = { start: pick(CUTS, chance), end: pick(CUTS, chance) };
  const more = { stock, ends, fit: chance() < 0.2 };
  switch (pick(['up', 'level', 'turned', 'brace', 'frame', 'run', 'panel'] as const, chance)) {
    case 'up':
      return boxStrip(id, x, y, 50, h, more);
    case 'level':
      return boxStrip(id, x, y, w, 50, more);
    case 'turned':
      return strip(id, { x, y }, { x: x + w, y: y + at() }, 50, more);
    case 'brace':
      return brace(id, pick(['rising', 'falling'], chance), { x, y, w, h }, 50, { stock });
    case 'frame':
      return frame(id, { x, y, w, h }, 50, { stock });
    case 'run':
      return run(
        id,
        [
          { x, y },
          { x: x + w, y },
          { x: x + w, y: y + h },
        ],
        false,
        50,
        { stock, ends },
      );
    case 'panel':
      return panel(id, { x, y, w, h });
  }
}

/** Parts with what is set for them; what no edit changes stays the very same. */
interface Crowd extends Required<Omit<Setup, 'stocks'>> {
  readonly parts: readonly LaidPart[];
  readonly stocks: (typeof STOCKS)[number];
}

const anyJoint = ({ parts }: Crowd, chance: Chance): Joint => {
  const [a, b] = [pick(parts, chance).id, pick(parts, chance).id];
  return joint([a, b], pick(KINDS, chance), chance() < 0.5 ? b : undefined);
};

function edited(crowd: Crowd, count: number, chance: Chance): Crowd {
  const { parts, joints } = crowd;
  const other = pick(parts, chance);
  const without = parts.filter((part) => part !== other);
  switch (
    pick(['place', 'place', 'place', 'add', 'remove', 'order', 'join', 'stock', 'set'] as const, chance)
  ) {
    case 'place':
      return { ...crowd, parts: parts.map((part) => (part === other ? anyPart(other.id, chance) : part)) };
    case 'add':
      return { ...crowd, parts: [...parts, anyPart(`added-${count}`, chance)] };
    case 'remove':
      return parts.length > 4 ? { ...crowd, parts: without } : crowd;
    case 'order':
      return { ...crowd, parts: [other, ...without] };
    case 'join':
      return { ...crowd, joints: [...joints.slice(-2), anyJoint(crowd, chance)] };
    case 'stock':
      return { ...crowd, stocks: pick(STOCKS, chance) };
    case 'set':
      return { ...crowd, shop: pick(SHOPS, chance), measure: pick(MEASURES, chance) };
  }
}

const planned = ({ parts, ...setup }: Crowd, kept?: KeptResults) => plan(parts, setup, kept);

describe('joinery that remembers', () => {
  it('comes to what joinery from nothing comes to, after any edits of any crowd', () => {
    const chance = chanceOf(4);
    let kept = 0;
    let all = 0;
    for (let crowds = 0; crowds < runs(3); crowds++) {
      const memory = new KeptResults();
      const parts = Array.from({ length: whole(4, 12, chance) }, (_, i) => anyPart(`p${i}`, chance));
      let crowd: Crowd = {
        ...{ parts, joints: [], stocks: pick(STOCKS, chance) },
        ...{ shop: pick(SHOPS, chance), measure: pick(MEASURES, chance) },
      };
      let last = planned(crowd, memory);
      for (let edit = 0; edit < EDITS; edit++) {
        crowd = edited(crowd, edit, chance);
        const again = planned(crowd, memory);
        expect(again).toEqual(planned(crowd));
        const before = new Set(last.solids);
        kept += again.solids.filter((solid) => before.has(solid)).length;
        all += again.solids.length;
        last = again;
      }
    }
    // Parts meet each other, and a third of the edits change all of them.
    expect(kept / all).toBeGreaterThan(0.3);
  });

  it('makes one strip anew and keeps all others, and their pieces, where one is moved that meets none', () => {
    const row = Array.from({ length: 30 }, (_, i) => boxStrip(`s${i}`, 0, 100 * i, 400, 50));
    const memory = new KeptResults();
    const before = plan(row, {}, memory);
    const moved = row.map((one, i) => (i === 7 ? boxStrip('s7', 30, 700, 400, 50) : one));
    const after = plan(moved, {}, memory);
    expect(after).toEqual(plan(moved));
    const anew = (a: readonly unknown[], b: readonly unknown[]) =>
      b.flatMap((one, i) => (one === a[i] ? [] : [i]));
    expect(anew(before.solids, after.solids)).toEqual([7]);
    expect(anew(before.pieces, after.pieces)).toEqual([7]);
  });

  it('saws an end anew where only the section of the molding that it is coped to is another', () => {
    const parts = [boxStrip('a', 0, 0, 400, 10), boxStrip('c', 380, -100, 60, 300, { stock: 'casing' })];
    const setup = { joints: [joint(['a', 'c'], 'cope', 'c')] };
    const thin = { ...parts[0], leg: { ...boxStrip('a', 0, 0, 400, 10).leg, thickness: 9 } } as LaidPart;
    const crowd = [thin, ...parts.slice(1)];
    const memory = new KeptResults();
    const before = plan(crowd, setup, memory);
    const rounder = { ...setup, stocks: [shaped('casing', 60, { section: ROUNDER })] };
    const after = plan(crowd, rounder, memory);
    expect(after).toEqual(plan(crowd, rounder));
    expect(after.pieces[0]?.length).not.toBe(before.pieces[0]?.length);
  });
});
