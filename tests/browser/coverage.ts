import { randomUUID } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import type { Profiler } from 'node:inspector';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
// @ts-expect-error: it comes without types.
import { mergeProcessCovs } from '@bcoe/v8-coverage';
import { convert } from 'ast-v8-to-istanbul';
import type { BrowserContext, Page } from 'playwright-core';
import { parseAstAsync } from 'vite';

/** What an engine tells of scripts that ran, as the inspector gives it. */
interface ProcessCov {
  readonly result: readonly Profiler.ScriptCoverage[];
}

/** The folder that `npm run coverage` gathers in; undefined where nothing is counted. */
export const GATHERED = process.env.SHOWFACE_COVERAGE;

/** Lets what runs in the pages of a context be counted, up to the closing of each. Workers are not counted. */
export function counted(context: BrowserContext): BrowserContext {
  if (!GATHERED) return context;
  const open = new Set<Page>();
  const gather = async (page: Page) => {
    if (!open.delete(page)) return;
    // A page that crashed has nothing to tell.
    const result = await page.coverage.stopJSCoverage().catch(() => []);
    const scripts = result.filter(({ url }) => url.includes('/assets/'));
    const told = scripts.map(({ scriptId, url, functions }) => ({ scriptId, url, functions }));
    writeFileSync(join(GATHERED, `page-${randomUUID()}.json`), JSON.stringify({ result: told }));
  };
  const [newPage, close] = [context.newPage.bind(context), context.close.bind(context)];
  context.newPage = async () => {
    const page = await newPage();
    await page.coverage.startJSCoverage({ resetOnNavigation: false });
    open.add(page);
    const closePage = page.close.bind(page);
    page.close = async (options) => {
      await gather(page);
      await closePage(options);
    };
    return page;
  };
  context.close = async (options) => {
    for (const page of [...open]) await gather(page);
    await close(options);
  };
  return context;
}

/** Puts together what all pages told and tells it of the source files, by the maps of the build. */
export async function gatherSources(built: string): Promise<void> {
  if (!GATHERED) return;
  let all: ProcessCov = { result: [] };
  for (const name of readdirSync(GATHERED).filter((file) => file.startsWith('page-'))) {
    const one = JSON.parse(readFileSync(join(GATHERED, name), 'utf8')) as ProcessCov;
    // Each test file may have had a port of its own for the same scripts.
    const result = one.result.map((script) => ({ ...script, url: basename(new URL(script.url).pathname) }));
    all = mergeProcessCovs([all, { result }]);
  }
  const told: unknown[] = [];
  for (const script of all.result) {
    const path = join(built, 'assets', script.url);
    // What the bundler adds of its own has no source.
    if (!existsSync(`${path}.map`)) continue;
    const code = readFileSync(path, 'utf8');
    told.push(
      await convert({
        code,
        ast: parseAstAsync(code),
        coverage: { ...script, url: pathToFileURL(path).href },
        sourceMap: JSON.parse(readFileSync(`${path}.map`, 'utf8')),
      }),
    );
  }
  writeFileSync(join(GATHERED, 'pages.json'), JSON.stringify(told));
}
