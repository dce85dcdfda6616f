/** What one import of the room costs: a connection diagram brings no chart and no table, nothing brings a schema or decimal library. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const door = fileURLToPath(new URL("../../src/drawing/index.ts", import.meta.url));
let folder = "";
let library = "";
let packages: string[] = [];

// Bundled twice, as users meet it: the room into one file, then an app that imports from that file.
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "electroheat-bundle-"));
  library = join(folder, "drawing.mjs");
  const options = { bundle: true, format: "esm", target: "es2022", metafile: true } as const;
  const { metafile } = await build({ ...options, entryPoints: [door], outfile: library });
  // What reached the file, not what was merely read on the way.
  packages = Object.entries(Object.values(metafile.outputs)[0]?.inputs ?? {})
    .filter(([path, { bytesInOutput }]) => path.includes("node_modules/") && bytesInOutput > 0)
    .map(([path]) => path);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function bundled(names: string): Promise<string> {
  const from = JSON.stringify(library);
  const contents = names === "" ? `import ${from};` : `export { ${names} } from ${from};`;
  const options = { bundle: true, minify: true, format: "esm", target: "es2022", write: false } as const;
  const result = await build({ ...options, stdin: { contents, resolveDir: folder } });
  return (result.outputFiles[0]?.text ?? "").trim();
}
const tablesIn = (code: string): string[] =>
  [...code.matchAll(/id:"([\w-]+)",title:(?:"[^"]*"|'[^']*'|`[^`]*`),source:/g)].map(
    ([, id]) => id as string,
  );

describe("one import of this room", () => {
  it("brings neither zod nor decimal.js, whatever is used of it", () => {
    expect(packages).toEqual([]);
  });

  it("costs nothing when nothing is used", async () => {
    expect(await bundled("")).toBe("");
  });

  it.each([
    ["connectionDiagram", 21, []],
    ["diagramLayout", 18.5, []],
    ["phasorDiagram", 19.5, []],
    ["curveChart", 7.5, []],
    ["temperatureFactorChart", 9, []],
    ["heatUpChart", 14, ["air-incropera-a4"]],
    ["jointRiseChart", 8.5, []],
    ["benchReport", 46, []],
    ["preloadChart", 9.5, ["nut-factor-ranges", "nut-factor-textbook"]],
  ])("%s weighs at most %f kB gzip and brings only the tables it reads", async (name, most, tables) => {
    const code = await bundled(name);
    const kilobytes = gzipSync(code, { level: 9 }).byteLength / 1000;
    console.info(`${name}: ${code.length} bytes minified, ${kilobytes.toFixed(2)} kB gzip`);
    expect(tablesIn(code).sort()).toEqual(tables);
    expect(kilobytes).toBeLessThanOrEqual(most);
  });
});
