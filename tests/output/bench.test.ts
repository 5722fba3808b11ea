import { describe, expect, it } from 'vitest';
import { flatten } from '../../src/drawing/walk.ts';
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
