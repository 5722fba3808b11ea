import { defineConfig } from 'vitest/config';

/** Tests of the room under mutation (`npm run mutants -- ROOM`), in Node alone: no browser, no build. */
const room = process.env.MUTANTS_ROOM ?? '*';

export default defineConfig({
  test: {
    root: '.',
    include: [`tests/${room}/**/*.test.ts`],
    // Hundreds of changes times minutes of sampling: these two kinds are left to the test run.
    exclude: ['tests/**/fuzz.test.ts', 'tests/**/sampled.test.ts'],
    environment: 'node',
    testTimeout: 60_000,
  },
});
