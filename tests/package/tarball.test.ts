/** What is in the tarball, and that the same sources give the same tarball. */
import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join, sep } from "node:path";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { importsOf, rooms } from "../support/house.ts";
import { packed } from "./consume.ts";

const installed = join(packed.consumer, "node_modules/electroheat");
const files = readdirSync(installed, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map((entry) =>
    join(entry.parentPath, entry.name)
      .slice(installed.length + 1)
      .split(sep)
      .join("/"),
  )
  .sort();
const read = (path: string): string => readFileSync(join(installed, path), "utf8");
const sha256 = (path: string): string => createHash("sha256").update(readFileSync(path)).digest("hex");

describe("the tarball", () => {
  it("is the same, byte for byte, when built again in another folder", () => {
    expect(sha256(packed.secondTarball)).toBe(sha256(packed.tarball));
  });

  it("holds the build, sources and tables, and the papers, and nothing else", () => {
    const strangers = files.filter(
      (path) =>
        !/^dist\/[\w-]+\.(js|cjs|d\.ts|d\.cts)$/.test(path) &&
        !["dist/catalogue.json", "dist/electroheat.global.js"].includes(path) &&
        !/^shared\/(sources|tables\/[\w-]+)\.json$/.test(path) &&
        !["package.json", "README.md", "CHANGELOG.md", "LICENSE", "dist/THIRD-PARTY-LICENSES.txt"].includes(
          path,
        ),
    );
    expect(strangers).toEqual([]);
    expect(files).toEqual(expect.arrayContaining(["README.md", "LICENSE", "CHANGELOG.md"]));
  });

  it.each(["index", ...rooms])("has code and declarations of %s for both module systems", (entry) => {
    expect(files).toEqual(
      expect.arrayContaining(["js", "cjs", "d.ts", "d.cts"].map((ending) => `dist/${entry}.${ending}`)),
    );
  });

  it("imports nothing but its own files and decimal.js, in code and declarations", () => {
    const seen = new Set<string>();
    for (const path of files.filter((file) => /^dist\/.*\.(js|cjs|ts|cts)$/.test(file))) {
      const source = ts.createSourceFile(
        path.replace(/\.c?js$/, ".ts"),
        read(path),
        ts.ScriptTarget.ES2022,
        true,
      );
      const required = [...read(path).matchAll(/\brequire\(\s*['"]([^'"]+)['"]\s*\)/g)].map(
        (hit) => hit[1] as string,
      );
      for (const name of [...importsOf(source), ...required]) if (!name.startsWith("./")) seen.add(name);
    }
    expect([...seen]).toEqual(["decimal.js"]);
    expect(Object.keys(JSON.parse(read("package.json")).dependencies)).toEqual(["decimal.js"]);
  });

  it("carries the licence of every package bundled into it: zod, and decimal.js in the single-file script", () => {
    const notice = read("dist/THIRD-PARTY-LICENSES.txt");
    expect(notice.match(/^\S+ \d+\.\d+\.\d+ \(.+\)$/gm)).toEqual([
      "decimal.js 10.6.0 (MIT)",
      "zod 4.6.7 (MIT)",
    ]);
    expect(notice).toContain("Permission is hereby granted, free of charge");
    expect(notice).toMatch(/Copyright \(c\) \d{4}/);
  });

  it("names no path of the machine it was built on", () => {
    const temporary = packed.project.split(sep).at(-2) as string;
    const leaking = files.filter(
      (path) => read(path).includes(temporary) || /^\/\/ \.\.\//m.test(read(path)),
    );
    expect(leaking).toEqual([]);
  });

  // More than half are declarations, each shipped for ESM and for CommonJS with its docstrings: what an editor shows on hover. The
  // catalogue adds about 2.7 MB: the room for both module systems, its JSON file with all schemas, the single-file script; the report
  // and the finished assessment another 0.7 MB.
  it("stays under 9.25 MB unpacked", () => {
    const bytes = files.reduce((sum, path) => sum + Buffer.byteLength(read(path)), 0);
    console.info(
      `unpacked: ${files.length} files, ${bytes} bytes; tarball: ${readFileSync(packed.tarball).length} bytes`,
    );
    expect(bytes).toBeLessThan(9_250_000);
  });
});
