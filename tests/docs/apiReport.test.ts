/** Every change of the public surface shows in review: docs/api says what the rooms export today. */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { apiReport, FOLDER } from "../../scripts/api-report.mjs";
import { readText, root } from "../support/house.ts";
import { publicSymbols } from "./symbols.ts";

const report = apiReport();

it("docs/api is what `node scripts/api-report.mjs` writes", () => {
  expect(readdirSync(join(root, FOLDER)).sort()).toEqual([...report.keys()].sort());
  for (const [name, text] of report) expect(readText(`${FOLDER}/${name}`), name).toBe(text);
});

it("declares every public symbol of every room", () => {
  for (const [name, text] of report) {
    const room = name.replace(/\.txt$/, "");
    const declared = new Set(
      [...text.matchAll(/^export (?:declare )?(?:function|const|type|interface|class) (\w+)/gm)].map(
        (hit) => hit[1],
      ),
    );
    const missing = publicSymbols(room).filter((symbol) => !declared.has(symbol.name));
    expect(
      missing.map((symbol) => symbol.name),
      room,
    ).toEqual([]);
    expect(text).not.toMatch(/\bany\b(?! )/);
  }
});
