import { describe, expect, it } from 'vitest';
import { parseCall } from '../../src/command/arguments.ts';
import { PACKET_SECTIONS } from '../../src/design/limits.ts';

const PLAIN = {
  ...{ paper: null, unit: null, language: 'en', prices: null, onHand: null },
  ...{ correction: { x: 1, y: 1 }, without: null, testPage: false },
};

describe('the call', () => {
  it('takes a design, a folder and options in any order', () => {
    expect(parseCall(['--unit=mm', 'a.json', '--out', 'dir', '--paper', 'a4'])).toEqual({
      ok: true,
      call: { ...PLAIN, design: 'a.json', out: 'dir', paper: 'a4', unit: 'mm' },
    });
    expect(parseCall(['a.json', '--correct', '99.2,100.6', '--test-page', '--out=dir'])).toEqual({
      ok: true,
      call: { ...PLAIN, design: 'a.json', out: 'dir', correction: { x: 0.992, y: 1.006 }, testPage: true },
    });
    expect(parseCall(['a.json', '--without=swing,places', '--out=dir'])).toEqual({
      ok: true,
      call: { ...PLAIN, design: 'a.json', out: 'dir', without: ['places', 'swing'] },
    });
    expect(parseCall(['a.json', '--without', 'none', '--out=dir'])).toEqual({
      ok: true,
      call: { ...PLAIN, design: 'a.json', out: 'dir', without: [] },
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
    [
      ['a.json', '--out', 'd', '--without', 'places,cover'],
      `--without: found “cover”; expected none or some of ${PACKET_SECTIONS.join(', ')}`,
    ],
    ...['99', '99,100,101', '99;100', '0.992,1.006', '-99,100', '99,111'].map((read): [string[], string] => [
      ['a.json', '--out', 'd', '--correct', read],
      `--correct: found “${read}”; expected two percentages from 90 to 110, such as 99.2,100.6`,
    ]),
  ])('%j is refused: %s', (words, message) => {
    expect(parseCall(words)).toEqual({ ok: false, message });
  });
});
