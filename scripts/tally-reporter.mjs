// A vitest reporter that counts. The line is printed when the process ends, after vitest's own last words;
// with TALLY_FILE set the counts go to that file instead, for scripts/test.mjs to add to.
import { writeFileSync, writeSync } from "node:fs";
import { tallyLine } from "./tally.mjs";

export default class TallyReporter {
  onInit(vitest) {
    this.isWatching = vitest.config.watch;
  }

  onTestRunEnd(modules, unhandledErrors) {
    const tally = { passed: 0, failed: 0, skipped: 0 };
    for (const module of modules) {
      for (const test of module.children.allTests()) tally[outcome(test)] += 1;
      // A file that does not load, or a suite whose set-up breaks, has no failed test to show for it.
      tally.failed += module.errors().length;
      for (const suite of module.children.allSuites()) tally.failed += suite.errors().length;
    }
    tally.failed += unhandledErrors.length;
    this.report(tally);
  }

  report(tally) {
    const file = process.env.TALLY_FILE;
    if (file) writeFileSync(file, JSON.stringify(tally));
    else if (!this.isWatching) process.once("exit", () => writeSync(1, `${tallyLine(tally)}\n`));
  }
}

function outcome(test) {
  const { state } = test.result();
  // A test that never ran to its end ("pending") is no pass.
  return state === "passed" || state === "skipped" ? state : "failed";
}
