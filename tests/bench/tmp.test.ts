import { assessModule } from "electroheat/bench";
import { test } from "vitest";
import { madeRecord } from "./records.ts";

test("x", () => {
  for (const open of [true, false]) {
    const ts: number[] = [];
    const slow: string[] = [];
    for (let s = 1; s < 60; s++) {
      const { record } = madeRecord(s, { open });
      const t = performance.now();
      const a = assessModule(record);
      const dt = performance.now() - t;
      ts.push(dt);
      if (dt > 300)
        slow.push(
          `${s} ${dt.toFixed(0)} ${record.wiring.banks.map((b) => b.connection + (b.elementsInParallel ?? 1))} ${a.answer[0]}`,
        );
    }
    ts.sort((a, b) => a - b);
    console.log(open, "median", ts[30], "p90", ts[53], "max", ts[58], slow.join("\n"));
  }
});
