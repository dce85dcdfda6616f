// The main job: a bench record in, an assessment a technician can act on out.
//   npm run demo                        the invented conveyor dryer
//   npm run demo -- path/to/record.json a record of your own
import { readFileSync } from "node:fs";
import { isElectroheatError } from "electroheat";
import { assessModule, assessmentText } from "electroheat/bench";

const record = process.argv[2] ?? new URL("records/conveyor-dryer.json", import.meta.url);
try {
  console.log(assessmentText(assessModule(JSON.parse(readFileSync(record, "utf8")))));
} catch (error) {
  if (!isElectroheatError(error)) throw error;
  console.error(`The record cannot be assessed:\n${error.message}`);
  process.exitCode = 1;
}
