/**
 * Pictures and pages that people have looked at, byte for byte as they were then: for where things stand on paper there is no law, and what
 * looks right is judged by eye. Whoever changes a picture on purpose writes them anew, looks at each, and commits them:
 *
 *   ELECTROHEAT_SEEN=write npx vitest run tests/drawing/seen.test.ts
 *
 * No published source: that they show what they should is held by the other tests of this room.
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { seen } from "./seenScenes.ts";

const folder = fileURLToPath(new URL("seen/", import.meta.url));
const write = process.env["ELECTROHEAT_SEEN"] === "write";
/** One tag on a line, so that a difference is one line. */
const lines = (text: string): string => `${text.replaceAll("><", ">\n<").trimEnd()}\n`;

it.each(Object.keys(seen))("%s is as it was looked at", (name) => {
  const text = lines((seen[name] as () => string)());
  if (write) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(`${folder}${name}`, text);
  }
  expect(text).toBe(readFileSync(`${folder}${name}`, "utf8"));
});

it("has nothing beside them", () => {
  expect(readdirSync(folder).sort()).toEqual(Object.keys(seen).sort());
});
