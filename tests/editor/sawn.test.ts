import { describe, expect, it } from 'vitest';
import { sawnBy } from '../../src/editor/drawing/sawn.ts';
import type { LaidPart } from '../../src/layout/laid.ts';
import { pick } from '../../src/list/at.ts';
import { boxStrip, plan, run } from '../joinery/make.ts';

const HEIGHT = 500;
const WOOD = 38;
const path = [
  { x: 0, y: 0 },
  { x: 600, y: 0 },
  { x: 600, y: HEIGHT },
  { x: 0, y: HEIGHT },
];
const frame = run('frame', path, true, WOOD);
/** Runs out of the frame at its top, to nothing: what is beyond the frame is left out. */
const batten = boxStrip('batten', 100, WOOD, 30, 700);
const joinery = plan([frame, batten]);
const sawn = sawnBy({ layout: { parts: [frame, batten] } as never, joinery });
const drawnOf = (part: LaidPart) => pick(sawn([part]), 0);
const topOf = ({ region }: LaidPart) =>
  Math.max(...region.flatMap(({ outer }) => outer.map((point) => point.y)));

describe('what is drawn of a part', () => {
  it('ends where the saw ends it', () => {
    expect(topOf(batten)).toBe(WOOD + 700);
    // The inner edge of the frame's top is its outer edge less its wood.
    expect(topOf(drawnOf(batten))).toBeCloseTo(HEIGHT - WOOD, 6);
    expect(drawnOf(batten)).toBe(drawnOf(batten));
    // Wherever it stands in a list, after whatever list came before.
    const cut = drawnOf(batten);
    const whole = drawnOf(frame);
    expect(sawn([frame, batten])).toEqual([whole, cut]);
    expect(sawn([batten, frame])[0]).toBe(cut);
    expect(sawn([batten, frame])[1]).toBe(whole);
    expect(sawn([frame])[0]).toBe(whole);
    expect(sawn([frame, batten])[1]).toBe(cut);
  });

  it('is what is laid while it is carried, and where there is no plan yet', () => {
    const carried = boxStrip('batten', 130, WOOD, 30, 700);
    expect(drawnOf(carried)).toBe(carried);
    expect(sawnBy(null)([batten])[0]).toBe(batten);
  });

  it('is what is laid where the saw leaves nothing of it', () => {
    const gone = { ...joinery, solids: joinery.solids.filter(({ part }) => part !== 'batten') };
    const drawn = sawnBy({ layout: { parts: [frame, batten] } as never, joinery: gone });
    expect(drawn([batten])[0]).toBe(batten);
  });
});
