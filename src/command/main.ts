import { run } from './run.ts';

// Started by a script of the package, the process stands in the project's folder; the person stood elsewhere.
if (process.env.INIT_CWD) process.chdir(process.env.INIT_CWD);

// A reader that has seen enough (a pager, `head`) closes the pipe; that is no fault of the plan.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
}

run(process.argv.slice(2), {
  out: (line) => process.stdout.write(`${line}\n`),
  err: (line) => process.stderr.write(`${line}\n`),
}).then((code) => {
  process.exitCode = code;
});
