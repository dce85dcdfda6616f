/** One alloy does not bring the others along, a gauge brings no alloy, and nothing costs nothing. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const room = fileURLToPath(new URL("../../src/material/index.ts", import.meta.url));
let folder = "";
let library = "";

// Bundled twice, as users meet it: the room into one file, then an app that imports from that file.
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "electroheat-bundle-"));
  library = join(folder, "material.mjs");
  await build({ entryPoints: [room], bundle: true, format: "esm", target: "es2022", outfile: library });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function bundled(contents: string): Promise<string> {
  const result = await build({
    stdin: { contents: contents.replace("material", JSON.stringify(library)), resolveDir: folder },
    bundle: true,
    minify: true,
    format: "esm",
    target: "es2022",
    write: false,
  });
  return (result.outputFiles[0]?.text ?? "").trim();
}

describe("what one import of this room costs", () => {
  it("nothing, when nothing is used", async () => {
    expect(await bundled("import material;")).toBe("");
  });

  it("one alloy brings its own Ct and no other", async () => {
    const code = await bundled("export { NICR_80_20_GB, temperatureFactor } from material;");
    expect(code).toContain("ct-nicr-80-20-gb");
    expect(code.match(/ct-[a-z0-9-]+-(?:gb|maker-a|supplier)/g)?.length).toBe(1);
    expect(code).not.toMatch(/fecral|swg|copper/i);
    expect(gzipSync(code, { level: 9 }).length).toBeLessThan(3000);
  });

  it.each([
    ["resistancePerLength", 850],
    ["pressureAtAltitude", 750],
    ["airDensity", 980],
    ["resistanceAtTemperature", 960],
    ["temperatureFactor", 1600],
    ["awgFromDiameter", 1780],
    ["swgSize", 2050],
    ["highestResistance", 2200],
    ["airProperties", 2700],
  ])("%s: at most %d bytes gzip, no alloy and no metal", async (name, most) => {
    const code = await bundled(`export { ${name} } from material;`);
    expect(gzipSync(code, { level: 9 }).length).toBeLessThan(most);
    expect(code).not.toMatch(/fecral|"nicr|kuphaldt|"crc-/i);
  });

  it("the registry brings every alloy: that is its price", async () => {
    const code = await bundled("export { alloyDataset } from material;");
    expect(code.match(/"ct-[a-z0-9-]+-(?:gb|maker-a|supplier)"/g)?.length).toBeGreaterThan(12);
    expect(code).not.toContain("swg");
  });
});
