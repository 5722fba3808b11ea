import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: 'src/editor',
  publicDir: '../../assets/public',
  base: './',
  plugins: [react()],
  worker: { format: 'es' },
  build: { outDir: '../../dist', emptyOutDir: true, target: 'es2022', sourcemap: true },
  preview: { port: 4173 },
  test: {
    reporters: ['default', './.ci/tally.mjs'],
    coverage: {
      provider: 'v8',
      include: ['src/**/*.ts'],
      exclude: ['src/editor/**', '**/*.d.ts'],
      reporter: ['text-summary'],
    },
    projects: [
      {
        test: {
          name: 'core',
          root: '.',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', 'tests/bench/**'],
          environment: 'node',
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'browser',
          root: '.',
          include: ['tests/browser/**/*.test.ts'],
          environment: 'node',
          globalSetup: ['tests/browser/setup.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
