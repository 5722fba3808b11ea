import { describe, expect, it } from 'vitest';
import { flatten } from '../../src/drawing/walk.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { packetPages } from '../../src/output/packet/packet.ts';
import { EN } from '../../src/output/packet/words/en.ts';
import { planOf, STARTERS } from '../plan/starters.ts';

/** All that is written under the heading of the joints, a detail's lines as one text. */
function toldOf(name: string): string {
  const texts = packetPages(planOf(name)).flatMap(({ drawing }) => flatten(drawing.items).texts);
  const words = texts.map(({ item }) => item.text);
  const from = words.indexOf(EN.joints.lead);
  return from < 0 ? '' : words.slice(from).join(' ');
}

interface At {
  readonly x: number;
  readonly y: number;
}

/** Distance of two outlines on the face, each side sampled: an independent look at whether pieces touch. */
function gap(a: Piece, b: Piece): number {
  const sides = ({ placed }: Piece) =>
    placed.flatMap(({ outer }) => outer.map((p, i) => [p, outer[(i + 1) % outer.length] ?? p] as const));
  const far = (p: At, [from, to]: readonly [At, At]) => {
    const [x, y] = [to.x - from.x, to.y - from.y];
    const t = Math.max(0, Math.min(1, ((p.x - from.x) * x + (p.y - from.y) * y) / (x * x + y * y || 1)));
    return Math.hypot(p.x - from.x - t * x, p.y - from.y - t * y);
  };
  const near = (own: Piece, other: Piece) =>
    sides(own).flatMap(([p]) => sides(other).map((side) => far(p, side)));
  return Math.min(...near(a, b), ...near(b, a));
}

describe.each(STARTERS)('the joints of %s', (name) => {
  const { pieces } = planOf(name).joinery;
  const told = toldOf(name);

  it('name pairs of pieces that touch on the face', () => {
    const pairs = new Set([...told.matchAll(/\b[A-Z]+\d+ \+ [A-Z]+\d+\b/g)].map(([pair]) => pair));
    expect(pairs.size).toBeGreaterThan(0);
    for (const pair of pairs) {
      const [all, others] = pair.split(' + ').map((label) => pieces.filter((piece) => piece.label === label));
      const touch = all?.some((one) => others?.some((other) => other !== one && gap(one, other) < 0.01));
      expect(touch, pair).toBe(true);
    }
  });

  it('let the piece that is told to run through end elsewhere, and the other one there', () => {
    // What ends against another knows what it meets there.
    for (const [, through, ending] of told.matchAll(/([A-Z]+\d+) runs through, ([A-Z]+\d+) ends/g)) {
      const other = pieces.filter(({ label }) => label === ending);
      expect(
        other.some(({ ends }) => ends.some((end) => end.with !== null)),
        `${through}, ${ending}`,
      ).toBe(true);
    }
  });
});
