/** One alloy does not bring the others along, a gauge brings no alloy, and nothing costs nothing. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type BundledRoom, bundledRoom, gzipped } from "../../scripts/bundled.mjs";

let room: BundledRoom;
beforeAll(async () => {
  room = await bundledRoom("material");
});
afterAll(() => room.remove());

describe("what one import of this room costs", () => {
  it("nothing, when nothing is used", async () => {
    expect(await room.using()).toBe("");
  });

  it("one alloy brings its own Ct and no other", async () => {
    const code = await room.using("NICR_80_20_GB, temperatureFactor");
    expect(code).toContain("ct-nicr-80-20-gb");
    expect(code.match(/ct-[a-z0-9-]+-(?:gb|maker-a|supplier)/g)?.length).toBe(1);
    expect(code).not.toMatch(/fecral|swg|copper/i);
    expect(gzipped(code)).toBeLessThan(3250);
  });

  it.each([
    ["resistancePerLength", 850],
    ["pressureAtAltitude", 770],
    ["airDensity", 1000],
    ["resistanceAtTemperature", 1000],
    ["temperatureFactor", 1870],
    ["awgFromDiameter", 1925],
    ["swgSize", 2080],
    ["highestResistance", 2270],
    ["airProperties", 2700],
  ])("%s: at most %d bytes gzip, no alloy and no metal", async (name, most) => {
    const code = await room.using(name);
    expect(gzipped(code)).toBeLessThan(most);
    expect(code).not.toMatch(/fecral|"nicr|kuphaldt|"crc-/i);
  });

  it("the registry brings every alloy: that is its price", async () => {
    const code = await room.using("alloyDataset");
    expect(code.match(/"ct-[a-z0-9-]+-(?:gb|maker-a|supplier)"/g)?.length).toBeGreaterThan(12);
    expect(code).not.toContain("swg");
  });
});
