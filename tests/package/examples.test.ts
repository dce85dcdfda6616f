/** Every example runs to its end against the built package, which it finds by the package's own name. */
import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readText, root } from "../support/house.ts";
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

/** What the demo writes: the page of its record, and the line that says where. */
describe("examples/assess-module.mjs", () => {
  const run = (...args: string[]): string =>
    execFileSync(process.execPath, [join("examples", "assess-module.mjs"), ...args], {
      cwd: packed.project,
      encoding: "utf8",
    });
  const record = join("examples", "records", "conveyor-dryer.json");

  it("writes the report as a page where it was told to, and says where", () => {
    const page = join(packed.project, "elsewhere.html");
    expect(run(record, page)).toContain(page);
    const html = readFileSync(page, "utf8");
    const { title } = JSON.parse(readText(record));
    expect(html.startsWith("<!DOCTYPE html>\n")).toBe(true);
    expect(html).toContain(`<title>${title}</title>`);
  });

  it("names the page after the record if it was not told, in the current folder, where git ignores it", () => {
    const page = "conveyor-dryer.report.html";
    expect(run()).toContain(join(packed.project, page));
    expect(existsSync(join(packed.project, page))).toBe(true);
    const ignored = execFileSync("git", ["check-ignore", page], { cwd: root, encoding: "utf8" });
    expect(ignored.trim()).toBe(page);
  });
});
