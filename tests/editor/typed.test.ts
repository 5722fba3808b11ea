import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { applyEdits } from '../../src/design/edit/edit.ts';
import type { Design, Part, Rule } from '../../src/design/schema.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { editsToType } from '../../src/editor/edit/typed.ts';
import type { Box } from '../../src/geometry/shape.ts';
import { layoutOf } from './laid.ts';

const face = { low: { of: 'face', side: 'low' }, high: { of: 'face', side: 'high' } } as const;
const across: Rule = { id: 'across', kind: 'center', axis: 'x', parts: ['a'], ...face };
const up: Rule = { id: 'up', kind: 'center', axis: 'y', parts: ['a'], ...face };

function designWith(parts: Readonly<Record<string, Box>>, rules: readonly Rule[]): Design {
  const panels: Part[] = Object.entries(parts).map(([id, box]) => newPart('panel', { id, name: id, box }));
  return { ...newDesign(), parts: panels, rules: [...rules] };
}

/** What is there after a measure was typed. */
function typed(design: Design, id: string, sides: Partial<Box>) {
  const box = layoutOf(design).boxes.get(id);
  if (!box) throw new Error(`no ${id}`);
  const { edits, letGo } = editsToType(shownFrom(design), id, box, sides);
  const done = applyEdits(design, edits);
  if (!done.ok) throw new Error('the edits do not apply');
  return {
    box: layoutOf(done.design, new Set([id])).boxes.get(id),
    design: done.design,
    letGo: letGo.map((r) => r.id),
  };
}

const panel = { x: 300, y: 400, w: 200, h: 100 };

describe('a typed measure', () => {
  it('is where the part is, whatever held it along that axis; along the other it still is held', () => {
    const design = designWith({ a: panel }, [across, up]);
    const after = typed(design, 'a', { y: 0 });
    expect(after.box).toMatchObject({ y: 0, h: 100 });
    expect(after.letGo).toEqual(['up']);
    expect(after.design.rules).toEqual([across]);
  });

  it('lets rules follow that can: a distance is the typed one, what is centered stays so when it is made wider', () => {
    const set: Rule = {
      id: 's',
      kind: 'set',
      axis: 'x',
      edge: { of: 'a', side: 'low' },
      from: face.low,
      distance: 300,
    };
    const carried = typed(designWith({ a: panel }, [set]), 'a', { x: 120 });
    expect(carried.box).toMatchObject({ x: 120 });
    expect(carried.design.rules).toEqual([{ ...set, distance: 120 }]);
    const wider = typed(designWith({ a: panel }, [across]), 'a', { w: 260 });
    expect(wider.box?.w).toBe(260);
    expect(wider.design.rules).toEqual([across]);
  });

  it('takes its part out of a row, which the others keep', () => {
    const even: Rule = { id: 'row', kind: 'even', axis: 'x', parts: ['a', 'b', 'c'], mode: 'gaps', ...face };
    const row = designWith({ a: panel, b: { ...panel, x: 520, w: 50 }, c: { ...panel, x: 600, w: 50 } }, [
      even,
    ]);
    const after = typed(row, 'b', { x: 7 });
    expect(after.box?.x).toBe(7);
    expect(after.design.rules).toEqual([{ ...even, parts: ['a', 'c'] }]);
  });

  it('changes a margin all around into what it was along the other axis and at the other side', () => {
    const reveal: Rule = { id: 'm', kind: 'reveal', part: 'a', inside: 'b', inner: false, margin: 20 };
    const design = designWith({ a: panel, b: { x: 100, y: 100, w: 500, h: 400 } }, [reveal]);
    const after = typed(design, 'a', { w: 300 });
    // 100 + 20 from the left, 400 - 2 * 20 high.
    expect(after.box).toEqual({ x: 120, y: 120, w: 300, h: 360 });
  });

  it('keeps the size of what a typed place takes out of a center', () => {
    const after = typed(designWith({ a: panel }, [across]), 'a', { x: 40 });
    expect(after.box).toEqual({ ...panel, x: 40 });
    expect(after.design.rules).toEqual([]);
  });

  it('lets nothing go where nothing changes', () => {
    const design = designWith({ a: panel }, [across, up]);
    const x = layoutOf(design).boxes.get('a')?.x ?? 0;
    const after = typed(design, 'a', { x });
    expect(after.letGo).toEqual([]);
    expect(after.design.rules).toEqual([across, up]);
  });
});
