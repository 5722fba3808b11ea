import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.woff': 'font/woff',
};

export interface OwnServer {
  readonly address: string;
  /** Adds a line to the service worker, as a build of a newer version would. */
  readonly renew: () => void;
  /** The network is gone: nothing answers any more. */
  readonly cut: () => Promise<void>;
}

/**
 * Serves a folder on a port of its own, so that a test can take it away.
 *
 * @param under where on that host it lies, with a stroke at both ends; there is nothing else
 */
export async function serveFolder(folder: string, under = '/'): Promise<OwnServer> {
  let version = 0;
  const server = createServer(async (request, response) => {
    const path = new URL(request.url ?? '/', 'http://x').pathname;
    const file = normalize(path === under ? '/index.html' : `/${path.slice(under.length)}`);
    try {
      if (!path.startsWith(under)) throw new Error(path);
      const bytes = await readFile(join(folder, file));
      response.writeHead(200, {
        'content-type': TYPES[extname(file)] ?? 'application/octet-stream',
        'cache-control': 'no-store',
      });
      response.write(bytes);
      if (file === '/offline.js' && version > 0) response.write(`\n// ${version}\n`);
      response.end();
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}${under}`,
    renew: () => {
      version++;
    },
    cut: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
