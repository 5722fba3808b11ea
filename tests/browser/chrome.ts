import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

/** Browsers at the usual places of Linux, macOS and Windows. */
const USUAL = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/usr/bin/microsoft-edge',
];

/** Channels that playwright finds by itself on desktop systems. */
const CHANNELS = ['chrome', 'msedge', 'chromium'] as const;

export const ARGS: readonly string[] = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-dev-shm-usage',
  '--hide-scrollbars',
  '--force-color-profile=srgb',
];

/** A page of a test lives for seconds: optimizing its code takes longer than that saves, a third of all its time. */
export const SHORT_LIVED: readonly string[] = ['--js-flags=--no-maglev,--no-turbofan'];

export type Launch = { readonly executablePath: string } | { readonly channel: string };

/**
 * A browser to test with: the one named by CHROME_BIN; on Linux the one that comes as a package, which draws no windows
 * and takes two thirds of the time of an installed one (x64 only); one at a usual place; one that playwright knows.
 * Says what is missing when there is none.
 */
export async function findBrowser(): Promise<Launch> {
  const named = process.env.CHROME_BIN;
  if (named) {
    if (!existsSync(named)) throw new Error(`CHROME_BIN names ${named}, which is not there.`);
    return { executablePath: named };
  }
  if (process.platform === 'linux' && process.arch === 'x64')
    return { executablePath: await packagedBrowser() };
  const usual = USUAL.find((path) => existsSync(path));
  if (usual) return { executablePath: usual };
  if (process.platform !== 'linux') {
    for (const channel of CHANNELS) {
      const browser = await chromium.launch({ channel }).catch(() => null);
      if (browser) {
        await browser.close();
        return { channel };
      }
    }
  }
  throw new Error(
    'No browser for the browser tests was found. Install Chromium or Chrome, or set CHROME_BIN to the path of one.',
  );
}

/** Unpacks the packaged browser once, with its own copies of the libraries that a bare image lacks. */
async function packagedBrowser(): Promise<string> {
  // The package decides by this variable, when it is loaded, whether to unpack those libraries.
  process.env.AWS_LAMBDA_JS_RUNTIME = 'nodejs20.x';
  const { default: packaged } = await import('@sparticuz/chromium');
  return packaged.executablePath();
}

export const launch = (found: Launch, more: readonly string[] = []): Promise<Browser> =>
  chromium.launch({ ...found, args: [...ARGS, ...more] });
