/**
 * Pictures and pages that people have looked at, byte for byte as they were then: for where things stand on paper there is no law, and what
 * looks right is judged by eye. Whoever changes a picture on purpose writes them anew, looks at each, and commits them:
 *
 *   ELECTROHEAT_SEEN=write npx vitest run tests/drawing/seen.test.ts
 *
 * No published source: that they show what they should is held by the other tests of this room.
 */
import { expect, it } from "vitest";
import { keptIn } from "../support/kept.ts";
import { seen } from "./seenScenes.ts";

const kept = keptIn(new URL("seen/", import.meta.url), "ELECTROHEAT_SEEN");
/** One tag on a line, so that a difference is one line. */
const lines = (text: string): string => `${text.replaceAll("><", ">\n<").trimEnd()}\n`;

it.each(Object.keys(seen))("%s is as it was looked at", (name) => {
  kept.hold(name, lines((seen[name] as () => string)()));
});

it("has nothing beside them", () => {
  expect(kept.names()).toEqual(Object.keys(seen).sort());
});
