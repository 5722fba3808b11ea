import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeByKey } from '../../src/editor/control/list/rove.ts';
import { placeByName, Typed } from '../../src/editor/control/list/typed.ts';

// The keys of menus, toolbars and tabs as the ARIA Authoring Practices Guide has them.
describe('a list walked by keys', () => {
  it('goes on and back around the ends, and to both ends at once', () => {
    expect(placeByKey('ArrowDown', 4, 3, 'down')).toBe(0);
    expect(placeByKey('ArrowUp', 4, 0, 'down')).toBe(3);
    expect(placeByKey('Home', 4, 2, 'across')).toBe(0);
    expect(placeByKey('End', 4, 2, 'across')).toBe(3);
    expect(placeByKey('ArrowDown', 4, 2, 'across')).toBeNull();
    expect(placeByKey('ArrowDown', 4, -1, 'both')).toBe(0);
    expect(placeByKey('ArrowUp', 4, -1, 'both')).toBe(3);
    expect(placeByKey('ArrowUp', 0, -1, 'both')).toBeNull();
  });

  it('comes back to where it was by as many steps back as on', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }).chain((count) => fc.tuple(fc.constant(count), fc.nat(count - 1))),
        fc.nat(100),
        ([count, at], steps) => {
          let now = at;
          for (let i = 0; i < steps; i++) now = placeByKey('ArrowRight', count, now, 'both') ?? -1;
          expect(now).toBe((at + steps) % count);
          for (let i = 0; i < steps; i++) now = placeByKey('ArrowLeft', count, now, 'both') ?? -1;
          expect(now).toBe(at);
        },
      ),
    );
  });
});

describe('a name typed into a list', () => {
  const NAMES = ['Strip', 'Frame', 'Panel', 'Sign', 'Fitting', 'Painted shape', 'Row', 'Keep-clear'];

  it('finds each one from wherever it begins', () => {
    for (const from of NAMES.keys()) {
      for (const [place, name] of NAMES.entries()) {
        const typed = new Typed();
        let now: number | null = from;
        // A key each 100 milliseconds, the space of a name among them.
        for (const [i, letter] of [...name].entries())
          now = placeByName(typed.add(letter, i * 100), NAMES, now ?? -1);
        expect(now).toBe(place);
      }
    }
  });

  it('goes on among those of one letter when it is typed again and again', () => {
    expect(placeByName('f', NAMES, 1)).toBe(4);
    expect(placeByName('ff', NAMES, 4)).toBe(1);
    expect(placeByName('x', NAMES, 0)).toBeNull();
  });

  it('begins anew after a pause, by the times at which the keys were pressed', () => {
    const typed = new Typed();
    expect(typed.add('S', 0)).toBe('s');
    expect(typed.runsAt(600)).toBe(true);
    expect(typed.add('t', 600)).toBe('st');
    expect(typed.runsAt(1400)).toBe(false);
    expect(typed.add('p', 1400)).toBe('p');
  });
});
