/** What one import of the room costs, bundled twice as users meet it: the room into one file, then an app on that file. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type BundledRoom, bundledRoom, gzipped } from "../../scripts/bundled.mjs";

let room: BundledRoom;
beforeAll(async () => {
  room = await bundledRoom("wiring");
});
afterAll(() => room.remove());

describe("what one import costs, without decimal.js", () => {
  it.each([
    ["standardDevice", 5_550, ["nec-310-16", "iec-b52"]],
    ["conductorResistancePerLength", 4_750, ["nec-310-16", "iec-b52"]],
    ["tableAmpacity", 7_500, ["iec-b52", "nec-chapter-9-table-8"]],
    ["conductorForLoad", 15_500, ["iec-b52", "nec-chapter-9-table-8", "heater-insulation"]],
    ["ambientForConductor", 15_700, ["iec-b52", "nec-chapter-9-table-8"]],
    ["ambientForCable", 14_500, ["nec-310-16", "nec-chapter-9-table-8"]],
    ["cableCapacity", 13_000, ["nec-310-16", "heater-insulation"]],
    ["insulationVerdicts", 6_150, ["nec-310-16", "iec-b52"]],
    ["terminalTorque", 6_050, ["nec-310-16", "iec-b52"]],
    ["faultCurrent", 2_900, ["nec-310-16", "iec-b52"]],
    ["interruptingVerdict", 4_900, ["nec-310-16", "iec-b52"]],
    ["earthFaultVerdict", 3_900, ["nec-310-16", "iec-b52"]],
    ["voltageDrop", 1_740, ["nec-310-16", "iec-b52"]],
  ])("%s alone stays under %i bytes and brings no foreign table", async (name, most, foreign) => {
    const code = await room.using(name);
    expect(gzipped(code)).toBeLessThan(most);
    for (const text of foreign) expect(code).not.toContain(`id:"${text}`);
  });

  it("the whole room stays under 47.5 kB", async () => {
    expect(gzipped(await room.using("*"))).toBeLessThan(47_500);
  });

  it("an import that uses nothing costs nothing", async () => {
    const code = await room.using();
    // What stays is the decimal constructor of `decision`, which reads a property of the library while loading.
    expect(code.replace(/^import\{Decimal as \w\}from"decimal\.js";var \w=\w\.clone\([^)]*\);\s*$/, "")).toBe(
      "",
    );
  });
});
