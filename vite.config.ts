import react from '@vitejs/plugin-react';
import type { Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';
import { MANIFEST } from './src/editor/kept/offline/manifest.ts';
import { POLICY, POLICY_HEADER, policyText } from './src/editor/kept/offline/policy.ts';

/** Puts the content policy into the built page, ahead of everything it governs; the dev server needs inline scripts. */
const policy: Plugin = {
  name: 'showface:policy',
  apply: 'build',
  transformIndexHtml: () => [
    {
      tag: 'meta',
      attrs: { 'http-equiv': 'Content-Security-Policy', content: policyText(POLICY) },
      injectTo: 'head-prepend',
    },
  ],
};

/** Keeps every file of the tool on the device. A new version waits until the person asks for it. */
const offline = VitePWA({
  registerType: 'prompt',
  injectRegister: false,
  filename: 'offline.js',
  manifestFilename: 'app.webmanifest',
  manifest: MANIFEST,
  includeManifestIcons: false,
  workbox: {
    globPatterns: ['**/*.{html,js,css,woff,woff2,json,svg,png,wasm,webmanifest}'],
    // Fonts of other scripts, nine megabytes of them: fetched when a name first asks, then kept too.
    globIgnores: ['**/noto-*'],
    runtimeCaching: [
      { urlPattern: /\/noto-[^/]*\.woff$/, handler: 'CacheFirst', options: { cacheName: 'scripts' } },
    ],
    maximumFileSizeToCacheInBytes: 24_000_000,
    cleanupOutdatedCaches: true,
    clientsClaim: true,
    skipWaiting: false,
    inlineWorkboxRuntime: true,
    sourcemap: false,
  },
});

/** The polygon library does not say that its files do nothing by themselves: those of no use here came along. */
const BUNDLED = {
  treeshake: { moduleSideEffects: [{ test: /\/clipper2-ts\//, sideEffects: false }] },
};

export default defineConfig({
  root: 'src/editor',
  publicDir: '../../assets/public',
  base: './',
  plugins: [react(), policy, offline],
  worker: { format: 'es', rolldownOptions: BUNDLED },
  build: {
    outDir: '../../dist',
    emptyOutDir: true,
    target: 'es2022',
    sourcemap: true,
    assetsInlineLimit: 0,
    // The library for PDF files is one piece, and comes when a file is asked for.
    chunkSizeWarningLimit: 600,
    rolldownOptions: BUNDLED,
  },
  preview: { port: 4173, headers: { 'Content-Security-Policy': POLICY_HEADER } },
  test: {
    reporters: ['default', './.ci/tally.mjs'],
    coverage: {
      provider: 'v8',
      include: ['src/**/*.{ts,tsx}'],
      exclude: ['**/*.d.ts'],
      reporter: ['json'],
      reportOnFailure: true,
    },
    projects: [
      {
        test: {
          name: 'core',
          root: '.',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', 'tests/bench/**'],
          environment: 'node',
          setupFiles: ['tests/seed.ts'],
          // Rooms keep nothing from one test file for the next; loading them again for each took half of the time.
          isolate: false,
          // A test that hangs is ended; one on a busy machine is not.
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // The runner leaves one core of the machine out; on two that is half of them.
          maxWorkers: 2,
        },
      },
      {
        test: {
          name: 'browser',
          root: '.',
          include: ['tests/browser/**/*.test.ts'],
          environment: 'node',
          isolate: false,
          globalSetup: ['tests/browser/setup.ts'],
          // A test that hangs is ended; one on a busy machine is not.
          testTimeout: 300_000,
          hookTimeout: 300_000,
          // After the others, and two at a time: while one waits for its page the other works. Three take longer on two cores.
          sequence: { groupOrder: 1 },
          maxWorkers: 2,
          // A second, as polls have it of themselves, is a matter of how busy the machine is.
          expect: { poll: { timeout: 30_000 } },
        },
      },
    ],
  },
});
