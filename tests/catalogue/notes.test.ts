/** An entry that disagrees with its function's types does not compile. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { compile, root } from "../types/compile.ts";

const fixture = new URL("../types/fixtures/notes.ts", import.meta.url);

it("notes compile where they agree with the types, and each @ts-expect-error is a real error", () => {
  expect(readFileSync(fixture, "utf8").match(/^ *\/\/ @ts-expect-error$/gm)?.length).toBe(15);
  expect(compile(fileURLToPath(fixture), { "electroheat/*": [`${root}src/*/index.ts`] })).toEqual([]);
});

it("a note that the compiler cannot see through is refused when the catalogue is put together", async () => {
  const { describeRoom } = await import("../../src/catalogue/describe.ts");
  const numeric = await import("../../src/numeric/index.ts");
  const sum = { kind: "transform" as const, inputs: { a: {}, c: {} } };
  expect(() => describeRoom("numeric", numeric, { complexSum: sum })).toThrow(/no input c/);
  expect(() => describeRoom("numeric", numeric, { complexSum: { ...sum, inputs: { a: {} } } })).toThrow(
    /every input/,
  );
});
