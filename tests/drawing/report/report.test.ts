import { writeFileSync } from "node:fs";
import { benchReport } from "electroheat/drawing";
import { expect, it } from "vitest";
import { parsed } from "../parsed.ts";
import { FULL, SPARSE } from "./assessments.ts";

it("x", () => {
  for (const [n, a] of [
    ["full", FULL],
    ["sparse", SPARSE],
  ] as const) {
    const html = benchReport({ assessment: a, format: "html" });
    parsed(html);
    writeFileSync(`/tmp/rep/${n}.html`, html);
    writeFileSync(`/tmp/rep/${n}.us.html`, benchReport({ assessment: a, format: "html", units: "US" }));
    writeFileSync(`/tmp/rep/${n}.md`, benchReport({ assessment: a, format: "markdown" }));
  }
  expect(1).toBe(1);
});
