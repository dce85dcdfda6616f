/** What one import of this room costs: a power formula brings no table, a temperature brings air and no alloy. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type BundledRoom, bundledRoom, gzipped } from "../../scripts/bundled.mjs";

let room: BundledRoom;
beforeAll(async () => {
  room = await bundledRoom("element");
});
afterAll(() => room.remove());

const kilobytes = (code: string): number => gzipped(code) / 1000;

describe("one import of this room", () => {
  it("costs nothing when nothing is used", async () => {
    expect(await room.using()).toBe("");
  });

  it.each(["powerFromVoltageAndResistance", "coldTarget", "surfaceLoad", "shortedTurns"])(
    "%s weighs at most 1.15 kB gzip and brings no table",
    async (name) => {
      const code = await room.using(name);
      console.info(`${name}: ${code.length} bytes minified, ${kilobytes(code).toFixed(2)} kB gzip`);
      expect(code).not.toContain("transcribed");
      expect(kilobytes(code)).toBeLessThanOrEqual(1.15);
    },
  );

  it("surfaceTemperature brings air and three correlation tables, no alloy, gauge or guidance", async () => {
    const code = await room.using("surfaceTemperature");
    console.info(`surfaceTemperature: ${code.length} bytes minified, ${kilobytes(code).toFixed(2)} kB gzip`);
    const tables = [...code.matchAll(/id:"([\w-]+)",title:/g)].map(([, id]) => id);
    expect(tables.sort()).toEqual([
      "air-incropera-a4",
      "hilpert-cross-flow",
      "morgan-free-convection",
      "zukauskas-cross-flow",
    ]);
    expect(kilobytes(code)).toBeLessThanOrEqual(7.2);
  });

  it("four functions share their ground", async () => {
    const code = await room.using(
      "powerFromVoltageAndResistance, surfaceTemperature, elementOnVoltage, coilGeometry",
    );
    expect(kilobytes(code)).toBeLessThanOrEqual(9.4);
  });
});
