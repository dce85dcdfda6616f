/**
 * The figures the room was asked for by name, one test each.
 *
 * Source of the six-reading figures: common practice, no published source; each follows by hand from the closed form
 * R_A = (y_AB + y_CA − y_B − y_C)/2 and r = (2·Σ line to star point − Σ line to line)/3, written beside the figure. Power of a
 * floating star by hand: P = V²·(R1 + R2 + R3)/(R1·R2 + R2·R3 + R3·R1), Millman's theorem.
 */
import {
  assessModule,
  type BenchRecord,
  correctedReading,
  deltaFromLineReadings,
  fitTerminalReadings,
  nameplateTargets,
  type RecordOhms,
  type TerminalOhms,
} from "electroheat/bench";
import { buildModule } from "electroheat/circuit";
import { judge } from "electroheat/decision";
import { kilowatts, type Ohms, ohms, volts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";

const star = buildModule({ banks: [{ id: "A", connection: "star", elementResistance: ohms(7.68) }] }).network;
const reads = (from: string, to: string, value: number): TerminalOhms => ({
  from,
  to,
  reads: ohms(value),
  standardUncertainty: ohms(0.06),
});
const toStarPoint = [reads("L1", "S", 7.9), reads("L2", "S", 7.9), reads("L3", "S", 7.8)];
const lineToLine = [reads("L1", "L2", 15.5), reads("L2", "L3", 15.5), reads("L3", "L1", 15.5)];

describe("7.9, 7.9, 7.8 Ω to the star point and 15.5, 15.5, 15.5 Ω line to line, equal weights", () => {
  const fit = fitTerminalReadings({
    network: star,
    readings: [...toStarPoint, ...lineToLine],
    leads: "unknown",
  });
  const branch = (i: number): number => fit.branches[i]?.resistance as number;

  it("branch L1 is 7.650 Ω: (15.5 + 15.5 − 7.9 − 7.8)/2", () => {
    expect(branch(0)).toBeCloseTo(7.65, 10);
  });

  it("branch L2 is 7.650 Ω: (15.5 + 15.5 − 7.9 − 7.8)/2", () => {
    expect(branch(1)).toBeCloseTo(7.65, 10);
  });

  it("branch L3 is 7.600 Ω: (15.5 + 15.5 − 7.9 − 7.9)/2", () => {
    expect(branch(2)).toBeCloseTo(7.6, 10);
  });

  it("the leads are 0.2333 Ω: (2·23.6 − 46.5)/3", () => {
    expect(fit.leads.resistance).toBeCloseTo(0.7 / 3, 10);
  });

  it("two readings are to spare", () => {
    expect(fit.degreesOfFreedom).toBe(2);
    // χ² by hand: residuals y − fit are 1/60, 1/60, −1/30 to the star point and −1/30, 1/60, 1/60 line to line.
    expect(fit.chiSquare).toBeCloseTo((4 / 3600 + 2 / 900) / 0.06 ** 2, 8);
    expect(fit.consistency).toBe("consistent");
  });

  it("covariance is that of the closed form: 1, ½, −1, 5/3 times the reading's variance", () => {
    const variance = 0.06 ** 2;
    expect(fit.fitted).toEqual(["A-L1", "A-L2", "A-L3", "leads"]);
    fit.covariance.forEach((row, p) => {
      row.forEach((value, q) => {
        const expected = p === 3 && q === 3 ? 5 / 3 : p === 3 || q === 3 ? -1 : p === q ? 1 : 0.5;
        expect(value / variance).toBeCloseTo(expected, 9);
      });
    });
  });
});

/** The record of two such stars, with the star points separate. */
function twoStars(leads: "unknown" | "taken off", all: boolean): BenchRecord {
  const rows = (bank: string): readonly RecordOhms[] =>
    [
      ["L1", `S-${bank}`, "7.9 Ω"],
      ["L2", `S-${bank}`, "7.9 Ω"],
      ["L3", `S-${bank}`, "7.8 Ω"],
      ...(all
        ? [
            ["L1", "L2", "15.5 Ω"],
            ["L2", "L3", "15.5 Ω"],
            ["L3", "L1", "15.5 Ω"],
          ]
        : []),
    ].map(([from, to, value]) => ({ from: from!, to: to!, reads: value!, alone: bank }));
  return {
    title: "invented dryer, two stars",
    nameplate: { power: "60 kW", voltage: "480 V" },
    wiring: {
      banks: [
        { id: "A", connection: "star" },
        { id: "B", connection: "star" },
      ],
      starPoints: "separate",
    },
    instruments: { ohmmeter: { ofReading: 0, digits: 1, leads } },
    asFound: { ohms: [...rows("A"), ...rows("B")] },
  };
}
const floatingStar = (v: number, [a, b, c]: readonly [number, number, number]): number =>
  (v * v * (a + b + c)) / (a * b + b * c + c * a);

describe("two such stars on 480 V against a 60 kW plate", () => {
  const draw = assessModule(twoStars("unknown", true)).draw!;
  const repaired = draw.repairedAtPlateVoltage!;

  it("draw 60.37 kW: 2·480²·22.9/174.8025", () => {
    expect(repaired.power / 1000).toBeCloseTo(60.37, 2);
    expect(repaired.power).toBeCloseTo(2 * floatingStar(480, [7.65, 7.65, 7.6]), 6);
  });

  it("are 0.6 % above the plate", () => {
    expect((draw.deviationFromPlate! * 100).toFixed(1)).toBe("0.6");
  });

  it("say so as found too: every branch is measured", () => {
    expect(draw.asFound?.power).toBeCloseTo(repaired.power, 9);
  });
});

describe("the same readings taken at face value", () => {
  const draw = assessModule(twoStars("taken off", false)).draw!;
  const repaired = draw.repairedAtPlateVoltage!;

  it("would give 58.6 kW: 2·480²·23.6/185.65", () => {
    expect((repaired.power / 1000).toFixed(1)).toBe("58.6");
    expect(repaired.power).toBeCloseTo(2 * floatingStar(480, [7.9, 7.9, 7.8]), 6);
  });

  it("would be 2.4 % low", () => {
    expect((draw.deviationFromPlate! * 100).toFixed(1)).toBe("-2.4");
  });

  it("with the line-to-line readings in as well, contradict themselves", () => {
    // Without leads 7.9 + 7.9 is 15.8, not 15.5: a meter ten times finer than this one would see it.
    const fine = [...toStarPoint, ...lineToLine].map((one) => ({ ...one, standardUncertainty: ohms(0.006) }));
    expect(fitTerminalReadings({ network: star, readings: fine, leads: "taken off" }).consistency).toBe(
      "inconsistent",
    );
  });
});

describe("closed delta read 8.7645, 8.7645, 9.4581 Ω line to line", () => {
  // Source: worked forward by hand: 12.8 beside (12.8 + 15) is 8.76453, 15 beside 25.6 is 9.45813.
  const sides = deltaFromLineReadings({
    y12: ohms(8.7645),
    y23: ohms(8.7645),
    y31: ohms(9.4581),
    standardUncertainty: ohms(0),
  });

  it("is 12.8, 12.8, 15.0 Ω", () => {
    expect((sides.r12.resistance as number).toFixed(3)).toBe("12.800");
    expect((sides.r23.resistance as number).toFixed(3)).toBe("12.800");
    expect((sides.r31.resistance as number).toFixed(3)).toBe("15.000");
  });

  it("and the fit of the network finds the same", () => {
    const { network } = buildModule({
      banks: [{ id: "A", connection: "delta", elementResistance: ohms(12.8) }],
    });
    const readings = [reads("L1", "L2", 8.7645), reads("L2", "L3", 8.7645), reads("L3", "L1", 9.4581)];
    const fit = fitTerminalReadings({ network, readings, leads: "taken off" });
    fit.branches.forEach((one, i) => {
      const other = [sides.r12, sides.r23, sides.r31][i]?.resistance as number;
      expect(Math.abs((one.resistance as number) / other - 1)).toBeLessThan(1e-10);
    });
  });
});

describe("targets from the nameplate", () => {
  it("45 kW, 440 V delta, factor 1.047: 12.9067 Ω hot, 12.3273 Ω cold (3·440²/45 000, over 1.047)", () => {
    const targets = nameplateTargets({
      power: kilowatts(45),
      lineVoltage: volts(440),
      connection: "delta",
      banks: 1,
      temperatureFactor: 1.047,
    });
    expect(targets.elementResistanceHot).toBeCloseTo(12.9067, 4);
    expect(targets.elementResistanceCold).toBeCloseTo(12.3273, 4);
  });

  it("90 kW, 480 V, three stars: 10 kW and 7.68 Ω per element, 36.0844 A per bank, 108.253 A in all", () => {
    const targets = nameplateTargets({
      power: kilowatts(90),
      lineVoltage: volts(480),
      connection: "star",
      banks: 3,
    });
    expect(targets.elementPower).toBeCloseTo(10_000, 6);
    expect(targets.elementResistanceHot).toBeCloseTo(7.68, 10);
    expect(targets.bankLineCurrent).toBeCloseTo(36.0844, 4);
    expect(targets.lineCurrent).toBeCloseTo(108.253, 3);
  });
});

describe("a meter that cannot decide", () => {
  const corrected = correctedReading({
    reading: ohms(3.2),
    leads: ohms(0.3),
    resolution: ohms(0.1),
    accuracy: { ofReading: 0.009, digits: 1 },
  });

  it("reads 2.9 ± 0.2315 Ω against 2.8975 to 3.2025 Ω: undecided, neither pass nor fail", () => {
    // Limit by hand: 0.009·3.2 + 0.1 + 0.009·0.3 + 0.1.
    expect(corrected.resistance).toBeCloseTo(2.9, 12);
    expect(corrected.limit).toBeCloseTo(0.2315, 12);
    const { verdict } = judge({
      value: corrected.resistance,
      halfWidth: corrected.limit,
      low: 3.05 * 0.95,
      high: 3.05 * 1.05,
      rule: "target 3.05 Ω ±5 %",
    });
    expect(verdict).toBe("undecided");
  });

  it("2.31 Ω less 0.28 Ω of leads is 2.03 Ω, −0.49 % of 2.04 Ω; uncorrected it would be +13.24 %", () => {
    const { resistance } = correctedReading({
      reading: ohms(2.31),
      leads: ohms(0.28),
      resolution: ohms(0.01),
      accuracy: { ofReading: 0.005, digits: 2 },
    });
    expect(resistance).toBeCloseTo(2.03, 12);
    const percent = (value: Ohms): string => ((value / 2.04 - 1) * 100).toFixed(2);
    expect(percent(resistance)).toBe("-0.49");
    expect(percent(ohms(2.31))).toBe("13.24");
  });
});
