/**
 * Line voltages that differ by more than those of a whole supply: what makes them so may burn, and the amps follow them. 5 % between the
 * highest and the lowest: common practice, no published source.
 */
import { assessModule, type BenchRecord } from "electroheat/bench";
import { describe, expect, it } from "vitest";

const module = (
  volts: readonly number[],
  more: Partial<BenchRecord["asFound"]> = {},
  plate = 480,
): BenchRecord => ({
  title: "invented bank",
  nameplate: { power: "30 kW", voltage: `${plate} V` },
  wiring: { banks: [{ id: "A", connection: "star" }] },
  supply: { v12: `${volts[0]} V`, v23: `${volts[1]} V`, v31: `${volts[2]} V` },
  temperatureFactor: 1.04,
  tolerance: { low: -0.05, high: 0.1 },
  instruments: {
    ohmmeter: { ofReading: 0.005, digits: 2, leads: "taken off" },
    clamp: { ofReading: 0.02, digits: 5 },
    voltmeter: { ofReading: 0.01, digits: 3 },
    insulationTester: { ofReading: 0.03, digits: 3 },
  },
  asFound: {
    ohms: ["7.38 Ω", "7.39 Ω", "7.37 Ω"].map((reads, i) => ({ from: `L${i + 1}`, to: "S", reads })),
    insulation: [{ from: "L1", reads: "200 MΩ", testVoltage: "500 V" }],
    ...more,
  },
});
const asks = (record: BenchRecord) =>
  assessModule(record).nextSteps.filter(({ action }) => action.includes("why the line voltages differ"));

describe("unequal line voltages", () => {
  // 277 V is 480 V over √3: one line wire on the neutral.
  it.each([
    [480, 277, 277],
    [480, 480, 400],
    [480, 480, 456],
  ])("of %d, %d and %d V are said, asked after and explained before running", (...volts) => {
    const { answer, nextSteps } = assessModule(module(volts));
    expect(answer[0]).toContain(`line voltages that differ, ${volts.map((one) => `${one} V`).join(", ")}`);
    expect(nextSteps[0]?.action).toMatch(/^Have the electrician in charge find why the line voltages differ/);
    // A lost line behind a star point on the neutral reads 480, 277, 277 V as well: that forbids more.
    expect(answer[2]).toMatch(
      volts[1] === 277
        ? /^Do not energise it: the star points are on the neutral/
        : /^Not before it is known why the line voltages differ/,
    );
  });

  // 480/1.05 = 457.1 V.
  it.each([
    [480, 480, 458],
    [480, 470, 465],
  ])("of %d, %d and %d V are those of any supply", (...volts) => {
    const { answer } = assessModule(module(volts));
    expect(answer[0]).not.toContain("line voltages that differ");
    expect(answer[2]).not.toContain("Not before it is known");
  });

  it("stand beside a voltage that is too high as well, and a line that is lost has its own words", () => {
    const { answer, nextSteps } = assessModule(module([560, 480, 480]));
    expect(answer[0]).toMatch(
      /supply 560 V between lines .*; line voltages that differ, 560 V, 480 V, 480 V/,
    );
    expect(answer[2]).toMatch(
      /^Not before the supply's voltage is settled.*; nor before it is known why the line voltages differ/,
    );
    expect(nextSteps.slice(0, 2).map(({ about }) => about)).toEqual([["supply"], ["supply"]]);
    // L3 lost and fed back through the star: half of 480 V on either side.
    expect(asks(module([480, 240, 240]))).toEqual([]);
  });

  it("are asked after once, whether voltages or amps or both show them", () => {
    // On 480, 460 and 450 V the star of 7.68 Ω has 35.1, 35.8 and 33.6 A: distance of each corner of the triangle to its centroid, over 7.68 Ω.
    const currents = [35.1, 35.8, 33.6].map((amps, i) => ({ at: `L${i + 1}`, reads: `${amps} A` }));
    expect(asks(module([480, 460, 450], { currents })).length).toBe(1);
  });
});
