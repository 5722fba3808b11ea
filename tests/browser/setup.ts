import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { build, preview } from 'vite';
import type { TestProject } from 'vitest/node';
import { ARGS, findBrowser, SHORT_LIVED } from './chrome.ts';
import { GATHERED, gatherSources } from './coverage.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the built app. */
    readonly app: string;
    /** Folder of the built app, for tests that serve it themselves. */
    readonly built: string;
    /** Where to reach the browser. */
    readonly browser: string;
  }
}

const configFile = fileURLToPath(new URL('../../vite.config.ts', import.meta.url));

/** Builds the app once, serves it on a free port, and starts one browser for all the browser tests. */
export default async function setup(project: TestProject) {
  const found = await findBrowser();
  const outDir = mkdtempSync(join(tmpdir(), 'showface-'));
  // As it is shipped (but where lines are counted, which are kept then): the test runner's own mode would build React and the tool for development.
  const counts = GATHERED !== undefined;
  const mode = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  await build({
    configFile,
    logLevel: 'error',
    build: { outDir, emptyOutDir: true, sourcemap: counts, ...(counts && { minify: false }) },
  });
  process.env.NODE_ENV = mode;
  const server = await preview({
    configFile,
    logLevel: 'error',
    build: { outDir },
    preview: { port: 0, strictPort: false, host: '127.0.0.1', open: false },
  });
  const browser = await chromium.launchServer({ ...found, args: [...ARGS, ...SHORT_LIVED] });
  const app = server.resolvedUrls?.local[0];
  if (!app) throw new Error('The preview server told no address.');
  project.provide('app', app);
  project.provide('built', outDir);
  project.provide('browser', browser.wsEndpoint());
  return async () => {
    await browser.close();
    await server.close();
    await gatherSources(outDir);
    rmSync(outDir, { recursive: true, force: true });
  };
}
