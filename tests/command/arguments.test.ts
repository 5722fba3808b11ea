import { describe, expect, it } from 'vitest';
import { parseCall } from '../../src/command/arguments.ts';

describe('the call', () => {
  it('takes a design, a folder and options in any order', () => {
    expect(parseCall(['--unit=mm', 'a.json', '--out', 'dir', '--paper', 'a4'])).toEqual({
      ok: true,
      call: { design: 'a.json', out: 'dir', paper: 'a4', unit: 'mm', language: 'en' },
    });
    expect(parseCall(['a.json', '--help'])).toEqual({ ok: 'help' });
  });

  it.each([
    [[], 'no design file is named'],
    [['a.json'], '--out DIR is missing'],
    [['a.json', 'b.json', '--out', 'd'], 'one design file at a time; found 2: a.json, b.json'],
    [['a.json', '--out'], '--out wants a value'],
    [['a.json', '--out', 'd', '--out', 'e'], '--out is given twice'],
    [['a.json', '--out', 'd', '--unit', 'ell'], '--unit: found “ell”; expected one of in, ft-in, mm, cm'],
    [['a.json', '--out', 'd', '--language', 'la'], '--language: found “la”; expected one of en, de, es'],
    [['a.json', '--out', 'd', '--fast', 'x'], 'unknown option --fast'],
  ])('%j is refused: %s', (words, message) => {
    expect(parseCall(words)).toEqual({ ok: false, message });
  });
});
