import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { directed } from '../../src/lettering/shaping/bidi.ts';

/** Published: a part of the Unicode Character Database, `BidiCharacterTest.txt` 15.0, see `tests/reference/data`. */
const CASES = readFileSync(new URL('../reference/data/bidi.txt', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .map((line) => {
    const [codes = '', direction = '', , levels = '', order = ''] = line.split(';');
    return { codes: codes.split(' '), auto: direction === '2', levels: levels.split(' '), order };
  });

describe('the direction of text', () => {
  it('is that of the conformance test of the Unicode Bidirectional Algorithm', () => {
    expect(CASES.length).toBeGreaterThan(800);
    expect(CASES.filter(({ auto }) => auto).length).toBeGreaterThan(20);
    for (const { codes, auto, levels, order } of CASES) {
      const found = directed(
        codes.map((code) => String.fromCodePoint(Number.parseInt(code, 16))),
        auto ? 'auto' : 'ltr',
      );
      // Characters that set directions and are not drawn have no level in the test.
      const told = (i: number) => levels[i] !== 'x';
      expect(
        found.levels.map((level, i) => (told(i) ? String(level) : 'x')),
        codes.join(' '),
      ).toEqual(levels);
      expect(found.order.filter(told).join(' '), codes.join(' ')).toBe(order);
    }
  });

  it('is found of letters beyond the first plane too', () => {
    // Adlam (U+1E900 ff.) runs from the right, Gothic (U+10330 ff.) from the left: DerivedBidiClass.txt 15.0.
    const adlam = [...'\u{1e900}\u{1e901} a'];
    expect(directed(adlam, 'auto').levels).toEqual([1, 1, 1, 2]);
    expect(directed(adlam, 'auto').order).toEqual([3, 2, 1, 0]);
    expect(directed([...'\u{10330}\u{10331}'], 'auto').levels).toEqual([0, 0]);
  });
});
