/**
 * Starts the command. Its sources are made into one file the first time, kept beside the packages under a name that
 * changes with them: compiling took longer than many a plan. What the engine reads out of that file is kept too.
 */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { Script } from 'node:vm';
import { Worker } from 'node:worker_threads';

const root = fileURLToPath(new URL('../..', import.meta.url));
const cache = join(root, 'node_modules', '.cache', 'showface');

/** What the made file follows from: every source but the editor's, the packages, and where all of it stands. */
function key() {
  let told = `${root} ${process.version}`;
  const add = (path) => {
    const { size, mtimeMs } = statSync(path);
    told += `${path} ${size} ${mtimeMs}\n`;
  };
  const walk = (folder) => {
    for (const entry of readdirSync(folder, { withFileTypes: true })) {
      const path = `${folder}/${entry.name}`;
      if (!entry.isDirectory()) add(path);
      else if (entry.name !== 'editor') walk(path);
    }
  };
  walk(join(root, 'src'));
  add(join(root, 'package-lock.json'));
  return createHash('sha256').update(told).digest('hex').slice(0, 24);
}

/** Makes the command into one file, whole or not at all; several may do so at once. */
async function make(made) {
  const { build } = await import('vite');
  const mine = join(cache, `.${process.pid}`);
  await build({
    configFile: false,
    root,
    publicDir: false,
    logLevel: 'silent',
    ssr: { noExternal: true },
    plugins: [
      {
        // Node and the bundler do not read the one package alike; of the others Node has its own.
        name: 'showface:as-node-reads-it',
        enforce: 'pre',
        resolveId(id, from) {
          if (id === 'opentype.js') return createRequire(import.meta.url).resolve(id);
          if (id === 'fflate' && from?.includes('/@cantoo/pdf-lib/'))
            return join(root, 'src/command/packed.ts');
          return id === './inflate.ts' ? join(root, 'src/command/inflate.ts') : null;
        },
      },
      {
        // The made file stands elsewhere: every source goes on meaning its own place.
        name: 'showface:own-place',
        transform: (code, id) =>
          id.startsWith(join(root, 'src'))
            ? { code: code.replaceAll('import.meta.url', JSON.stringify(pathToFileURL(id).href)), map: null }
            : null,
      },
    ],
    build: {
      ssr: join(root, 'src/command/main.ts'),
      outDir: mine,
      emptyOutDir: true,
      target: 'node20',
      minify: false,
      rollupOptions: {
        // Of the library for PDF files most is never asked for, and its tables took a third of the time that loading took.
        treeshake: { moduleSideEffects: (id) => !id.includes('/@cantoo/pdf-lib/') },
        output: {
          format: 'cjs',
          entryFileNames: 'main.cjs',
          codeSplitting: false,
          // Without a letter beyond ASCII, a character is a byte: read as it is, half of the memory, nothing to decode.
          charset: 'ascii',
          comments: false,
          minify: { compress: false, mangle: false, codegen: true },
        },
      },
    },
  });
  // What was made of earlier sources is of no use any more.
  for (const name of readdirSync(cache)) {
    if (!name.startsWith('.')) rmSync(join(cache, name), { recursive: true, force: true });
  }
  const code = readFileSync(join(mine, 'main.cjs'), 'utf8');
  if (Buffer.byteLength(code) !== code.length) throw new Error('letters beyond ASCII');
  writeFileSync(join(mine, 'main.cjs'), `(function (require, exports, second) {${code}\n})`);
  renameSync(join(mine, 'main.cjs'), made);
  rmSync(mine, { recursive: true, force: true });
}

/** A thread beside this one, which is of use where there is a second core; `gone` tells that it has come to its end. */
function secondThread(made) {
  const worker = new Worker(new URL('second.cjs', import.meta.url), { workerData: made });
  const gone = new Promise((resolve) => {
    for (const end of ['error', 'exit']) worker.once(end, resolve);
  });
  // A call that comes to nothing ends without it.
  worker.unref();
  return { worker, gone };
}

/**
 * Runs the made file, with what the engine read out of it the last time; the first time that is kept at the end. Files
 * are made by two threads where there is a second core; the first time by one, so that what is kept knows all of it.
 */
function runMade(made) {
  const kept = made.replace('.cjs', '.read');
  // Started before all else: it takes as long to get ready as this one does to open the design.
  const isKept = existsSync(kept);
  const second = isKept && availableParallelism() > 1 ? secondThread(made) : undefined;
  const cachedData = isKept ? readFileSync(kept) : undefined;
  const script = new Script(readFileSync(made, 'latin1'), { filename: made, cachedData });
  const knows = cachedData && !script.cachedDataRejected;
  if (!knows) {
    process.once('exit', () => {
      try {
        const mine = join(cache, `.${process.pid}`);
        writeFileSync(mine, script.createCachedData());
        renameSync(mine, kept);
      } catch {
        // Where nothing can be kept, it is read each time.
      }
    });
  }
  script.runInThisContext()(createRequire(import.meta.url), {}, knows ? second : undefined);
}

/** Makes the file where it is not there yet, and runs it. */
async function start() {
  // The engine of Node 20 optimizes nearly all that a plan comes by, and ends before that pays; later ones wait.
  if (process.versions.v8.startsWith('11.')) setFlagsFromString('--interrupt-budget=1000000');
  // What is kept of the file would else lack what ran only at the start.
  setFlagsFromString('--no-flush-bytecode');
  const made = join(cache, `${key()}.cjs`);
  try {
    if (!existsSync(made)) await make(made);
  } catch {
    // Where nothing can be kept (a folder that may only be read), it is compiled each time.
  }
  if (existsSync(made)) return runMade(made);
  const { register } = await import('tsx/esm/api');
  register();
  await import('./main.ts');
}

await start();
