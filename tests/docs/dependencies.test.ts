/** docs/dependencies.md lists what package.json has, at its version and licence, and nothing else; what is shipped runs no script at install. */
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readText } from "../support/house.ts";

interface Manifest {
  readonly version: string;
  readonly license: string;
  readonly scripts?: Readonly<Record<string, string>>;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly devDependencies?: Readonly<Record<string, string>>;
}
const manifest = (path: string): Manifest => JSON.parse(readText(path)) as Manifest;
const own = manifest("package.json");
const page = readText("docs/dependencies.md");
const [, atRunTime = "", forBuilding = ""] = page.split(/^## /m);
const rows = (section: string) =>
  [...section.matchAll(/^\| `([^`]+)` \| ([^|]+) \| ([^|]+) \|/gm)].map(([, name, version, licence]) => [
    name,
    version?.trim(),
    licence?.trim(),
  ]);
const installed = (name: string) => {
  const { version, license } = manifest(join("node_modules", name, "package.json"));
  return [name, version, license];
};
const byName = (a: readonly unknown[], b: readonly unknown[]) => (String(a[0]) < String(b[0]) ? -1 : 1);

describe("docs/dependencies.md", () => {
  it("lists the run-time packages: the dependency, and what is bundled", () => {
    const names = [...Object.keys(own.dependencies ?? {}), "zod"];
    expect(rows(atRunTime).sort(byName)).toEqual(names.map(installed).sort(byName));
  });

  it("lists the packages for building and testing", () => {
    const names = Object.keys(own.devDependencies ?? {}).filter((name) => name !== "zod");
    expect(rows(forBuilding).sort(byName)).toEqual(names.map(installed).sort(byName));
  });

  it("is right that every version is exact and that nothing runs at install", () => {
    const all = { ...own.dependencies, ...own.devDependencies };
    for (const [name, version] of Object.entries(all))
      expect(`${name} ${version}`).toMatch(/ \d+\.\d+\.\d+(-[a-z]+\.\d+)?$/);
    const scripts = Object.keys(own.dependencies ?? {}).map((name) =>
      manifest(join("node_modules", name, "package.json")),
    );
    for (const { scripts: run = {} } of [own, ...scripts])
      expect(Object.keys(run).filter((name) => /^(pre|post)?install$/.test(name))).toEqual([]);
    expect(readText("package-lock.json")).not.toContain("resolved");
  });
});
