/** The first example of the README, run exactly as printed against the installed package. */
import { transformSync } from "esbuild";
import { describe, expect, it } from "vitest";
import { readText } from "../support/house.ts";
import { resolutions, runConsumer, typeErrors, writeConsumer } from "./consume.ts";

/** The first ```ts block, and the ```text block that follows it as the next block. */
function firstExample(): { code: string; printed: string[] } {
  const blocks = [...readText("README.md").matchAll(/^```(\w*)[^\n]*\n([\s\S]*?)^```[ \t]*$/gm)].map(
    (hit) => ({
      language: hit[1] as string,
      text: hit[2] as string,
    }),
  );
  const at = blocks.findIndex(({ language }) => language === "ts");
  const output = blocks[at + 1];
  if (at < 0) throw new Error("README.md has no ```ts block");
  if (output?.language !== "text")
    throw new Error("the first ```ts block of README.md has no ```text block after it");
  return { code: blocks[at]?.text ?? "", printed: output.text.trimEnd().split("\n") };
}

describe("the first README example", () => {
  it("is at most 15 lines long and imports the package by name", () => {
    const { code } = firstExample();
    expect(code.trimEnd().split("\n").length).toBeLessThanOrEqual(15);
    expect(code).toMatch(/from "electroheat[/"]/);
  });

  it("runs as an ES module and prints what the README prints", () => {
    const { code, printed } = firstExample();
    const script = transformSync(code, { loader: "ts", format: "esm", target: "es2022" }).code;
    expect(runConsumer("readme.mjs", script).split("\n")).toEqual(printed);
  });

  it("runs as CommonJS and prints the same", () => {
    const { code, printed } = firstExample();
    const script = transformSync(code, { loader: "ts", format: "cjs", target: "es2022" }).code;
    expect(runConsumer("readme.cjs", script).split("\n")).toEqual(printed);
  });

  it.each(Object.entries(resolutions))("type-checks with %s resolution", (name, options) => {
    writeConsumer(`readme-${name}.mts`, firstExample().code);
    expect(typeErrors([`readme-${name}.mts`], options)).toEqual([]);
  });
});
