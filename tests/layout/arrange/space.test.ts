import { describe, expect, it } from 'vitest';
import type { Part } from '../../../src/design/schema.ts';
import type { Arranging } from '../../../src/layout/arrange/arranged.ts';
import { divide } from '../../../src/layout/arrange/divide.ts';
import { namesFor, spaceBetween } from '../../../src/layout/arrange/space.ts';
import { layOut } from '../../../src/layout/layout.ts';
import { at, boxOfPart, codes, design, lay, panel, plainFace, run, STOCKS, strip } from '../sample.ts';

function arranging(parts: readonly Part[]): Arranging {
  const input = { design: design(parts), face: plainFace(), keepClears: [], stocks: STOCKS };
  return { input, layout: layOut(input) };
}

const all = (of: string) => ({ left: of, right: of, bottom: of, top: of });
const door = panel('door', at(100, 100, 500, 800));
const frame = { ...run('frame', at(100, 100, 500, 800)), on: 'door' };

describe('the space to divide', () => {
  it('lies inside a frame, on what the frame lies on', () => {
    const on = arranging([door, frame]);
    const { on: support, ...edges } = spaceBetween(on, all('frame'));
    expect(support).toBe('door');
    expect(edges.left).toEqual({ of: 'frame', side: 'low', inner: true });
    expect(edges.top).toEqual({ of: 'frame', side: 'high', inner: true });
    const made = divide(on, {
      ...edges,
      columns: 2,
      rows: 2,
      framed: false,
      through: 'up',
      upright: 'lath',
      across: 'lath',
      names: { upright: 'Stile', across: 'Rail' },
      like: {
        on: support,
        finish: null,
        fixing: { how: 'brads', glue: true },
        onEdge: false,
        ends: { start: { cut: 'square' }, end: { cut: 'square' } },
        fit: false,
        locked: false,
      },
    });
    const d = design([door, frame, ...made.add], made.rules);
    const layout = lay(d);
    // The opening is 500 - 2 x 40 by 800 - 2 x 40; the upright runs through it in the middle.
    expect(boxOfPart(layout, 'upright-1')).toEqual({ x: 330, y: 140, w: 40, h: 720 });
    expect(boxOfPart(layout, 'rail-1')).toEqual({ x: 140, y: 480, w: 190, h: 40 });
    expect(layout.parts.find((p) => p.id === 'rail-2')?.on).toBe('door');
    expect(codes(layout)).toEqual([]);
  });

  it('lies on a panel', () => {
    const space = spaceBetween(arranging([door]), all('door'));
    expect(space).toMatchObject({ on: 'door', left: { of: 'door', side: 'low' } });
    expect(space.left.inner).toBeUndefined();
  });

  it('takes the facing edge of a part beside it, and the inside of the frame around both', () => {
    const mullion = { ...strip('mullion', at(330, 140, 40, 720)), on: 'door' };
    const space = spaceBetween(arranging([door, frame, mullion]), { ...all('frame'), right: 'mullion' });
    expect(space.left).toEqual({ of: 'frame', side: 'low', inner: true });
    expect(space.right).toEqual({ of: 'mullion', side: 'low' });
    expect(space.on).toBe('door');
  });

  it('lies between parts on what is below all of them; face and levels have no say then', () => {
    const a = { ...strip('a', at(120, 200, 40, 300)), on: 'door' };
    const b = { ...strip('b', at(400, 200, 40, 300)), on: 'door' };
    const c = strip('c', at(700, 200, 40, 300));
    const on = arranging([door, a, b, c]);
    const between = spaceBetween(on, { left: 'a', right: 'b', bottom: 'face', top: 'level:skin' });
    expect(between).toMatchObject({
      on: 'door',
      left: { of: 'a', side: 'high' },
      right: { of: 'b', side: 'low' },
      bottom: { of: 'face', side: 'low' },
      top: { of: 'level:skin', side: 'high' },
    });
    expect(spaceBetween(on, { left: 'a', right: 'c', bottom: 'face', top: 'face' }).on).toBe('face');
    expect(spaceBetween(on, all('level:skin')).on).toBe('face');
  });

  it('starts from what is selected', () => {
    const on = arranging([
      door,
      frame,
      strip('a', at(620, 200, 40, 500)),
      strip('b', at(900, 250, 40, 300)),
      strip('low', at(600, 50, 300, 40), 'across'),
      strip('top', at(600, 950, 300, 40), 'across'),
    ]);
    expect(namesFor(on, ['frame'])).toEqual(all('frame'));
    expect(namesFor(on, ['b', 'a'])).toEqual({ left: 'a', right: 'b', bottom: 'b', top: 'b' });
    expect(namesFor(on, ['a', 'b', 'low', 'top'])).toEqual({
      left: 'a',
      right: 'b',
      bottom: 'low',
      top: 'top',
    });
    expect(namesFor(on, [])).toBeNull();
  });
});
