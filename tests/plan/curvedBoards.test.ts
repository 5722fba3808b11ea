import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { endName } from '../../src/editor/control/stepName.ts';
import type { Point } from '../../src/geometry/shape.ts';
import { pick } from '../../src/list/at.ts';
import { EN } from '../../src/plan/words/en.ts';
import { curveWords } from '../../src/plan/words/tape.ts';
import { planned } from './starters.ts';

describe('boards under an arch', () => {
  const [span, rise] = [600, 200];
  const fill = {
    ...newPart('fill', {
      id: 'f',
      name: 'Boards',
      box: { x: 200, y: 300, w: span, h: 700 },
      stock: 'pine-1x4',
    }),
    shape: { form: 'arched', rise },
  } as const;
  const plan = planned({ ...newDesign(), parts: [fill] });
  const style = { unit: 'mm', fraction: '16' } as const;

  it('are cut square at the foot, and marked from a pattern at the top, as deep as the arc lies over its chord', () => {
    // The radius of a segment from its span and rise, and the sagitta of a board's own chord (Machinery's Handbook).
    const radius = (span ** 2 / 4 + rise ** 2) / (2 * rise);
    const on = (x: number): Point => ({ x, y: Math.sqrt(radius ** 2 - (x - 200 - span / 2) ** 2) });
    expect(plan.joinery.pieces.length).toBeGreaterThan(4);
    for (const piece of plan.joinery.pieces) {
      const xs = piece.placed.flatMap(({ outer }) => outer.map(({ x }) => x));
      const [low, high] = [on(Math.min(...xs)), on(Math.max(...xs))];
      const chord = Math.hypot(high.x - low.x, high.y - low.y);
      const depth = radius - Math.sqrt(radius ** 2 - chord ** 2 / 4);
      const words = curveWords(piece, EN.tape, { ...plan.design.measure, ...style });
      expect(words).toContain('mark the curve from its pattern');
      const told = Number(/\(([\d.]+)/.exec(words)?.[1]);
      expect(Math.abs(told - depth)).toBeLessThan(0.6);
      const names = (['start', 'end'] as const).map((end) =>
        endName(piece, end, ((key: string) => key) as never),
      );
      expect(names).toContain('bench.end.square');
      expect(names).toContain('bench.end.sawn');
      expect(pick(piece.ends, 0).cut).toBe('sawn');
    }
  });
});
