import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const FOLDER = new URL('../../src/editor/style/', import.meta.url);
const read = (file: string) => readFileSync(new URL(file, FOLDER), 'utf8');

/** WCAG 2.2, 2.3.3. The swing of the side view is played by script: `tests/browser/panes.test.ts` looks at that. */
it('nothing in a style sheet moves where the device asks for no motion', () => {
  const timed: string[] = [];
  for (const file of readdirSync(FOLDER))
    for (const [declared] of read(file).matchAll(
      /(?<!over)(?:transition|animation|scroll-behavior|@keyframes)[^;{]*[;{]/g,
    ))
      timed.push(`${file}: ${declared}`);
  expect(timed.filter((of) => !of.includes('var(--quick)'))).toEqual([]);
  expect(timed.length).toBeGreaterThan(0);
  expect(read('tokens.css')).toMatch(/prefers-reduced-motion: reduce\) \{\s*:root \{\s*--quick: 0ms;/);
});
