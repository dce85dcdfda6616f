/** The code of the README, run exactly as printed against the installed package. */
import { transformSync } from "esbuild";
import { describe, expect, it } from "vitest";
import { readText } from "../support/house.ts";
import { resolutions, runConsumer, typeErrors, writeConsumer } from "./consume.ts";

/** The ```ts blocks, each with the lines of the ```text block that follows it as the next block. */
const examples = [...readText("README.md").matchAll(/^```(\w*)[^\n]*\n([\s\S]*?)^```[ \t]*$/gm)]
  .map(([, language = "", text = ""]) => ({ language, text }))
  .flatMap(({ language, text: code }, at, blocks) => {
    if (language !== "ts") return [];
    const output = blocks[at + 1];
    if (output?.language !== "text") throw new Error(`this block of README.md shows no output:\n${code}`);
    return [{ code, printed: output.text.trimEnd().split("\n") }];
  });

it("the first example is at most 15 lines long, and prints three", () => {
  const [first] = examples;
  expect(first?.code.trimEnd().split("\n").length).toBeLessThanOrEqual(15);
  expect(first?.printed).toHaveLength(3);
});

describe.each(examples.map((example, at) => [at + 1, example] as const))(
  "example %i of the README",
  (number, { code, printed }) => {
    const stem = `readme-${number}`;

    it("imports the package by name", () => {
      expect(code).toMatch(/from "electroheat[/"]/);
    });

    it("runs as an ES module and prints what the README prints", () => {
      const script = transformSync(code, { loader: "ts", format: "esm", target: "es2022" }).code;
      expect(runConsumer(`${stem}.mjs`, script).split("\n")).toEqual(printed);
    });

    it("runs as CommonJS and prints the same", () => {
      const script = transformSync(code, { loader: "ts", format: "cjs", target: "es2022" }).code;
      expect(runConsumer(`${stem}.cjs`, script).split("\n")).toEqual(printed);
    });

    it.each(Object.entries(resolutions))("type-checks with %s resolution", (name, options) => {
      writeConsumer(`${stem}-${name}.mts`, code);
      expect(typeErrors([`${stem}-${name}.mts`], options)).toEqual([]);
    });
  },
);
