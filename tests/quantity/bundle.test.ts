import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const room = fileURLToPath(new URL("../../src/quantity/index.ts", import.meta.url));

describe("what one import costs", () => {
  let folder = "";
  let library = "";

  // Bundled twice, as users meet it: the room into one file, then an app that imports from that file.
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "electroheat-bundle-"));
    library = join(folder, "quantity.mjs");
    await build({ entryPoints: [room], bundle: true, format: "esm", target: "es2022", outfile: library });
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  async function bundled(name: string): Promise<string> {
    const contents = `export { ${name} } from ${JSON.stringify(library)};`;
    const result = await build({
      stdin: { contents, resolveDir: folder },
      bundle: true,
      minify: true,
      format: "esm",
      target: "es2022",
      write: false,
    });
    return result.outputFiles[0]?.text ?? "";
  }

  it.each(["inches", "toInches", "poundForceInches", "kilowatts", "fahrenheit", "awgArea"])(
    "%s stays under 1 kB with the error class, and brings no other unit",
    async (name) => {
      const code = await bundled(name);
      expect(gzipSync(code, { level: 9 }).length).toBeLessThan(1000);
      expect(code).toContain("ElectroheatError");
      expect(code).not.toContain("nanoohms");
    },
  );

  it("an import that uses nothing costs nothing", async () => {
    const contents = `import ${JSON.stringify(library)};`;
    const result = await build({
      stdin: { contents, resolveDir: folder },
      bundle: true,
      minify: true,
      format: "esm",
      write: false,
    });
    expect(result.outputFiles[0]?.text).toBe("");
  });
});
