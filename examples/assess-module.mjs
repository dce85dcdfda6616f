// The main job: a bench record in, an assessment a technician can act on out: as text here, and as a page to look at and print.
//   npm run demo                                         the invented conveyor dryer
//   npm run demo -- path/to/record.json [report.html]    a record of your own, and where its page goes
import { readFileSync, writeFileSync } from "node:fs";
import { basename, resolve } from "node:path";
import { isElectroheatError } from "electroheat";
import { assessModule, assessmentText } from "electroheat/bench";
import { benchReport } from "electroheat/drawing";

const record = process.argv[2] ?? new URL("records/conveyor-dryer.json", import.meta.url);
const page = resolve(process.argv[3] ?? `${basename(String(record), ".json")}.report.html`);
try {
  const assessment = assessModule(JSON.parse(readFileSync(record, "utf8")));
  console.log(assessmentText(assessment));
  writeFileSync(page, benchReport({ assessment, format: "html" }));
  console.log(`The report as a page, for any browser and for print: ${page}`);
} catch (error) {
  if (!isElectroheatError(error)) throw error;
  console.error(`The record cannot be assessed:\n${error.message}`);
  process.exitCode = 1;
}
