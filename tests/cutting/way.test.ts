import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fencedFrom, wayOf } from '../../src/cutting/sheets/way.ts';
import { runs } from '../runs.ts';

const size = fc.integer({ min: 1, max: 2440 });

describe('what a cut of a sheet is called', () => {
  it('is a rip along the longer edge of the part cut, a crosscut along the shorter one (common practice, no source)', () => {
    fc.assert(
      fc.property(size, size, fc.constantFrom('rip', 'cross'), (w, h, kind) => {
        const cut = { number: 1, kind, of: { x: 0, y: 0, w, h }, fence: 1 } as const;
        const along = kind === 'rip' ? w : h;
        if (w !== h) expect(wayOf(cut) === 'rip').toBe(along === Math.max(w, h));
        // The fence lies along the cut: below one that lies, left of one that stands.
        expect(fencedFrom(cut)).toBe(kind === 'rip' ? 'low' : 'left');
      }),
      { numRuns: runs(300) },
    );
  });
});
