import { describe, expect, it } from 'vitest';
import { limitText } from '../../src/editor/words/text.ts';
import { voiced } from '../../src/editor/words/voiced.ts';
import { parseMeasure } from '../../src/measure/parse.ts';

describe('a text for the voice', () => {
  it('has its units as words', () => {
    expect(voiced('41 1/2" by 1"')).toBe('41 1/2 inches by 1 inch');
    expect(voiced(`3/4" thick, 6' 2 1/4" long, 1' wide`)).toBe(
      '3/4 inch thick, 6 feet 2 1/4 inches long, 1 foot wide',
    );
    expect(voiced("No measure of Tom's “board”, 12 mm")).toBe("No measure of Tom's “board”, 12 mm");
  });
});

describe('a limit', () => {
  it('is told round, and what it tells is within it', () => {
    const inch = { unit: 'in', fraction: '16' } as const;
    expect(limitText(10_000, inch, 'most')).toBe('393"');
    expect(limitText(1, inch, 'least')).toBe('1/16"');
    expect(limitText(1, { unit: 'mm', fraction: '16' }, 'least')).toBe('1 mm');
    for (let mm = 0.5; mm < 12_000; mm *= 1.37) {
      for (const side of ['least', 'most'] as const) {
        const read = parseMeasure(limitText(mm, inch, side), 'in');
        expect(read.ok && (side === 'most' ? read.value <= mm + 1e-6 : read.value >= mm - 1e-6)).toBe(true);
      }
    }
  });
});
