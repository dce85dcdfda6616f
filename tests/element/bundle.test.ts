/** What one import of this room costs: a power formula brings no table, a temperature brings air and no alloy. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const door = fileURLToPath(new URL("../../src/element/index.ts", import.meta.url));
let folder = "";
let library = "";

// Bundled twice, as users meet it: the room into one file, then an app that imports from that file.
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "electroheat-bundle-"));
  library = join(folder, "element.mjs");
  await build({ entryPoints: [door], bundle: true, format: "esm", target: "es2022", outfile: library });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function bundled(names: string): Promise<string> {
  const from = JSON.stringify(library);
  const contents = names === "" ? `import ${from};` : `export { ${names} } from ${from};`;
  const options = { bundle: true, minify: true, format: "esm", target: "es2022", write: false } as const;
  const result = await build({ ...options, stdin: { contents, resolveDir: folder } });
  return (result.outputFiles[0]?.text ?? "").trim();
}
const kilobytes = (code: string): number => gzipSync(code, { level: 9 }).byteLength / 1000;

describe("one import of this room", () => {
  it("costs nothing when nothing is used", async () => {
    expect(await bundled("")).toBe("");
  });

  it.each(["powerFromVoltageAndResistance", "coldTarget", "surfaceLoad", "shortedTurns"])(
    "%s weighs at most 1.1 kB gzip and brings no table",
    async (name) => {
      const code = await bundled(name);
      console.info(`${name}: ${code.length} bytes minified, ${kilobytes(code).toFixed(2)} kB gzip`);
      expect(code).not.toContain("transcribed");
      expect(kilobytes(code)).toBeLessThanOrEqual(1.1);
    },
  );

  it("surfaceTemperature brings air and three correlation tables, no alloy, gauge or guidance", async () => {
    const code = await bundled("surfaceTemperature");
    console.info(`surfaceTemperature: ${code.length} bytes minified, ${kilobytes(code).toFixed(2)} kB gzip`);
    const tables = [...code.matchAll(/id:"([\w-]+)",title:/g)].map(([, id]) => id);
    expect(tables.sort()).toEqual([
      "air-incropera-a4",
      "hilpert-cross-flow",
      "morgan-free-convection",
      "zukauskas-cross-flow",
    ]);
    expect(kilobytes(code)).toBeLessThanOrEqual(7.2);
  });

  it("four functions share their ground", async () => {
    const code = await bundled(
      "powerFromVoltageAndResistance, surfaceTemperature, elementOnVoltage, coilGeometry",
    );
    expect(kilobytes(code)).toBeLessThanOrEqual(9);
  });
});
