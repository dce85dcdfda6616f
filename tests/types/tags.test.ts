import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { compile, type Finding, inFolder, layOut, markedLines, NOT_ASSIGNABLE, root } from "./compile.ts";

const paths = { "electroheat/*": [`${root}src/*/index.ts`] };
const marked = markedLines("fails.ts");

describe("right code in the TypeScript compiler", () => {
  it("compiles, and each @ts-expect-error in it is a real error", () => {
    const file = fileURLToPath(new URL("./fixtures/compiles.ts", import.meta.url));
    expect(compile(file, paths)).toEqual([]);
  });
});

describe.each([
  ["the project's own options", {}],
  // Users set fewer checks than this project; our sources are then read under theirs.
  ["plain strict options", { exactOptionalPropertyTypes: false, noUncheckedIndexedAccess: false }],
])("wrong code under %s", (_, changed) => {
  let found: Finding[] = [];
  beforeAll(async () => {
    found = await inFolder((folder) => compile(layOut("fails.ts", folder), paths, changed));
  });

  it.each(marked)("is refused: $remark", ({ line }) => {
    const here = found.filter((one) => one.line === line);
    expect(here).toHaveLength(1);
    expect(NOT_ASSIGNABLE).toContain(here[0]?.code);
  });

  it("is refused on those lines only", () => {
    expect(marked).toHaveLength(23);
    expect(found.map((one) => one.line).sort((a, b) => a - b)).toEqual(marked.map((one) => one.line));
  });
});
