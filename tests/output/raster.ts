import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Gray values of a printed page, row 0 at the top. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  /** 0 black to 255 white. */
  at(x: number, y: number): number;
}

const has = (tool: string) => spawnSync(tool, ['-v']).error === undefined;

/** Says why once and returns false where the PDF tools are not installed. */
export const printerTools = has('pdftoppm') && has('pdftotext');
if (!printerTools) console.error('skipped: pdftoppm or pdftotext is not installed (poppler-utils)');

function withFile<T>(bytes: Uint8Array, use: (file: string, dir: string) => T): T {
  const dir = mkdtempSync(join(tmpdir(), 'showface-'));
  try {
    const file = join(dir, 'page.pdf');
    writeFileSync(file, bytes);
    return use(file, dir);
  } finally {
    rmSync(dir, { recursive: true });
  }
}

/** A portable gray map (Netpbm, format P5): a head of four words, then a byte for each pixel. */
function grayMap(bytes: Buffer): Raster {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 64).toString('latin1'));
  if (!head) throw new Error('The page was not printed as a gray map.');
  const [width, height] = [Number(head[1]), Number(head[2])];
  const pixels = bytes.subarray(head[0].length);
  return { width, height, at: (x, y) => pixels[y * width + x] ?? 255 };
}

/** Prints one page to pixels, without smoothing where `hard`. */
export function rasterOf(bytes: Uint8Array, dpi: number, page = 1, hard = false): Raster {
  return withFile(bytes, (file, dir) => {
    const smooth = hard ? ['-aa', 'no', '-aaVector', 'no'] : [];
    const args = [
      '-r',
      String(dpi),
      '-f',
      String(page),
      '-l',
      String(page),
      '-singlefile',
      '-gray',
      ...smooth,
    ];
    execFileSync('pdftoppm', [...args, file, join(dir, 'out')]);
    return grayMap(readFileSync(join(dir, 'out.pgm')));
  });
}

export function textOf(bytes: Uint8Array, page?: number): string {
  const pages = page === undefined ? [] : ['-f', String(page), '-l', String(page)];
  return withFile(bytes, (file) =>
    execFileSync('pdftotext', [...pages, '-layout', file, '-'], { encoding: 'utf8' }),
  );
}

/** Lines that pdffonts prints of the fonts in a file: name, and whether embedded, cut to a subset and readable. */
export function fontsOf(
  bytes: Uint8Array,
): { name: string; embedded: boolean; subset: boolean; unicode: boolean }[] {
  const lines = withFile(bytes, (file) => execFileSync('pdffonts', [file], { encoding: 'utf8' }))
    .trimEnd()
    .split('\n')
    .slice(2);
  return lines.map((line) => {
    const [embedded, subset, unicode] = (/ (yes|no) +(yes|no) +(yes|no) /.exec(line) ?? []).slice(1);
    return {
      name: line.split(' ')[0] ?? '',
      embedded: embedded === 'yes',
      subset: subset === 'yes',
      unicode: unicode === 'yes',
    };
  });
}
