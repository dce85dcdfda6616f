/** What one import of the room costs: a connection diagram brings no chart and no table, nothing brings a schema or decimal library. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type BundledRoom, bundledRoom, gzipped } from "../../scripts/bundled.mjs";

let room: BundledRoom;
beforeAll(async () => {
  room = await bundledRoom("drawing");
});
afterAll(() => room.remove());

const tablesIn = (code: string): string[] =>
  [...code.matchAll(/id:"([\w-]+)",title:(?:"[^"]*"|'[^']*'|`[^`]*`),source:/g)].map(
    ([, id]) => id as string,
  );

describe("one import of this room", () => {
  it("brings neither zod nor decimal.js, whatever is used of it", () => {
    expect(room.packages).toEqual([]);
  });

  it("costs nothing when nothing is used", async () => {
    expect(await room.using()).toBe("");
  });

  it.each([
    ["connectionDiagram", 21, []],
    ["diagramLayout", 18.5, []],
    ["phasorDiagram", 19.5, []],
    ["curveChart", 7.5, []],
    ["temperatureFactorChart", 9, []],
    ["heatUpChart", 14, ["air-incropera-a4"]],
    ["jointRiseChart", 8.5, []],
    ["benchReport", 46.5, []],
    ["preloadChart", 9.5, ["nut-factor-ranges", "nut-factor-textbook"]],
  ])("%s weighs at most %f kB gzip and brings only the tables it reads", async (name, most, tables) => {
    const code = await room.using(name);
    const kilobytes = gzipped(code) / 1000;
    console.info(`${name}: ${code.length} bytes minified, ${kilobytes.toFixed(2)} kB gzip`);
    expect(tablesIn(code).sort()).toEqual(tables);
    expect(kilobytes).toBeLessThanOrEqual(most);
  });
});
