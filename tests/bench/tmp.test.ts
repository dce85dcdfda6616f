import { writeFileSync } from "node:fs";
import { assessModule, assessmentText } from "electroheat/bench";
import { test } from "vitest";
import { dryer, heater, oven } from "./caseRecords.ts";

test("x", () => {
  for (const [n, make] of Object.entries({ dryer, oven, heater })) {
    try {
      const t = performance.now();
      const a = assessModule(make());
      console.log(n, (performance.now() - t).toFixed(0), "ms");
      const t2 = performance.now();
      assessModule(make());
      console.log(n, (performance.now() - t2).toFixed(0), "ms again");
      writeFileSync(`/tmp/${n}.txt`, assessmentText(a));
      writeFileSync(`/tmp/${n}.json`, JSON.stringify(a, null, 1));
    } catch (e) {
      console.log(n, (e as Error).message, (e as Error).stack);
    }
  }
});
