/**
 * Starts the second thread of the command (`beside.ts`): the made file once more, with what the engine read out of it.
 * A script of the older kind, since making a thread ready to import takes longer than all else of its start.
 */
const { readFileSync } = require('node:fs');
const { Script } = require('node:vm');
const { workerData: made } = require('node:worker_threads');

const cachedData = readFileSync(made.replace('.cjs', '.read'));
const script = new Script(readFileSync(made, 'latin1'), { filename: made, cachedData });
script.runInThisContext()(require, {});
