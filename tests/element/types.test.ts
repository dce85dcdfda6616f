/** Mix-ups of the trade that must not compile: which diameter of a coil, hot or cold ohms, line or element volts. */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { compile, type Finding, inFolder, NOT_ASSIGNABLE, root } from "../types/compile.ts";

const text = readFileSync(new URL("./fixtures/mixups.ts.txt", import.meta.url), "utf8");
const marked = text
  .split("\n")
  .flatMap((line, index) =>
    /^export const e\d/.test(line) ? [{ line: index + 1, remark: line.slice(line.indexOf("// ") + 3) }] : [],
  );

describe("mix-ups in the TypeScript compiler", () => {
  let found: Finding[] = [];
  beforeAll(async () => {
    found = await inFolder((folder) => {
      const file = join(folder, "mixups.ts");
      writeFileSync(file, text);
      return compile(file, { "electroheat/*": [`${root}src/*/index.ts`] });
    });
  });

  it.each(marked)("is refused: $remark", ({ line }) => {
    const here = found.filter((one) => one.line === line);
    expect(here).toHaveLength(1);
    expect(NOT_ASSIGNABLE).toContain(here[0]?.code);
  });

  it("are refused on those lines only", () => {
    expect(marked).toHaveLength(10);
    expect(found.map((one) => one.line).sort((a, b) => a - b)).toEqual(marked.map((one) => one.line));
  });
});
