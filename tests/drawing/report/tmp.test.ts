import { writeFileSync } from "node:fs";
import { assessModule, assessmentText } from "electroheat/bench";
import { benchReport } from "electroheat/drawing";
import { it } from "vitest";
import { BARE, DELTA, OVEN } from "./records.ts";

it.each(Object.entries({ OVEN, DELTA, BARE }))("%s", (name, record) => {
  const assessment = assessModule(record);
  writeFileSync(`/tmp/rep/${name}.html`, benchReport({ assessment, format: "html" }));
  writeFileSync(`/tmp/rep/${name}.md`, benchReport({ assessment, format: "markdown" }));
  writeFileSync(`/tmp/rep/${name}.json`, JSON.stringify(assessment, null, 1));
});
