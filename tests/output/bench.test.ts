import { describe, expect, it } from 'vitest';
import { flatten } from '../../src/drawing/walk.ts';
import { boxAround } from '../../src/geometry/box.ts';
import { boxOf } from '../../src/geometry/region.ts';
import { formatLength } from '../../src/measure/format.ts';
import { packetPages } from '../../src/output/packet/packet.ts';
import { EN } from '../../src/output/packet/words/en.ts';
import { planOf } from '../plan/starters.ts';

describe('the bench sheet of the kiosk', () => {
  const plan = planOf('harbor-ticket-kiosk');
  const words = packetPages(plan).flatMap(({ drawing }) =>
    flatten(drawing.items).texts.map(({ item }) => item.text),
  );
  const told = words.join(' ');

  it('tells of each frame its pieces and the diagonal of its outer corners', () => {
    // Pythagoras, of what a tape reads on the long edges of two neighbors: 78 by 41 1/2, 19 by 10 3/4, 34 by 6 3/4 in.
    for (const [a, b] of [
      [78, 41.5],
      [19, 10.75],
      [34, 6.75],
    ] as const) {
      const lengths = plan.joinery.pieces.map(({ length }) => length / 25.4);
      for (const side of [a, b]) expect(lengths.some((length) => Math.abs(length - side) < 1e-6)).toBe(true);
      expect(told).toContain(formatLength(25.4 * Math.sqrt(a * a + b * b), plan.design.measure));
    }
    expect(words).toContain(EN.titles.bench);
    expect(told).toContain('2 x Left door molding, Right door molding');
  });
});

/** Doors by what their parts are called in the file. */
const DOORS = [
  ['orchard-barn-door', /^left-/, null],
  ['potting-shed', /^(door|ledge|brace)/, null],
  ['branch-line-shed', /^sliding-door-1/, 'Left door'],
  ['village-library', /^door-pair-1/, 'Doors'],
] as const;

describe.each(DOORS)('the bench sheet of %s', (name, own, called) => {
  const plan = planOf(name);
  const pages = packetPages(plan).map(({ drawing }) =>
    flatten(drawing.items).texts.map(({ item }) => item.text),
  );
  const told = pages
    .filter((texts) => texts.includes(EN.titles.bench))
    .flat()
    .join(' ');

  it('has its door as one thing, with all of its pieces and its diagonal', () => {
    const pieces = plan.joinery.pieces.filter(({ part }) => own.test(part));
    expect(pieces.length).toBeGreaterThan(4);
    for (const { label, shown } of pieces) {
      expect(told).toContain(`x ${label}, ${formatLength(shown.length, plan.design.measure)}`);
    }
    const box = boxAround(pieces.flatMap(({ placed }) => boxOf(placed) ?? []));
    // Pythagoras; the ledges of the potting shed's door stand within its planks.
    const diagonal = formatLength(Math.hypot(box?.w ?? 0, box?.h ?? 0), plan.design.measure);
    expect(told).toContain(name === 'potting-shed' ? EN.bench.byFace : diagonal);
    if (called) expect(told).toContain(called);
  });
});
