// Closes a test run with one plain line that any tool can read.
export default class Tally {
  onTestRunEnd(modules) {
    const count = { passed: 0, failed: 0, skipped: 0, pending: 0 };
    for (const module of modules) for (const test of module.children.allTests()) count[test.result().state]++;
    console.log(`\n${count.passed} passed, ${count.failed} failed, ${count.skipped + count.pending} skipped`);
  }
}
