import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type BundledRoom, bundledRoom, gzipped } from "../../scripts/bundled.mjs";

describe("what one import costs", () => {
  let room: BundledRoom;
  beforeAll(async () => {
    room = await bundledRoom("quantity");
  });
  afterAll(() => room.remove());

  it.each(["inches", "toInches", "poundForceInches", "kilowatts", "fahrenheit", "awgArea"])(
    "%s stays under 1 kB with the error class, and brings no other unit",
    async (name) => {
      const code = await room.using(name);
      expect(gzipped(code)).toBeLessThan(1000);
      expect(code).toContain("ElectroheatError");
      expect(code).not.toContain("nanoohms");
    },
  );

  it("an import that uses nothing costs nothing", async () => {
    expect(await room.using()).toBe("");
  });
});
