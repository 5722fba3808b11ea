import { describe, expect, it } from 'vitest';
import {
  middleOfWidestGap,
  movableBridges,
  settableIslands,
  withBridge,
  withBridgeAt,
  withoutBridge,
} from '../../src/editor/pane/lettering/bridges.ts';
import type { LayerStencil } from '../../src/lettering/stencil/layers.ts';

const bridge = (island: number, x: number, y: number, kind: 'island' | 'tongue' = 'island') => ({
  island,
  kind,
  at: { x, y },
  angle: 0,
  width: 4,
  length: 10,
});
const layer = (role: LayerStencil['role']): LayerStencil => ({
  role,
  finish: 'ink',
  stencil: {
    sheet: [],
    cut: [],
    bridges: [bridge(0, 0, 20), bridge(0, 0, -20), bridge(1, 120, 0), bridge(-1, 60, 0, 'tongue')],
    islands: [0, 100].map((x) => ({
      box: { x: x - 5, y: -5, w: 10, h: 10 },
      border: [
        { x: x - 5, y: -5 },
        { x: x - 5, y: 5 },
        { x: x + 5, y: 5 },
        { x: x + 5, y: -5 },
      ],
      at: { x, y: 0 },
      kind: 'island' as const,
      hold: 2,
    })),
    loose: 0,
    single: 0,
  },
});
const OPTIONS = { bridgeWidth: 4, bridges: 2, direction: 'thinnest', tongue: 2, frame: 20 } as const;

describe('moving a bridge by hand', () => {
  it('offers every bridge of an island, with the direction it leaves by', () => {
    const movable = movableBridges(layer('outline'), { ...OPTIONS, placed: [] });
    expect(movable.map((m) => [m.role, m.island, m.index, m.angle])).toEqual([
      ['outline', 0, 0, 90],
      ['outline', 0, 1, -90],
      ['outline', 1, 0, 0],
    ]);
  });

  it('keeps the other bridges of the island, and what was set on other islands and colors', () => {
    const before = {
      ...OPTIONS,
      placed: [
        { island: 0, angles: [1, 2] },
        { layer: 'shade' as const, island: 0, angles: [3] },
        { layer: 'outline' as const, island: 1, angles: [33] },
      ],
    };
    const movable = movableBridges(layer('outline'), before);
    const [first] = movable;
    if (!first) throw new Error('no bridge to move');
    expect(withBridgeAt(before, movable, first, 45).placed).toEqual([
      { island: 0, angles: [1, 2] },
      { layer: 'shade', island: 0, angles: [3] },
      { layer: 'outline', island: 0, angles: [45, -90] },
      { layer: 'outline', island: 1, angles: [33] },
    ]);
    const letters = movableBridges(layer('fill'), before);
    const [own] = letters;
    if (!own) throw new Error('no bridge to move');
    expect(own.angle).toBe(1);
    expect(withBridgeAt(before, letters, own, 60).placed).toContainEqual({ island: 0, angles: [60, 2] });
  });
});

describe('adding and taking away bridges by hand', () => {
  const none = { ...OPTIONS, placed: [] };
  const drawn = movableBridges(layer('fill'), none);
  const [first, second] = drawn;
  if (!first || !second) throw new Error('no bridges');

  it('adds where it was asked for, beside those that stand, or in the widest gap', () => {
    expect(withBridge(none, drawn, 'fill', 0, 10)?.placed).toEqual([{ island: 0, angles: [90, -90, 10] }]);
    expect(withBridge(none, drawn, 'fill', 1)?.placed).toEqual([{ island: 1, angles: [0, 180] }]);
    expect(withBridge(none, drawn, 'shade', 1, 10)?.placed).toEqual([
      { layer: 'shade', island: 1, angles: [0, 10] },
    ]);
    expect([[], [0], [90, -90], [0, 90, 180], [170, -170]].map(middleOfWidestGap)).toEqual([
      90, 180, 0, -90, 0,
    ]);
  });

  it('adds no more than the design holds', () => {
    const full = { ...OPTIONS, placed: [{ island: 0, angles: [0, 45, 90, 135, 180, -135, -90, -45] }] };
    expect(withBridge(full, drawn, 'fill', 0, 20)).toBeNull();
  });

  it('takes away one, then the last, before the drawing has caught up', () => {
    const once = withoutBridge(none, drawn, second);
    expect(once?.placed).toEqual([{ island: 0, angles: [90] }]);
    if (!once) throw new Error('nothing taken away');
    expect(withoutBridge(once, drawn, first)?.placed).toEqual([{ island: 0, angles: [] }]);
  });

  it('leaves bridges that came to hold the island, and says which they are', () => {
    const one = { ...OPTIONS, placed: [{ island: 0, angles: [90] }] };
    const held = movableBridges(layer('fill'), one);
    expect(held.map((m) => [m.island, m.index, m.needed])).toEqual([
      [0, 0, false],
      [0, 1, true],
      [1, 0, false],
    ]);
    const extra = held[1];
    if (!extra) throw new Error('no bridge');
    expect(withoutBridge(one, held, extra)).toBeNull();
  });

  it('offers islands that letters enclose, not pieces on a neck', () => {
    const made = layer('fill');
    expect(settableIslands(made).map((i) => i.island)).toEqual([0, 1]);
    const islands = made.stencil.islands.map((one, i) =>
      i === 0 ? { ...one, kind: 'tongue' as const } : one,
    );
    expect(settableIslands({ ...made, stencil: { ...made.stencil, islands } }).map((i) => i.island)).toEqual([
      1,
    ]);
  });
});
