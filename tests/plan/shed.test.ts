import { describe, expect, it } from 'vitest';
import { degrees } from '../../src/measure/units.ts';
import { planOf } from './starters.ts';

describe('the gable of the potting shed', () => {
  const { joinery, checks, design } = planOf('potting-shed');
  const gable = design.parts.find((part) => part.id === 'gable');
  const pieces = joinery.pieces.filter((piece) => piece.part.startsWith('gable'));
  // 60 + 1/2 + 3 in across; planks of 2 1/2 in, 1/8 in apart; eaves at 0.2 of 30 in: by hand from the drawing.
  const [width, height, plank, gap, eaves] = [63.5, 30, 2.5, 0.125, 0.2];
  const inch = 25.4;

  it('has as many planks as fit and equal ends, none of them a sliver (common practice, no source)', () => {
    expect(gable?.box.w).toBeCloseTo(width * inch, 6);
    // 24 whole ones and their gaps leave 0.625 in: 23 and two cut ones, each 1.4375 in wide and more than half.
    const whole = Math.floor((width + gap) / (plank + gap));
    const rest = (width - whole * (plank + gap) + plank + gap) / 2 - gap;
    expect(pieces).toHaveLength(rest >= plank / 2 ? whole + 1 : whole);
    expect(checks).toEqual([]);
  });

  it('ends in the slope of the roof, by the tangent, and in two cuts under the ridge', () => {
    const slope = degrees(Math.atan2((1 - eaves) * height, width / 2));
    for (const piece of pieces) {
      const [, end] = piece.ends;
      expect(Math.abs(end.miter)).toBeCloseTo(slope, 6);
      expect(end.second === null).toBe(piece !== pieces[(pieces.length - 1) / 2]);
    }
  });
});
