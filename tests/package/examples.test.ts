/** Every example runs to its end against the built package, which it finds by the package's own name. */
import { execFileSync } from "node:child_process";
import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { readText } from "../support/house.ts";
import { packed } from "./consume.ts";

const folder = join(packed.project, "examples");
const examples = existsSync(folder) ? readdirSync(folder).filter((name) => name.endsWith(".mjs")) : [];

it("there is the example that `npm run demo` runs", () => {
  const [, demo] =
    /node examples\/([\w-]+\.mjs)/.exec(JSON.parse(readText("package.json")).scripts.demo) ?? [];
  expect(examples).toContain(demo);
});

it.each(examples)("%s runs and prints something", (name) => {
  const printed = execFileSync(process.execPath, [join("examples", name)], {
    cwd: packed.project,
    encoding: "utf8",
  });
  expect(printed.trim()).not.toBe("");
});
