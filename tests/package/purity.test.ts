/** What an app developer pays for: nothing that was not asked for, and about a kilobyte for one function. */
import { cpSync } from "node:fs";
import { join, relative } from "node:path";
import { describe, expect, it } from "vitest";
import { rooms, root } from "../support/house.ts";
import { bundle, packed } from "./consume.ts";

/** Rooms meant for pages and small apps: plain arithmetic, no schema library, no decimal library. */
const light = ["quantity", "numeric", "material", "element", "circuit", "process"];
/** These, and the operators, which work on any function and so stand apart from the root. */
const withoutPackages = [...light, "operators"];
const ONE_KILOBYTE = 1000;

/** Packages among the inputs of a bundle. */
const packagesIn = (inputs: readonly string[]): string[] => [
  ...new Set(inputs.flatMap((path) => path.match(/.*node_modules\/((?:@[^/]+\/)?[^/]+)/)?.[1] ?? [])),
];

describe("the light entries", () => {
  it.each([".", ...withoutPackages])("%s is built from sources that use no package", async (entry) => {
    const door = entry === "." ? "./src/index.ts" : `./src/${entry}/index.ts`;
    const { inputs } = await bundle(`export * from "${door}";`, root);
    expect(inputs.length).toBeGreaterThan(1);
    expect(packagesIn(inputs)).toEqual([]);
  });

  it.each([".", ...withoutPackages])("%s as installed loads neither zod nor decimal.js", async (entry) => {
    const name = entry === "." ? "electroheat" : `electroheat/${entry}`;
    const { inputs, text, min, gzip } = await bundle(`export * from "${name}";`, packed.consumer);
    expect(packagesIn(inputs)).toEqual(["electroheat"]);
    expect(text).not.toMatch(/ZodError|ZodType|\$ZodType|DecimalError/);
    console.info(`${name}, all of it: ${min} bytes minified, ${gzip} gzip`);
  });

  it("would show a package that does come along", async () => {
    const { inputs, text } = await bundle(`export * from "electroheat/decision";`, packed.consumer);
    expect(packagesIn(inputs)).toContain("decimal.js");
    expect(text).toMatch(/DecimalError/);
    const bench = await bundle(`export * from "electroheat/bench";`, packed.consumer);
    expect(bench.text).toMatch(/\$ZodType|ZodType/);
  });

  it("the root gives every name of the light rooms and of no other", async () => {
    const all = await import(join(root, "src/index.ts"));
    const names = await Promise.all(
      light.map(async (room) => Object.keys(await import(join(root, "src", room, "index.ts")))),
    );
    expect(Object.keys(all).sort()).toEqual([...new Set(names.flat())].sort());
  });
});

describe("one function", () => {
  const size = async (name: string, from: string): Promise<number> => {
    const { min, gzip } = await bundle(`export { ${name} } from "${from}";`, packed.consumer);
    console.info(`${name} from ${from}: ${min} bytes minified, ${gzip} gzip`);
    return gzip;
  };

  it.each([
    ["ohms", "quantity"],
    ["toKilowatts", "quantity"],
    ["fahrenheit", "quantity"],
    ["checkPositive", "quantity"],
    ["lineCurrent", "circuit"],
    ["branchResistance", "circuit"],
    ["starFromDelta", "circuit"],
  ])("%s of %s weighs at most 1 kB gzip", async (name, room) => {
    expect(await size(name, `electroheat/${room}`)).toBeLessThanOrEqual(ONE_KILOBYTE);
  });

  it.each(["terminalResistance", "energise"])(
    "%s, which solves a network, at most 6 kB gzip",
    async (name) => {
      expect(await size(name, "electroheat/circuit")).toBeLessThanOrEqual(6 * ONE_KILOBYTE);
    },
  );

  it("an unused import weighs nothing: no room does anything on loading", async () => {
    for (const room of rooms) {
      const { min } = await bundle(`import "electroheat/${room}";`, packed.consumer);
      expect(min, room).toBe(0);
    }
  });

  it("no light room does anything on loading, even away from its package.json and sideEffects field", async () => {
    const bare = join(packed.consumer, "bare");
    cpSync(join(packed.consumer, "node_modules/electroheat/dist"), bare, { recursive: true });
    for (const room of withoutPackages) {
      const { text, inputs } = await bundle(`import "./${room}.js";`, bare);
      expect(inputs).toContain(`${relative(process.cwd(), join(bare, room))}.js`);
      expect(text.trim(), room).toBe("");
    }
  });
});
