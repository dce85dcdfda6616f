/** What one import of the room costs, bundled twice as users meet it: the room into one file, then an app on that file. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const room = fileURLToPath(new URL("../../src/wiring/index.ts", import.meta.url));

describe("what one import costs, without decimal.js", () => {
  let folder = "";
  let library = "";

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "electroheat-bundle-"));
    library = join(folder, "wiring.mjs");
    await build({
      entryPoints: [room],
      bundle: true,
      format: "esm",
      target: "es2022",
      outfile: library,
      external: ["decimal.js"],
    });
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  async function bundled(contents: string): Promise<string> {
    const result = await build({
      stdin: { contents, resolveDir: folder },
      bundle: true,
      minify: true,
      format: "esm",
      target: "es2022",
      write: false,
      external: ["decimal.js"],
    });
    return result.outputFiles[0]?.text ?? "";
  }
  const zipped = (code: string): number => gzipSync(code, { level: 9 }).length;
  const only = (name: string): Promise<string> =>
    bundled(`export { ${name} } from ${JSON.stringify(library)};`);

  it.each([
    ["standardDevice", 5_500, ["nec-310-16", "iec-b52"]],
    ["conductorResistancePerLength", 4_500, ["nec-310-16", "iec-b52"]],
    ["tableAmpacity", 7_500, ["iec-b52", "nec-chapter-9-table-8"]],
    ["conductorForLoad", 14_000, ["iec-b52", "nec-chapter-9-table-8", "heater-insulation"]],
    ["ambientForConductor", 14_500, ["iec-b52", "nec-chapter-9-table-8"]],
    ["ambientForCable", 14_500, ["nec-310-16", "nec-chapter-9-table-8"]],
    ["cableCapacity", 13_000, ["nec-310-16", "heater-insulation"]],
    ["insulationVerdicts", 6_000, ["nec-310-16", "iec-b52"]],
    ["terminalTorque", 6_000, ["nec-310-16", "iec-b52"]],
    ["voltageDrop", 1_600, ["nec-310-16", "iec-b52"]],
  ])("%s alone stays under %i bytes and brings no foreign table", async (name, most, foreign) => {
    const code = await only(name);
    expect(zipped(code)).toBeLessThan(most);
    for (const text of foreign) expect(code).not.toContain(`id:"${text}`);
  });

  it("the whole room stays under 42 kB", async () => {
    expect(zipped(await bundled(`export * from ${JSON.stringify(library)};`))).toBeLessThan(42_000);
  });

  it("an import that uses nothing costs nothing", async () => {
    const code = await bundled(`import ${JSON.stringify(library)};`);
    // What stays is the decimal constructor of `decision`, which reads a property of the library while loading.
    expect(code.replace(/^import\{Decimal as \w\}from"decimal\.js";var \w=\w\.clone\([^)]*\);\s*$/, "")).toBe(
      "",
    );
  });
});
