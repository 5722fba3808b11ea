import { describe, expect, it } from 'vitest';
import { ENGLISH_FILE, type FileWords } from '../../src/design/fileWords.ts';
import { openDesign } from '../../src/design/open.ts';
import { problemMessage } from '../../src/design/problem.ts';
import { saveDesign } from '../../src/design/save.ts';
import { fileWords as GERMAN } from '../../src/editor/words/de/file.ts';
import { fileWords as SPANISH } from '../../src/editor/words/es/file.ts';
import { chanceOf } from '../chance.ts';
import { everyKind, mildlyDamaged, rudelyDamaged } from '../design/damage.ts';

/** Everything said of a file, in one language. */
function saidOf(text: string, words: FileWords): readonly string[] {
  const opened = openDesign(text, words);
  return opened.ok ? opened.repairs : opened.problems.map((p) => problemMessage(p, words));
}

const figures = (text: string): string => (text.match(/\d+/g) ?? []).join();

/** Damaged files of every sort: torn, of another version, with fields and ids that cannot be. */
function files(): string[] {
  const whole = saveDesign(everyKind());
  const twice = everyKind();
  const changed = (change: (data: Record<string, unknown>) => void) => {
    const data = JSON.parse(whole) as Record<string, unknown>;
    change(data);
    return JSON.stringify(data);
  };
  return [
    '',
    '[]',
    whole.slice(0, 300),
    `${whole.slice(0, 300)}?${whole.slice(301)}`,
    '['.repeat(1000),
    '{"showface": 9}',
    '{"showface": "x"}',
    '{"showface": 0.5}',
    JSON.stringify({ ...twice, parts: [...twice.parts, ...twice.parts] }),
    changed((d) => {
      d.colour = 'red';
      d.date = null;
      (d.finishes as { id: string; color: string }[])[0] = { id: '__proto__', color: 'blue' };
    }),
    changed((d) => {
      (d.parts as { id: string }[])[0] = { id: ' ' };
    }),
    ...Array.from({ length: 150 }, (_, seed) => JSON.stringify(mildlyDamaged(everyKind(), chanceOf(seed)))),
    ...Array.from({ length: 150 }, (_, seed) => JSON.stringify(rudelyDamaged(everyKind(), chanceOf(seed)))),
  ];
}

describe('what is said of a file', () => {
  it.each([
    ['German', GERMAN, 1],
    // Its sentences are made as the German ones are: every fourth file says all of them.
    ['Spanish', SPANISH, 4],
  ])(
    'is said in %s too: the same of each file, with the same figures, and no English in it',
    (_language, words, step) => {
      let sentences = 0;
      for (const text of files().filter((_, i) => i % step === 0)) {
        const english = saidOf(text, ENGLISH_FILE);
        const own = saidOf(text, words);
        expect(own.map(figures)).toEqual(english.map(figures));
        for (const [i, sentence] of own.entries()) {
          expect(sentence).not.toBe(english[i]);
          expect(sentence.replace(/^\S+|„[^“]*“|«[^»]*»|\([^)]*\)/g, '')).not.toMatch(
            /\b(the|found|expected|of|with|field|second|least|most|entries|characters|take|correct)\b/i,
          );
          sentences++;
        }
      }
      expect(sentences).toBeGreaterThan(100 / step);
    },
  );
});
