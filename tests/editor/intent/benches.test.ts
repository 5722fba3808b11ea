import { describe, expect, it } from 'vitest';
import { newDesign } from '../../../src/design/defaults.ts';
import type { Design } from '../../../src/design/schema.ts';
import { layoutOf } from '../laid.ts';
import { benchOf, perform } from './hand.ts';

/**
 * Ten faces from the bench, each drawn by a hand that misses by up to three pixels; then the bed is built 3/8 in larger,
 * 1 in smaller and 2 in larger. What has to hold is written as sums of edges, worked out by hand: no rule is read.
 */
type Spot = readonly [number, number];
type Edges = Readonly<Record<'l' | 'r' | 'b' | 't', number>>;
type Seen = (name: string) => Edges;

const SCALE = 0.5;
const CHANGES = [9.525, -25.4, 50.8];
/** Pixels by which the hand misses, one after the other. */
const MISSES = [2, -3, 1, 3, -2, -1, 3, 2, -3, 1, 0, -2];

class Bench {
  readonly store;
  readonly #ids = new Map<string, string>();
  #miss = 0;
  readonly #recess: number | null;

  constructor(kind: 'recessed' | 'flush') {
    const plain = newDesign();
    const skin = kind === 'flush' ? { thickness: 12, material: 'plywood' } : null;
    const design: Design = {
      ...plain,
      measure: { ...plain.measure, unit: 'mm' },
      bed: { ...plain.bed, skin },
    };
    this.store = benchOf(design);
    const { frame, cleats } = design.bed;
    this.#recess = skin ? null : frame.thickness + cleats.width;
  }

  get design(): Design {
    return this.store.getState().edit.design;
  }

  /** What may be built on: of a flush bed the whole face, else what the frame boards and cleats leave of it. */
  ground(design = this.design): Edges {
    const { mattress, allowance, frame } = design.bed;
    const by = this.#recess ?? 0;
    const [w, h] = [mattress.width + allowance.width, mattress.length + allowance.length].map(
      (clear) => clear + 2 * frame.thickness,
    );
    return { l: by, r: (w ?? 0) - by, b: by, t: (h ?? 0) - by };
  }

  seen(design = this.design): Seen {
    const { boxes } = layoutOf(design);
    return (name) => {
      const box = name === 'ground' ? undefined : boxes.get(this.#ids.get(name) ?? '');
      return box ? { l: box.x, r: box.x + box.w, b: box.y, t: box.y + box.h } : this.ground(design);
    };
  }

  #next = () => MISSES[this.#miss++ % MISSES.length] ?? 0;

  #do(tool: string, from_mm: Spot, to_mm: Spot, more: object = {}): string {
    const jitter_px = [this.#next(), this.#next(), this.#next(), this.#next()] as const;
    const gesture = {
      tool,
      from_mm,
      to_mm,
      pixels_per_mm: SCALE,
      jitter_px,
      modifier: 'none',
      ...more,
    } as const;
    return perform(this.store, gesture, this.#ids);
  }

  draw(name: string, tool: string, from: Spot, to: Spot, stock?: string, modifier: 'none' | 'free' = 'none') {
    this.#ids.set(name, this.#do(tool, from, to, { ...(stock ? { stock } : {}), modifier }));
  }

  /** Carries a part by its middle. */
  carry(name: string, to: Spot) {
    const { l, r, b, t } = this.seen()(name);
    this.#do('move', [(l + r) / 2, (b + t) / 2], to, { part: name });
  }

  pull(name: string, tool: string, from: Spot, to: Spot) {
    this.#do(tool, from, to, { part: name });
  }

  mirror(name: string, twin: string) {
    this.#ids.set(twin, this.#do('mirror-copy', [0, 0], [0, 0], { part: name }));
  }

  on(name: string): string | undefined {
    const id = this.#ids.get(name);
    const on = layoutOf(this.design).parts.find((part) => part.part === id)?.on;
    return [...this.#ids].find(([, one]) => one === on)?.[0] ?? on;
  }

  /** Sums that have to be zero, now and on each of the other beds. */
  holds(sums: (seen: Seen) => Readonly<Record<string, number>>) {
    const { bed } = this.design;
    const beds = CHANGES.map((by) => ({
      ...bed,
      mattress: { ...bed.mattress, width: bed.mattress.width + by, length: bed.mattress.length + by },
    }));
    for (const one of [bed, ...beds]) {
      const design = { ...this.design, bed: one };
      const off = Object.entries(sums(this.seen(design))).filter(([, sum]) => Math.abs(sum) > 1e-6);
      expect(off).toEqual([]);
      expect(layoutOf(design).rules.filter(({ holds }) => !holds)).toEqual([]);
    }
  }
}

const mid = (a: number, b: number) => (a + b) / 2;

/** A stile on each side of the ground, from its bottom to its top. */
function stiles(bench: Bench, stock = 'planed-21x70') {
  const { l, r, b, t } = bench.ground();
  bench.draw('left', 'strip', [l + 35, b], [l + 35, t], stock);
  bench.draw('right', 'strip', [r - 35, t], [r - 35, b], stock);
}

describe('faces from the bench', () => {
  it('barn door: stiles at both sides, rails from one to the other at the bottom and at the top', () => {
    const bench = new Bench('recessed');
    stiles(bench);
    const { b, t } = bench.ground();
    const [left, right] = [bench.seen()('left'), bench.seen()('right')];
    bench.draw('low', 'strip', [left.r, b + 35], [right.l, b + 35], 'planed-21x70');
    bench.draw('high', 'strip', [right.l, t - 35], [left.r, t - 35], 'planed-21x70');
    bench.holds((s) => ({
      left: s('left').l - s('ground').l,
      right: s('right').r - s('ground').r,
      foot: s('left').b - s('ground').b,
      head: s('right').t - s('ground').t,
      lowStart: s('low').l - s('left').r,
      lowEnd: s('low').r - s('right').l,
      lowFoot: s('low').b - s('ground').b,
      highStart: s('high').l - s('left').r,
      highHead: s('high').t - s('ground').t,
    }));
  });

  it('ticket counter: a sign from the outer edge of one door to that of the other, on their heads', () => {
    const bench = new Bench('flush');
    bench.draw('one', 'panel', [200, 300], [500, 1100], 'mdf-6');
    bench.draw('two', 'panel', [bench.seen()('one').r + 60, 300], [860, 1100], 'mdf-6');
    const [one, two] = [bench.seen()('one'), bench.seen()('two')];
    bench.draw('sign', 'sign', [one.l, one.t], [two.r, one.t + 220], 'mdf-6');
    bench.holds((s) => ({
      start: s('sign').l - s('one').l,
      end: s('sign').r - s('two').r,
      foot: s('sign').b - s('one').t,
    }));
  });

  it('garden gate: the third batten as far from the second as that from the first, on one foot', () => {
    const bench = new Bench('flush');
    const batten = (name: string, x: number) => bench.draw(name, 'panel', [x, 200], [x + 100, 1500], 'mdf-6');
    batten('a', 150);
    batten('b', bench.seen()('a').r + 45);
    const [a, b] = [bench.seen()('a'), bench.seen()('b')];
    batten('c', b.r + (b.l - a.r));
    bench.holds((s) => ({
      gap: s('c').l - s('b').r - (s('b').l - s('a').r),
      feet: s('b').b - s('a').b,
      heads: s('c').t - s('a').t,
    }));
  });

  it('shop window: a frame in the middle of the board that it lies on, wherever that goes', () => {
    const bench = new Bench('recessed');
    const { l, r, b, t } = bench.ground();
    bench.draw('board', 'panel', [l, b], [r, t], 'mdf-6');
    bench.draw('window', 'frame', [l + 100, b + 100], [l + 500, b + 500], 'planed-21x45');
    bench.carry('window', [mid(l, r), mid(b, t)]);
    expect(bench.on('window')).toBe('board');
    bench.holds((s) => ({
      across: mid(s('window').l, s('window').r) - mid(s('board').l, s('board').r),
      up: mid(s('window').b, s('window').t) - mid(s('board').b, s('board').t),
      board: s('board').r - s('ground').r,
    }));
  });

  it('pair of shutters: one against its stile, its mirror image against the other', () => {
    const bench = new Bench('recessed');
    stiles(bench);
    const left = bench.seen()('left');
    bench.draw('one', 'panel', [left.r, left.b], [left.r + 280, left.t], 'mdf-6');
    bench.mirror('one', 'two');
    bench.holds((s) => ({
      one: s('one').l - s('left').r,
      two: s('two').r - s('right').l,
      heads: s('two').t - s('one').t,
      head: s('one').t - s('ground').t,
      widths: s('one').r - s('one').l - (s('two').r - s('two').l),
    }));
  });

  it('house number: a plate carried from one door to the other lies on that one, in its middle', () => {
    const bench = new Bench('flush');
    bench.draw('one', 'panel', [150, 300], [450, 1200], 'mdf-6');
    bench.draw('two', 'panel', [600, 500], [900, 1400], 'mdf-6');
    bench.draw('plate', 'sign', [250, 700], [350, 760], 'mdf-6');
    expect(bench.on('plate')).toBe('one');
    const two = bench.seen()('two');
    bench.carry('plate', [mid(two.l, two.r), mid(two.b, two.t)]);
    expect(bench.on('plate')).toBe('two');
    bench.holds((s) => ({
      across: mid(s('plate').l, s('plate').r) - mid(s('two').l, s('two').r),
      up: mid(s('plate').b, s('plate').t) - mid(s('two').b, s('two').t),
    }));
  });

  it('cornice: a strip on the head of a board, level with both of its sides', () => {
    const bench = new Bench('flush');
    bench.draw('board', 'panel', [180, 250], [880, 1450], 'mdf-6');
    const board = bench.seen()('board');
    bench.draw('cornice', 'strip', [board.l, board.t + 35], [board.r, board.t + 35], 'planed-21x70');
    bench.holds((s) => ({
      foot: s('cornice').b - s('board').t,
      start: s('cornice').l - s('board').l,
      end: s('cornice').r - s('board').r,
    }));
  });

  it('name board: a painted stripe from edge to edge of the sign, at its foot', () => {
    const bench = new Bench('recessed');
    const { l, r } = bench.ground();
    bench.draw('sign', 'sign', [l, 900], [r, 1200], 'mdf-6');
    const sign = bench.seen()('sign');
    bench.draw('stripe', 'painted', [sign.r, sign.b], [sign.l, sign.b + 40]);
    expect(bench.on('stripe')).toBe('sign');
    bench.holds((s) => ({
      start: s('stripe').l - s('sign').l,
      end: s('stripe').r - s('sign').r,
      foot: s('stripe').b - s('sign').b,
      wide: s('sign').r - s('ground').r,
    }));
  });

  it('wainscot: a panel pulled up until it meets the rail follows it, and keeps its foot', () => {
    const bench = new Bench('recessed');
    const { l, r, b, t } = bench.ground();
    bench.draw('rail', 'strip', [l, t - 300], [r, t - 300], 'planed-21x70');
    bench.draw('panel', 'panel', [l, b], [r, b + 600], 'mdf-6');
    const rail = bench.seen()('rail');
    bench.pull('panel', 'resize-high-y', [mid(l, r), bench.seen()('panel').t], [mid(l, r), rail.b]);
    bench.holds((s) => ({
      head: s('panel').t - s('rail').b,
      foot: s('panel').b - s('ground').b,
      start: s('panel').l - s('ground').l,
      end: s('rail').r - s('ground').r,
    }));
  });

  it('door knob: put down freely it stays by its measure from the lower left of the face', () => {
    const bench = new Bench('flush');
    bench.draw('door', 'panel', [200, 200], [800, 1700], 'mdf-6');
    bench.draw('knob', 'fitting', [713, 941], [777, 1003], undefined, 'free');
    const { l, b } = bench.seen()('knob');
    bench.holds((s) => ({ across: s('knob').l - l, up: s('knob').b - b }));
    expect(bench.on('knob')).toBe('door');
  });
});
