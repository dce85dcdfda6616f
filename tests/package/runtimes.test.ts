/**
 * The installed package in other hosts: newer versions of Node.js, Deno, Bun, Chromium. A host that is not installed is skipped,
 * with its name in the count.
 */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { writeVectorRun } from "../../scripts/determinism.mjs";
import { importMap, runtimes, withPage } from "../../scripts/runtimes.mjs";
import { differences } from "../../scripts/vectorResults.mjs";
import { rooms } from "../support/house.ts";
import { packed, writeConsumer } from "./consume.ts";

const hosts = runtimes();
const [node, ...others] = hosts;
const entries = ["electroheat", ...rooms.map((room) => `electroheat/${room}`)];

/** The same vectors in each host are compared to this Node's. */
const count = writeVectorRun(packed.consumer);
let ours: Record<string, string> | undefined;
const resultsOf = async (host: (typeof hosts)[number]): Promise<Record<string, string>> =>
  JSON.parse(await host.run(packed.consumer, "vectorRun.mjs"));

describe.each(others.filter(({ name }) => name !== "Chromium"))("$name $version", (host) => {
  it.skipIf(host.version === null)(
    "loads every entry, as ESM and as CommonJS, with the same names",
    async () => {
      writeConsumer(
        "names.mjs",
        `${entries.map((name, i) => `import * as e${i} from "${name}";`).join("\n")}
console.log(JSON.stringify([${entries.map((_, i) => `Object.keys(e${i}).filter((key) => key !== "default").sort().join()`).join(", ")}]));`,
      );
      writeConsumer(
        "names.cjs",
        `console.log(JSON.stringify([${entries.map((name) => `Object.keys(require("${name}")).sort().join()`).join(", ")}]));`,
      );
      const names = JSON.parse(await host.run(packed.consumer, "names.mjs"));
      expect(names).toHaveLength(entries.length);
      expect(names.every((list: string) => list.length > 0)).toBe(true);
      expect(JSON.parse(await host.run(packed.consumer, "names.cjs"))).toEqual(names);
    },
  );
});

describe.each(others.filter(({ name }) => name === "Deno" || name === "Bun"))("$name $version", (host) => {
  it.skipIf(host.version === null)("runs a TypeScript program as it stands", async () => {
    writeConsumer(
      "program.ts",
      `import { powerFromVoltageAndResistance } from "electroheat/element";
import { isElectroheatError, type Ohms, ohms, volts, type Watts } from "electroheat/quantity";
const cold: Ohms = ohms(12.8);
const power: Watts = powerFromVoltageAndResistance({ voltage: volts(480), resistance: cold });
let code = "";
try { ohms(Number.NaN); powerFromVoltageAndResistance({ voltage: volts(-1), resistance: cold }); } catch (error) { if (isElectroheatError(error)) code = error.code; }
console.log(power, code);`,
    );
    expect(await host.run(packed.consumer, "program.ts")).toMatch(/^18000 (not-a-number|out-of-range)$/);
  });
});

describe.each(others)("$name $version", (host) => {
  it.skipIf(host.version === null)(
    "gives what Node gives for every vector, but for the last digits of its Math functions",
    async () => {
      ours ??= await resultsOf(node as (typeof hosts)[number]);
      const theirs = await resultsOf(host);
      expect(Object.keys(ours)).toHaveLength(count);
      expect(Object.values(theirs).filter((text) => text.startsWith("FAILED"))).toEqual([]);
      const apart = differences(ours, theirs);
      const largest = Math.max(0, ...apart.map((one) => one.largest));
      const choosing = apart.filter(({ choices }) => choices.length > 0).map(({ id }) => id);
      console.info(
        `${host.name} ${host.version}: ${apart.length} of ${count} vectors differ, numbers by ${largest.toExponential(1)} at most; another of two equals named: ${choosing.join(", ") || "never"}`,
      );
      // The standard leaves exp, log, pow and their like to the host; an iteration stops a step of its own tolerance apart.
      expect(largest).toBeLessThan(1e-9);
      // Which of two equally bad branches is called the worst hangs on the last bit.
      expect(choosing.length).toBeLessThan(10);
    },
  );
});

describe("Chromium, the single-file script", () => {
  const installed = hosts.find(({ name }) => name === "Chromium")?.version ?? null;

  it.skipIf(installed === null)("adds one global and calculates, without a module in sight", async () => {
    writeFileSync(
      join(packed.consumer, "script.html"),
      `<!doctype html><meta charset="utf-8"><link rel="icon" href="data:,">
<script>globalThis.before = Object.keys(globalThis);</script>
<script src="node_modules/electroheat/dist/electroheat.global.js"></script>
<label>Ω <input id="ohms" value="12.8"></label> <output id="watts"></output>
<script>
  const show = () => {
    const found = electroheat.evaluate("element.powerFromVoltageAndResistance", { voltage: 480, resistance: Number(ohms.value) });
    watts.textContent = JSON.stringify(found);
  };
  ohms.addEventListener("input", show);
  show();
</script>`,
    );
    await withPage(packed.consumer, "script.html", async (page, trouble) => {
      const added = await page.evaluate(
        "Object.keys(globalThis).filter((key) => !before.includes(key) && key !== 'before')",
      );
      expect(added).toEqual(["electroheat"]);
      expect(await page.textContent("#watts")).toContain("18000");
      await page.fill("#ohms", "25.6");
      expect(await page.textContent("#watts")).toContain("9000");
      expect(trouble).toEqual([]);
    });
  });

  it.skipIf(installed === null)(
    "by import map: only the files that the entry needs are fetched",
    async () => {
      writeFileSync(
        join(packed.consumer, "map.html"),
        `<!doctype html><meta charset="utf-8"><link rel="icon" href="data:,">
<script type="importmap">${importMap(rooms)}</script>
<script type="module">
  import { powerFromVoltageAndResistance } from "electroheat/element";
  document.title = String(powerFromVoltageAndResistance({ voltage: 480, resistance: 12.8 }));
</script>`,
      );
      await withPage(packed.consumer, "map.html", async (page, trouble) => {
        await page.waitForFunction("document.title !== ''");
        expect(await page.title()).toBe("18000");
        const fetched = (await page.evaluate(
          "performance.getEntriesByType('resource').map(({ name }) => name)",
        )) as string[];
        expect(fetched.some((name) => name.endsWith("/element.js"))).toBe(true);
        expect(fetched.filter((name) => /decimal|bench|catalogue/.test(name))).toEqual([]);
        expect(trouble).toEqual([]);
      });
    },
  );
});
