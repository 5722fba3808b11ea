import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ContainerOffer, chooseContainers } from '../../src/finish/containers.ts';
import { contrastRatio, letteringContrast, luminance } from '../../src/finish/contrast.ts';
import { planFinish } from '../../src/finish/planFinish.ts';
import { spreadingRate } from '../../src/finish/spreading.ts';
import type { PaintedLayer } from '../../src/lettering/painted.ts';
import { box, finish, input, NO_WASTE, solid } from './build.ts';

const M2_PER_FT2 = 0.09290304;
const L_PER_GAL = 3.785411784;
/** Square feet a gallon of a rate in square meters a liter. */
const perGallon = (rate: number) => (rate * L_PER_GAL) / M2_PER_FT2;
const MICROMETERS_PER_MIL = 25.4;

describe('spreading rate (check values, section 8)', () => {
  it.each([
    [0.65, 5 * MICROMETERS_PER_MIL, 1, 208.52, 0.05],
    [0.374, 1.5 * MICROMETERS_PER_MIL, 1, 399.9, 0.1],
    [0.52, 1.5 * MICROMETERS_PER_MIL, 0.3, 167, 0.5],
    // 1 gal at 1 mil: 231000/144.
    [1, MICROMETERS_PER_MIL, 1, 1604.17, 0.01],
  ])('%d solids at %d um, %d transferred: %d ft2/gal', (solids, film, transfer, expected, within) => {
    expect(Math.abs(perGallon(spreadingRate(solids, film, transfer)) - expected)).toBeLessThan(within);
  });

  it('65 % at 125 um is 5.2 m2/L', () => {
    expect(spreadingRate(0.65, 125)).toBeCloseTo(5.2, 12);
  });
});

const US: ContainerOffer[] = [
  { container: 'quart', volume: L_PER_GAL / 4, price: 16 },
  { container: 'gallon', volume: L_PER_GAL, price: 42 },
];
const counts = (need: number, offers: readonly ContainerOffer[]) =>
  Object.fromEntries(chooseContainers(need, offers).map(({ container, count }) => [container, count]));
const unpriced = (offers: readonly ContainerOffer[]) => offers.map((offer) => ({ ...offer, price: null }));

describe('containers', () => {
  it('buys a gallon and a quart for 500 ft2 at 400 ft2/gal (check values, section 8)', () => {
    expect(counts((500 / 400) * L_PER_GAL, US)).toEqual({ gallon: 1, quart: 1 });
    expect(counts((500 / 400) * L_PER_GAL, unpriced(US))).toEqual({ gallon: 1, quart: 1 });
  });

  it('takes two gallons over 1.3 when that is cheaper than a gallon and quarts', () => {
    const dear = US.map((offer) => (offer.container === 'quart' ? { ...offer, price: 22 } : offer));
    expect(counts(1.3 * L_PER_GAL, dear)).toEqual({ gallon: 2 });
    expect(counts(1.3 * L_PER_GAL, US)).toEqual({ gallon: 1, quart: 2 });
  });

  it('buys nothing for nothing, and nothing from nobody', () => {
    expect(chooseContainers(0, US)).toEqual([]);
    expect(chooseContainers(3, [])).toEqual([]);
  });

  it('takes fewer cans of the same volume, larger first', () => {
    expect(chooseContainers(L_PER_GAL, unpriced(US)).map((b) => [b.container, b.count])).toEqual([
      ['gallon', 1],
    ]);
  });

  it('is enough and quick however much is needed', () => {
    const buy = chooseContainers(20_000, US);
    const volume = buy.reduce((sum, b) => sum + b.count * b.volume, 0);
    expect(volume).toBeGreaterThanOrEqual(20_000 - 1e-6);
    expect(volume).toBeLessThan(20_000 + L_PER_GAL);
  });

  /** Every count of every size, up to what any size alone would need. */
  function bruteForce(need: number, offers: readonly ContainerOffer[], priced: boolean) {
    let best = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
    const walk = (i: number, volume: number, cost: number, cans: number) => {
      const offer = offers[i];
      if (volume >= need - 1e-6 || !offer) {
        if (volume < need - 1e-6) return;
        const score = priced ? [cost, volume - need, cans] : [0, volume - need, cans];
        const d = score.findIndex((value, k) => Math.abs(value - (best[k] ?? 0)) > 1e-5);
        if (d >= 0 && (score[d] ?? 0) < (best[d] ?? 0)) best = score;
        return;
      }
      for (let n = 0; n <= Math.ceil(need / offer.volume); n++) {
        walk(i + 1, volume + n * offer.volume, cost + n * (offer.price ?? 0), cans + n);
      }
    };
    walk(0, 0, 0, 0);
    return best;
  }

  it('is as good as trying everything', () => {
    const volumes = fc.constantFrom(0.2365882365, 0.25, 0.375, 0.75, 0.946352946, 1, 2.5, 3.785411784, 5);
    const offers = fc.uniqueArray(fc.tuple(volumes, fc.integer({ min: 1, max: 60 })), {
      minLength: 1,
      maxLength: 3,
      selector: ([volume]) => volume,
    });
    fc.assert(
      fc.property(
        offers,
        fc.double({ min: 0.01, max: 6, noNaN: true }),
        fc.boolean(),
        (sizes, need, priced) => {
          const list = sizes.map(
            ([volume, price], i): ContainerOffer => ({
              container: `c${i}`,
              volume,
              price: priced ? price : null,
            }),
          );
          // Sizes without a common measure are searched to the milliliter.
          fc.pre(list.length < 2 || list.every(({ volume }) => Number.isInteger(volume * 1000)));
          const buy = chooseContainers(need, list);
          const volume = buy.reduce((sum, b) => sum + b.count * b.volume, 0);
          const cost = buy.reduce((sum, b) => sum + b.count * b.price, 0);
          const cans = buy.reduce((sum, b) => sum + b.count, 0);
          // A millionth of a liter is no can more.
          const best = bruteForce(need - 1e-6, list, priced);
          expect(volume).toBeGreaterThanOrEqual(need - 1e-6);
          expect(priced ? cost : 0).toBeCloseTo(best[0] ?? 0, 5);
          expect(volume - need).toBeCloseTo(best[1] ?? 0, 4);
          expect(cans).toBe(best[2]);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('amounts', () => {
  const panel = [solid('panel', box(0, 0, 1000, 1000), 0, 0.001)];

  it('is coats x area / rate, with waste, less what is owned', () => {
    const given = input(panel, {
      finishes: [finish('red', { coats: 3, rate_m2_l: 6, owned_l: 0.1 })],
      paint: { ...NO_WASTE, waste: 0.2 },
    });
    const [use] = planFinish(given).uses;
    expect(use?.volume).toBeCloseTo((3 / 6) * 1.2, 4);
    expect(use?.buy).toEqual([{ container: 'one', count: 1, volume: 1, price: 0 }]);
    expect(use?.left).toBeCloseTo(0.1 + 1 - 0.6, 4);
  });

  it('buys nothing when the shed holds enough', () => {
    const [use] = planFinish(input(panel, { finishes: [finish('red', { owned_l: 5 })] })).uses;
    expect(use?.buy).toEqual([]);
    expect(use?.left).toBeCloseTo(5 - 0.2, 4);
  });

  it('adds up the prices paid', () => {
    // 8 L and a little for the thin edge, a tenth of it owned: 5 + 3 x 1 at 76 beats 2 x 5 at 80.
    const containers = [
      { container: 'one', price: 12 },
      { container: 'five', price: 40 },
    ];
    const finishes = [finish('red', { rate_m2_l: 0.25, owned_l: 0.1, containers })];
    const [use] = planFinish(input(panel, { finishes })).uses;
    expect(use?.buy).toEqual([
      { container: 'five', count: 1, volume: 5, price: 40 },
      { container: 'one', count: 3, volume: 1, price: 12 },
    ]);
    expect(use?.cost).toBe(76);
  });

  it('says when there is nothing to buy it in', () => {
    const plan = planFinish(
      input(panel, { finishes: [finish('red', { containers: [{ container: 'barrel', price: 1 }] })] }),
    );
    expect(plan.checks).toEqual([
      { code: 'finish.no-containers', severity: 'warning', parts: [], figures: { finish: 'red' } },
    ]);
  });

  it('gives backs one coat: primer where there is one, else the finish', () => {
    const paint = { ...NO_WASTE, backPriming: true };
    const own = planFinish(input(panel, { paint })).uses[0];
    expect(own?.volume).toBeCloseTo((2 * 1 + 1) / 10, 4);
    const primer = { coats: 1, rate_m2_l: 5 };
    const primed = planFinish(input(panel, { paint, finishes: [finish('red', { primer })] })).uses[0];
    expect(primed?.volume).toBeCloseTo(0.2, 4);
    expect(primed?.primer).toBeCloseTo(2 / 5, 4);
  });
});

describe('contrast', () => {
  it('has the values of WCAG 2.x', () => {
    expect(contrastRatio('#000000', '#ffffff')).toBeCloseTo(21, 12);
    expect(contrastRatio('#FFFFFF', '#000000')).toBeCloseTo(21, 12);
    expect(contrastRatio('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
    expect(contrastRatio('#123456', '#123456')).toBe(1);
    expect(luminance('#ff0000')).toBeCloseTo(0.2126, 12);
  });

  it('takes the better of letter on outline and outline on ground', () => {
    const finishes = [
      finish('dark', { color: '#000000' }),
      finish('gray', { color: '#767676' }),
      finish('light', { color: '#ffffff' }),
    ];
    const on = (finish: string | null) => {
      const look = finishes.find((f) => f.id === finish)?.color;
      const looks = new Map(look === undefined ? [] : [['sign', look] as const]);
      return { parts: looks, grounds: new Map([['sign', '#ffffff']]) };
    };
    const contrast = (layers: readonly Omit<PaintedLayer, 'painted'>[], ground: string | null) =>
      letteringContrast({ sign: 'sign', layers }, on(ground), finishes);
    const fill = { role: 'fill', finish: 'gray', region: [] } as const;
    const outline = { role: 'outline', finish: 'light', region: [] } as const;
    expect(contrast([fill], 'light')).toBeCloseTo(4.54, 2);
    expect(contrast([fill, outline], 'dark')).toBeCloseTo(21, 6);
    expect(contrast([fill], null)).toBeNull();
  });

  it('warns of lettering that cannot be read', () => {
    const sign = solid('sign', box(0, 0, 500, 200), 0, 12, { kind: 'sign' });
    const plan = planFinish(
      input([sign], {
        finishes: [finish('red', { color: '#803030' }), finish('ink', { color: '#903838' })],
        lettering: [
          {
            sign: 'sign',
            at: { x: 0, y: 0 },
            layers: [{ role: 'fill', finish: 'ink', region: box(10, 10, 50, 50) }],
          },
        ],
      }),
    );
    expect(plan.checks.map((c) => [c.code, c.parts])).toEqual([['lettering.low-contrast', ['sign']]]);
    expect(plan.checks[0]?.figures.ratio).toBeCloseTo(contrastRatio('#803030', '#903838'), 12);
  });
});

describe('paint that stays on a part', () => {
  const primed = finish('red', { primer: { coats: 1, rate_m2_l: 8 } });

  it('is coats and primer on faces and edges, waste left out, by hand', () => {
    const plan = planFinish(
      input([solid('panel', box(0, 0, 500, 1000), 0, 20), solid('batten', box(700, 0, 100, 1000), 0, 20)], {
        finishes: [primed],
        paint: { ...NO_WASTE, waste: 0.25 },
      }),
    );
    // Faces 0.5 and 0.1 m2; edges 3 m and 2.2 m around, 20 mm high.
    const wet = (area: number) => (2 * area) / 10 + area / 8;
    expect(plan.onParts.map(({ part }) => part)).toEqual(['panel', 'batten']);
    expect(plan.onParts[0]?.liters).toBeCloseTo(wet(0.5 + 3 * 0.02), 9);
    expect(plan.onParts[1]?.liters).toBeCloseTo(wet(0.1 + 2.2 * 0.02), 9);
  });

  it('adds up to what is bought for, less the waste, whatever lies over what', () => {
    const solids = [
      solid('panel', box(0, 0, 500, 1000), 0, 20),
      solid('over', box(100, 100, 300, 300), 20, 32, { finish: 'blue', on: 'panel' }),
      solid('circle', box(0, 500, 200, 200), 20, 20, { kind: 'painted', finish: 'blue', on: 'panel' }),
    ];
    for (const backPriming of [false, true]) {
      const { uses, onParts } = planFinish(
        input(solids, {
          finishes: [primed, finish('blue')],
          paint: { ...NO_WASTE, waste: 0.1, backPriming },
        }),
      );
      const wet = onParts.reduce((sum, { liters }) => sum + liters, 0);
      const used = uses.reduce((sum, use) => sum + use.volume + use.primer, 0);
      expect(wet * 1.1).toBeCloseTo(used, 9);
    }
  });
});
