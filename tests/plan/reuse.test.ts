import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reuse } from '../../src/plan/reuse.ts';

const json = fc.jsonValue({ maxDepth: 4 });
const copy = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

describe('reuse', () => {
  it('gives the earlier object where nothing changed', () => {
    fc.assert(
      fc.property(json, (value) => {
        const before = copy(value);
        expect(reuse(before, copy(value))).toBe(before);
      }),
    );
  });

  it('never changes what the value is', () => {
    fc.assert(
      fc.property(json, json, (before, now) => {
        expect(reuse(copy(before), copy(now))).toEqual(copy(now));
      }),
    );
  });

  it('finds items again by their ids when one is put in before them', () => {
    const before = [
      { id: 'a', box: { x: 1 } },
      { id: 'b', box: { x: 2 } },
    ];
    const next = reuse<typeof before>(before, [{ id: 'new', box: { x: 0 } }, ...copy(before)]);
    expect(next[1]).toBe(before[0]);
    expect(next[2]).toBe(before[1]);
  });
});
