/** Prints `N passed, N failed[, N skipped]` from the report of `npm run check -- --report <file>`. */
import { readFileSync } from "node:fs";

/** @type {any} */
let report = {};
try {
  report = JSON.parse(readFileSync(process.argv[2] ?? "", "utf8"));
} catch {
  // No report: nothing ran, which is one failure.
}
const passed = report.numPassedTests ?? 0;
const skipped = (report.numPendingTests ?? 0) + (report.numTodoTests ?? 0);
// A test file that cannot even be loaded has no tests in it, yet it failed.
const broken = (report.testResults ?? []).filter(
  (/** @type {any} */ file) => file.status === "failed" && file.assertionResults.length === 0,
).length;
const steps = report.failedSteps ?? ["check"];
const failed = (report.numFailedTests ?? 0) + broken + steps.length;
console.log(`${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}`);
