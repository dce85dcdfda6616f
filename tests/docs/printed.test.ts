/** The comparison behind every docstring and README check must itself be able to fail. */
import { describe, expect, it } from "vitest";
import { codeBlocks, parseDocComment } from "../../scripts/docComment.mjs";
import { runExample } from "./example.ts";
import { printedMismatch } from "./printed.ts";

const agrees = (text: string, value: unknown): boolean => printedMismatch(text, value) === undefined;

describe("a printed value", () => {
  it("stands for half a unit of its last digit", () => {
    expect(agrees("7.65", 7.6549)).toBe(true);
    expect(agrees("7.65", 7.645)).toBe(true);
    expect(agrees("7.65", 7.6551)).toBe(false);
    expect(agrees("7.650", 7.6509)).toBe(false);
    expect(agrees("60", 60.4)).toBe(true);
    expect(agrees("60", 60.6)).toBe(false);
    expect(agrees("-1.5e-3", -0.001549)).toBe(true);
    expect(agrees("-1.5e-3", -0.001551)).toBe(false);
    expect(agrees("0.0299…", 0.02999)).toBe(true);
    expect(agrees("0.0299…", 0.03001)).toBe(false);
    expect(agrees("7.65", "7.65")).toBe(false);
    expect(agrees("0", Number.NaN)).toBe(false);
  });

  it("compares the numbers inside records and lists, and every field", () => {
    const value = {
      ohms: 7.6512,
      verdict: "within",
      per: [1.2, 0.75],
      note: "check the joint, then the link",
    };
    expect(agrees('{ ohms: 7.65, verdict: "within", per: [1.20, 0.75], note: "check … link" }', value)).toBe(
      true,
    );
    expect(agrees("{ ohms: 7.65, … }", value)).toBe(true);
    expect(agrees("{ ohms: 7.65 }", value)).toBe(false);
    expect(agrees("{ ohms: 7.66, … }", value)).toBe(false);
    expect(agrees("{ per: [1.2, …], … }", value)).toBe(true);
    expect(agrees("{ per: [1.2], … }", value)).toBe(false);
    expect(agrees("{ missing: …, … }", value)).toBe(false);
    expect(agrees('{ verdict: "outside", … }', value)).toBe(false);
  });

  it("takes words as they are and refuses what it cannot read", () => {
    expect(agrees("true", true)).toBe(true);
    expect(agrees("true", 1)).toBe(false);
    expect(agrees("undefined", null)).toBe(false);
    expect(agrees('"open"', "open")).toBe(true);
    expect(() => printedMismatch("about 7", 7)).toThrow(SyntaxError);
    expect(() => printedMismatch("7.65 Ω", 7.65)).toThrow(SyntaxError);
    expect(agrees("7.65 (Ω)", 7.65)).toBe(true);
  });
});

describe("an example", () => {
  const scope = {
    twice: (x: number) => 2 * x,
    refuse: () => {
      throw Object.assign(new Error("no"), { name: "ElectroheatError", code: "missing" });
    },
  };

  it("passes when what it prints is so", () => {
    expect(runExample("twice(2) // => 4", scope)).toEqual([]);
    expect(
      runExample("const a = twice(\n  1.5,\n);\na; // => 3.0\nconst b = twice(a) // => 6.0", scope),
    ).toEqual([]);
    expect(runExample("const a: number = twice(2);\n({ a })\n// => { a: 4,\n//      … }", scope)).toEqual([]);
    expect(runExample('import { twice } from "electroheat/x";\ntwice(2) // => 4', scope)).toEqual([]);
    expect(runExample("refuse() // throws ElectroheatError (missing)", scope)).toEqual([]);
  });

  it("fails when it is not, when nothing is shown, and when it stops", () => {
    expect(runExample("twice(2) // => 5", scope)).toHaveLength(1);
    expect(runExample("twice(2)", scope)).toHaveLength(1);
    expect(runExample("twice(2) // throws ElectroheatError", scope)).toHaveLength(1);
    expect(runExample("refuse() // throws ElectroheatError (duplicate)", scope)).toHaveLength(1);
    expect(runExample("refuse() // throws RangeError", scope)).toHaveLength(1);
    expect(runExample("refuse(); twice(2) // => 4", scope)).toHaveLength(1);
  });
});

describe("a documentation comment", () => {
  it("is split at its tags, but not inside code", () => {
    const doc = parseDocComment("/** Volts (V). @since 0.1.0 */");
    expect(doc).toEqual({ summary: "Volts (V).", tags: [{ name: "since", text: "0.1.0" }] });
    const long = parseDocComment(
      [
        "/**",
        " * Sum of `@x`.",
        " * @example",
        " * ```ts",
        " * f() // => 1",
        " * // @ts-expect-error",
        " * ```",
        " */",
      ].join("\n"),
    );
    expect(long.tags.map(({ name }) => name)).toEqual(["example"]);
    expect(codeBlocks(long.tags[0]?.text ?? "", "ts")).toEqual(["f() // => 1\n// @ts-expect-error\n"]);
  });
});
