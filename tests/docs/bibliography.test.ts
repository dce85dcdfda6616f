/** The page of sources says what shared/ says today, and every source it lists is one that something names. */
import { expect, it } from "vitest";
import { bibliography, PAGE } from "../../scripts/bibliography.mjs";
import { readText } from "../support/house.ts";

it("docs/sources.md is what `node scripts/bibliography.mjs` writes", () => {
  expect(readText(PAGE)).toBe(bibliography());
});
