import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/schema.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { newRule, proposed } from '../../src/editor/edit/newRule.ts';

describe('a rule that is added in the pane', () => {
  const door = newPart('panel', { id: 'door', name: 'Door', box: { x: 200, y: 200, w: 500, h: 900 } });
  const frame = newPart('run', { id: 'frame', name: 'Frame', box: { x: 250, y: 250, w: 400, h: 800 } });
  const plate = newPart('panel', { id: 'plate', name: 'Plate', box: { x: 400, y: 600, w: 100, h: 50 } });
  const of = (parts: Design['parts'], kind: Parameters<typeof proposed>[2]) => {
    const design = { ...newDesign(), parts };
    const shown = shownFrom(design);
    const about = proposed(shown, plate, kind);
    const draft = { kind, axis: 'x', side: 'low', toSide: 'low', ...about } as const;
    return { about, rule: newRule(shown, plate, draft) };
  };

  it('proposes for a margin and a center what the part lies on, not the face', () => {
    const { about, rule } = of([door, { ...plate, on: 'door' }], 'reveal');
    expect(about).toEqual({ to: 'door', and: 'door', inner: false });
    // 400 less 200 from the left.
    expect(rule).toMatchObject({ kind: 'reveal', inside: 'door', margin: 200 });
    expect(of([door, { ...plate, on: 'door' }], 'center').about.to).toBe('door');
    expect(of([plate], 'reveal').about.to).toBe('level:field');
  });

  it('proposes the frame around the part before what both lie on', () => {
    const all = [door, { ...frame, on: 'door' }, { ...plate, on: 'door' }];
    expect(of(all, 'reveal').about).toEqual({ to: 'frame', and: 'frame', inner: true });
  });

  it('proposes another part for a mirror image, and the face for a distance', () => {
    expect(of([door, plate], 'mirror').about.to).toBe('door');
    expect(of([door, { ...plate, on: 'door' }], 'set').about.to).toBe('face');
  });
});
