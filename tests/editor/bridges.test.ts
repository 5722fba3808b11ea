import { describe, expect, it } from 'vitest';
import { movableBridges, withBridgeAt } from '../../src/editor/pane/lettering/bridges.ts';
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
      at: { x, y: 0 },
      kind: 'island' as const,
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
