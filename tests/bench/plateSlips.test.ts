/**
 * Slips of the plate, not of the readings. ANSI C84.1 has 208Y/120, 480Y/277 and 600Y/347: 120, 277 and 347 V are voltages to neutral.
 * By Ohm: a star of 7.68 Ω on 480 V takes 480²/7.68 = 30 kW; at a plate of 30 W a branch would be 480²/30 = 7680 Ω.
 */
import { assessModule, type BenchRecord, nameplateTargets } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { volts, watts } from "../../src/quantity/index.ts";

const star = (
  power: BenchRecord["nameplate"] & object,
  reads: string,
  more: Partial<BenchRecord> = {},
): BenchRecord => ({
  title: "reflow oven (invented)",
  nameplate: power,
  tolerance: { low: -0.05, high: 0.1 },
  temperatureFactor: 1.04,
  wiring: { banks: [{ id: "A", connection: "star" }] },
  instruments: { ohmmeter: { ofReading: 0.009, digits: 2, leads: "taken off" } },
  asFound: { ohms: ["L1", "L2", "L3"].map((from) => ({ from, to: "S", reads })) },
  ...more,
});

/** Powers of modules that there are: from a few hundred watts to some megawatts. Common practice, no published source. */
const [LOW, HIGH] = [300, 5e6];

describe("kilowatts typed where watts are taken", () => {
  it("asks about the plate, and not about each reading", () => {
    const { answer, nextSteps, warnings } = assessModule(star({ power: 30, voltage: 480 }, "7.4 Ω"));
    expect(answer[0]).toMatch(
      /^30 W is an unusual power for a three-phase heating module; were kilowatts typed/,
    );
    expect(answer.join(" ")).not.toContain("kiloohms typed as ohms");
    expect(nextSteps.filter(({ action }) => action.includes("settle this"))).toHaveLength(1);
    expect(answer[2]).toMatch(/^Not known before/);
    expect(warnings.map(({ path }) => path)).toContain("nameplate.power");
  });
  it("asks the other way round of a power that no module has", () => {
    const told = (power: string) =>
      assessModule(star({ power, voltage: "480 V" }, "OL")).warnings.flatMap(({ path, message, limit }) =>
        path === "nameplate.power" ? [[message.split("; ")[1], limit]] : [],
      );
    expect(told("30000 kW")).toEqual([["were watts typed as kilowatts?", HIGH]]);
    expect(told("30 W")).toEqual([["were kilowatts typed where watts are taken?", LOW]]);
    expect([told(`${LOW} W`), told(`${HIGH} W`)]).toEqual([[], []]);
  });
  it("still asks about readings that are off by themselves", () => {
    const record = star({ power: "30 kW", voltage: "480 V" }, "7.40 kΩ");
    expect(assessModule(record).answer[0]).toContain("is about 1000 times");
  });
});

describe("the voltage of one branch typed for that between lines", () => {
  const told = (lineVoltage: number): readonly string[] =>
    nameplateTargets({
      power: watts(30e3),
      lineVoltage: volts(lineVoltage),
      connection: "star",
      banks: 1,
    }).warnings.map(({ path, message }) => `${path}: ${message}`);
  it("is warned of within what plates round by, and at no voltage that stands between lines", () => {
    for (const [neutral, lines] of [
      [120, 208],
      [277, 480],
      [347, 600],
    ] as const) {
      for (const near of [neutral, 0.991 * neutral, 1.009 * neutral])
        expect(told(near)).toEqual([
          expect.stringMatching(new RegExp(`^lineVoltage: .* a supply of ${lines} V has to neutral`)),
        ]);
      for (const off of [0.989 * neutral, 1.011 * neutral]) expect(told(off)).toEqual([]);
    }
    for (const usual of [200, 208, 220, 230, 240, 380, 400, 415, 440, 460, 480, 575, 600, 690])
      expect(told(usual)).toEqual([]);
  });
  it("is asked about first where the elements are all of another value by it", () => {
    // 277 V and 30 kW ask for 2.56 Ω hot; 7.4 Ω cold is 30 kW on 480 V.
    const { answer, warnings } = assessModule(star({ power: "30 kW", voltage: "277 V" }, "7.4 Ω"));
    expect(answer[0]).toMatch(
      /^277 V is what a supply of 480 V has to neutral; was the voltage of one branch typed/,
    );
    expect(warnings.map(({ path }) => path)).toContain("nameplate.voltage");
  });
  it("is a warning and no more where the readings agree with the plate", () => {
    // 277²/30 kW = 2.558 Ω hot, 2.459 Ω cold.
    const { answer, warnings } = assessModule(star({ power: "30 kW", voltage: "277 V" }, "2.46 Ω"));
    expect(answer[0]).toBe("No fault shows in the readings.");
    expect(warnings.map(({ path }) => path)).toEqual(["nameplate.voltage"]);
  });
});

describe("a star point on the neutral", () => {
  it("is N, and a record that says S is told so", () => {
    const wiring = { banks: [{ id: "A", connection: "star" }], neutral: "connected" } as const;
    const plate = { power: "30 kW", voltage: "480 V" };
    expect(() => assessModule(star(plate, "7.4 Ω", { wiring }))).toThrow(
      'asFound.ohms.0.to: "S" is not allowed; expected one of L1, N, L2, L3; a star point on the neutral is N',
    );
    const ohms = ["L1", "L2", "L3"].map((from) => ({ from, to: "N", reads: "7.4 Ω" }));
    expect(assessModule(star(plate, "", { wiring, asFound: { ohms } })).answer[0]).toBe(
      "No fault shows in the readings.",
    );
    // A floating star point has its name, and no other hint is given.
    const wrong = [{ from: "L1", to: "SX", reads: "7.4 Ω" }];
    expect(() => assessModule(star(plate, "", { asFound: { ohms: wrong } }))).toThrow(
      /expected one of L1, S, L2, L3$/,
    );
  });
});
