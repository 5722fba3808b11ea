import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { applyEdits } from '../../src/design/edit/edit.ts';
import type { Design, Part, RuleOf } from '../../src/design/schema.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { editsToGap, gapFixedBy, roomOf } from '../../src/editor/edit/centerGap.ts';

const BOX = { x: 100, y: 200, w: 500, h: 300 };
const panel = (id: string, more: Partial<Part> = {}): Part =>
  ({ ...newPart('panel', { id, name: id, box: BOX }), ...more }) as Part;

const centered = (...parts: readonly string[]): RuleOf<'center'> => ({
  ...{ id: 'center', kind: 'center', axis: 'x', parts },
  ...{ low: { of: 'face', side: 'low' }, high: { of: 'face', side: 'high' } },
});

const designOf = (parts: readonly Part[], rule: RuleOf<'center'>): Design => ({
  ...newDesign(),
  parts,
  rules: [rule],
});

describe('the gap beside what is centered', () => {
  it('given for one part sizes it, and leaves that gap on both sides', () => {
    const rule = centered('a');
    const design = designOf([panel('a')], rule);
    const shown = shownFrom(design);
    const { face } = shown;
    const room = roomOf(rule, shown);
    expect(gapFixedBy(design, rule)).toBeNull();
    expect(room).toEqual({ low: 0, high: face.width });
    if (!room) return;
    const made = applyEdits(design, editsToGap(shown, rule, room, 50));
    if (!made.ok) throw new Error('refused');
    const after = shownFrom(made.design).layout;
    expect(after.boxes.get('a')).toMatchObject({ x: 50, w: face.width - 100, y: 200, h: 300 });
    expect(after.rules[0]?.result).toBeCloseTo(50, 9);
  });

  it('says what decides it where it cannot be given', () => {
    const strip: Part = newPart('strip', { id: 's', name: 's', box: BOX, stock: 'pine-1x3' });
    const by = (parts: readonly Part[], rule: RuleOf<'center'>) => gapFixedBy(designOf(parts, rule), rule);
    expect(by([panel('a'), panel('b')], centered('a', 'b'))).toBe('block');
    expect(by([panel('a', { locked: true })], centered('a'))).toBe('locked');
    expect(by([{ ...strip, lie: 'up' } as Part], centered('s'))).toBe('stock');
    expect(by([{ ...strip, lie: 'across' } as Part], centered('s'))).toBeNull();
  });
});
