import { expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { applyEdits } from '../../src/design/edit/edit.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { arrangingOf, editsToArrange } from '../../src/editor/edit/arrange.ts';
import { mirrorCopy } from '../../src/layout/arrange/mirror.ts';

/** The name that the mirror image of a part of this name has. */
function nameOfImage(name: string, axis: 'x' | 'y', other = 'Board'): string | undefined {
  const panel = (id: string, named: string, x: number) =>
    newPart('panel', { id, name: named, box: { x, y: 200, w: 150, h: 300 } });
  const design = { ...newDesign(), parts: [panel('a', name, 150), panel('b', other, 700)] };
  const shown = shownFrom(design);
  const made = mirrorCopy(arrangingOf(shown), ['a'], {
    axis,
    about: { of: 'face', side: 'mid' },
  });
  const done = applyEdits(design, editsToArrange(shown, made));
  return done.ok ? done.design.parts.at(-1)?.name : undefined;
}

it('a mirror image is named by its side', () => {
  expect(nameOfImage('Left door', 'x')).toBe('Right door');
  expect(nameOfImage('Frame of the right door', 'x')).toBe('Frame of the left door');
  expect(nameOfImage('Upper rail', 'y')).toBe('Lower rail');
  // Nothing of its side, of another axis, or a word that only has it within.
  expect(nameOfImage('Hatch 1', 'x')).toBe('Hatch 2');
  expect(nameOfImage('Upper rail', 'x')).toBe('Upper rail 2');
  expect(nameOfImage('Bright bar', 'x')).toBe('Bright bar 2');
  // One of that name is there already.
  expect(nameOfImage('Left door', 'x', 'Right door')).toBe('Bottom right door');
});
