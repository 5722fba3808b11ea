import { isMainThread } from 'node:worker_threads';
import { besideFirst, type Second, twoThreads } from './beside.ts';
import { run } from './run.ts';

/** Given by `start.mjs` where there is a second thread. */
declare const second: Second | undefined;

// Started by a script of the package, the process stands in the project's folder; the person stood elsewhere.
if (process.env.INIT_CWD) process.chdir(process.env.INIT_CWD);

// A reader that has seen enough (a pager, `head`) closes the pipe; that is no fault of the plan.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
}

const voice = {
  out: (line: string) => process.stdout.write(`${line}\n`),
  err: (line: string) => process.stderr.write(`${line}\n`),
};

if (!isMainThread) besideFirst();
else {
  const other = typeof second === 'undefined' ? null : second;
  run(process.argv.slice(2), voice, other ? (design) => twoThreads(other, design) : undefined).then(
    (code) => {
      process.exitCode = code;
    },
  );
}
