import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const SRC = new URL('../src/', import.meta.url).pathname;
const IMPURE_ROOMS = ['editor', 'command'];

/** What a pure room never says: each is a door to the clock, to chance or to the world outside. */
const FORBIDDEN: readonly [RegExp, string][] = [
  [/\bMath\.random\b/, 'chance'],
  [/\bnew Date\b|\bDate\.now\b|\bperformance\.now\b/, 'the clock'],
  [/\bsetTimeout\b|\bsetInterval\b/, 'timers'],
  [/\bprocess\.|\bdocument\.|\bwindow\.|\blocalStorage\b|\bfetch\(/, 'the world outside'],
];

function filesIn(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return filesIn(path);
    return /\.tsx?$/.test(entry.name) ? [path] : [];
  });
}

describe('the pure rooms', () => {
  const rooms = readdirSync(SRC).filter((room) => !IMPURE_ROOMS.includes(room));

  it.each(rooms)('%s asks neither clock nor chance nor the world', (room) => {
    for (const file of filesIn(join(SRC, room))) {
      const code = readFileSync(file, 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '');
      for (const [pattern, what] of FORBIDDEN) {
        expect(pattern.test(code), `${file} reaches for ${what}`).toBe(false);
      }
    }
  });
});
