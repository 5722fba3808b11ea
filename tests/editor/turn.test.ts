import { expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Strip } from '../../src/design/schema.ts';
import { freshDocument } from '../../src/editor/document/document.ts';
import { startTurn } from '../../src/editor/gesture/turn.ts';
import { createEditorStore } from '../../src/editor/state/store.ts';
import { radians } from '../../src/measure/units.ts';

const strip = (id: string, more: Partial<Strip>): Strip => ({
  ...newPart('strip', { id, name: id, box: { x: 400, y: 600, w: 400, h: 40 }, stock: 'pine-1x3' }),
  ...more,
});

/** Turns strip `a` by its end to an angle, as a hand does. */
function turnedTo(angle: number, free: boolean): number | undefined {
  const leaning = strip('b', { lie: 'turned', angle: 33.5, length: 300 });
  const design: Design = { ...newDesign(), parts: [strip('a', { lie: 'across' }), leaning] };
  const store = createEditorStore(design, 'light');
  store.setState({ edit: { ...freshDocument(design), selection: ['a'] } });
  const touch = (deg: number) => {
    const [x, y] = [600 + 200 * Math.cos(radians(deg)), 620 + 200 * Math.sin(radians(deg))];
    return { px: { x, y }, face: { x, y }, free, shift: false, touch: false };
  };
  const gesture = startTurn(store, touch(0));
  gesture?.move(touch(angle));
  gesture?.end(touch(angle));
  const part = store.getState().edit.design.parts[0];
  return part?.kind === 'strip' ? part.angle : undefined;
}

it('a strip being turned stops at every 15 degrees and at the lean of other strips, unless placed freely', () => {
  expect(turnedTo(46, false)).toBe(45);
  expect(turnedTo(34.2, false)).toBe(33.5);
  // Square to the other.
  expect(turnedTo(124, false)).toBe(123.5);
  expect(turnedTo(34.2, true)).toBeCloseTo(34.2, 9);
});
