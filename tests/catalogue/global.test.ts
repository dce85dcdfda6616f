/** The single-file script, in a context that has nothing: no console, no process, no fetch, no TextEncoder. */
import vm from "node:vm";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { beforeAll, describe, expect, it } from "vitest";
import { buildGlobal } from "../../scripts/catalogueFile.mjs";
import { jsonAsText } from "../../scripts/jsonText.mjs";
import { root } from "../support/house.ts";
import { inFolder } from "../types/compile.ts";

let code = "";
let inputs: string[] = [];
beforeAll(() =>
  inFolder(async (folder) => {
    ({ text: code, inputs } = await buildGlobal(root, folder));
  }),
);

/** Runs code in a fresh bare context after the script; what comes out is plain data of this realm. */
function inBareHost(expression: string): unknown {
  const context = vm.createContext(Object.create(null));
  vm.runInContext(code, context);
  return JSON.parse(vm.runInContext(`JSON.stringify(${expression})`, context) as string);
}

describe("the single-file script", () => {
  it("evaluates, and answers cells", () => {
    expect(
      inBareHost(`electroheat.evaluate("circuit.lineCurrent", { power: "36 kW", lineVoltage: 480 })`),
    ).toMatchObject({
      ok: true,
      unit: "A",
      value: expect.closeTo(43.30127, 5),
    });
    expect(inBareHost(`electroheat.evaluate("circuit.lineCurrent", new Date(0)).error.code`)).toBe(
      "wrong-type",
    );
    expect(inBareHost(`electroheat.sheetValue("LINECURRENT", 36000, [[480], [""]])`)).toEqual([
      [expect.closeTo(43.30127, 5)],
      ["lineVoltage: missing; expected more than 0 V"],
    ]);
    expect(inBareHost(`electroheat.sheetFunctions().length === electroheat.catalogueEntries().length`)).toBe(
      true,
    );
  });

  it("reads plain data of another realm, and refuses what is none there too", () => {
    const context = vm.createContext(Object.create(null));
    vm.runInContext(code, context);
    context["given"] = { power: 36_000, lineVoltage: 480 };
    expect(vm.runInContext(`electroheat.evaluate("circuit.lineCurrent", given).ok`, context)).toBe(true);
    context["given"] = new Map();
    expect(vm.runInContext(`electroheat.evaluate("circuit.lineCurrent", given).error.code`, context)).toBe(
      "wrong-type",
    );
  });

  it("adds one global and changes none", () => {
    const context = vm.createContext(Object.create(null));
    const before = vm.runInContext("Reflect.ownKeys(globalThis).map(String)", context) as string[];
    vm.runInContext(code, context);
    const after = vm.runInContext("Reflect.ownKeys(globalThis).map(String)", context) as string[];
    expect([...after].filter((name) => ![...before].includes(name))).toEqual(["electroheat"]);
  });

  it("has no zod of its own making in it, and is plain ASCII", () => {
    const fromCatalogue = inputs.filter((path) => path.includes("node_modules/zod"));
    // The room of bench records reads them with zod; nothing else here does.
    if (!inputs.some((path) => path.includes("src/bench/"))) expect(fromCatalogue).toEqual([]);
    expect(/^[\0-\x7F]*$/.test(code)).toBe(true);
  });

  it("tells its size, and what zod at run time would add", async () => {
    const with0 = await build({
      stdin: {
        contents: `export * from "./src/catalogue/index.ts"; import * as z from "zod/mini"; export const schema = () => z.toJSONSchema(z.strictObject({ power: z.union([z.number().check(z.gt(0)), z.string()]), network: z.optional(z.array(z.record(z.string(), z.enum(["a"])))), t: z.tuple([z.int(), z.boolean(), z.literal([1, 2])]) }));`,
        resolveDir: root,
        loader: "ts",
      },
      bundle: true,
      minify: true,
      write: false,
      format: "iife",
      globalName: "electroheat",
      target: "es2020",
      plugins: [jsonAsText()],
    });
    const size = (text: string): string => `${text.length} bytes, ${gzipSync(text).length} gzipped`;
    const zod = with0.outputFiles[0]?.text ?? "";
    console.info(`electroheat.global.js: ${size(code)}; with zod/mini and its JSON Schemas: ${size(zod)}`);
    expect(zod.length).toBeGreaterThan(code.length);
  });
});
