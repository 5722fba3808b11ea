import { expect, it } from 'vitest';
import { codeAt, entryAt, lastOf, pick, under } from '../../src/list/at.ts';
import { grouped, groupOf } from '../../src/list/grouped.ts';
import { addUp, totalOf } from '../../src/list/totals.ts';

it('stops where what is known to be there is not, and tells what was asked for', () => {
  expect(() => pick(['a'], 1)).toThrow('no entry 1 of 1');
  expect(() => lastOf([])).toThrow('no entry -1 of 0');
  expect(() => codeAt('ab', 2)).toThrow('no character 2 of 2');
  expect(() => under(new Map([['a', 1]]), 'b')).toThrow('nothing under b');
});

it('gives what there is', () => {
  expect([pick(['a', 'b'], 1), lastOf(['a', 'b']), codeAt('€'), codeAt('a€', 1)]).toEqual([
    'b',
    'b',
    0x20ac,
    0x20ac,
  ]);
  expect([entryAt(['a'], 0), entryAt(['a'], 1), entryAt(['a'], undefined)]).toEqual([
    'a',
    undefined,
    undefined,
  ]);
});

it('counts from nothing, and groups what is under no key as none', () => {
  const counts = new Map<string, number>();
  expect([addUp(counts, 'a'), addUp(counts, 'a', 2), totalOf(counts, 'a'), totalOf(counts, 'b')]).toEqual([
    0, 1, 3, 0,
  ]);
  const groups = grouped([1, 2, 3], (n) => n % 2);
  expect([groupOf(groups, 1), groupOf(groups, 2)]).toEqual([[1, 3], []]);
});
