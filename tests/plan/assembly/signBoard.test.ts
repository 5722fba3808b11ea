import { describe, expect, it } from 'vitest';
import { readSupplies } from '../../../src/command/supplies.ts';
import { containsPointInRegion } from '../../../src/geometry/region.ts';
import type { Box, Point, Region } from '../../../src/geometry/shape.ts';
import { plan } from '../../../src/plan/plan.ts';
import { chanceOf } from '../../chance.ts';
import { runs } from '../../runs.ts';
import { madeOn, SKINNED } from './made.ts';

/** How far a point is from the border of a region: from each of its straight stretches in turn. */
function fromBorder(region: Region, { x, y }: Point): number {
  let least = Number.POSITIVE_INFINITY;
  for (const { outer } of region)
    outer.forEach((a, i) => {
      const b = outer[(i + 1) % outer.length] ?? a;
      const [dx, dy] = [b.x - a.x, b.y - a.y];
      const share = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy || 1)));
      least = Math.min(least, Math.hypot(a.x + share * dx - x, a.y + share * dy - y));
    });
  return least;
}

const planned = (box: Box, given: Record<string, string | number>) => {
  const { design, group } = madeOn(SKINNED, 'sign-board', box, given);
  const made = plan(design, readSupplies(design), { effort: { nodes: 200 } });
  const of = (role: string) => made.layout.parts.find(({ id }) => id === group.assembly?.parts[role]);
  return { made, board: of('ground'), frame: of('frame') };
};

describe.each(['rectangle', 'arched', 'ribbon', 'shield', 'coved'])('a flat band on a board: %s', (shape) => {
  it('lies on all that is nearer to the border than it is wide, within the board, sawn without an error', () => {
    for (let seed = 0; seed < runs(4); seed++) {
      const chance = chanceOf(seed * 5 + shape.length);
      const box = { x: 60, y: 400, w: 480 + 350 * chance(), h: 200 + 150 * chance() };
      const { made, board, frame } = planned(box, { shape, framing: 'band' });
      const told = `${seed} ${JSON.stringify(box)}`;
      const width = made.stocks.get(frame?.stock ?? '');
      if (!board || !frame || width?.form !== 'flat') throw new Error(`no frame: ${told}`);
      expect(
        made.checks.filter(
          ({ severity, code }) => severity !== 'note' && !/^(load|lettering|stencil)\./.test(code),
        ),
        told,
      ).toEqual([]);
      const pieces = made.joinery.solids.filter(({ part }) => part === frame.id).map(({ region }) => region);
      const [step, dust] = [7.3, 0.2];
      for (let x = box.x + dust; x < box.x + box.w; x += step)
        for (let y = box.y + dust; y < box.y + box.h; y += step) {
          const at = { x, y };
          const covered = pieces.some((piece) => containsPointInRegion(piece, at));
          if (!containsPointInRegion(board.region, at)) {
            if (fromBorder(board.region, at) > dust) expect(covered, `${told} ${x} ${y}`).toBe(false);
            continue;
          }
          const far = fromBorder(board.region, at);
          // Where sides meet, a mitered corner reaches farther in than the band is wide.
          if (far > dust && far < width.width - dust) expect(covered, `${told} ${x} ${y}`).toBe(true);
          if (far > 2 * width.width) expect(covered, `${told} ${x} ${y}`).toBe(false);
        }
    }
  });

  it('follows the ends that are asked for, has no piece that the saw cannot make, and letters stay clear of it', () => {
    const { made, frame } = planned({ x: 60, y: 500, w: 711, h: 260 }, { shape, framing: 'band' });
    // Small letters have strokes for one bridge.
    expect(
      made.checks.filter(({ severity, code }) => severity !== 'note' && code !== 'stencil.one-bridge'),
    ).toEqual([]);
    const arcs = made.joinery.pieces.filter(({ part, form }) => part === frame?.id && form === 'sheet');
    // Arcs are sawn from sheet: one over the head, two to each end of a shield, one in each cove; tails have none.
    expect(arcs.length).toBe({ rectangle: 0, arched: 1, ribbon: 0, shield: 4, coved: 4 }[shape]);
  });
});

describe('the tails of a ribbon', () => {
  // By hand: a side of the notch leans by atan(notch / half of the height), and the tails are that much sharper than square,
  // so that a butt there is cut by as much. The sides of the notch turn by twice that: a miter halves it, a butt is cut by
  // what it lacks to a square corner; the lesser of both is taken, which changes at a turn of 60 degrees.
  it.each([0.04, 0.1, 0.2, 0.28, 0.35, 0.5])(
    'are sawn with the lesser cuts where they are %d of the height deep',
    (share) => {
      const box = { x: 60, y: 500, w: 800, h: 240 };
      const { made, frame } = planned(box, { shape: 'ribbon', framing: 'band', ends: share * box.h });
      expect(made.checks.filter(({ code }) => code === 'joint.over-saw')).toEqual([]);
      const lean = (Math.atan(2 * share) * 180) / Math.PI;
      const pieces = made.joinery.pieces.filter(({ part }) => part === frame?.id);
      expect(pieces).toHaveLength(6);
      const angles = pieces.flatMap(({ ends }) => ends.map(({ miter }) => Math.abs(miter)));
      const by = (angle: number) => angles.filter((one) => Math.abs(one - angle) < 1e-6).length;
      if (lean < 30) expect(by(lean)).toBe(12);
      else expect([by(lean), by(90 - 2 * lean)]).toEqual([8, 4]);
    },
  );
});

describe('molding on a board', () => {
  it.each([
    ['rectangle', true],
    ['arched', true],
    ['ribbon', false],
    ['shield', false],
    ['coved', false],
  ])('goes around straight and arched ones alone: %s', (shape, is) => {
    expect(planned({ x: 60, y: 500, w: 711, h: 203 }, { shape }).frame !== undefined).toBe(is);
  });
});
